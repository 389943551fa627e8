"""Every read larger than a get."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from django.db.models import QuerySet

from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, DecisionRecord, Sitting, Standing
from quizzes.standing import DECIDING, Purpose

if TYPE_CHECKING:
    from quizzes.typing import Learner


def standings_for(learner: Learner) -> dict[str, Standing]:
    """The learner's standing in every competency by slug; one not begun is an unsaved "not started"."""
    kept = {row.competency: row for row in Standing.objects.filter(learner=learner)}
    return {slug: kept.get(slug) or Standing(learner=learner, competency=slug) for slug in COMPETENCIES}


def standing_for(learner: Learner, competency: str) -> Standing:
    """The learner's standing in one competency; an unsaved "not started" before the first answer."""
    row = Standing.objects.filter(learner=learner, competency=competency).first()
    return row or Standing(learner=learner, competency=competency)


def standings_of(learners: Iterable[int]) -> Mapping[int, Mapping[str, Standing]]:
    """The kept standings of many learners in one query: learner → competency → row."""
    found: dict[int, dict[str, Standing]] = defaultdict(dict)
    for row in Standing.objects.filter(learner__in=learners):
        found[row.learner_id][row.competency] = row
    return found


def open_attempt(learner: Learner, competency: str, *purposes: Purpose) -> Attempt | None:
    """The problem that waits for this learner in a sitting of one of these purposes."""
    return (
        Attempt.objects.select_related("sitting")
        .filter(
            learner=learner, sitting__competency=competency, sitting__purpose__in=purposes,
            sitting__ended__isnull=True, answered_at__isnull=True,
        )
        .order_by("-sitting__purpose")  # a review goes before practice
        .first()
    )  # fmt: skip


def last_check(learner: Learner, competency: str) -> Sitting | None:
    """The learner's latest check of any kind that has ended."""
    return Sitting.objects.filter(
        learner=learner, competency=competency, purpose__in=DECIDING, ended__isnull=False
    ).first()


def answered_of(sitting: Sitting) -> QuerySet[Attempt]:
    """The sitting's answered attempts in the order they were put."""
    return sitting.attempts.filter(answered_at__isnull=False).order_by("number")


def decisions_of(learner: Learner) -> QuerySet[DecisionRecord]:
    """The learner's competency record, latest first."""
    return DecisionRecord.objects.filter(learner=learner).select_related("sitting")


def sittings_of(learner: Learner) -> QuerySet[Sitting]:
    """Every practice and check of the learner, latest first."""
    return Sitting.objects.filter(learner=learner)
