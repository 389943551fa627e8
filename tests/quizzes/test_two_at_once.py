"""Two tabs, a double click, a replayed request, two workers: one answer counts."""

from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

import pytest
from django.db import connection

from course.people.models import Person
from quizzes import actions
from quizzes.models import Attempt, DecisionRecord, Sitting, Standing
from tests.quizzes.conftest import NOON, give, right_text, waiting

pytestmark = pytest.mark.django_db(transaction=True)
AT_ONCE = 6


@pytest.fixture
def learner(transactional_db):
    return Person.objects.create_user("mara@quay.example", name="Mara Quill")


def all_at_once(deed):
    """Run the deed in several threads that set off together; each has a connection of its own."""
    together = Barrier(AT_ONCE)

    def run(_):
        try:
            together.wait(timeout=20)
            return deed()
        finally:
            connection.close()

    with ThreadPoolExecutor(AT_ONCE) as pool:
        return list(pool.map(run, range(AT_ONCE)))


def test_the_same_answer_sent_by_six_at_once_counts_once(learner, boyle):
    attempt = waiting(actions.start_practice(learner=learner, competency=boyle, now=NOON))
    typed = right_text(attempt)
    outcomes = all_at_once(
        lambda: actions.answer(learner=learner, attempt_id=attempt.pk, form={"answer": typed})
    )
    assert [outcome.counted for outcome in outcomes].count(True) == 1
    assert Standing.objects.get().practised == 1
    assert Attempt.objects.filter(answered_at__isnull=True).count() == 1


def test_the_deciding_answer_sent_by_six_at_once_decides_once(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    sitting = actions.start_check(learner=learner, competency=boyle, now=NOON)
    give(sitting, "+" * 9)
    attempt = waiting(sitting)
    typed = right_text(attempt)
    all_at_once(lambda: actions.answer(learner=learner, attempt_id=attempt.pk, form={"answer": typed}))
    assert DecisionRecord.objects.get().score == 10
    assert sitting.attempts.count() == 10


def test_six_starts_at_once_open_one_sitting(learner, boyle):
    all_at_once(lambda: actions.start_practice(learner=learner, competency=boyle))
    assert Sitting.objects.count() == 1
    assert Attempt.objects.count() == 1
