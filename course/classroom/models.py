"""What a class is asked together: the problem on the wall slate, and one answer to it from each hand slate.

Nothing here certifies or counts as practice; it stands apart from sittings and attempts.
"""

from __future__ import annotations

from django.db import models
from django.db.models import Q

from course.people.models import Cohort, Person
from pressure.problem import AnyKey
from pressure.record import key_from


class Stage(models.TextChoices):
    """How far the class has come with the problem. Nothing of its key is shown before ``SPREAD``."""

    OPEN = "open", "open for answers"
    CLOSED = "closed", "closed"
    SPREAD = "spread", "answers shown"
    DOWN = "down", "taken down"


class Showing(models.Model):
    """One problem put on the wall slate of a cohort, as shown and with its key (pressure/record.py)."""

    cohort = models.ForeignKey(Cohort, on_delete=models.PROTECT, related_name="showings")
    by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="showings")
    family = models.SlugField(max_length=60)
    edition = models.PositiveIntegerField()
    system = models.CharField(max_length=8, help_text="The wall's units, the same for all.")
    seed = models.BigIntegerField()
    place = models.BigIntegerField(help_text="Which numbers of the family these are.")
    shown = models.JSONField()
    key = models.JSONField()
    members = models.PositiveIntegerField(help_text="Trainees of the cohort when it was put up.")
    answered = models.PositiveIntegerField(default=0, help_text="How many have answered.")
    stage = models.CharField(max_length=8, choices=Stage, default=Stage.OPEN)
    steps = models.PositiveSmallIntegerField(default=0, help_text="Steps of the solution shown so far.")
    put_up_at = models.DateTimeField()
    closed_at = models.DateTimeField(
        null=True, blank=True, help_text="When answers ended, for the last time."
    )
    down_at = models.DateTimeField(null=True, blank=True)

    class Meta:
        ordering = ["-pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["cohort"], condition=~Q(stage=Stage.DOWN), name="one_problem_on_the_wall"
            ),
            models.CheckConstraint(condition=Q(stage__in=Stage.values), name="known_stage"),
            models.CheckConstraint(
                condition=Q(steps=0) | Q(stage__in=[Stage.SPREAD, Stage.DOWN]),
                name="no_step_before_the_spread",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.family} ({self.system}) on the wall of {self.cohort}"

    @property
    def marking_key(self) -> AnyKey:
        return key_from(self.shown, self.key)

    @property
    def is_open(self) -> bool:
        return self.stage == Stage.OPEN

    @property
    def is_spread(self) -> bool:
        """Whether the key may be shown."""
        return self.stage == Stage.SPREAD


class Answer(models.Model):
    """What one trainee answered, as it last stood when the problem was closed."""

    showing = models.ForeignKey(Showing, on_delete=models.PROTECT, related_name="answers")
    learner = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="class_answers")
    typed = models.TextField()
    understood = models.TextField()
    verdict = models.CharField(max_length=8)
    slip = models.SlugField(max_length=60, blank=True)
    slip_label = models.CharField(max_length=300, blank=True)
    mend = models.TextField(blank=True)
    first_at = models.DateTimeField()
    at = models.DateTimeField(help_text="When it was last changed.")

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(fields=["showing", "learner"], name="one_answer_from_each"),
            models.CheckConstraint(
                condition=Q(verdict__in=["right", "slip", "wrong"]), name="known_verdict_in_class"
            ),
        ]

    def __str__(self) -> str:
        return f"answer of {self.learner} to showing {self.showing_id}"
