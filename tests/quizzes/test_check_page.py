"""The check as a trainee meets it: no verdict before the end, and nothing counted twice."""

import pytest
from django.urls import reverse

from quizzes import actions
from quizzes.models import Attempt, Sitting
from tests.quizzes.conftest import give, right_text, waiting, wrong_text

CHECK = reverse("quizzes:check", args=["boyle"])
HTMX = {"HX-Request": "true"}


@pytest.fixture
def site(client, ready):
    client.force_login(ready)
    return client


@pytest.fixture
def sitting(site, ready, boyle):
    return actions.start_check(learner=ready, competency=boyle)


def post(site, attempt, typed, **extra):
    return site.post(reverse("quizzes:answer", args=[attempt.pk]), {"answer": typed}, **extra)


def test_a_shut_check_says_why_and_starts_nothing(client, learner):
    client.force_login(learner)
    assert "3 to go" in client.get(CHECK).text
    response = client.post(reverse("quizzes:check-start", args=["boyle"]), follow=True)
    assert "3 to go" in response.text
    assert not Sitting.objects.exists()


def test_the_rule_is_told_before_the_check_begins(site):
    text = site.get(CHECK).text
    assert "a wrong answer takes 3. Reach 10" in text
    assert "Begin the check" in text


@pytest.mark.parametrize("headers", [{}, HTMX])
@pytest.mark.parametrize("answer_text", [right_text, wrong_text])
def test_no_verdict_shows_before_the_end(site, sitting, headers, answer_text):
    attempt = waiting(sitting)
    response = post(site, attempt, answer_text(attempt), headers=headers)
    text = response.text or site.get(response.url).text
    assert "Question 2" in text
    assert "Right." not in text
    assert attempt.key["answer_text"] not in text


def test_an_attempt_of_a_running_check_leads_back_to_the_check(site, sitting):
    attempt = waiting(sitting)
    give(sitting, "+")
    response = site.get(reverse("quizzes:attempt", args=[attempt.pk]))
    assert (response.status_code, response.url) == (302, CHECK)
    assert site.get(reverse("quizzes:sitting", args=[sitting.pk])).url == CHECK


def test_the_back_button_never_counts_an_answer_twice(site, sitting):
    attempt = waiting(sitting)
    post(site, attempt, right_text(attempt))
    response = post(site, attempt, wrong_text(attempt))
    assert "The first answer counts" in site.get(response.url).text
    assert Attempt.objects.filter(sitting=sitting, answered_at__isnull=False).count() == 1


def test_a_new_browser_finds_the_same_question(client, site, sitting, ready):
    give(sitting, "+")
    shown = site.get(CHECK).context["attempt"]
    client.logout()
    client.force_login(ready)
    assert client.get(CHECK).context["attempt"] == shown


@pytest.mark.parametrize("headers", [{}, HTMX])
def test_the_deciding_answer_leads_to_the_decision_explained(site, sitting, headers):
    give(sitting, "+" * 9)
    attempt = waiting(sitting)
    response = post(site, attempt, right_text(attempt), headers=headers)
    url = response.headers.get("HX-Redirect") or response.url
    text = site.get(url).text
    assert "The score reached 10" in text
    assert text.count("Question ") == 10


def test_a_met_competency_stands_in_the_record_with_its_evidence(site, sitting):
    give(sitting, "+" * 10)
    text = site.get(reverse("quizzes:record")).text
    assert "Boyle&#x27;s law: met" in text
    assert "10 answers" in text
    assert "edition 2026-1" in text


def test_practice_says_that_the_check_is_open(site, sitting):
    text = site.get(reverse("quizzes:practice", args=["boyle"])).text
    assert "Your check in this is open" in text
    assert 'name="answer"' not in text
