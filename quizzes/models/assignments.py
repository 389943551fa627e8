"""Practice that an instructor asks of a learner: entries that are written once, done by answering."""

from __future__ import annotations

from collections.abc import Collection
from datetime import datetime

from django.conf import settings
from django.db import models
from django.db.models import Exists, Max

from quizzes.models.appendonly import AppendOnly
from quizzes.models.attempt import Attempt
from quizzes.practice import Help


class Assignment(AppendOnly):
    """A learner is to practise one family, because of a slip, until it comes right without help.

    Whether it is done follows from the answers since, so that a ruling on one of them is followed too.
    """

    learner = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="assignments", db_index=False
    )
    slip = models.SlugField(max_length=60, db_index=False)
    number = models.PositiveIntegerField(help_text="1 for the first because of this slip.")
    label = models.CharField(max_length=300, help_text="The slip in a few words.")
    family = models.SlugField(max_length=60, db_index=False)
    at = models.DateTimeField()
    by_key = models.BigIntegerField(null=True, blank=True)
    by_name = models.CharField(max_length=160)

    class Meta:
        ordering = ["pk"]
        constraints = [
            # Its index serves every look-up, since these begin with the learners.
            models.UniqueConstraint(fields=["learner", "slip", "number"], name="one_assignment_at_a_time"),
        ]

    def __str__(self) -> str:
        return f"{self.family} for {self.learner}, because {self.label}"


def ever_asked(learner: int) -> Exists:
    """Whether anything was ever asked of the learner, to be told along with another query."""
    return Exists(Assignment.objects.filter(learner=learner))


def open_assignments(learners: Collection[int], families: Collection[str] | None = None) -> list[Assignment]:
    """What was asked of these learners and is not done, the oldest first; of some families, or of all.

    One query, and another one where anything was ever asked.
    """
    found = Assignment.objects.filter(learner__in=learners)
    rows = list(found if families is None else found.filter(family__in=families))
    if not rows:
        return []
    latest = _latest_unaided(rows)
    return [row for row in rows if not row.at < latest.get((row.learner_id, row.family), row.at)]


def _latest_unaided(rows: Collection[Assignment]) -> dict[tuple[int, str], datetime]:
    """When each learner last had each family right without help."""
    unaided = Attempt.objects.counting().filter(  # type: ignore[misc]  # counted comes with counting()
        learner__in={row.learner_id for row in rows},
        family__in={row.family for row in rows},
        answered_at__gt=min(row.at for row in rows),
        counted="right",
        help=Help.NONE,
        hints=0,
    )
    sums = unaided.order_by().values_list("learner", "family").annotate(Max("answered_at"))
    return {(learner, family): at for learner, family, at in sums}
