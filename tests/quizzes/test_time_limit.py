"""A check whose time is limited: told before, in words while it runs, and over by the site's clock alone."""

from dataclasses import replace
from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.clock import said
from quizzes.errors import Refused
from quizzes.models import DecisionRecord, Sitting, Standing
from quizzes.policy import DEFAULT
from tests.quizzes.conftest import NOON, form_for, give, waiting

CHECK = reverse("quizzes:check", args=["boyle"])


@pytest.fixture
def teacher(db):
    return PersonFactory(name="Ada Fenwick")


@pytest.fixture
def timed(ready, teacher):
    policy = replace(DEFAULT, time_limit_minutes=40)
    actions.set_policy(policy=policy, by=teacher, why="As on the day of the unit's own test.")
    return ready


def begin(learner, boyle, now=NOON):
    return actions.start_check(learner=learner, competency=boyle, now=now)


def answer(sitting, *, minutes, seconds=0, right=True):
    attempt = waiting(sitting)
    at = sitting.began + timedelta(minutes=minutes, seconds=seconds)
    return actions.answer(
        learner=sitting.learner, attempt_id=attempt.pk, form=form_for(attempt, right=right), now=at
    )


def test_a_check_has_no_limit_unless_the_policy_sets_one(ready, boyle):
    assert begin(ready, boyle).ends_at is None


def test_an_answer_counts_to_the_last_second_and_not_after(timed, boyle):
    sitting = begin(timed, boyle)
    assert answer(sitting, minutes=39, seconds=59).counted
    late = answer(sitting, minutes=40)
    assert (late.counted, late.late) == (False, True)
    sitting.refresh_from_db()
    assert (sitting.outcome, sitting.score) == ("held", 1)
    assert "Out of time: when it was over the score stood at 1; the mark to reach was 10." in sitting.why
    assert DecisionRecord.objects.get().evidence == [sitting.attempts.get(number=1).pk]
    assert Standing.objects.get(learner=timed).holds == 1


def test_an_answer_sent_again_after_the_end_stays_uncounted(timed, boyle):
    sitting = begin(timed, boyle)
    attempt = waiting(sitting)
    for minutes in (41, 1):
        assert answer(sitting, minutes=minutes).late
    attempt.refresh_from_db()
    assert not attempt.is_answered
    assert DecisionRecord.objects.count() == 1


def test_text_that_cannot_be_read_does_not_stop_the_clock(timed, boyle):
    sitting = begin(timed, boyle)
    late = sitting.began + timedelta(minutes=50)
    outcome = actions.answer(learner=timed, attempt_id=waiting(sitting).pk, form={"answer": "deep"}, now=late)
    assert (outcome.late, outcome.trouble) == (True, None)


def test_coming_back_after_the_time_ends_the_check_and_begins_no_other(timed, boyle):
    sitting = begin(timed, boyle)
    again = begin(timed, boyle, NOON + timedelta(days=2))
    assert (again.pk, again.outcome) == (sitting.pk, "held")
    with pytest.raises(Refused, match="3 to go"):
        begin(timed, boyle, NOON + timedelta(days=2))


def test_a_confirmation_out_of_time_opens_the_competency_for_practice(timed, boyle):
    give(begin(timed, boyle), "+" * 10)
    sitting = begin(timed, boyle, NOON + timedelta(days=1))
    answer(sitting, minutes=45)
    assert DecisionRecord.objects.first().decided == "reopened"


def test_extra_time_lengthens_the_limit_and_stays_with_the_sitting_and_the_decision(timed, teacher, boyle):
    actions.set_accommodation(
        learner=timed, by=teacher, why="Agreed.", extra_time_percent=25, other="Questions read aloud"
    )
    sitting = begin(timed, boyle)
    assert sitting.ends_at - sitting.began == timedelta(minutes=50)
    actions.set_accommodation(learner=timed, by=teacher, why="No longer asked for.")
    assert answer(sitting, minutes=49).counted
    answer(sitting, minutes=50)
    entry = DecisionRecord.objects.get()
    assert entry.accommodation == "25 % more time; Questions read aloud"


def test_the_page_tells_the_limit_before_and_what_is_left_while_it_runs(client, timed, teacher, boyle):
    actions.set_accommodation(learner=timed, by=teacher, why="Agreed.", extra_time_percent=100)
    client.force_login(timed)
    before = client.get(CHECK).text
    assert "Time is limited to 1 hour 20 minutes" in before
    assert "100 % more time counted in" in before
    client.post(reverse("quizzes:check-start", args=["boyle"]))
    running = client.get(CHECK).text
    assert "Left when this page was loaded: 1 hour 19 minutes." in running
    assert "by the site's clock" in running


def test_a_page_opened_when_time_is_over_offers_to_end_the_check_and_asks_nothing(client, timed, boyle):
    sitting = begin(timed, boyle, timezone.now() - timedelta(hours=1))
    client.force_login(timed)
    page = client.get(CHECK).text
    assert "Time is over" in page
    assert 'name="answer"' not in page
    ended = client.post(reverse("quizzes:check-start", args=["boyle"]), follow=True)
    assert "Out of time" in ended.text
    assert Sitting.objects.get(pk=sitting.pk).ended


@pytest.mark.parametrize("headers", [{}, {"HX-Request": "true"}])
def test_a_late_answer_leads_to_the_end_explained(client, timed, boyle, headers):
    sitting = begin(timed, boyle, timezone.now() - timedelta(hours=1))
    client.force_login(timed)
    url = reverse("quizzes:answer", args=[waiting(sitting).pk])
    answer_ = client.post(url, {"answer": "1 ft3"}, headers=headers)
    page = client.get(answer_.headers.get("HX-Redirect") or answer_.url).text
    assert "Time was over before that answer arrived" in page
    assert "Out of time" in page


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (59, "59 seconds"),
        (60, "1 minute"),
        (3599, "59 minutes"),
        (3600, "1 hour"),
        (7260, "2 hours 1 minute"),
    ],
)
def test_a_span_of_time_is_said_in_words(seconds, words):
    assert said(seconds) == words
