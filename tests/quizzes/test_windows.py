"""Checks that were set for a time: when they bind, and what the next check is held under."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

from quizzes.standing import Opening, Purpose
from quizzes.windows import Conditions, Window, conditions, shut, to_be_told

NINE = datetime(2026, 3, 2, 9, tzinfo=UTC)
HOUR = timedelta(hours=1)
PLAIN = Window("boyle", "Boyle's law", NINE, NINE + HOUR, "Wren Talcott")
ONLY = replace(PLAIN, only=True)
BEFORE, DURING, AFTER = NINE - HOUR, NINE + HOUR / 2, NINE + 2 * HOUR


def test_a_window_says_nothing_of_checks_outside_it():
    strict = replace(PLAIN, supervised=True, extra_time_percent=50)
    assert conditions([strict], BEFORE) == conditions([strict], AFTER) == Conditions()


def test_it_opens_with_its_first_moment_and_shuts_with_its_last():
    strict = replace(PLAIN, supervised=True)
    moments = [NINE - timedelta(microseconds=1), NINE, NINE + HOUR - timedelta(microseconds=1), NINE + HOUR]
    assert [conditions([strict], moment).supervised for moment in moments] == [False, True, True, False]


def test_of_two_that_are_open_the_stricter_supervision_and_the_longer_time_hold():
    both = [replace(PLAIN, supervised=True, extra_time_percent=10), replace(PLAIN, extra_time_percent=50)]
    assert conditions(both, DURING) == Conditions(supervised=True, extra_time_percent=50)


def test_an_only_window_shuts_the_check_before_it_and_to_those_who_miss_it():
    assert (
        "set for 2 March 2026, 09:00 to 10:00 and opens only then" in conditions([ONLY], BEFORE).shut_because
    )
    assert conditions([ONLY], DURING).shut_because == ""
    assert "Ask your instructor to set it again" in conditions([ONLY], AFTER).shut_because


def test_whoever_began_in_an_only_window_goes_on_as_ever():
    assert conditions([replace(ONLY, begun=True)], AFTER) == Conditions()


def test_what_is_set_later_frees_whoever_missed_an_only_window():
    later = replace(PLAIN, opens_at=NINE + 3 * HOUR, closes_at=NINE + 4 * HOUR)
    assert conditions([ONLY, later], AFTER) == Conditions()


def test_what_was_taken_back_binds_nobody():
    assert conditions([replace(ONLY, taken_back="The pool is shut.")], BEFORE) == Conditions()


def test_a_window_opens_nothing_that_practice_has_not_opened():
    shut_as_ever = Opening(None, "The check opens after 3 right in a row in practice; 2 to go.")
    assert conditions([PLAIN], DURING).narrow(shut_as_ever) == shut_as_ever
    assert conditions([ONLY], BEFORE).narrow(shut_as_ever) == shut_as_ever
    assert conditions([ONLY], BEFORE).narrow(Opening(Purpose.CHECK)).purpose is None


def test_each_subject_is_shut_on_its_own_account():
    dials = replace(PLAIN, subject="dials-units")
    assert list(shut([ONLY, dials], BEFORE)) == ["boyle"]


def test_one_is_reminded_of_what_is_neither_begun_nor_over_soonest_first():
    soon, late = replace(PLAIN, note="soon"), replace(PLAIN, opens_at=NINE + HOUR / 2, note="late")
    begun = replace(PLAIN, begun=True)
    assert to_be_told([late, begun, soon], DURING) == [(soon,), (late,)]
    assert to_be_told([late, soon], AFTER) == []


def test_checks_that_were_set_together_are_told_together():
    dials = replace(PLAIN, subject="dials-units", title="Dials and units")
    assert to_be_told([PLAIN, dials, ONLY], BEFORE) == [(PLAIN, dials), (ONLY,)]


def test_a_window_over_midnight_says_both_days():
    night = replace(PLAIN, closes_at=NINE + 20 * HOUR)
    assert night.span == "2 March 2026, 09:00 to 3 March 2026, 05:00"
