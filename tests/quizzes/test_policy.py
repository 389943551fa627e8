"""The policy: its periods, what it refuses, and how a version is set."""

from dataclasses import replace
from datetime import date

import pytest

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.models import JournalLine, PolicyVersion
from quizzes.models.policy import in_force
from quizzes.policy import DEFAULT, Policy
from quizzes.rules import RULES


def test_a_leap_day_falls_due_on_the_last_of_february():
    assert DEFAULT.due_on(date(2024, 2, 29)) == date(2025, 2, 28)


def test_reviews_come_at_growing_intervals_and_end():
    days = [DEFAULT.review_on(date(2026, 1, 1), done) for done in range(5)]
    assert days == [date(2026, 1, 8), date(2026, 1, 29), date(2026, 3, 26), date(2026, 7, 2), None]


def test_a_tier_of_the_policy_goes_before_that_of_the_competency():
    stricter = replace(DEFAULT, tiers={"boyle": "stricter"})
    assert stricter.rule_for(COMPETENCIES["boyle"], holds=1) == RULES["stricter"].after(1)


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"in_a_row": 0}, "at least 1"),
        ({"cool_down_days": -1}, "not negative"),
        ({"review_weeks": (4, 1)}, "growing"),
        ({"tiers": {"boyle": "lenient"}}, "'lenient'"),
    ],
)
def test_values_that_cannot_work_are_refused_with_a_sentence(values, said):
    with pytest.raises(ValueError, match=said):
        Policy(**values)


def test_a_policy_comes_back_from_its_record_unchanged():
    assert Policy.from_record(DEFAULT.as_record()) == DEFAULT


def test_a_new_version_is_in_force_and_the_old_one_stays(learner):
    assert in_force() == DEFAULT
    actions.set_policy(policy=replace(DEFAULT, in_a_row=5), by=learner, why="Agreed at the spring meeting.")
    actions.set_policy(policy=replace(DEFAULT, in_a_row=4), by=learner, why="Five were too many.")
    assert (in_force().edition, in_force().in_a_row) == (3, 4)
    assert list(PolicyVersion.objects.values_list("edition", flat=True)) == [3, 2]
    assert JournalLine.objects.first().details == {"why": "Five were too many."}


def test_a_policy_is_not_set_without_a_reason(learner):
    with pytest.raises(Refused, match="reason"):
        actions.set_policy(policy=DEFAULT, by=learner, why=" ")
