"""The policy: its periods, what it refuses, and how a version is set."""

import re
from dataclasses import replace
from datetime import date

import pytest

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.models import JournalLine, PolicyVersion
from quizzes.models.policy import in_force
from quizzes.policy import CONFIRMATION, DEFAULT, Policy
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


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"confirmation": replace(CONFIRMATION, maximum=19)}, "after 6, 10, 14 … Make the maximum 18 or 22"),
        ({"rules": {**RULES, "standard": replace(RULES["standard"], maximum=28)}}, "the maximum 26 or 30"),
        ({"rules": {**RULES, "course": replace(RULES["course"], target=5, maximum=10)}}, "too short"),
        ({"supervised": ("knots",)}, "There is no competency 'knots'"),
        ({"tiers": {"knots": "standard"}}, "There is no competency 'knots'"),
        ({"notice_days": 400}, "before the competency is met"),
        ({"time_limit_minutes": 2000}, "at most 1440 minutes"),
        ({"code_minutes": 0}, "good for 1 to 1440 minutes"),
    ],
)
def test_values_that_would_mislead_are_not_put_in_force(learner, values, said):
    with pytest.raises(Refused, match=re.escape(said)):
        actions.set_policy(policy=replace(DEFAULT, **values), by=learner, why="Tried.")
    assert in_force() == DEFAULT


def test_what_the_course_comes_with_may_be_put_in_force(learner):
    assert DEFAULT.troubles == ()
    assert actions.set_policy(policy=DEFAULT, by=learner, why="As it comes.").edition == 2


def test_a_version_from_before_a_rule_was_tightened_still_reads():
    kept = DEFAULT.as_record()
    kept["rules"]["stricter"] |= {"edition": "2026-1", "maximum": 39}
    del kept["rules"]["course"], kept["code_minutes"]
    policy = Policy.from_record(kept)
    assert (policy.rules["stricter"].maximum, policy.rules["course"]) == (39, RULES["course"])


def test_rules_that_a_check_needs_cannot_be_left_out():
    with pytest.raises(ValueError, match="course"):
        Policy(rules={name: rule for name, rule in RULES.items() if name != "course"})
