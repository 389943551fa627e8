"""One decision by hand for many: in one transaction, once however often it is sent, never about oneself."""

import pytest

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.errors import Refused
from quizzes.models import DecisionRecord, JournalLine, Standing
from quizzes.subjects import WHOLE

SEEN = "Seen on 2 March 2026. Equalised at two metres, told me why."


@pytest.fixture
def instructor(db):
    return PersonFactory(name="Given Instructor")


@pytest.fixture
def three(db):
    return PersonFactory.create_batch(3)


def sign(learners, competency, by, *, parts=("oral",), why=SEEN):
    pairs = [(learner, part) for learner in learners for part in parts]
    return actions.sign_off_round(signatures=pairs, competency=competency, by=by, why=why)


def hold(learners, **how):
    for learner in learners:
        Standing.objects.create(learner=learner, competency="boyle", holds=3, state="held", **how)


def release(learners, by, *, what="open", slug="boyle"):
    return actions.release_round(
        held=[(one, slug) for one in learners], what=what, by=by, why="Looked at it."
    )


def test_each_part_of_each_learner_gets_an_entry_and_a_line_in_the_journal(three, boyle, instructor):
    done = sign(three, boyle, instructor, parts=("oral", "pool"))
    assert len(done.written) == 6
    assert {(one.part, one.why, one.by_name) for one in DecisionRecord.objects.all()} == {
        ("oral", SEEN, "Given Instructor"),
        ("pool", SEEN, "Given Instructor"),
    }
    assert JournalLine.objects.filter(verb="signed off").count() == 6


def test_sent_twice_it_is_written_once(three, boyle, instructor):
    sign(three, boyle, instructor)
    again = sign(three, boyle, instructor)
    assert again.written == []
    assert [who for who, _ in again.left] == three
    assert DecisionRecord.objects.count() == 3


def test_another_day_or_another_instructor_is_another_signature(three, boyle, instructor):
    sign(three, boyle, instructor)
    sign(three, boyle, instructor, why="Seen on 3 March 2026. Again.")
    sign(three, boyle, PersonFactory())
    assert DecisionRecord.objects.count() == 9


@pytest.mark.parametrize("why", ["", "  "])
def test_without_a_reason_nothing_is_written(three, boyle, instructor, why):
    with pytest.raises(Refused, match="Give the reason"):
        sign(three, boyle, instructor, why=why)
    assert not DecisionRecord.objects.exists()


def test_whoever_is_among_them_stops_the_whole_round(three, boyle):
    with pytest.raises(Refused, match="Nobody decides their own record"):
        sign(three, boyle, three[2])
    assert not DecisionRecord.objects.exists()


def test_checks_that_wait_are_opened_for_all_and_opened_once(three, instructor):
    hold(three, waits=True)
    assert len(release(three, instructor).written) == 3
    assert set(Standing.objects.values_list("state", "waits")) == {("ready", False)}
    again = release(three, instructor)
    assert again.written == []
    assert {sentence for _, sentence in again.left} == {"This check is not held."}


def test_what_is_not_asked_of_one_is_waived_for_the_others(three, instructor):
    hold(three[:2])
    hold(three[2:], waits=True)
    done = release(three, instructor, what="practice")
    assert [one.part for one in done.written] == ["the practice after a hold"] * 2
    assert [(who, "Open it again instead" in sentence) for who, sentence in done.left] == [(three[2], True)]


def test_the_check_of_the_whole_course_is_released_in_the_same_round(three, instructor):
    hold(three[:1], waits=True)
    Standing.objects.create(learner=three[0], competency=WHOLE, held_until="2999-01-01")
    held = [(three[0], WHOLE), (three[0], "boyle")]
    done = actions.release_round(held=held, what="open", by=instructor, why="Looked at it.")
    assert {one.competency for one in done.written} == {WHOLE, "boyle"}
