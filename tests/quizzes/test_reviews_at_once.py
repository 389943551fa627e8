"""Two instructors, two tabs, a request sent again: one ruling counts, and the rest are told."""

from itertools import cycle

import pytest

from course.demo.factories import PersonFactory
from course.people.models import Person
from quizzes import actions
from quizzes.models import Attempt, DecisionRecord, Doubt, JournalLine, Ruling, Standing
from tests.quizzes.conftest import NOON, give, right_text, waiting
from tests.quizzes.test_two_at_once import AT_ONCE, all_at_once, refused

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def learner(transactional_db):
    return Person.objects.create_user("mara@quay.example", name="Mara Quill")


@pytest.fixture
def held(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    sitting = actions.start_check(learner=learner, competency=boyle, now=NOON)
    give(sitting, "+" * 9 + "-" * 5)
    return sitting


def test_six_instructors_who_rule_at_once_leave_one_ruling_and_one_decision(held, learner):
    attempt = Attempt.objects.get(sitting=held, number=10)
    by = iter(PersonFactory.create_batch(AT_ONCE))
    deed = {"attempt_id": attempt.pk, "ruled": "right", "why": "Read.", "seen": 0}
    said = all_at_once(refused(lambda: actions.rule_on(**deed, by=next(by))))
    assert sum("ruled in the meantime" in str(one) for one in said) == AT_ONCE - 1
    assert Ruling.objects.count() == 1
    assert DecisionRecord.objects.filter(ruling__isnull=False).count() == 1
    assert Standing.objects.get().state == "met"


def test_the_same_ruling_sent_by_six_at_once_is_kept_once(held):
    attempt, by = Attempt.objects.get(sitting=held, number=10), PersonFactory()
    deed = {"attempt_id": attempt.pk, "ruled": "set aside", "why": "Read.", "seen": 0, "by": by}
    kept = all_at_once(lambda: actions.rule_on(**deed))
    assert len({ruling.pk for ruling in kept}) == Ruling.objects.count() == 1
    assert JournalLine.objects.filter(verb="answer set aside").count() == 1


def test_the_same_doubt_sent_by_six_at_once_is_kept_once(held, learner):
    attempt = Attempt.objects.get(sitting=held, number=10)
    deed = {"learner": learner, "attempt_id": attempt.pk, "doubted": "question", "said": "Two fit."}
    all_at_once(lambda: actions.doubt(**deed))
    assert Doubt.objects.count() == 1


def test_rulings_beside_an_answer_of_the_same_check_lose_neither(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    sitting = actions.start_check(learner=learner, competency=boyle, now=NOON)
    give(sitting, "-+")
    first, open_one = Attempt.objects.get(sitting=sitting, number=1), waiting(sitting)
    rule = {"attempt_id": first.pk, "ruled": "right", "why": "Read.", "seen": 0, "by": PersonFactory()}
    form = {"answer": right_text(open_one)}
    deeds = cycle(
        [
            lambda: actions.rule_on(**rule),
            lambda: actions.answer(learner=learner, attempt_id=open_one.pk, form=form),
        ]
    )
    all_at_once(lambda: next(deeds)())
    give(sitting, "+")
    sitting.refresh_from_db()
    assert sitting.score == 4
