"""How a trainee stands in a competency, and what moves them from one state to the next. Pure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class State(StrEnum):
    """The words every page uses."""

    NOT_STARTED = "not started"
    PRACTISING = "practising"
    READY = "ready"
    MET = "met"
    DUE = "due"
    LAPSED = "lapsed"
    HELD = "held"


KEPT = (State.NOT_STARTED, State.PRACTISING, State.READY, State.MET, State.HELD)
"""The states that are stored; due and lapsed follow from the day one looks."""


class Purpose(StrEnum):
    """What a sitting is for. Practice and review teach and certify nothing; the others decide."""

    PRACTICE = "practice"
    REVIEW = "review"
    CHECK = "check"
    CONFIRMATION = "confirmation"
    REFRESHER = "refresher"
    COURSE = "course"

    @property
    def in_words(self) -> str:
        return "Course check" if self is Purpose.COURSE else self.value.capitalize()


DECIDING = (Purpose.CHECK, Purpose.CONFIRMATION, Purpose.REFRESHER, Purpose.COURSE)


@dataclass(frozen=True, slots=True)
class Facts:
    """What is known of one trainee in one competency; the dates come from the policy of their day."""

    state: State = State.NOT_STARTED
    streak: int = 0
    waits: bool = False
    held_until: date | None = None
    met_on: date | None = None
    confirm_from: date | None = None
    confirmed_on: date | None = None
    notice_on: date | None = None
    due_on: date | None = None

    def on(self, today: date) -> State:
        """The state as a page says it that day: a met competency falls due, then lapses."""
        if self.state is not State.MET or self.due_on is None:
            return self.state
        if today > self.due_on:
            return State.LAPSED
        return State.DUE if today >= (self.notice_on or self.due_on) else State.MET


@dataclass(frozen=True, slots=True)
class Opening:
    """Which check is open, if any; otherwise why not, in a sentence."""

    purpose: Purpose | None
    shut_because: str = ""


def after_practice(state: State, streak: int, in_a_row: int) -> State:
    """The state after a practice answer that made ``streak`` right in a row. Practice certifies nothing."""
    if state in (State.MET, State.READY):
        return state
    if streak >= in_a_row:
        return State.READY
    return State.HELD if state is State.HELD else State.PRACTISING


def opening(facts: Facts, today: date, in_a_row: int) -> Opening:
    """The check that is open on a day."""
    if facts.waits:
        return Opening(
            None,
            "This has been held too often to go on alone. Look at it with your instructor, who can open it.",
        )
    if facts.state is State.MET:
        return _opening_when_met(facts, today)
    if facts.state is not State.READY:
        missing = in_a_row - facts.streak
        return Opening(None, f"The check opens after {in_a_row} right in a row in practice; {missing} to go.")
    if facts.held_until and today < facts.held_until:
        return Opening(
            None,
            f"After a hold the check rests until {_said(facts.held_until)}; practise until then.",
        )
    return Opening(Purpose.CHECK)


def course_opening(kept: Mapping[str, Facts], whole: Facts, today: date) -> Opening:
    """Whether the check over the whole course is open; ``kept`` is every competency, by title."""
    missing = [title for title, facts in kept.items() if facts.state is not State.MET]
    if missing:
        some = ", ".join(missing[:3]) + (f" and {len(missing) - 3} more" if len(missing) > 3 else "")
        return Opening(None, f"It opens when every competency has been met. Not met at present: {some}.")
    if whole.held_until and today < whole.held_until:
        return Opening(None, f"After a hold the course check rests until {_said(whole.held_until)}.")
    return Opening(Purpose.COURSE)


def _opening_when_met(facts: Facts, today: date) -> Opening:
    if facts.confirmed_on is None:
        if facts.confirm_from and today < facts.confirm_from:
            return Opening(
                None, f"This is met, and is confirmed by a short check from {_said(facts.confirm_from)} on."
            )
        return Opening(Purpose.CONFIRMATION)
    if facts.on(today) in (State.DUE, State.LAPSED):
        return Opening(Purpose.REFRESHER)
    return Opening(None, "This is met. The check opens again when it falls due.")


def _said(day: date) -> str:
    return f"{day.day} {day:%B %Y}"
