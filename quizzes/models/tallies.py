"""Counts kept in step with the answers: what the statistics and the teaching list are computed from.

Nothing here says more than the attempts do; ``manage.py tallies`` proves that, or makes them anew.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from django.conf import settings
from django.db import connection, models

from quizzes.models.attempt import Sitting
from quizzes.statistics.drift import Drift
from quizzes.statistics.keeping import Counts

if TYPE_CHECKING:
    from quizzes.models.attempt import Attempt


class ItemTally(models.Model):
    """The first answers to one item, counted: a family, or one question of it as ``family/question``.

    The counts are plain JSON in the form of quizzes/statistics/keeping.py, one row for each item, so that a
    page over all of them reads as many rows as there are items, however many answers were given.
    """

    item = models.CharField(max_length=130, unique=True)
    family = models.SlugField(max_length=60)
    rests = models.JSONField(default=dict, blank=True)
    chosen = models.JSONField(default=dict, blank=True)
    labels = models.JSONField(default=dict, blank=True, help_text="Each slip or option in a few words.")
    seconds = models.JSONField(default=dict, blank=True)
    draws = models.JSONField(default=dict, blank=True)
    before_right = models.PositiveIntegerField(default=0, help_text="First answers in practice.")
    before_wrong = models.PositiveIntegerField(default=0)
    drift_score = models.PositiveIntegerField(default=0)
    drift_answers = models.PositiveIntegerField(default=0)
    drift_began = models.PositiveIntegerField(default=0)
    drift_alarm = models.PositiveIntegerField(null=True, blank=True)
    drift_from = models.PositiveIntegerField(
        default=0, help_text="Answers that were given before the watch began anew."
    )

    COUNTED = (
        *("rests", "chosen", "labels", "seconds", "draws", "before_right", "before_wrong"),
        *("drift_score", "drift_answers", "drift_began", "drift_alarm"),
    )

    class Meta:
        ordering = ["item"]

    def __str__(self) -> str:
        return f"answers to {self.item}"

    @property
    def drift(self) -> Drift:
        return Drift(self.drift_score, self.drift_answers, self.drift_began, self.drift_alarm)

    @property
    def counts(self) -> Counts:
        before = [self.before_right, self.before_wrong]
        kept = (self.rests, self.chosen, self.labels, self.seconds, self.draws)
        return Counts(*kept, before=before, drift=self.drift)

    @counts.setter
    def counts(self, counts: Counts) -> None:
        self.rests, self.chosen, self.labels = counts.rests, counts.chosen, counts.labels
        self.seconds, self.draws = counts.seconds, counts.draws
        self.before_right, self.before_wrong = counts.before
        now = counts.drift
        self.drift_score, self.drift_answers = now.score, now.answers
        self.drift_began, self.drift_alarm = now.began, now.alarm


class CountedBlock(models.Model):
    """A first block that was counted; the keys tell in what order, which the drift alarm goes by."""

    sitting = models.OneToOneField(Sitting, on_delete=models.PROTECT, related_name="counted_block")

    class Meta:
        ordering = ["pk"]

    def __str__(self) -> str:
        return f"first block of sitting {self.sitting_id}"


class AnswerCount(models.Model):
    """How often one learner's answers in one family came to one thing: right, wrong, or that slip.

    The index of its constraint serves every look-up, since these begin with the learners.
    """

    learner = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="answer_counts", db_index=False
    )
    family = models.SlugField(max_length=60, db_index=False)
    verdict = models.CharField(max_length=8)
    slip = models.SlugField(max_length=60, blank=True, db_index=False)
    label = models.CharField(max_length=300, blank=True, help_text="The slip in a few words.")
    answers = models.PositiveIntegerField(default=0)

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["learner", "family", "verdict", "slip"], name="one_count_for_each_thing"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.answers} × {self.slip or self.verdict} in {self.family} by {self.learner}"


_COUNT = """INSERT INTO quizzes_answercount (learner_id, family, verdict, slip, label, answers)
VALUES (%s, %s, %s, %s, %s, 1) ON CONFLICT (learner_id, family, verdict, slip)
DO UPDATE SET answers = quizzes_answercount.answers + 1, label = excluded.label"""


def count_answer(attempt: Attempt) -> None:
    """One more of what the answer came to; a single statement, whether or not there was a row."""
    with connection.cursor() as cursor:
        cursor.execute(
            _COUNT,
            [attempt.learner_id, attempt.family, attempt.verdict, attempt.slip, attempt.slip_label],
        )


def locked(items: Mapping[str, str]) -> dict[str, ItemTally]:
    """The rows of these items (item → family), made if need be and locked in one order."""
    made = [ItemTally(item=item, family=items[item]) for item in sorted(items)]
    ItemTally.objects.bulk_create(made, ignore_conflicts=True)
    rows = ItemTally.objects.select_for_update(no_key=True).filter(item__in=items).order_by("item")
    return {row.item: row for row in rows}
