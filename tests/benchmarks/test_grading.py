"""Posting a practice answer and getting the next card, against the same work done by hand."""

import pytest
from django.test import Client, override_settings
from django.urls import reverse

from course.people.models import Person
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt
from tests.benchmarks import grading_floor
from tests.quizzes.conftest import right_text

pytestmark = [pytest.mark.benchmark, pytest.mark.django_db(transaction=True)]
LIMIT, EACH = 6, 10
HTMX = {"HX-Request": "true"}


def open_attempt(learner):
    return Attempt.objects.get(learner=learner, answered_at__isnull=True)


def learner_with_practice(email):
    learner = Person.objects.create_user(email, name=email)
    actions.start_practice(learner=learner, competency=COMPETENCIES["boyle"])
    return learner


@pytest.fixture
def ours(client):
    learner = learner_with_practice("ours@quay.example")
    client.force_login(learner)

    def answer_some():
        for _ in range(EACH):
            attempt = open_attempt(learner)
            url = reverse("quizzes:answer", args=[attempt.pk])
            verdict = client.post(url, {"answer": right_text(attempt)}, headers=HTMX)
            card = client.get(reverse("quizzes:practice", args=["boyle"]), headers=HTMX)
        grading_floor.BYTES.update(verdict=verdict.content, card=card.content)

    answer_some()
    return answer_some


@pytest.fixture
def floor(transactional_db):
    learner, client = learner_with_practice("floor@quay.example"), Client()
    client.force_login(learner)

    def answer_some():
        with override_settings(ROOT_URLCONF="tests.benchmarks.grading_floor"):
            for _ in range(EACH):
                attempt = open_attempt(learner)
                client.post(f"/answer/{attempt.pk}/", {"answer": right_text(attempt)}, headers=HTMX)
                client.get("/card/", headers=HTMX)

    return answer_some


def test_an_answer_and_the_next_card_cost_little_more_than_their_statements(ours, floor, compare):
    compare(
        "grading: answer a practice problem and get the next card",
        ours,
        floor,
        LIMIT,
        against="the same SQL and bytes behind the same middleware",
        each=EACH,
    )
