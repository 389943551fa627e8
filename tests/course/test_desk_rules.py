"""The page that says what the rules promise: the same figures as the study, and as trainees are told."""

import pytest
from django.urls import reverse
from scipy import stats

from course.desks.promises import others, promises
from quizzes.policy import DEFAULT


@pytest.fixture
def page(client, quay):
    client.force_login(quay.people["officer"])
    return client.get(reverse("desks:rules"))


def test_the_page_shows_every_rule_with_its_curve_and_the_words_of_it(page):
    assert page.text.count("<svg") >= 2
    assert "80.0 % right is met in 49.8 %" in page.text
    assert "The stricter rule" in page.text
    assert "Every question is a fresh draw" in page.text


def test_the_table_says_what_trainees_are_told():
    standard, stricter, _ = promises(DEFAULT)
    shown = {line.share: (line.first, line.ever, line.most) for line in standard.lines}
    assert shown["60.0 %"] == ("2.1 %", "3.9 %", 22)
    assert shown["90.0 %"][0] == "92.9 %"
    assert "The held breath" in stricter.competencies
    assert "at most 4.8 % of cases" in standard.bound


def test_other_rules_stand_beside_it_with_their_true_errors():
    rows = {name: (stuck, able) for name, stuck, able in others(DEFAULT.rules["standard"])}
    assert rows["8 of 10, a fixed test"] == (
        f"{stats.binom.sf(7, 10, 0.6) * 100:.1f} %",
        f"{stats.binom.sf(7, 10, 0.9) * 100:.1f} %",
    )
    assert rows["8 of the last 10, at most 30"][0] == "64.4 %"
    # A fixed test with the standard rule's errors needs 27 questions, 22 right.
    assert "22 of 27, a fixed test with the same errors" in rows
