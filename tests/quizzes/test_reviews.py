"""A ruling changes what counts, never what was written; whatever rested on the answer is decided anew."""

from datetime import timedelta

import pytest

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.errors import Refused
from quizzes.models import Attempt, DecisionRecord, Doubt, JournalLine, Ruling, Standing
from quizzes.models.appendonly import WrittenOnce
from tests.quizzes.conftest import NOON, give, waiting

LATER = NOON + timedelta(days=2)


@pytest.fixture
def by(db):
    return PersonFactory(name="Petra Oakes")


def check_of(learner, boyle, marks, start=NOON):
    sitting = actions.start_check(learner=learner, competency=boyle, now=start)
    give(sitting, marks, start)
    sitting.refresh_from_db()
    return sitting


def numbered(sitting, number):
    return Attempt.objects.get(sitting=sitting, number=number)


def rule(attempt, ruled, by, seen=0, why="Read together.", now=LATER):
    return actions.rule_on(attempt_id=attempt.pk, ruled=ruled, by=by, why=why, seen=seen, now=now)


def stands(learner):
    return Standing.objects.get(learner=learner, competency="boyle")


def decided(learner):
    return list(
        DecisionRecord.objects.filter(learner=learner).order_by("pk").values_list("decided", flat=True)
    )


NINE_THEN_FIVE = "+" * 9 + "-" * 5
"""Held at minus six; were question 10 right, the score would have reached ten there."""


@pytest.fixture
def held(ready, boyle):
    """Held at minus six by its first two answers."""
    return check_of(ready, boyle, "--")


@pytest.fixture
def met(ready, boyle):
    """Met with fourteen answers, the first of them wrong."""
    return check_of(ready, boyle, "-" + "+" * 13)


# The trainee's word


def test_a_doubt_is_kept_as_one_plain_line(ready, held):
    attempt = numbered(held, 1)
    said = "I meant\n 4 <b>atm</b>\u202e, not fsw"
    actions.doubt(learner=ready, attempt_id=attempt.pk, doubted="meant", said=said)
    assert Doubt.objects.get().said == "I meant 4 <b>atm</b>, not fsw"
    assert JournalLine.objects.filter(verb="answer doubted", subject_key=attempt.pk).count() == 1


def test_a_doubt_sent_twice_is_kept_once_and_a_second_one_is_refused(ready, held):
    deed = {"learner": ready, "attempt_id": numbered(held, 1).pk, "doubted": "question"}
    assert actions.doubt(**deed, said="Two sums fit.") == actions.doubt(**deed, said=" Two sums fit. ")
    with pytest.raises(Refused, match="written about this answer already"):
        actions.doubt(**deed, said="Something else.")
    assert Doubt.objects.count() == 1


@pytest.mark.parametrize(
    ("doubted", "said", "told"),
    [
        ("", "It is wrong.", "Choose what is the matter"),
        ("meant", " \n ", "Say in a few words"),
        ("meant", "x" * 301, "Keep it to 300 characters; it is 301 now"),
    ],
)
def test_a_doubt_needs_a_kind_and_a_short_text(ready, held, doubted, said, told):
    with pytest.raises(Refused, match=told):
        actions.doubt(learner=ready, attempt_id=numbered(held, 1).pk, doubted=doubted, said=said)


def test_a_check_is_doubted_only_when_it_has_ended(ready, boyle):
    running = check_of(ready, boyle, "-")
    with pytest.raises(Refused, match="when it has ended"):
        actions.doubt(learner=ready, attempt_id=numbered(running, 1).pk, doubted="question", said="No.")


def test_anothers_answer_is_not_there_to_be_doubted(held, stranger):
    with pytest.raises(Attempt.DoesNotExist):
        actions.doubt(learner=stranger, attempt_id=numbered(held, 1).pk, doubted="question", said="No.")


# The ruling


def test_the_verdict_stays_as_it_was_written_and_rulings_are_written_once(held, by):
    ruling = rule(numbered(held, 1), "right", by)
    attempt = numbered(held, 1)
    assert (attempt.verdict, attempt.ruled, attempt.counts) == ("wrong", "right", "right")
    with pytest.raises(WrittenOnce):
        ruling.delete()
    with pytest.raises(WrittenOnce):
        Ruling.objects.update(ruled="left")


def test_nobody_rules_on_their_own_answer_nor_without_a_reason(ready, held, by):
    with pytest.raises(Refused, match="Nobody decides their own record"):
        rule(numbered(held, 1), "right", ready)
    with pytest.raises(Refused, match="Give the reason"):
        rule(numbered(held, 1), "right", by, why=" ")
    assert not Ruling.objects.exists()


def test_what_came_second_is_told_and_the_same_ruling_sent_twice_is_kept_once(held, by):
    attempt, other = numbered(held, 1), PersonFactory()
    assert rule(attempt, "right", by) == rule(attempt, "right", by)
    with pytest.raises(Refused, match="Petra Oakes ruled in the meantime"):
        rule(attempt, "set aside", other)
    with pytest.raises(Refused, match="already"):
        rule(attempt, "right", other, seen=1)
    assert Ruling.objects.count() == 1


def test_what_is_not_answered_or_was_marked_right_cannot_be_accepted(ready, boyle, by):
    running = check_of(ready, boyle, "+")
    with pytest.raises(Refused, match="Nothing is answered here yet"):
        rule(waiting(running), "right", by)
    with pytest.raises(Refused, match="It was marked right"):
        rule(numbered(running, 1), "right", by)
