"""What an instructor may waive after a hold: the rest, or the practice, each with a reason."""

from datetime import timedelta

import pytest

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.errors import Refused
from quizzes.models import DecisionRecord, JournalLine, Standing
from tests.quizzes.conftest import NOON, give

WHY = "The tide left no other day."


@pytest.fixture
def teacher(db):
    return PersonFactory(name="Ada Fenwick")


@pytest.fixture
def held(ready, boyle):
    give(actions.start_check(learner=ready, competency=boyle, now=NOON), "--")
    return ready


def waive(held, boyle, teacher, what, why=WHY):
    return actions.waive(learner=held, competency=boyle, what=what, by=teacher, why=why, now=NOON)


def check(held, boyle):
    return actions.start_check(learner=held, competency=boyle, now=NOON)


def practise(held, boyle):
    give(actions.start_practice(learner=held, competency=boyle, now=NOON), "+++")


def test_without_the_rest_practice_alone_opens_the_check_the_same_day(held, boyle, teacher):
    waive(held, boyle, teacher, "rest")
    with pytest.raises(Refused, match="3 to go"):
        check(held, boyle)
    practise(held, boyle)
    assert check(held, boyle).decision_rule.target == 12


def test_without_the_practice_the_rest_still_counts(held, boyle, teacher):
    waive(held, boyle, teacher, "practice")
    with pytest.raises(Refused, match="rests until 3 March 2026"):
        check(held, boyle)
    later = NOON + timedelta(days=1)
    assert actions.start_check(learner=held, competency=boyle, now=later).decision_rule.target == 12


def test_a_waiver_is_kept_with_what_who_and_why(held, boyle, teacher):
    entry = waive(held, boyle, teacher, "rest")
    assert entry == DecisionRecord.objects.first()
    kept = (entry.decided, entry.part, entry.by_name, entry.why)
    assert kept == ("waived", "the rest after a hold", "Ada Fenwick", WHY)
    line = JournalLine.objects.first()
    assert (line.verb, line.details) == ("waived", {"why": WHY})


@pytest.mark.parametrize(
    ("what", "why", "said"),
    [("rest", " ", "Give the reason"), ("practice", "", "Give the reason")],
)
def test_no_reason_no_waiver(held, boyle, teacher, what, why, said):
    with pytest.raises(Refused, match=said):
        waive(held, boyle, teacher, what, why)


def test_nobody_waives_anything_for_themselves(held, boyle):
    with pytest.raises(Refused, match="their own"):
        waive(held, boyle, held, "rest")


def test_what_is_not_asked_for_cannot_be_waived_and_a_check_that_waits_is_opened_instead(
    held, boyle, teacher
):
    for what, said in (("rest", "does not rest"), ("practice", "No practice is asked for")):
        waive(held, boyle, teacher, what)
        with pytest.raises(Refused, match=said):
            waive(held, boyle, teacher, what)
    Standing.objects.filter(learner=held).update(waits=True)
    with pytest.raises(Refused, match="Open it again instead"):
        waive(held, boyle, teacher, "rest")
