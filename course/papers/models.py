"""What was printed: runs of papers for a cohort, and each paper with its questions as they stay."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from django.db import models
from django.db.models import Q
from django.urls import reverse

from course.people.models import Cohort, Person
from quizzes.actions.paper_plans import PaperCheck
from quizzes.blueprints import told
from quizzes.competencies import COMPETENCIES
from quizzes.models import Sitting
from quizzes.rules import Rule
from quizzes.standing import Purpose


class Run(models.Model):
    """Papers printed together: for one cohort, in one competency, on one size of sheet."""

    cohort = models.ForeignKey(Cohort, on_delete=models.PROTECT, related_name="paper_runs")
    competency = models.SlugField(max_length=60)
    sheet = models.CharField(max_length=8, choices=[("A4", "A4"), ("Letter", "Letter")])
    at = models.DateTimeField()
    by_key = models.BigIntegerField()
    by_name = models.CharField(max_length=160)

    class Meta:
        ordering = ["-pk"]

    def __str__(self) -> str:
        return f"papers in {self.title} for {self.cohort}"

    def get_absolute_url(self) -> str:
        return reverse("papers:run", args=[self.pk])

    @property
    def title(self) -> str:
        return COMPETENCIES[self.competency].title


class Paper(models.Model):
    """One paper: found by its code, printed the same for ever, entered once.

    ``questions`` are the forms of pressure/record.py, shown and key, in the order printed. A spare has no
    learner until it is entered. ``answers`` are kept as they were entered, a form a question.
    """

    run = models.ForeignKey(Run, on_delete=models.PROTECT, related_name="papers")
    number = models.PositiveIntegerField()
    code = models.CharField(max_length=8, unique=True)
    learner = models.ForeignKey(
        Person, null=True, blank=True, on_delete=models.PROTECT, related_name="paper_checks"
    )
    name = models.CharField(max_length=120, blank=True, help_text="As printed; empty on a spare.")
    purpose = models.CharField(max_length=12, choices=[(each.value, each.in_words) for each in Purpose])
    holds = models.PositiveIntegerField()
    rule = models.JSONField()
    policy = models.PositiveIntegerField()
    minutes = models.PositiveIntegerField(default=0, help_text="Time allowed; 0 is without limit.")
    system = models.CharField(max_length=8)
    seed = models.BigIntegerField()
    families = models.JSONField()
    questions = models.JSONField()
    sitting = models.OneToOneField(
        Sitting, null=True, blank=True, on_delete=models.PROTECT, related_name="entered_paper"
    )
    answers = models.JSONField(default=list, blank=True)
    entered_at = models.DateTimeField(null=True, blank=True)
    entered_by_key = models.BigIntegerField(null=True, blank=True)
    entered_by_name = models.CharField(max_length=160, blank=True)

    class Meta:
        ordering = ["run", "number"]
        constraints = [
            models.UniqueConstraint(fields=["run", "number"], name="one_paper_per_number"),
            models.CheckConstraint(
                condition=Q(entered_at__isnull=True, sitting__isnull=True)
                | Q(entered_at__isnull=False, sitting__isnull=False, learner__isnull=False),
                name="entered_as_a_check",
            ),
        ]

    def __str__(self) -> str:
        return f"paper {self.spaced_code}"

    def get_absolute_url(self) -> str:
        return reverse("papers:enter", args=[self.code])

    @property
    def spaced_code(self) -> str:
        """The code as it is printed, in two groups."""
        return f"{self.code[:3]} {self.code[3:]}"

    @property
    def is_entered(self) -> bool:
        return self.entered_at is not None

    @property
    def decision_rule(self) -> Rule:
        return Rule.from_record(self.rule)

    @property
    def told(self) -> str:
        """What decides it, in the words that are printed on it."""
        return told(self.decision_rule, Purpose(self.purpose), len(self.questions))

    @property
    def check_on_paper(self) -> PaperCheck:
        """What the action that enters it needs to know of it."""
        return PaperCheck(
            competency=COMPETENCIES[self.run.competency],
            purpose=Purpose(self.purpose),
            holds=self.holds,
            rule=self.decision_rule,
            policy=self.policy,
            minutes=self.minutes,
            system=self.system,  # type: ignore[arg-type]  # stored as the check had it
            seed=self.seed,
            families=self.families,
            questions=self.questions,
        )


def kept(check: PaperCheck) -> dict[str, Any]:
    """The fields in which a paper keeps a check."""
    return {
        "purpose": check.purpose.value,
        "holds": check.holds,
        "rule": check.rule.as_record(),
        "policy": check.policy,
        "minutes": check.minutes,
        "system": check.system,
        "seed": check.seed,
        "families": list(check.families),
        "questions": list(check.questions),
    }


def close(paper: Paper, sitting: Sitting, answers: list[dict[str, str]], by: Person, at: datetime) -> None:
    """Note what a paper was entered as, in the caller's transaction; it is open to no other entry."""
    paper.sitting, paper.learner_id, paper.answers = sitting, sitting.learner_id, answers
    paper.entered_at, paper.entered_by_key, paper.entered_by_name = at, by.pk, str(by)
    paper.save(
        update_fields=["sitting", "learner", "answers", "entered_at", "entered_by_key", "entered_by_name"]
    )
