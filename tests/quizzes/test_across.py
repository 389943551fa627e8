"""Practice over the whole course: which competency comes next, and the way from one card to the next."""

import pytest
from django.urls import reverse

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.practice import Answer, across
from tests.quizzes.conftest import NOON, give

NEXT = reverse("quizzes:across-next")


@pytest.mark.parametrize(
    ("latest_first", "next_one"),
    [
        ("", "one"),
        ("one+", "two"),
        ("two+ one+", "three"),
        ("three+ two+ one+", "one"),
        ("three+ two- one+", "two"),
        ("two- three+ one+", "one"),
        ("three+ two- one-", "one"),
    ],
)
def test_what_went_wrong_comes_first_then_what_was_left_alone_longest(latest_first, next_one):
    practised = {each[:-1]: [Answer("family", each[-1] == "+")] for each in latest_first.split()}
    assert across(practised, ["one", "two", "three"]) == next_one


def test_who_has_begun_one_thing_goes_on_with_it():
    assert across({"two": [Answer("family", True)]}, ["two"]) == "two"


@pytest.fixture
def signed_in(client, learner):
    client.force_login(learner)
    return client


def test_a_newcomer_begins_with_the_first_competency(signed_in):
    first = next(iter(COMPETENCIES))
    assert signed_in.post(NEXT).url == reverse("quizzes:practice", args=[first])


def test_problems_come_from_another_competency_each_time(signed_in, learner):
    for slug in ("boyle", "depth-pressure"):
        give(actions.start_practice(learner=learner, competency=COMPETENCIES[slug], now=NOON), "+")
    assert signed_in.post(NEXT).url == reverse("quizzes:practice", args=["boyle"])


def test_what_is_being_checked_is_left_out(signed_in, learner, ready, boyle):
    actions.start_check(learner=learner, competency=boyle, now=NOON)
    assert "boyle" not in signed_in.post(NEXT).url
