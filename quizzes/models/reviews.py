"""What a learner doubts about an answer, and what was ruled on it; both are written once."""

from __future__ import annotations

from django.conf import settings
from django.db import models
from django.db.models import Q

from quizzes.models.appendonly import AppendOnly
from quizzes.models.attempt import Attempt
from quizzes.reviews import Ruled


class Doubted(models.TextChoices):
    """What a learner may say of an answered attempt."""

    QUESTION = "question", "This question is wrong"
    MEANT = "meant", "I meant something else"


class Doubt(AppendOnly):
    """A learner's word about one answered attempt of their own; one for each attempt."""

    attempt = models.OneToOneField(Attempt, on_delete=models.PROTECT, related_name="doubt")
    learner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="doubts")
    doubted = models.CharField(max_length=8, choices=Doubted)
    said = models.CharField(max_length=300)
    at = models.DateTimeField()

    class Meta:
        ordering = ["pk"]
        constraints = [models.CheckConstraint(condition=Q(doubted__in=Doubted.values), name="known_doubt")]

    def __str__(self) -> str:
        return f"{self.get_doubted_display()}, of attempt {self.attempt_id}"


class Ruling(AppendOnly):
    """One ruling on an answered attempt: what, by whom, when and why; the latest is the one that counts."""

    attempt = models.ForeignKey(Attempt, on_delete=models.PROTECT, related_name="rulings")
    number = models.PositiveIntegerField(help_text="1 for the first on this attempt.")
    ruled = models.CharField(max_length=12, choices=[(each.value, each.in_words) for each in Ruled])
    at = models.DateTimeField()
    by_key = models.BigIntegerField(null=True, blank=True)
    by_name = models.CharField(max_length=160)
    why = models.CharField(max_length=400)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(fields=["attempt", "number"], name="one_ruling_at_a_time"),
            models.CheckConstraint(
                condition=Q(ruled__in=[each.value for each in Ruled]), name="known_ruling"
            ),
        ]

    def __str__(self) -> str:
        return f"attempt {self.attempt_id} {self.get_ruled_display()}"
