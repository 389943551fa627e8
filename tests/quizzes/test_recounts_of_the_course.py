"""A ruling on an answer of the course check: every competency renewed by it, or renewed no longer."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, DecisionRecord, Standing
from quizzes.rules import RULES
from quizzes.subjects import WHOLE
from tests.quizzes.conftest import NOON, give

RULE = RULES["course"]
FIRST = max(RULE.target, len(COMPETENCIES))
"""The question at which a check without a fault is met."""
FAULTS = -(-(FIRST - 1 - RULE.floor) // RULE.loss)
"""So many wrong answers take the score from there to the floor."""
DAY = timedelta(days=1)
LATER = NOON + 9 * DAY


@pytest.fixture
def by(db):
    return PersonFactory(name="Petra Oakes")


@pytest.fixture
def everything(learner, by):
    """A learner who was granted every competency on the day."""
    for one in COMPETENCIES.values():
        actions.grant(learner=learner, competency=one, by=by, why="Seen.", now=NOON)
    return learner


def course_check(learner, marks):
    sitting = actions.start_course_check(learner=learner, now=NOON + DAY)
    give(sitting, marks, NOON + DAY)
    sitting.refresh_from_db()
    return sitting


def rule(sitting, number, ruled, by):
    attempt = Attempt.objects.get(sitting=sitting, number=number)
    seen = attempt.rulings.count()
    return actions.rule_on(attempt_id=attempt.pk, ruled=ruled, by=by, why="Read.", seen=seen, now=LATER)


def days(learner):
    return set(Standing.objects.filter(learner=learner, competency__in=COMPETENCIES).values_list("met_on"))


def test_a_course_check_met_after_all_renews_everything_from_its_day(everything, by):
    sitting = course_check(everything, "+" * (FIRST - 1) + "-" * FAULTS)
    assert (sitting.outcome, days(everything)) == ("held", {(NOON.date(),)})
    ruling = rule(sitting, FIRST, "right", by)
    whole = Standing.objects.get(competency=WHOLE)
    assert days(everything) == {((NOON + DAY).date(),)}
    assert (whole.state, whole.holds, whole.held_until) == ("met", 0, None)
    kept = DecisionRecord.objects.filter(ruling=ruling)
    assert kept.filter(decided="renewed").count() == len(COMPETENCIES)
    assert kept.filter(decided="met", competency=WHOLE).count() == 1


def test_a_course_check_that_decides_nothing_any_more_leaves_the_dates_before_it(everything, by):
    sitting = course_check(everything, "+" * FIRST)
    assert days(everything) == {((NOON + DAY).date(),)}
    rule(sitting, FIRST, "set aside", by)
    assert days(everything) == {(NOON.date(),)}
    assert set(Standing.objects.filter(competency__in=COMPETENCIES).values_list("state")) == {("met",)}
    assert Standing.objects.get(competency=WHOLE).state == "ready"


def test_what_was_accepted_and_taken_back_is_held_again_from_the_ruling_on(everything, by):
    sitting = course_check(everything, "+" * (FIRST - 1) + "-" * FAULTS)
    rule(sitting, FIRST, "right", by)
    rule(sitting, FIRST, "left", by)
    whole = Standing.objects.get(competency=WHOLE)
    assert (whole.state, whole.holds, whole.held_until) == ("held", 1, (LATER + DAY).date())
    assert days(everything) == {(NOON.date(),)}


def test_a_ruling_costs_the_same_whatever_the_course_renews(everything, by):
    sitting = course_check(everything, "+" * FIRST)
    with CaptureQueriesContext(connection) as captured:
        rule(sitting, FIRST, "set aside", by)
    assert len(captured) <= 25
