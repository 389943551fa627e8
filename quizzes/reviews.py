"""What a ruling on one answer does to what counts, and what a competency then rests on. Pure.

The verdict stays as it was written. What counts is the verdict with the latest ruling applied to it, and
that is worked out here and nowhere else; ``models.attempt.counts_as`` says the same to the database.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from types import MappingProxyType
from typing import NamedTuple

from quizzes.rules import Decision, Outcome
from quizzes.standing import Purpose


class Ruled(StrEnum):
    """What somebody ruled on an answer."""

    RIGHT = "right"
    ASIDE = "set aside"
    LEFT = "left"

    @property
    def in_words(self) -> str:
        return {
            Ruled.RIGHT: "accepted as right",
            Ruled.ASIDE: "set aside, so that it does not count",
            Ruled.LEFT: "left as it was marked",
        }[self]


COUNTS_AS: Mapping[Ruled, str] = MappingProxyType({Ruled.RIGHT: "right", Ruled.ASIDE: ""})
"""The verdict that a ruling puts in the place of the one written; "" counts as nothing."""


def counted(verdict: str, ruled: str) -> str:
    """The verdict that counts; "" for an answer that was set aside, or is not given yet."""
    return COUNTS_AS.get(Ruled(ruled), verdict) if ruled else verdict


class Entry(NamedTuple):
    """One decision about a competency, in the words of the record, by the day of what it is about."""

    decided: str
    on: date
    due_on: date | None


@dataclass(frozen=True, slots=True)
class Basis:
    """What a competency rests on: the days it is met by, none where it is not met, and the holds since."""

    met_on: date | None = None
    due_on: date | None = None
    confirmed_on: date | None = None
    holds: int = 0


def basis(entries: Iterable[Entry]) -> Basis:
    """What the decisions come to, each check as it was last decided, the earliest first.

    A check that was held while the competency is now known to have been met is passed over: it would not
    have been begun. A short check passed while it was not met is passed over too: it rested on what fell.
    """
    now = Basis()
    for entry in entries:
        now = _after(now, entry)
    return now


def _after(now: Basis, entry: Entry) -> Basis:
    is_met = now.met_on is not None
    match entry.decided:
        case "met":
            return Basis(entry.on, entry.due_on)
        case "granted":
            return Basis(entry.on, entry.due_on, entry.on)
        case "reopened" | "revoked":
            return Basis(holds=now.holds)
        case "held" if not is_met:
            return Basis(holds=now.holds + 1)
        case "confirmed" if is_met:
            return replace(now, confirmed_on=entry.on)
        case "renewed" if is_met:
            return replace(now, met_on=entry.on, due_on=entry.due_on)
    return now


_SHORT = (Purpose.CONFIRMATION, Purpose.REFRESHER)


def decided_as(purpose: Purpose, outcome: Outcome) -> str:
    """The word of the record for what a check of that purpose comes to.

    A check that has ended and after a review decides nothing is "undecided": it counts for neither side.
    """
    if outcome is Outcome.UNDECIDED:
        return "undecided"
    if outcome is Outcome.HELD:
        return "reopened" if purpose in _SHORT else "held"
    return {Purpose.CONFIRMATION: "confirmed", Purpose.REFRESHER: "renewed"}.get(purpose, "met")


def ended(decision: Decision, *, out_of_time: bool, aside: bool) -> Decision:
    """What a check that has ended comes to, where its answers alone may no longer say.

    One that ran out of time stays held, unless an answer of it is set aside: that took some of the time.
    """
    if decision.outcome is not Outcome.UNDECIDED:
        return decision
    if out_of_time and not aside:
        why = f"Out of time: when it was over the score stood at {decision.score}."
        return replace(decision, outcome=Outcome.HELD, why=why)
    why = f"What still counts comes to {decision.score} and decides nothing: it counts for neither side."
    return replace(decision, why=why)
