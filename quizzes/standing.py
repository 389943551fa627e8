"""How a trainee stands in a competency, and what moves them from one state to the next. Pure."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from dateutil.relativedelta import relativedelta


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


@dataclass(frozen=True, slots=True)
class Policy:
    """What the training staff may set. No regulation found fixes any of it for theory."""

    in_a_row: int = 3
    currency_months: int = 12
    notice_days: int = 60
    holds_before_instructor: int = 3

    def due_on(self, met_on: date) -> date:
        return met_on + relativedelta(months=self.currency_months)


POLICY = Policy()


def shown(kept: State, due_on: date | None, today: date, policy: Policy = POLICY) -> State:
    """The state as a page says it on the day ``today``: a met competency falls due, then lapses."""
    if kept is not State.MET or due_on is None:
        return kept
    if today > due_on:
        return State.LAPSED
    return State.DUE if today >= due_on - timedelta(days=policy.notice_days) else State.MET


def after_practice(kept: State, streak: int, policy: Policy = POLICY) -> State:
    """The state after a practice answer that made ``streak`` right in a row. Practice certifies nothing."""
    if kept in (State.MET, State.READY):
        return kept
    if streak >= policy.in_a_row:
        return State.READY
    return State.HELD if kept is State.HELD else State.PRACTISING


def waits_after(holds: int, policy: Policy = POLICY) -> bool:
    """Whether a hold, the ``holds``-th, closes the check until an instructor opens it again."""
    return holds >= policy.holds_before_instructor


def shut_because(state: State, streak: int, waits: bool, policy: Policy = POLICY) -> str:
    """Why the check is not open, as a sentence; empty when it is open. ``state`` is the shown one."""
    if waits:
        return (
            "This has been held too often to go on alone. Look at it with your instructor, who can open it."
        )
    if state is State.MET:
        return "This is met. The check opens again when it falls due."
    if state in (State.READY, State.DUE, State.LAPSED):
        return ""
    missing = policy.in_a_row - streak
    return f"The check opens after {policy.in_a_row} right in a row in practice; {missing} to go."
