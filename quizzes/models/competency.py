"""Where a learner stands (a summary kept in step) and what was decided (entries that stay)."""

from __future__ import annotations

from datetime import date, datetime

from django.conf import settings
from django.db import models
from django.db.models import Q
from django.utils import timezone

from quizzes import standing
from quizzes.models.appendonly import AppendOnly
from quizzes.models.attempt import Sitting
from quizzes.models.reviews import Ruling
from quizzes.policy import Policy
from quizzes.subjects import WHOLE, subject


class Standing(models.Model):
    """One learner in one competency as of the last answer: a summary of attempts and decisions.

    A row with the slug of the whole course keeps when its check may be tried again: ready or held, never met
    or due, which its competencies are. Lists of competencies leave it out.
    """

    learner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="standings")
    competency = models.SlugField(max_length=60)
    state = models.CharField(max_length=12, default=standing.State.NOT_STARTED.value)
    streak = models.PositiveIntegerField(default=0, help_text="Right in a row in practice.")
    practised = models.PositiveIntegerField(default=0, help_text="Practice answers.")
    practised_right = models.PositiveIntegerField(default=0)
    holds = models.PositiveIntegerField(default=0)
    waits = models.BooleanField(default=False, help_text="Held until an instructor opens the check again.")
    held_until = models.DateField(null=True, blank=True, help_text="The day the check opens again.")
    supervise = models.BooleanField(default=False, help_text="The next check needs a code.")
    met_on = models.DateField(null=True, blank=True)
    confirm_from = models.DateField(null=True, blank=True)
    confirmed_on = models.DateField(null=True, blank=True)
    notice_on = models.DateField(null=True, blank=True, help_text="From this day it shows as due.")
    due_on = models.DateField(null=True, blank=True)
    review_on = models.DateField(null=True, blank=True, help_text="The day of the next review set.")
    reviews = models.PositiveIntegerField(default=0, help_text="Review sets done since it was met.")
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
        return subject(self.competency).title

    @property
    def facts(self) -> standing.Facts:
        return standing.Facts(
            state=standing.State(self.state),
            streak=self.streak,
            waits=self.waits,
            held_until=self.held_until,
            met_on=self.met_on,
            confirm_from=self.confirm_from,
            confirmed_on=self.confirmed_on,
            notice_on=self.notice_on,
            due_on=self.due_on,
        )

    @property
    def shown_state(self) -> standing.State:
        """The state in the words of every page: due and lapsed follow from today's date."""
        if self.state != standing.State.MET:  # only what is met turns with the day
            return standing.State(self.state)
        return self.facts.on(timezone.localdate())

    @property
    def awaits_confirmation(self) -> bool:
        return self.state == standing.State.MET and self.confirmed_on is None

    @property
    def rests(self) -> bool:
        """Whether the day has not come on which the check opens again after a hold."""
        return self.held_until is not None and timezone.localdate() < self.held_until

    @property
    def is_held(self) -> bool:
        """Whether an instructor can open the check or waive what goes before it."""
        awaits_practice = self.state == standing.State.HELD and not self.is_whole
        return self.waits or self.rests or awaits_practice

    @property
    def is_whole(self) -> bool:
        """Whether this is the row of the whole course, whose check asks for no practice."""
        return self.competency == WHOLE

    @property
    def review_is_due(self) -> bool:
        return self.review_on is not None and self.review_on <= timezone.localdate()

    def opening(self, policy: Policy, today: date | None = None) -> standing.Opening:
        """Which check is open under the policy, or why none is."""
        return standing.opening(self.facts, today or timezone.localdate(), policy.in_a_row)


class Decided(models.TextChoices):
    """What an entry of the competency record says happened."""

    MET = "met", "met"
    CONFIRMED = "confirmed", "confirmed"
    RENEWED = "renewed", "renewed"
    HELD = "held", "held"
    REOPENED = "reopened", "reopened for practice"
    OPENED = "opened", "check opened again"
    WAIVED = "waived", "waived"
    SUPERVISE = "supervise", "next check to be supervised"
    SIGNED = "signed", "signed off"
    REVOKED = "revoked", "revoked"
    GRANTED = "granted", "granted by hand"
    UNDECIDED = "undecided", "undecided: the check counts for neither side"


class DecisionRecord(AppendOnly):
    """One entry of the competency record: what was decided, when, by whom, why, on what evidence."""

    learner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="decisions")
    competency = models.SlugField(max_length=60)
    decided = models.CharField(max_length=12, choices=Decided)
    at = models.DateTimeField()
    due_on = models.DateField(null=True, blank=True)
    by_key = models.BigIntegerField(null=True, blank=True)
    by_name = models.CharField(max_length=160)
    why = models.CharField(max_length=400)
    part = models.CharField(
        max_length=60, blank=True, help_text="What was signed off (oral, pool …) or waived."
    )
    rule = models.JSONField(default=dict, blank=True)
    policy = models.PositiveIntegerField(default=1, help_text="Edition of the policy in force.")
    score = models.IntegerField(null=True, blank=True)
    sitting = models.ForeignKey(
        Sitting, null=True, blank=True, on_delete=models.PROTECT, related_name="decisions"
    )
    ruling = models.ForeignKey(
        Ruling,
        null=True,
        blank=True,
        on_delete=models.PROTECT,
        related_name="decisions",
        help_text="After a review: the ruling that led to it.",
    )
    evidence = models.JSONField(default=list, blank=True, help_text="Numbers of the attempts it rests on.")
    supervised_by = models.CharField(max_length=160, blank=True)
    accommodation = models.CharField(max_length=500, blank=True)

    class Meta:
        ordering = ["-pk"]
        constraints = [
            models.CheckConstraint(condition=Q(decided__in=Decided.values), name="known_decision"),
            models.UniqueConstraint(
                fields=["sitting", "competency"],
                condition=Q(sitting__isnull=False, ruling__isnull=True),
                name="one_decision_each_sitting",
            ),
            models.UniqueConstraint(
                fields=["ruling", "competency"],
                condition=Q(ruling__isnull=False),
                name="one_decision_each_ruling",
            ),
        ]
        indexes = [models.Index(fields=["learner", "competency", "-id"], name="latest_decision")]

    def __str__(self) -> str:
        return f"{self.title}: {self.decided}"

    @property
    def moment(self) -> datetime:
        """When what it is about took place: the end of a check, however late it is decided anew."""
        return self.sitting.ended if self.sitting and self.sitting.ended else self.at

    @property
    def title(self) -> str:
        return subject(self.competency).title
