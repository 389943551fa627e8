"""Putting a standing in step with decisions that were changed by a review; nothing here is saved."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date, datetime
from typing import NamedTuple

from django.utils import timezone

from quizzes.actions.decisions import clear
from quizzes.models import DecisionRecord, Standing
from quizzes.models.competency import Decided
from quizzes.policy import Policy
from quizzes.reviews import Basis, Entry, basis
from quizzes.standing import State

MOVED = (
    *("state", "streak", "holds", "waits", "held_until", "met_on", "confirm_from", "confirmed_on"),
    *("notice_on", "due_on", "review_on", "reviews", "moved_at"),
)
"""The fields of a standing that a review may move."""

_NEWER = {
    Decided.MET, Decided.HELD, Decided.REOPENED, Decided.OPENED, Decided.REVOKED, Decided.GRANTED,
}  # fmt: skip


class Settled(NamedTuple):
    """A decision as it stands now, by the moment of what it is about: a check, or a deed by hand."""

    sitting: int | None
    at: datetime
    decided: str
    due_on: date | None


def settled(records: Iterable[DecisionRecord]) -> list[Settled]:
    """The decisions about one competency, each check as it was last decided; the oldest record first."""
    kept: dict[tuple[bool, int], Settled] = {}
    for one in records:
        about = (True, one.sitting_id) if one.sitting_id else (False, one.pk)
        kept[about] = Settled(one.sitting_id, one.moment, one.decided, one.due_on)
    return sorted(kept.values(), key=lambda one: one.at)


def restand(
    row: Standing, decisions: Sequence[Settled], sitting: int, decided: str, policy: Policy, now: datetime
) -> None:
    """Move a standing to what its competency rests on since the check ``sitting`` was ``decided`` anew.

    What somebody decided by hand since then, and what later checks found, goes on counting.
    """
    day = timezone.localdate(now)
    rests = basis(Entry(one.decided, timezone.localdate(one.at), one.due_on) for one in decisions)
    if rests.met_on:
        _stand_met(row, rests, rests.met_on, policy, day)
    elif row.state == State.MET:
        _lose(row, decided, rests.holds, policy, day)
    else:
        _count_holds(row, decided, rests.holds, _later(decisions, sitting), policy, day)
    row.moved_at = now


def _later(decisions: Sequence[Settled], sitting: int) -> set[str]:
    """What was decided after a check."""
    place = next(place for place, one in enumerate(decisions) if one.sitting == sitting)
    return {one.decided for one in decisions[place + 1 :]}


def _stand_met(row: Standing, rests: Basis, met_on: date, policy: Policy, day: date) -> None:
    if row.state != State.MET:
        row.streak = 0
    row.state, row.holds, row.waits, row.held_until = State.MET, rests.holds, False, None
    if row.met_on != met_on:
        ahead = (n for n in range(len(policy.review_weeks)) if (policy.review_on(met_on, n) or day) >= day)
        row.reviews = next(ahead, len(policy.review_weeks))
        row.review_on = policy.review_on(met_on, row.reviews)
    due_on = rests.due_on or policy.due_on(met_on)
    row.met_on, row.due_on, row.notice_on = met_on, due_on, policy.notice_on(due_on)
    row.confirm_from = row.confirm_from or policy.confirms_on(met_on)
    row.confirmed_on = rests.confirmed_on


def _lose(row: Standing, decided: str, holds: int, policy: Policy, day: date) -> None:
    """It is not met any more: held from today after a check, open for practice after a short one."""
    if decided == Decided.HELD:
        clear(row, State.HELD)
        _hold(row, holds, policy, day)
    else:
        clear(row, State.PRACTISING if decided == Decided.REOPENED else State.READY)
        row.holds = holds


def _hold(row: Standing, holds: int, policy: Policy, day: date) -> None:
    row.state, row.holds, row.waits = State.HELD, holds, holds >= policy.holds_before_instructor
    row.held_until = policy.opens_again_on(day)


def _count_holds(row: Standing, decided: str, holds: int, later: set[str], policy: Policy, day: date) -> None:
    """It is not met, before or after: a hold more or one less, unless something newer has the last word."""
    fell, row.holds = holds < row.holds, holds
    if later & _NEWER:
        row.waits &= Decided.REVOKED in later or holds >= policy.holds_before_instructor
    elif decided == Decided.HELD:
        _hold(row, holds, policy, day)
    elif fell:  # the check that was held counts for neither side, so it is open again
        row.state, row.waits, row.held_until = State.READY, False, None


def restand_whole(
    row: Standing, decisions: Sequence[Settled], sitting: int, decided: str, policy: Policy, now: datetime
) -> None:
    """The same for the standing of the whole course, which says when its check may be tried again."""
    row.holds, row.moved_at = _holds_in_a_row(decisions), now
    if decisions[-1].sitting != sitting:
        return
    at = decisions[-1].at
    row.held_until = policy.opens_again_on(timezone.localdate(now)) if decided == Decided.HELD else None
    if decided != Decided.MET:
        row.state = State.HELD if decided == Decided.HELD else State.READY
        return
    day = timezone.localdate(at)
    row.state, row.met_on, row.due_on = State.MET, day, policy.due_on(day)
    row.notice_on = policy.notice_on(row.due_on)


def _holds_in_a_row(decisions: Sequence[Settled]) -> int:
    holds = 0
    for one in decisions:
        holds = 0 if one.decided == Decided.MET else holds + (one.decided == Decided.HELD)
    return holds
