"""The trainee's page at the desk, and the check that an instructor opens again."""

import pytest
from django.urls import reverse
from django.utils import timezone

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import DecisionRecord, JournalLine, Standing
from tests.quizzes.conftest import give

REASON = "Worked four of them together at the board."


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


@pytest.fixture
def trainee(quay):
    return quay.people["trainee"]


def page(client, trainee, **query):
    return client.get(reverse("desks:trainee", args=[trainee.pk]), query)


def open_check(client, trainee, why, competency="boyle"):
    url = reverse("desks:open-check", args=[trainee.pk, competency])
    return client.post(url, {"why": why}, follow=True)


def test_the_decision_stands_with_its_rule_score_reason_and_every_answer(desk, trainee):
    text = page(desk, trainee).text
    decision = DecisionRecord.objects.get(learner=trainee)
    assert "standard, edition" in text
    assert "The score fell to -6; the lower limit was -6." in text
    assert len(decision.evidence) == 2
    for pk in decision.evidence:
        assert reverse("desks:attempt", args=[pk]) in text


def test_checks_and_practice_count_what_was_right(desk, trainee):
    counts = {
        (sitting.purpose, sitting.competency): (sitting.right, sitting.answers)
        for sitting in page(desk, trainee).context["sittings"]
    }
    assert counts == {
        ("practice", "depth-pressure"): (0, 0),
        ("check", "boyle"): (0, 2),
        ("practice", "boyle"): (3, 3),
    }


def test_attempts_come_fifty_to_a_page_latest_first(desk, quay, trainee):
    give(quay.waiting.sitting, "+-" * 26, timezone.now())
    first, second = page(desk, trainee), page(desk, trainee, page=2)
    assert "Page 1 of 2" in first.text
    assert len(first.context["attempts"]) == 50
    latest, older = (answer.context["attempts"][0].pk for answer in (first, second))
    assert latest > older
    assert page(desk, trainee, page="x").status_code == 200


def test_opening_a_check_that_waits_is_recorded_with_name_and_reason(desk, quay, trainee):
    assert "the check is open again for Given Trainee" in open_check(desk, trainee, REASON).text
    decision = DecisionRecord.objects.filter(learner=trainee).first()
    assert (decision.decided, decision.why, decision.by_name) == ("opened", REASON, "Given Instructor")
    assert not Standing.objects.get(learner=trainee, competency="boyle").waits
    assert JournalLine.objects.first().verb == "check opened again"


@pytest.mark.parametrize(
    ("why", "sentence"),
    [
        ("  ", "Give the reason; it is kept"),
        ("so " * 200, "Keep the reason to 400 characters; it is 599 now."),
    ],
)
def test_a_reason_that_is_missing_or_too_long_opens_nothing(desk, trainee, why, sentence):
    answer = open_check(desk, trainee, why)
    assert sentence in answer.text
    assert 'aria-invalid="true"' in answer.text
    assert Standing.objects.get(learner=trainee, competency="boyle").waits


def test_a_refusal_keeps_what_was_typed(desk, trainee):
    refused = open_check(desk, trainee, REASON, "depth-pressure").text
    assert "This check is not held." in refused
    assert REASON in refused.split("<textarea")[1]


def test_a_competency_never_given_out_is_not_found(desk, trainee):
    assert open_check(desk, trainee, REASON, "knots").status_code == 404


def test_nobody_opens_their_own_check_or_reads_their_own_record_at_the_desk(client, quay):
    officer = quay.people["officer"]
    client.force_login(officer)
    actions.start_practice(learner=officer, competency=COMPETENCIES["boyle"])
    Standing.objects.filter(learner=officer).update(waits=True)
    assert page(client, officer).status_code == 404
    assert open_check(client, officer, REASON).status_code == 404
    assert Standing.objects.get(learner=officer).waits


def test_the_page_costs_the_same_after_a_hundred_more_answers(desk, quay, trainee, django_assert_num_queries):
    page(desk, trainee)
    with django_assert_num_queries(14):
        page(desk, trainee)
    give(quay.waiting.sitting, "+-" * 50, timezone.now())
    with django_assert_num_queries(14):
        page(desk, trainee)
