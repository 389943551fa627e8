"""Taking an answer: judged, written, weighed, and the next problem put, all or nothing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from django.db import transaction
from django.utils import timezone

from pressure.marking import Judged, Unjudged, judge
from pressure.remarks import told_more
from quizzes import standing
from quizzes.actions.endings import end_out_of_time, weigh
from quizzes.actions.sittings import ask_next, lock_standing
from quizzes.actions.tallying import note_answer
from quizzes.models import Attempt, Sitting, Standing
from quizzes.models.policy import in_force
from quizzes.standing import Purpose

if TYPE_CHECKING:
    from quizzes.typing import Learner


@dataclass(frozen=True, slots=True)
class Answered:
    """What came of posting an answer: the attempt as it now stands, or why it could not be judged.

    ``counted`` is False when the attempt had been answered before: the first answer stands. So it is when
    the answer came after the end of the check, and then it is ``late`` as well.
    """

    attempt: Attempt
    trouble: Unjudged | None = None
    counted: bool = True
    late: bool = False


def answer(
    *, learner: Learner, attempt_id: int, form: Mapping[str, str], now: datetime | None = None
) -> Answered:
    """Judge a form (fields of pressure/marking.py) and put the next problem, in practice and check alike.

    Text that cannot be read is handed back with a sentence and counts as nothing. Raises
    Attempt.DoesNotExist for an attempt that is not the learner's own.
    """
    now = now or timezone.now()
    with transaction.atomic():
        found = Attempt.objects.only("sitting__competency").select_related("sitting")
        row = lock_standing(learner, found.get(pk=attempt_id, learner=learner).sitting.competency)
        attempt = Attempt.objects.select_related("sitting").get(pk=attempt_id)
        if attempt.is_answered:
            return Answered(attempt, counted=False)
        if attempt.sitting.is_over(now):
            end_out_of_time(attempt.sitting, row, now)
        if attempt.sitting.ended:
            return Answered(attempt, counted=False, late=True)
        judged = judge(form, attempt.marking_key)
        if isinstance(judged, Unjudged):
            return Answered(attempt, trouble=judged)
        write_answer(attempt, told_more(judged, attempt.shown, attempt.key), now)
        _follow(attempt, row, learner, now)
    return Answered(attempt)


def take_hint(*, learner: Learner, attempt_id: int) -> Attempt:
    """Open the next hint of a practice problem that waits; past the last one nothing changes.

    Raises Attempt.DoesNotExist for an attempt that is not the learner's own, is answered, or is of a check.
    """
    with transaction.atomic():
        waiting = Attempt.objects.select_for_update(of=("self",), no_key=True).select_related("sitting")
        attempt = waiting.get(pk=attempt_id, learner=learner, answered_at__isnull=True)
        if attempt.sitting.is_check:
            raise Attempt.DoesNotExist
        if attempt.hints < len(attempt.key["steps"]):
            attempt.hints += 1
            Attempt.objects.filter(pk=attempt.pk).update(hints=attempt.hints)
    return attempt


def _follow(attempt: Attempt, row: Standing, learner: Learner, now: datetime) -> None:
    if attempt.sitting.is_check:
        weigh(attempt, row, learner, now)
        return
    _note_practice(attempt, row, now)
    if attempt.sitting.purpose == Purpose.REVIEW and attempt.number >= len(attempt.sitting.kinds):
        _end_review(attempt.sitting, row, now)
        return
    ask_next(attempt.sitting, learner, now, after=attempt.number)


def write_answer(attempt: Attempt, judged: Judged, now: datetime) -> None:
    """Make an attempt that waits an answered one and count it, in the caller's transaction."""
    fields = {
        "answered_at": now,
        "typed": judged.typed,
        "understood": judged.understood,
        "verdict": judged.verdict,
        "slip": judged.slip,
        "slip_label": judged.label,
        "mend": judged.mend,
    }
    Attempt.objects.filter(pk=attempt.pk).update(**fields)
    for name, value in fields.items():
        setattr(attempt, name, value)
    note_answer(attempt)


def _note_practice(attempt: Attempt, row: Standing, now: datetime) -> None:
    if not attempt.is_right:
        row.streak = 0
    elif not attempt.hints:  # what was found with a hint neither counts nor breaks the row
        row.streak += 1
    row.practised += 1
    row.practised_right += attempt.is_right
    row.state = standing.after_practice(standing.State(row.state), row.streak, in_force().in_a_row).value
    row.moved_at = now
    row.save(update_fields=["streak", "practised", "practised_right", "state", "moved_at"])


def _end_review(sitting: Sitting, row: Standing, now: datetime) -> None:
    """The set is done: each family once. The next comes round later; how it went certifies nothing."""
    sitting.ended, sitting.outcome = now, "done"
    sitting.save(update_fields=["ended", "outcome"])
    row.reviews += 1
    row.review_on = in_force().review_on(timezone.localdate(now), row.reviews)
    row.save(update_fields=["reviews", "review_on"])
