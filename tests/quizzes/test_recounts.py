"""A ruling decides anew whatever rested on the answer: the check, the standing, what was built on it."""

from datetime import timedelta

import pytest

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.models import Attempt, DecisionRecord, Sitting, Standing
from quizzes.queries import latest_practice
from quizzes.recordsheet import lines
from tests.quizzes.conftest import NOON, give, waiting

DAY = timedelta(days=1)
LATER = NOON + 5 * DAY
NINE_THEN_FIVE = "+" * 9 + "-" * 5
"""Held at minus six; were question 10 right, the score would have reached ten there."""


@pytest.fixture
def by(db):
    return PersonFactory(name="Petra Oakes")


def check_of(learner, boyle, marks, start=NOON):
    sitting = actions.start_check(learner=learner, competency=boyle, now=start)
    give(sitting, marks, start)
    sitting.refresh_from_db()
    return sitting


def rule(sitting, number, ruled, by, now=LATER):
    attempt = Attempt.objects.get(sitting=sitting, number=number)
    seen = attempt.rulings.count()
    return actions.rule_on(attempt_id=attempt.pk, ruled=ruled, by=by, why="Read.", seen=seen, now=now)


def stands(learner):
    return Standing.objects.get(learner=learner, competency="boyle")


def decided(learner):
    return list(
        DecisionRecord.objects.filter(learner=learner).order_by("pk").values_list("decided", flat=True)
    )


def test_a_hold_that_rested_on_a_good_answer_is_met_from_the_day_of_the_check(ready, boyle, by):
    sitting = check_of(ready, boyle, NINE_THEN_FIVE)
    assert (sitting.outcome, stands(ready).holds) == ("held", 1)
    ruling = rule(sitting, 10, "right", by)
    row, entry = stands(ready), DecisionRecord.objects.order_by("pk").last()
    assert (row.state, row.met_on, row.holds, row.held_until) == ("met", NOON.date(), 0, None)
    assert (entry.decided, entry.score, entry.by_name, entry.ruling) == ("met", 10, "Petra Oakes", ruling)
    assert entry.rule == sitting.rule
    assert entry.due_on == row.due_on == NOON.date().replace(year=NOON.year + 1)


def test_the_check_keeps_what_it_came_to_when_it_ended(ready, boyle, by):
    sitting = check_of(ready, boyle, NINE_THEN_FIVE)
    rule(sitting, 10, "right", by)
    kept = Sitting.objects.get(pk=sitting.pk)
    assert (kept.outcome, kept.score, kept.why) == (sitting.outcome, sitting.score, sitting.why)
    assert decided(ready) == ["held", "met"]


def test_what_is_not_met_any_more_is_held_from_the_ruling_on_with_what_was_confirmed_on_it(ready, boyle, by):
    sitting = check_of(ready, boyle, NINE_THEN_FIVE)
    rule(sitting, 10, "right", by, now=NOON + DAY)
    check_of(ready, boyle, "+" * 6, NOON + 2 * DAY)
    assert stands(ready).confirmed_on == (NOON + 2 * DAY).date()
    rule(sitting, 10, "left", by)
    row = stands(ready)
    assert (row.state, row.holds, row.held_until) == ("held", 1, (LATER + DAY).date())
    assert (row.met_on, row.confirmed_on, row.due_on) == (None, None, None)
    assert decided(ready) == ["held", "met", "confirmed", "held"]


def test_a_check_that_decides_nothing_any_more_counts_for_neither_side(ready, boyle, by):
    sitting = check_of(ready, boyle, "--")
    rule(sitting, 2, "set aside", by)
    row = stands(ready)
    assert (row.state, row.holds, row.held_until) == ("ready", 0, None)
    assert decided(ready) == ["held", "undecided"]
    assert actions.start_check(learner=ready, competency=boyle, now=NOON).decision_rule.target == 10


def test_a_right_answer_set_aside_opens_the_check_again_without_a_hold(ready, boyle, by):
    sitting = check_of(ready, boyle, "+" * 10)
    rule(sitting, 10, "set aside", by)
    row = stands(ready)
    assert (row.state, row.holds, row.met_on) == ("ready", 0, None)


def test_a_ruling_that_changes_no_outcome_adds_no_decision(ready, boyle, by):
    sitting = check_of(ready, boyle, "-" + "+" * 13)
    rule(sitting, 1, "right", by)
    assert (stands(ready).state, decided(ready)) == ("met", ["met"])


