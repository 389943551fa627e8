"""Where one stands in practice, said in one sentence on the practice page and in the record."""

import pytest
from django.urls import reverse

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, Sitting
from quizzes.practice import Answer
from quizzes.readiness import rate, readiness
from quizzes.standing import Opening, Purpose
from tests.quizzes.conftest import NOON, give


def answers(marks):
    """ "+" right alone, "h" right with help, "-" wrong; the latest first."""
    return [Answer("one", mark != "-", is_unaided=mark != "h") for mark in marks]


@pytest.mark.parametrize(
    ("marks", "said"),
    [
        ("", ""),
        ("-", "none of 1 right"),
        ("++-", "2 of 3 right, without help"),
        ("hh-", "2 of 3 right, none of them without help"),
        ("+++h+hh---", "7 of the last 10 right, 4 of them without help"),
    ],
)
def test_the_latest_answers_are_counted_in_plain_words(marks, said):
    assert rate(answers(marks)) == said


def test_the_sentence_says_what_opens_the_check_and_that_it_certifies_nothing():
    shut = Opening(None, "The check opens after 3 right in a row in practice; 1 to go.")
    assert readiness(answers("++"), shut) == (
        "You got 2 of 2 right, without help. The check opens after 3 right in a row in practice; 1 to go. "
        "This says where you stand and certifies nothing."
    )
    assert readiness([], Opening(Purpose.CHECK)) == (
        "You have not practised this yet. This says where you stand and certifies nothing."
    )


def test_page_and_record_say_the_same_of_the_last_ten_answers(client, learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "-----" + "+" * 8)
    client.force_login(learner)
    text = client.get(reverse("quizzes:practice", args=["boyle"])).text
    kept = Attempt.objects.filter(answered_at__isnull=False).order_by("-pk")[:10]
    alone = sum(one.is_right and one.help == 3 for one in kept)
    said = f"8 of the last 10 right, {alone} of them without help"
    assert f"You got {said}." in text
    assert "certifies nothing" in text
    assert said in client.get(reverse("quizzes:record")).text


def test_every_competency_in_the_record_costs_one_query_for_all(
    client, learner, django_assert_max_num_queries
):
    for slug in ("boyle", "depth-pressure", "gauge-absolute", "water-columns"):
        sitting = actions.start_practice(learner=learner, competency=COMPETENCIES[slug], now=NOON)
        give(sitting, "+")
    client.force_login(learner)
    with django_assert_max_num_queries(9):
        text = client.get(reverse("quizzes:record")).text
    assert text.count("1 of 1 right, none of them without help") == 4


def test_answers_of_a_check_are_not_counted_as_practice(client, ready, boyle):
    give(actions.start_check(learner=ready, competency=boyle, now=NOON), "--")
    client.force_login(ready)
    assert Sitting.objects.count() == 2
    assert "3 of 3 right" in client.get(reverse("quizzes:record")).text
