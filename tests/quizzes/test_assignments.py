"""Practice that an instructor asks for: it comes next with its reason, until it is right without help."""

from datetime import timedelta

import pytest

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.models import Assignment, Attempt, JournalLine
from quizzes.models.appendonly import WrittenOnce
from quizzes.models.assignments import open_assignments
from quizzes.practice import Answer, Help, choose
from quizzes.reviews import Ruled
from tests.quizzes.conftest import NOON, form_for, give, waiting

FAMILY, SLIP, LABEL = "volume-on-ascent", "inverted-ratio", "the ratio was upside down"
REASON = f"Your instructor asks for this: {LABEL}."
FAMILIES = ("one", "two", "three")


@pytest.fixture
def ask(learner, stranger):
    """The stranger asks the learner, at noon or later."""

    def send(now=NOON, family=FAMILY):
        return actions.assign_practice(
            families={learner.pk: family}, slip=SLIP, label=LABEL, by=stranger, now=now
        )

    return send


def test_what_is_asked_for_comes_before_anything_new_or_wrong():
    chosen = choose(FAMILIES, [Answer("two", False)], assigned={"three": LABEL})
    assert (chosen.family, chosen.reason, chosen.mixed) == ("three", REASON, False)
    assert choose(FAMILIES, [], {"three": 3}, {"three": LABEL}).family == "three"


def test_what_is_asked_for_is_not_put_twice_running_unless_there_is_no_other():
    history = [Answer("three", False)]
    assert choose(FAMILIES, history, assigned={"three": LABEL}).family != "three"
    assert choose(("three",), history, assigned={"three": LABEL}).reason == REASON


def test_the_oldest_wish_comes_first_and_one_of_another_competency_is_left_alone():
    assert choose(FAMILIES, [], assigned={"elsewhere": LABEL, "two": LABEL, "one": LABEL}).family == "two"
    assert choose(FAMILIES, [], assigned={"elsewhere": LABEL}).reason.startswith("New")


def test_a_slip_told_at_length_still_fits_the_record():
    assert len(choose(FAMILIES, [], assigned={"two": "x" * 300}).reason) == 300


def test_the_next_practice_problem_is_the_one_that_was_asked_for(learner, boyle, ask):
    practice = actions.start_practice(learner=learner, competency=boyle, now=NOON)
    give(practice, "++")
    ask()
    give(practice, "+" if waiting(practice).family != FAMILY else "++", NOON + timedelta(hours=1))
    assert (waiting(practice).family, waiting(practice).reason) == (FAMILY, REASON)


def test_it_is_done_by_a_right_answer_without_help_and_not_before(learner, ask):
    ask()
    practice = actions.start_practice(learner=learner, competency=COMPETENCIES["boyle"], now=NOON)
    for hour in range(1, 30):
        if not open_assignments([learner.pk]):
            break
        give(practice, "+", NOON + timedelta(hours=hour))
    answers = Attempt.objects.filter(sitting=practice, family=FAMILY, answered_at__isnull=False)
    assert [one.help for one in answers] == [*Help]
    reasons = set(answers.values_list("reason", flat=True))
    assert reasons == {REASON}


def test_a_hint_leaves_it_to_be_done(learner, boyle, ask):
    practice = actions.start_practice(learner=learner, competency=boyle, now=NOON)
    give(practice, "+" * 12)  # nothing is shown any more
    ask(NOON + timedelta(hours=1))
    while waiting(practice).family != FAMILY:
        give(practice, "+", NOON + timedelta(hours=2))
    actions.take_hint(learner=learner, attempt_id=waiting(practice).pk)
    give(practice, "+", NOON + timedelta(hours=3))
    assert open_assignments([learner.pk])
    give(practice, "+", NOON + timedelta(hours=4))
    give(practice, "+", NOON + timedelta(hours=5))
    assert not open_assignments([learner.pk])


def test_sent_twice_it_asks_once_and_once_done_it_may_be_asked_again(learner, boyle, ask):
    assert [len(ask()), len(ask(NOON + timedelta(minutes=1)))] == [1, 0]
    assert JournalLine.objects.filter(verb="practice assigned").count() == 1
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+" * 14)
    assert [one.number for one in ask(NOON + timedelta(days=1))] == [2]


def test_an_answer_set_aside_afterwards_does_not_do_it(learner, stranger, boyle, ask):
    practice = actions.start_practice(learner=learner, competency=boyle, now=NOON)
    give(practice, "+" * 12)
    ask(NOON + timedelta(hours=1))
    give(practice, "++", NOON + timedelta(hours=2))
    assert not open_assignments([learner.pk])
    last = Attempt.objects.filter(family=FAMILY, answered_at__gt=NOON + timedelta(hours=1)).first()
    actions.rule_on(attempt_id=last.pk, ruled=Ruled.ASIDE, by=stranger, why="The figure was wrong.", seen=0)
    assert open_assignments([learner.pk])


def test_an_assignment_is_written_once(learner, ask):
    ask()
    with pytest.raises(WrittenOnce):
        Assignment.objects.update(label="something else")
    with pytest.raises(WrittenOnce):
        Assignment.objects.get().delete()


def test_with_nobody_to_ask_it_is_refused(learner):
    with pytest.raises(Refused, match="nobody to ask"):
        actions.assign_practice(families={}, slip=SLIP, label=LABEL, by=learner)


def test_a_paused_kind_is_not_put_though_it_was_asked_for(learner, stranger, boyle, ask):
    ask()
    actions.pause(item=FAMILY, by=stranger, why="Its figure is being redrawn.")
    practice = actions.start_practice(learner=learner, competency=boyle, now=NOON)
    assert waiting(practice).family != FAMILY
    assert form_for(waiting(practice), right=True)