def test_a_later_hold_falls_where_the_first_check_was_met_after_all(ready, boyle, by):
    first = check_of(ready, boyle, NINE_THEN_FIVE)
    actions.open_check_again(learner=ready, competency=boyle, by=by, why="Seen.", now=NOON + DAY)
    check_of(ready, boyle, "--", NOON + DAY)
    assert stands(ready).holds == 2
    rule(first, 10, "right", by)
    assert (stands(ready).state, stands(ready).met_on, stands(ready).holds) == ("met", NOON.date(), 0)


def test_what_was_revoked_by_hand_since_then_stays_revoked(ready, boyle, by):
    first = check_of(ready, boyle, NINE_THEN_FIVE)
    actions.grant(learner=ready, competency=boyle, by=by, why="Seen.", now=NOON + DAY)
    actions.revoke(learner=ready, competency=boyle, by=by, why="Seen.", now=NOON + 2 * DAY)
    rule(first, 10, "right", by)
    assert (stands(ready).state, stands(ready).waits, stands(ready).met_on) == ("held", True, None)


def test_what_was_granted_by_hand_outlives_the_check(ready, boyle, by):
    first = check_of(ready, boyle, "+" * 10)
    actions.grant(learner=ready, competency=boyle, by=by, why="Seen.", now=NOON + DAY)
    rule(first, 10, "set aside", by)
    assert (stands(ready).state, stands(ready).met_on) == ("met", (NOON + DAY).date())


def test_a_short_check_that_failed_by_a_bad_question_gives_the_old_dates_back(ready, boyle, by):
    check_of(ready, boyle, "+" * 10)
    due_on = stands(ready).due_on
    short = check_of(ready, boyle, "--", NOON + DAY)
    assert stands(ready).state == "practising"
    rule(short, 1, "set aside", by)
    row = stands(ready)
    assert (row.state, row.met_on, row.due_on, row.confirmed_on) == ("met", NOON.date(), due_on, None)
    assert decided(ready) == ["met", "reopened", "undecided"]


def test_a_renewal_that_falls_leaves_the_dates_before_it_and_the_record_names_them(ready, boyle, by):
    check_of(ready, boyle, "+" * 10)
    check_of(ready, boyle, "+" * 6, NOON + DAY)
    again = NOON + 400 * DAY
    refresher = check_of(ready, boyle, "+" * 6, again)
    rule(refresher, 6, "set aside", by, now=again + DAY)
    row, records = stands(ready), DecisionRecord.objects.filter(learner=ready)
    assert (row.met_on, row.confirmed_on) == (NOON.date(), (NOON + DAY).date())
    assert lines({"boyle": row}, records)[0].rests_on.decided == "met"


def test_a_check_begun_since_is_closed_when_the_first_was_met_after_all(ready, boyle, by):
    first = check_of(ready, boyle, NINE_THEN_FIVE)
    actions.open_check_again(learner=ready, competency=boyle, by=by, why="Seen.", now=NOON + DAY)
    running = check_of(ready, boyle, "-", NOON + DAY)
    rule(first, 10, "right", by)
    running.refresh_from_db()
    assert (running.outcome, running.decisions.count()) == ("closed", 0)
    assert "counts for neither side" in running.why


def test_a_check_that_runs_weighs_the_ruling_at_its_next_answer(ready, boyle, by):
    sitting = check_of(ready, boyle, "+" * 9 + "-")
    rule(sitting, 10, "right", by)
    assert not Sitting.objects.get(pk=sitting.pk).ended
    give(sitting, "-", NOON + DAY)
    sitting.refresh_from_db()
    assert (sitting.outcome, sitting.score) == ("met", 10)


def test_a_question_set_aside_is_no_part_of_the_first_block(ready, boyle, by):
    sitting = check_of(ready, boyle, "-")
    rule(sitting, 1, "set aside", by)
    give(sitting, "+" * 10, NOON + DAY)
    sitting.refresh_from_db()
    assert (sitting.outcome, sitting.score, waiting_none(sitting)) == ("met", 10, True)


def waiting_none(sitting):
    return not sitting.attempts.filter(answered_at__isnull=True).exists()


def test_practice_counts_what_was_accepted_and_opens_the_check(learner, boyle, by):
    practice = actions.start_practice(learner=learner, competency=boyle, now=NOON)
    give(practice, "+-+")
    rule(practice, 2, "right", by)
    row = stands(learner)
    assert (row.practised, row.practised_right, row.streak, row.state) == (3, 3, 3, "ready")
    rule(practice, 1, "set aside", by)
    assert (stands(learner).practised, stands(learner).practised_right) == (2, 2)
    assert [one.is_right for one in latest_practice(learner, "boyle")] == [True, True]
    assert waiting(practice).number == 4
