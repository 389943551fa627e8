"""What every family promises, over every different problem it can draw (at most ten thousand a system)."""

from itertools import pairwise
from math import log
from xml.etree import ElementTree

import pytest

from pressure import catalogue
from pressure.draw import DELTA, draw, facts_at, key_of, walk
from pressure.problem import ChoiceKey, Key, OrderKey, Posed, PosedTable, TableKey
from pressure.slips import LABELS
from pressure.units import FACTORS, rounded, shown

DRAWS = 10_000
FEWEST = {Key: 300, TableKey: 60, ChoiceKey: 60, OrderKey: 60}
SET = [(family, system) for family in catalogue.families().values() for system in family.systems]
every_family = pytest.mark.parametrize(
    ("family", "system"), SET, ids=lambda each: getattr(each, "slug", each)
)


def problems(family, system, most=DRAWS):
    """Every different problem once: seeds beyond the length of the walk begin it again."""
    return [draw(family, seed, system) for seed in range(min(most, len(walk(family, system))))]


def cells(key):
    """The numbers a problem asks for."""
    return key.cells if isinstance(key, TableKey) else (key,) if isinstance(key, Key) else ()


def posed_cells(posed):
    return posed.cells if isinstance(posed, PosedTable) else (posed,) if isinstance(posed, Posed) else ()


def options(key):
    return getattr(key, "options", None) or getattr(key, "items", ())


def assert_bands_never_touch(key):
    bands = sorted([(key.low, key.high), *((slip.low, slip.high) for slip in key.slips)])
    assert all(below[1] < above[0] for below, above in pairwise(bands))
    assert 0 < key.low < key.answer < key.high
    assert len(key.slips) >= 3


def assert_slips_lie_two_allowances_outside(cell):
    """The separation condition as the study of tolerances writes it, computed anew."""
    right = [log(value) for value in cell.accepted]
    for name, _, _, values in cell.missteps:
        wrong = [log(value) for value in values if value > 0]
        gap = max(min(wrong) - max(right), min(right) - max(wrong)) if wrong else 1.0
        assert gap > 2 * DELTA, name


def assert_the_band_covers_every_convention(key, cell):
    assert all(key.low <= float(rounded(answer)) <= key.high for answer in cell.accepted)
    assert key.high / key.low < 1.0175  # a flat 2 % could not tell fresh water from salt


def assert_the_prompt_holds_its_givens_and_not_its_answer(problem):
    text = f"{problem.situation} {problem.convention}"
    for given in problem.givens:
        assert shown(given.quantity.value, given.quantity.unit, given.quantity.kind, given=True) in text
    for key in cells(problem.key):
        assert shown(key.answer, key.asked.unit) not in text
        assert not any(key.low <= given.quantity.value <= key.high for given in problem.givens)


@every_family
def test_answers_and_slips_of_every_problem_keep_apart(family, system):
    for problem in problems(family, system):
        posed = family.pose(system, problem.facts)
        for key, cell in zip(cells(problem.key), posed_cells(posed), strict=True):
            assert_bands_never_touch(key)
            assert_slips_lie_two_allowances_outside(cell)
            assert_the_band_covers_every_convention(key, cell)
        assert_the_prompt_holds_its_givens_and_not_its_answer(problem)
        assert problem.situation.endswith(("?", "."))


@every_family
def test_options_explain_themselves_and_one_is_right(family, system):
    for problem in problems(family, system, most=300):
        found = options(problem.key)
        assert not found or len(found) >= 3
        assert len({one.text for one in found}) == len(found)
        assert all(one.why.endswith(".") for one in found)
        if isinstance(problem.key, ChoiceKey):
            assert [one.name for one in found].count(problem.key.right) == 1
            assert all(one.label for one in found if one.name != problem.key.right)
        if isinstance(problem.key, OrderKey):
            assert sorted(problem.key.right) == sorted(one.name for one in found)
            assert problem.key.right != tuple(one.name for one in found)


