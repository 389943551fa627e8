"""How long a paper is and what it asks: it can be met, and one wrong answer can be made good."""

from itertools import product

import pytest

from quizzes.blueprints import first_part, lay_out, length
from quizzes.competencies import COMPETENCIES
from quizzes.policy import CONFIRMATION, DEFAULT
from quizzes.rules import Outcome, decide

CASES = pytest.mark.parametrize(
    ("slug", "rule"),
    [
        (slug, rule)
        for slug, one in COMPETENCIES.items()
        for rule in (DEFAULT.rule_for(one, 0), DEFAULT.rule_for(one, 2), CONFIRMATION)
    ],
    ids=lambda case: case if isinstance(case, str) else f"{case.name}-{case.target}",
)
SEEDS = range(20)


@CASES
def test_a_paper_without_a_fault_is_met_with_its_first_part(slug, rule):
    kinds = COMPETENCIES[slug].families
    for seed in SEEDS:
        families = lay_out(seed, kinds, rule)
        first = [(family, True) for family in families[: first_part(rule, len(kinds))]]
        assert decide(rule, kinds, first).outcome is Outcome.MET
        assert decide(rule, kinds, first[:-1]).outcome is Outcome.UNDECIDED


@CASES
def test_one_wrong_answer_anywhere_can_be_made_good(slug, rule):
    kinds = COMPETENCIES[slug].families
    for seed in SEEDS:
        families = lay_out(seed, kinds, rule)
        for wrong in range(len(families)):
            answers = [(family, at != wrong) for at, family in enumerate(families)]
            assert decide(rule, kinds, answers).outcome is Outcome.MET


@CASES
def test_a_paper_ends_with_every_kind_once_more_and_asks_no_more_than_the_rule(slug, rule):
    kinds = COMPETENCIES[slug].families
    families = lay_out(7, kinds, rule)
    assert len(families) == length(rule, len(kinds)) <= rule.maximum
    assert set(families[first_part(rule, len(kinds)) :]) == set(kinds)


def test_to_hold_what_a_paper_leaves_undecided_would_hold_two_in_five_of_the_able():
    """Every run of right and wrong, for three kinds and answers right nine times in ten."""
    kinds, rule = ("a", "b", "c"), DEFAULT.rules["standard"]
    families, met = lay_out(3, kinds, rule), 0.0
    for marks in product((True, False), repeat=len(families)):
        if decide(rule, kinds, list(zip(families, marks, strict=True))).outcome is Outcome.MET:
            met += 0.9 ** sum(marks) * 0.1 ** (len(marks) - sum(marks))
    assert 1 - met == pytest.approx(0.4, abs=0.03)
