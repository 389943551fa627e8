"""What was asked and what was answered: sittings, and the attempts they are made of."""

from __future__ import annotations

from typing import Any, ClassVar

from django.conf import settings
from django.db import models
from django.db.models import Q

from pressure.problem import AnyKey
from pressure.record import key_from
from quizzes.competencies import COMPETENCIES
from quizzes.practice import Help
from quizzes.rules import Rule
from quizzes.standing import DECIDING, Purpose


class Sitting(models.Model):
    """A run of attempts at one competency, under the rule that was in force when it began."""

    learner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="sittings")
    competency = models.SlugField(max_length=60)
    purpose = models.CharField(max_length=12, choices=[(each.value, each.capitalize()) for each in Purpose])
    system = models.CharField(max_length=8)
    seed = models.BigIntegerField(help_text="Deals the families.")
    rule = models.JSONField(
        default=dict, blank=True, help_text="The decision rule in force; empty in practice."
    )
    policy = models.PositiveIntegerField(default=1, help_text="Edition of the policy in force.")
    began = models.DateTimeField()
    ended = models.DateTimeField(null=True, blank=True)
    outcome = models.CharField(max_length=12, blank=True)
    score = models.IntegerField(default=0)
    why = models.CharField(max_length=200, blank=True)

    class Meta:
        ordering = ["-pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["learner", "competency", "purpose"],
                condition=Q(ended__isnull=True),
                name="one_open_sitting",
            ),
            models.CheckConstraint(
                condition=Q(ended__isnull=True, outcome="") | Q(ended__isnull=False),
                name="outcome_only_at_the_end",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.get_purpose_display()} of {COMPETENCIES[self.competency].title} by {self.learner}"

    @property
    def title(self) -> str:
        return COMPETENCIES[self.competency].title

    @property
    def is_check(self) -> bool:
        """Whether it decides: no verdict shows before it ends."""
        return self.purpose in DECIDING

    @property
    def decision_rule(self) -> Rule:
        return Rule.from_record(self.rule)


class AnsweredOnce(Exception):
    """An answered attempt reads the same for ever."""


class AttemptQuerySet(models.QuerySet["Attempt"]):
    """Attempts change once, from asked to answered; see actions.py."""

    def delete(self) -> Any:
        raise AnsweredOnce("An attempt is never deleted.")

    def update(self, **kwargs: Any) -> int:
        return models.QuerySet.update(self.filter(answered_at__isnull=True), **kwargs)


class Attempt(models.Model):
    """One problem put to one learner: as it was shown, what was typed, how it was read, what was decided.

    ``shown`` and ``key`` are the forms of pressure/record.py, so that an attempt can be read, and its
    marking followed, long after the family has changed.
    """

    sitting = models.ForeignKey(Sitting, on_delete=models.PROTECT, related_name="attempts")
    learner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="attempts")
    number = models.PositiveIntegerField()
    family = models.SlugField(max_length=60)
    edition = models.PositiveIntegerField()
    system = models.CharField(max_length=8)
    seed = models.BigIntegerField()
    place = models.BigIntegerField(help_text="Which numbers of the family these are.")
    shown = models.JSONField()
    key = models.JSONField()
    reason = models.CharField(max_length=300, blank=True, help_text="Why practice chose it.")
    help = models.PositiveSmallIntegerField(default=Help.NONE, help_text="How much of the way was shown.")
    hints = models.PositiveSmallIntegerField(default=0, help_text="Hints taken.")
    asked_at = models.DateTimeField()
    answered_at = models.DateTimeField(null=True, blank=True)
    typed = models.TextField(blank=True)
    understood = models.TextField(blank=True)
    verdict = models.CharField(max_length=8, blank=True)
    slip = models.SlugField(max_length=60, blank=True)
    slip_label = models.CharField(max_length=300, blank=True)
    mend = models.TextField(blank=True)

    objects: ClassVar[models.Manager[Attempt]] = models.Manager.from_queryset(AttemptQuerySet)()

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(fields=["sitting", "number"], name="one_attempt_per_number"),
            models.UniqueConstraint(
                fields=["sitting"], condition=Q(answered_at__isnull=True), name="one_open_attempt"
            ),
            models.CheckConstraint(
                condition=Q(answered_at__isnull=True, verdict="")
                | Q(answered_at__isnull=False, verdict__in=["right", "slip", "wrong"]),
                name="verdict_with_the_answer",
            ),
        ]
        indexes = [models.Index(fields=["learner", "family", "-id"], name="attempts_by_family")]

    def __str__(self) -> str:
        return f"question {self.number} of {self.sitting_id}"

    def save(self, *args: Any, **kwargs: Any) -> None:
        if not self._state.adding:
            raise AnsweredOnce("An attempt is written when it is asked and once more when it is answered.")
        super().save(*args, **kwargs)

    def delete(self, *args: Any, **kwargs: Any) -> Any:
        raise AnsweredOnce("An attempt is never deleted.")

    @property
    def is_answered(self) -> bool:
        return self.answered_at is not None

    @property
    def is_right(self) -> bool:
        return self.verdict == "right"

    @property
    def marking_key(self) -> AnyKey:
        return key_from(self.shown, self.key)