@every_family
def test_the_right_option_stands_in_every_place(family, system):
    found = [problem.key for problem in problems(family, system, most=200)]
    keys = [key for key in found if isinstance(key, ChoiceKey)]
    places = {[one.name for one in key.options].index(key.right) for key in keys}
    assert not places or places == set(range(len(keys[0].options)))


@every_family
def test_a_seed_always_draws_the_same(family, system):
    walk.cache_clear()
    first = [draw(family.slug, seed, system) for seed in range(50)]
    walk.cache_clear()
    assert first == [draw(family, seed, system) for seed in range(50)]


@every_family
def test_seeds_in_a_row_draw_different_problems_until_all_were_drawn(family, system):
    length, drawn = len(walk(family, system)), problems(family, system)
    assert len({problem.number for problem in drawn}) == min(length, DRAWS) >= FEWEST[type(drawn[0].key)]
    assert len({(one.situation, one.convention, str(one.figure)) for one in drawn}) == len(drawn)
    assert draw(family, length, system).number == drawn[0].number


@every_family
def test_equal_numbers_are_equal_problems(family, system):
    problem = draw(family, 3, system)
    assert facts_at(family.axes[system], problem.number) == problem.facts
    assert key_of(family.pose(system, problem.facts), 3) == problem.key


@every_family
def test_the_solution_ends_in_the_answer(family, system):
    for problem in problems(family, system, most=200):
        steps = catalogue.solve(problem)
        words = " ".join(step.result.words for step in steps if step.result).split()
        assert all(rounded(key.answer) in words for key in cells(problem.key))
        lines = [line for step in steps for line in (step.relation, step.substitution, step.result) if line]
        for line in lines:
            ElementTree.fromstring(line.mathml)  # noqa: S314 (our own markup)
        assert all(step.why.endswith((".", "?")) for step in steps)


@every_family
def test_every_slip_is_named_once_and_mended_in_a_sentence(family, system):
    for problem in problems(family, system, most=200):
        for key in cells(problem.key):
            names = [slip.name for slip in key.slips]
            assert len(names) == len(set(names))
            for slip in key.slips:
                assert slip.label == LABELS[slip.name]
                mend = slip.mend.replace("{typed}", "44.1 psi")
                assert mend[0].isupper() or mend[0].isdigit()
                assert mend.endswith(".")
                assert "{" not in mend


def test_every_label_is_used():
    seen = {
        slip.name
        for family, system in SET
        for problem in problems(family, system, most=300)
        for key in cells(problem.key)
        for slip in key.slips
    }
    assert seen == set(LABELS)


@pytest.mark.parametrize(
    ("family", "example"),
    [(family, example) for family in catalogue.families().values() for example in family.examples],
    ids=lambda each: getattr(each, "slug", getattr(each, "source", "")),
)
def test_worked_examples_come_out(family, example):
    key = key_of(family.pose(example.system, example.facts))
    assert example.source
    if isinstance(key, ChoiceKey | OrderKey):
        assert key.right == example.answer
        return
    answers = example.answer if isinstance(example.answer, tuple) else (example.answer,)
    for cell, answer in zip(cells(key), answers, strict=True):
        assert cell.answer == pytest.approx(answer, rel=example.within)


@pytest.mark.parametrize("family", catalogue.families().values(), ids=lambda each: each.slug)
def test_a_family_is_set_in_feet_and_in_metres(family):
    assert {"us", "metric"} <= set(family.systems)
    assert {example.system for example in family.examples} <= set(family.systems)


def test_units_asked_for_are_units_that_can_be_typed():
    asked = {key.asked.unit for family, system in SET for key in cells(draw(family, 0, system).key)}
    assert asked <= set(FACTORS)


def test_rising_air_carries_the_caution_of_the_held_breath():
    caution = draw("volume-on-ascent", 0, "us").caution
    assert "never hold your breath" in caution
    assert "not a dive plan, a decompression schedule or medical advice" in caution
