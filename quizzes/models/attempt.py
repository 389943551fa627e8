"""What was asked and what was answered: sittings, and the attempts they are made of."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from django.conf import settings
from django.db import models
from django.db.models import Case, F, Q, Value, When

from pressure.problem import AnyKey
from pressure.record import key_from
from quizzes.models.supervision import Slot
from quizzes.practice import Help
from quizzes.reviews import COUNTS_AS, Ruled, counted
from quizzes.rules import Rule
from quizzes.standing import DECIDING, Purpose
from quizzes.subjects import kinds_of, paper_of, subject


class Sitting(models.Model):
    """A run of attempts at one competency or the whole course, under what was in force when it began."""

    learner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="sittings")
    competency = models.SlugField(max_length=60)
    purpose = models.CharField(max_length=12, choices=[(each.value, each.in_words) for each in Purpose])
    system = models.CharField(max_length=8)
    seed = models.BigIntegerField(help_text="Deals the families.")
    rule = models.JSONField(
        default=dict, blank=True, help_text="The decision rule in force; empty in practice."
    )
    policy = models.PositiveIntegerField(default=1, help_text="Edition of the policy in force.")
    # Pairs, since PostgreSQL does not keep the order of an object's names, and the deal goes by the order.
    paper = models.JSONField(
        default=list, blank=True, help_text="What a check asks: pairs of a competency and its families."
    )
    slot = models.ForeignKey(Slot, null=True, blank=True, on_delete=models.PROTECT, related_name="sittings")
    supervised_by = models.CharField(max_length=160, blank=True, help_text="Who showed the code.")
    accommodation = models.CharField(max_length=500, blank=True, help_text="In force when it began.")
    began = models.DateTimeField()
    ends_at = models.DateTimeField(null=True, blank=True, help_text="When time is over, if it is limited.")
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
        return f"{self.get_purpose_display()} of {self.title} by {self.learner}"

    @property
    def title(self) -> str:
        return subject(self.competency).title

    @property
    def is_check(self) -> bool:
        """Whether it decides: no verdict shows before it ends."""
        return self.purpose in DECIDING

    @property
    def decision_rule(self) -> Rule:
        return Rule.from_record(self.rule)

    @property
    def asks(self) -> dict[str, list[str]]:
        """Competency → families, as they were when it began (as they are, for the oldest sittings)."""
        return dict(self.paper) or paper_of(self.competency)

    @property
    def kinds(self) -> list[str]:
        """What its first block holds once each."""
        return kinds_of(self.asks)

    def is_over(self, now: datetime) -> bool:
        """Whether its time is over; never without a limit."""
        return self.ended is None and self.ends_at is not None and now >= self.ends_at


class AnsweredOnce(Exception):
    """An answered attempt reads the same for ever."""


class AttemptQuerySet(models.QuerySet["Attempt"]):
    """Attempts change once, from asked to answered; see actions.py. A ruling is noted beside the answer."""

    def delete(self) -> Any:
        raise AnsweredOnce("An attempt is never deleted.")

    def update(self, **kwargs: Any) -> int:
        return models.QuerySet.update(self.filter(answered_at__isnull=True), **kwargs)

    def note_ruling(self, ruled: Ruled) -> int:
        """Keep what was ruled last beside the answer; the rulings themselves are in models/reviews.py."""
        return models.QuerySet.update(self.filter(answered_at__isnull=False), ruled=ruled.value)

    def counting(self) -> AttemptQuerySet:
        """Answered, and not set aside: each with the verdict that counts as ``counted``."""
        answered = self.filter(answered_at__isnull=False).exclude(ruled=Ruled.ASIDE.value)
        return answered.annotate(counted=counts_as())


AttemptManager = models.Manager.from_queryset(AttemptQuerySet)


def counts_as(prefix: str = "") -> Case:
    """The verdict that counts, in the database; ``prefix`` leads to the attempt, as in ``attempts__``."""
    cases = (
        When(**{f"{prefix}ruled": ruled.value}, then=Value(verdict)) for ruled, verdict in COUNTS_AS.items()
    )
    return Case(*cases, default=F(f"{prefix}verdict"))


class Attempt(models.Model):
    """One problem put to one learner: as it was shown, what was typed, how it was read, what was decided.

    ``shown`` and ``key`` are the forms of pressure/record.py, so that an attempt can be read, and its
    marking followed, long after the family has changed.
    """

    sitting = models.ForeignKey(Sitting, on_delete=models.PROTECT, related_name="attempts")
    learner = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="attempts")
    number = models.PositiveIntegerField()
    diagnostic = models.BooleanField(
        default=False, help_text="Of the first block of a check, which is always finished."
    )
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
    ruled = models.CharField(
        max_length=12, blank=True, help_text="The latest ruling on the answer; the verdict stays as it was."
    )

    objects = AttemptManager()

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
            models.CheckConstraint(
                condition=Q(ruled="")
                | Q(ruled__in=[each.value for each in Ruled], answered_at__isnull=False),
                name="ruling_on_an_answer",
            ),
        ]
        indexes = [
            models.Index(fields=["learner", "family", "-id"], name="attempts_by_family"),
            models.Index(fields=["family"], condition=Q(diagnostic=True), name="first_blocks_by_family"),
        ]

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
        """As it was marked."""
        return self.verdict == "right"

    @property
    def counts(self) -> str:
        """The verdict that counts, after a ruling; empty for what counts as nothing."""
        return counted(self.verdict, self.ruled)

    @property
    def ruling_in_words(self) -> str:
        return Ruled(self.ruled).in_words if self.ruled else ""

    @property
    def marking_key(self) -> AnyKey:
        return key_from(self.shown, self.key)
