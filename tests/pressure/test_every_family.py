"""What every family promises, over ten thousand draws in each system."""

from itertools import pairwise
from math import log
from xml.etree import ElementTree

import pytest

from pressure import catalogue
from pressure.draw import DELTA, draw, facts_at, key_of, walk
from pressure.slips import LABELS
from pressure.units import FACTORS, rounded, shown

DRAWS = 10_000
SET = [(family, system) for family in catalogue.families().values() for system in family.systems]
every_family = pytest.mark.parametrize(
    ("family", "system"), SET, ids=lambda each: getattr(each, "slug", each)
)


def each_problem(family, system):
    """Every different problem once."""
    return (draw(family, seed, system) for seed in range(len(walk(family, system))))


@every_family
def test_answers_and_slips_never_touch(family, system):
    for seed in range(DRAWS):
        key = draw(family, seed, system).key
        bands = sorted([(key.low, key.high), *((slip.low, slip.high) for slip in key.slips)])
        assert all(below[1] < above[0] for below, above in pairwise(bands))
        assert 0 < key.low < key.answer < key.high
        assert len(key.slips) >= 4


@every_family
def test_slips_lie_two_allowances_outside_under_every_convention(family, system):
    """The separation condition as the study of tolerances writes it, computed anew."""
    for problem in each_problem(family, system):
        posed = family.pose(system, problem.facts)
        right = [log(value) for value in posed.accepted]
        for _, _, _, values in posed.missteps:
            wrong = [log(value) for value in values if value > 0]
            gap = max(min(wrong) - max(right), min(right) - max(wrong)) if wrong else 1.0
            assert gap > 2 * DELTA


@every_family
def test_the_accepted_band_covers_every_convention_and_the_rounding(family, system):
    for problem in each_problem(family, system):
        key = problem.key
        for answer in family.pose(system, problem.facts).accepted:
            assert key.low <= float(rounded(answer)) <= key.high
        assert key.high / key.low < 1.0175  # a flat 2 % could not tell fresh water from salt


@every_family
def test_a_seed_always_draws_the_same(family, system):
    walk.cache_clear()
    first = [draw(family.slug, seed, system) for seed in range(50)]
    walk.cache_clear()
    assert first == [draw(family, seed, system) for seed in range(50)]


@every_family
def test_seeds_in_a_row_draw_different_problems_until_all_were_drawn(family, system):
    length = len(walk(family, system))
    problems = list(each_problem(family, system))
    assert len({problem.number for problem in problems}) == length >= 500
    assert len({(problem.situation, problem.convention) for problem in problems}) == length
    assert draw(family, length, system).number == problems[0].number


@every_family
def test_seeds_in_a_row_lie_far_apart(family, system):
    first = family.axes[system][0]
    places = [first.values.index(draw(family, seed, system).facts[first.name]) for seed in range(12)]
    assert len(set(places)) >= 8
    assert max(places) - min(places) > len(first.values) / 2


@every_family
def test_equal_numbers_are_equal_problems(family, system):
    problem = draw(family, 3, system)
    assert facts_at(family.axes[system], problem.number) == problem.facts
    assert key_of(family.pose(system, problem.facts)) == problem.key


@every_family
def test_the_prompt_holds_its_givens_and_not_its_answer(family, system):
    for problem in each_problem(family, system):
        text = f"{problem.situation} {problem.convention}"
        for given in problem.givens:
            assert shown(given.quantity.value, given.quantity.unit, given.quantity.kind, given=True) in text
        assert shown(problem.key.answer, problem.asked.unit) not in text
        assert not any(
            problem.key.low <= given.quantity.value <= problem.key.high for given in problem.givens
        )
        assert problem.situation.endswith("?")


@every_family
def test_the_solution_ends_in_the_answer(family, system):
    for problem in list(each_problem(family, system))[:200]:
        steps = catalogue.solve(problem)
        assert rounded(problem.key.answer) in steps[-1].result.words.split()
        for step in steps:
            for line in (step.relation, step.substitution, step.result):
                ElementTree.fromstring(line.mathml)  # noqa: S314 (our own markup)
            assert step.why.endswith((".", "?"))


@every_family
def test_every_slip_is_named_once_and_mended_in_a_sentence(family, system):
    for problem in list(each_problem(family, system))[:200]:
        names = [slip.name for slip in problem.key.slips]
        assert len(names) == len(set(names))
        for slip in problem.key.slips:
            assert slip.label == LABELS[slip.name]
            mend = slip.mend.format(typed="44.1 psi")
            assert mend[0].isupper() or mend[0].isdigit()
            assert mend.endswith(".")
            assert "{" not in mend


def test_every_label_is_used():
    seen = {
        slip.name
        for family, system in SET
        for seed in range(300)
        for slip in draw(family, seed, system).key.slips
    }
    assert seen == set(LABELS)


@pytest.mark.parametrize(
    ("family", "example"),
    [(family, example) for family in catalogue.families().values() for example in family.examples],
    ids=lambda each: getattr(each, "slug", getattr(each, "source", "")),
)
def test_worked_examples_come_out(family, example):
    posed = family.pose(example.system, example.facts)
    assert example.source
    assert posed.accepted[0] == pytest.approx(example.answer, rel=example.within)
    key = key_of(posed)
    assert key.low <= example.answer <= key.high


@pytest.mark.parametrize("family", catalogue.families().values(), ids=lambda each: each.slug)
def test_a_family_is_worked_in_each_of_its_systems(family):
    assert {example.system for example in family.examples} == set(family.systems) == {"us", "metric"}


def test_units_asked_for_are_units_that_can_be_typed():
    assert {draw(family, 0, system).asked.unit for family, system in SET} <= set(FACTORS)


def test_rising_air_carries_the_caution_of_the_held_breath():
    caution = draw("volume-on-ascent", 0, "us").caution
    assert "never hold your breath" in caution
    assert "not a dive plan, a decompression schedule or medical advice" in caution
