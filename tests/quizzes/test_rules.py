"""The decision rule, answer by answer."""

from dataclasses import replace
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizzes.rules import RULES, Outcome, Rule, decide, owed

STANDARD, STRICTER = RULES["standard"], RULES["stricter"]
FAMILIES = ("one", "two")


def answers(marks: str) -> list[tuple[str, bool]]:
    """ "+" is right, "-" wrong; the two families take turns."""
    return [(FAMILIES[place % 2], mark == "+") for place, mark in enumerate(marks)]


def test_ten_right_in_a_row_meet_the_standard_rule_and_nine_do_not():
    assert decide(STANDARD, FAMILIES, answers("+" * 9)).outcome is Outcome.UNDECIDED
    assert decide(STANDARD, FAMILIES, answers("+" * 10)).outcome is Outcome.MET


def test_two_wrong_at_the_start_hold():
    decision = decide(STANDARD, FAMILIES, answers("--"))
    assert (decision.outcome, decision.score) == (Outcome.HELD, -6)
    assert "lower limit was -6" in decision.why


def test_nothing_is_decided_before_every_family_was_asked():
    three = ("one", "two", "three")
    assert decide(STANDARD, three, [("one", False), ("two", False)]).outcome is Outcome.UNDECIDED
    assert (
        decide(STANDARD, three, [("one", False), ("two", False), ("three", True)]).outcome
        is Outcome.UNDECIDED
    )
    assert decide(STANDARD, three, [("one", False), ("two", False), ("three", False)]).outcome is Outcome.HELD


def test_a_family_answered_wrong_is_answered_right_again_before_it_is_met():
    late = [("one", True)] * 13 + [("two", False)]
    assert decide(STANDARD, FAMILIES, late).outcome is Outcome.UNDECIDED
    assert decide(STANDARD, FAMILIES, [*late, ("two", True)]).outcome is Outcome.MET


def test_a_target_out_of_reach_holds_at_once():
    decision = decide(STANDARD, FAMILIES, answers("+++-" * 6))
    assert decision.outcome is Outcome.HELD
    assert "could no longer reach 10" in decision.why


def test_the_mark_to_reach_rises_with_every_hold():
    assert [STANDARD.after(holds).target for holds in (0, 1, 2)] == [10, 12, 14]
    assert [STANDARD.after(holds).maximum for holds in (0, 1, 2)] == [30, 36, 42]
    assert [STRICTER.after(holds).target for holds in (0, 1, 2)] == [13, 16, 19]


@given(st.text(alphabet="+-", min_size=1, max_size=60))
def test_a_decision_once_reached_never_changes(marks):
    decisions = [decide(STANDARD, FAMILIES, answers(marks[:count])) for count in range(1, len(marks) + 1)]
    decided = [found for found in decisions if found.outcome is not Outcome.UNDECIDED]
    assert all(found == decided[0] for found in decided)
    if len(marks) >= STANDARD.maximum:
        assert decided


def test_the_two_conditions_beside_the_score_never_raise_the_chance_of_met():
    rng, met, tries = Random(5), 0, 4000
    for _ in range(tries):
        given_answers = [(FAMILIES[place % 2], rng.random() < 0.9) for place in range(30)]
        met += decide(STANDARD, FAMILIES, given_answers).outcome is Outcome.MET
    error = (0.929 * 0.071 / tries) ** 0.5
    assert met / tries <= 0.929 + 3 * error
    assert met / tries >= 0.929 - 0.03


@pytest.mark.parametrize(
    "numbers",
    [{"maximum": 9}, {"floor": 0}, {"loss": 0}, {"target": 0}, {"rise": -1}],
)
def test_a_rule_that_cannot_decide_is_refused(numbers):
    sound = {"target": 10, "loss": 3, "floor": -6, "maximum": 30, "rise": 2}
    with pytest.raises(ValueError, match=r"rule needs|cannot reach"):
        Rule("odd", "", **sound | numbers)


def test_a_rule_comes_back_from_its_record_unchanged():
    assert Rule.from_record(STRICTER.as_record()) == STRICTER


def test_the_family_that_alone_is_missing_is_owed_once_the_score_is_reached():
    late = [("one", True)] * 13 + [("two", False)]
    assert owed(STANDARD, FAMILIES, late, 10) == "two"
    assert owed(STANDARD, FAMILIES, late, 9) is None
    assert owed(STANDARD, FAMILIES, [*late, ("two", True)], 11) is None


def test_a_check_that_ends_with_a_family_unmended_says_so():
    decision = decide(STANDARD, FAMILIES, [("two", False), *[("one", True)] * 29])
    assert decision.outcome is Outcome.HELD
    assert "was not answered right again" in decision.why


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_every_length_that_the_holds_lead_to_can_be_used_up(rule):
    for holds in range(5):
        tried = rule.after(holds)
        assert any(tried.maximum - wrong - tried.loss * wrong == tried.target for wrong in range(20))
        assert tried.maximum >= rule.maximum * tried.target / rule.target
    assert "Make the maximum" in replace(rule, maximum=rule.maximum + 1).trouble


@given(st.integers(1, 40), st.integers(1, 12), st.integers(0, 30))
def test_trouble_is_told_exactly_where_no_count_of_wrong_answers_fits(target, loss, more):
    rule = Rule("odd", "", target=target, loss=loss, floor=-6, maximum=target + more, rise=0)
    fits = any(rule.maximum - wrong - loss * wrong == target for wrong in range(rule.maximum + 1))
    assert fits is (rule.trouble == "")


def test_nothing_is_owed_before_the_first_block_is_done():
    many = [str(number) for number in range(20)]
    answers = [(many[0], False), *[(kind, True) for kind in many[1:15]]]
    assert owed(STANDARD, many, answers, 11) is None
