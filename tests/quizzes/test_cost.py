"""The number of queries does not grow with the length of a check or of a life."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, Sitting, Standing
from tests.quizzes.conftest import NOON, form_for, give, waiting

TO_QUESTION_30 = "-+++" * 5 + "+" * 9
"""Undecided to the last: five wrong and twenty-four right come to nine, one below the mark."""


def queries_for(sitting, *, right=True):
    attempt = waiting(sitting)
    form, learner = form_for(attempt, right=right), attempt.learner  # read anew, as by a request
    with CaptureQueriesContext(connection) as captured:
        actions.answer(learner=learner, attempt_id=attempt.pk, form=form, now=NOON)
    return len(captured)


def live_through(learner, answers):
    """A life of practice that has ended: copies of the learner's latest answer, written at one go."""
    last = Attempt.objects.filter(learner=learner, answered_at__isnull=False).latest("pk")
    copied = {field.attname: getattr(last, field.attname) for field in Attempt._meta.concrete_fields}
    sitting = Sitting.objects.create(
        learner=learner, competency="boyle", purpose="practice", system="us", seed=1, began=NOON, ended=NOON
    )
    copied |= {"id": None, "sitting_id": sitting.pk, "diagnostic": False}
    numbers = range(1, answers + 1)
    Attempt.objects.bulk_create(Attempt(**copied | {"number": number}) for number in numbers)


@pytest.fixture
def practice(learner, boyle):
    return actions.start_practice(learner=learner, competency=boyle, now=NOON)


def test_a_practice_answer_costs_the_same_at_the_first_the_two_hundredth_and_the_thousandth(
    learner, boyle, practice
):
    first = queries_for(practice)
    give(practice, "+-" * 100)
    assert queries_for(practice) == first <= 15
    live_through(learner, 800)
    assert Attempt.objects.filter(learner=learner, answered_at__isnull=False).count() >= 1000
    assert queries_for(practice) == first


def test_a_check_answer_costs_the_same_at_every_question_from_the_first_to_the_thirtieth(ready, boyle):
    sitting = actions.start_check(learner=ready, competency=boyle, now=NOON)
    costs = [queries_for(sitting, right=sign == "+") for sign in TO_QUESTION_30]
    assert waiting(sitting).number == 30
    counting = costs.pop(len(sitting.kinds) - 1)  # the answer that finishes the first block
    assert len(set(costs)) == 1
    assert costs[0] <= 16
    assert counting <= costs[0] + 7


def test_counting_a_first_block_costs_the_same_for_two_kinds_and_for_nine(learner, stranger, boyle):
    costs = []
    for who, competency in ((learner, boyle), (stranger, COMPETENCIES["boyle-at-work"])):
        Standing.objects.create(learner=who, competency=competency.slug, state="ready", streak=3)
        sitting = actions.start_check(learner=who, competency=competency, now=NOON)
        give(sitting, "+" * (len(sitting.kinds) - 1))
        costs.append(queries_for(sitting))
    assert len(set(costs)) == 1


def test_a_check_answer_costs_the_same_after_a_thousand_attempts(ready, boyle):
    live_through(ready, 3)
    sitting = actions.start_check(learner=ready, competency=boyle, now=NOON)
    give(sitting, "+" * len(sitting.kinds))
    early = queries_for(sitting)
    live_through(ready, 1000)
    assert queries_for(sitting) == early


def test_a_page_of_a_check_costs_the_same_at_question_three_and_thirty(client, ready, boyle):
    sitting = actions.start_check(learner=ready, competency=boyle, now=NOON + timedelta(hours=1))
    client.force_login(ready)

    def post(sign):
        attempt = waiting(sitting)
        form = form_for(attempt, right=sign == "+")
        with CaptureQueriesContext(connection) as captured:
            client.post(reverse("quizzes:answer", args=[attempt.pk]), form, follow=True)
        return len(captured)

    costs = [post(sign) for sign in TO_QUESTION_30]
    costs.pop(len(sitting.kinds) - 1)  # it counts the first block besides
    assert len(set(costs)) == 1
