"""Where a learner stands (a summary kept in step) and what was decided (entries that stay)."""

from __future__ import annotations

from django.conf import settings
from django.db import models
from django.db.models import Q
from django.utils import timezone

from quizzes import standing
from quizzes.competencies import COMPETENCIES
from quizzes.models.appendonly import AppendOnly
from quizzes.models.attempt import Sitting


class Standing(models.Model):
    """One learner in one competency as of the last answer: a summary of attempts and decisions."""

    learner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="standings")
    competency = models.SlugField(max_length=60)
    state = models.CharField(max_length=12, default=standing.State.NOT_STARTED.value)
    streak = models.PositiveIntegerField(default=0, help_text="Right in a row in practice.")
    practised = models.PositiveIntegerField(default=0, help_text="Practice answers.")
    practised_right = models.PositiveIntegerField(default=0)
    holds = models.PositiveIntegerField(default=0)
    waits = models.BooleanField(default=False, help_text="Held until an instructor opens the check again.")
    met_on = models.DateField(null=True, blank=True)
    due_on = models.DateField(null=True, blank=True)
    moved_at = models.DateTimeField(null=True, blank=True, help_text="The last answer or decision.")

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(fields=["learner", "competency"], name="one_standing_each"),
            models.CheckConstraint(
                condition=Q(state__in=[state.value for state in standing.KEPT]), name="state_that_is_kept"
            ),
            models.CheckConstraint(
                condition=~Q(state=standing.State.MET.value) | Q(met_on__isnull=False, due_on__isnull=False),
                name="met_on_a_day",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.learner}, {self.title}: {self.shown_state}"

    @property
    def title(self) -> str:
        return COMPETENCIES[self.competency].title

    @property
    def shown_state(self) -> standing.State:
        """The state in the words of design: due and lapsed follow from today's date."""
        return standing.shown(standing.State(self.state), self.due_on, timezone.localdate())

    @property
    def shut_because(self) -> str:
        """Why the check is not open; empty when it is."""
        return standing.shut_because(self.shown_state, self.streak, self.waits)


class DecisionRecord(AppendOnly):
    """One entry of the competency record: what was decided, when, by whom, why, on what evidence."""

    learner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="decisions")
    competency = models.SlugField(max_length=60)
    decided = models.CharField(max_length=12, help_text="met, held or opened (a hold lifted).")
    at = models.DateTimeField()
    due_on = models.DateField(null=True, blank=True)
    by_key = models.BigIntegerField(null=True, blank=True)
    by_name = models.CharField(max_length=160)
    why = models.CharField(max_length=400)
    rule = models.JSONField(default=dict, blank=True)
    score = models.IntegerField(null=True, blank=True)
    sitting = models.ForeignKey(
        Sitting, null=True, blank=True, on_delete=models.PROTECT, related_name="decisions"
    )
    evidence = models.JSONField(default=list, blank=True, help_text="Numbers of the attempts it rests on.")

    class Meta:
        ordering = ["-pk"]
        constraints = [
            models.CheckConstraint(condition=Q(decided__in=["met", "held", "opened"]), name="known_decision"),
            models.UniqueConstraint(
                fields=["sitting"], condition=Q(sitting__isnull=False), name="one_decision_per_sitting"
            ),
        ]
        indexes = [models.Index(fields=["learner", "competency", "-id"], name="latest_decision")]

    def __str__(self) -> str:
        return f"{self.title}: {self.decided}"

    @property
    def title(self) -> str:
        return COMPETENCIES[self.competency].title
