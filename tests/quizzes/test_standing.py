"""States, openings, and what moves them."""

from datetime import date

import pytest

from quizzes.standing import Facts, Purpose, State, after_practice, opening

MET = Facts(
    state=State.MET,
    met_on=date(2025, 6, 30),
    confirm_from=date(2025, 7, 1),
    confirmed_on=date(2025, 7, 2),
    notice_on=date(2026, 5, 1),
    due_on=date(2026, 6, 30),
)


@pytest.mark.parametrize(
    ("today", "state"),
    [
        (date(2026, 4, 30), State.MET),
        (date(2026, 5, 1), State.DUE),
        (date(2026, 6, 30), State.DUE),
        (date(2026, 7, 1), State.LAPSED),
    ],
)
def test_a_met_competency_falls_due_and_then_lapses(today, state):
    assert MET.on(today) is state


def test_only_met_falls_due():
    assert Facts(state=State.HELD, due_on=date(2026, 6, 30)).on(date(2030, 1, 1)) is State.HELD


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
    assert after_practice(kept, streak, in_a_row=3) is state


@pytest.mark.parametrize(
    ("facts", "said"),
    [
        (Facts(), "3 to go"),
        (Facts(state=State.HELD, streak=2), "1 to go"),
        (Facts(state=State.READY, waits=True), "instructor"),
        (Facts(state=State.READY, held_until=date(2026, 3, 3)), "rests until 3 March 2026"),
        (
            Facts(state=State.MET, confirm_from=date(2026, 3, 3)),
            "confirmed by a short check from 3 March 2026",
        ),
    ],
)
def test_a_shut_check_says_why(facts, said):
    shut = opening(facts, date(2026, 3, 2), in_a_row=3)
    assert shut.purpose is None
    assert said in shut.shut_because


@pytest.mark.parametrize(
    ("facts", "today", "purpose"),
    [
        (Facts(state=State.READY), date(2026, 3, 2), Purpose.CHECK),
        (Facts(state=State.READY, held_until=date(2026, 3, 2)), date(2026, 3, 2), Purpose.CHECK),
        (Facts(state=State.MET, confirm_from=date(2026, 3, 2)), date(2026, 3, 2), Purpose.CONFIRMATION),
        (MET, date(2026, 5, 1), Purpose.REFRESHER),
        (MET, date(2027, 1, 1), Purpose.REFRESHER),
    ],
)
def test_the_check_that_is_open_is_the_one_that_is_needed(facts, today, purpose):
    assert opening(facts, today, in_a_row=3).purpose is purpose


def test_what_is_met_and_confirmed_is_not_checked_before_it_falls_due():
    assert "falls due" in opening(MET, date(2026, 1, 1), in_a_row=3).shut_because
