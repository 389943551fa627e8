"""States, and what moves them."""

from datetime import date

import pytest

from quizzes.standing import POLICY, State, after_practice, shown, shut_because, waits_after

DUE = date(2026, 6, 30)


@pytest.mark.parametrize(
    ("today", "state"),
    [
        (date(2026, 4, 30), State.MET),
        (date(2026, 5, 1), State.DUE),
        (date(2026, 6, 30), State.DUE),
        (date(2026, 7, 1), State.LAPSED),
    ],
)
def test_a_met_competency_falls_due_sixty_days_ahead_and_then_lapses(today, state):
    assert shown(State.MET, DUE, today) is state


def test_only_met_falls_due():
    assert shown(State.HELD, DUE, date(2030, 1, 1)) is State.HELD


def test_a_leap_day_falls_due_on_the_last_of_february():
    assert POLICY.due_on(date(2024, 2, 29)) == date(2025, 2, 28)


@pytest.mark.parametrize(
    ("kept", "streak", "state"),
    [
        (State.NOT_STARTED, 0, State.PRACTISING),
        (State.NOT_STARTED, 1, State.PRACTISING),
        (State.PRACTISING, 2, State.PRACTISING),
        (State.PRACTISING, 3, State.READY),
        (State.READY, 0, State.READY),
        (State.HELD, 2, State.HELD),
        (State.HELD, 3, State.READY),
        (State.MET, 0, State.MET),
    ],
)
def test_practice_moves_the_state(kept, streak, state):
    assert after_practice(kept, streak) is state


def test_the_check_says_why_it_is_shut():
    assert "3 to go" in shut_because(State.NOT_STARTED, 0, waits=False)
    assert "1 to go" in shut_because(State.HELD, 2, waits=False)
    assert "falls due" in shut_because(State.MET, 5, waits=False)
    assert "instructor" in shut_because(State.READY, 3, waits=True)


@pytest.mark.parametrize("state", [State.READY, State.DUE, State.LAPSED])
def test_the_check_is_open_when_ready_due_or_lapsed(state):
    assert shut_because(state, 0, waits=False) == ""


def test_the_third_hold_waits_for_the_instructor():
    assert [waits_after(holds) for holds in (1, 2, 3, 4)] == [False, False, True, True]
