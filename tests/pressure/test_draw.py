"""Seeds, walks and the condition that keeps answers and slips apart."""

from dataclasses import replace
from math import exp, log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure import catalogue
from pressure.draw import DELTA, LARGEST_SEED, apart, band, draw, flaws, walk
from pressure.errors import BadSeed, BrokenFamily, UnknownFamily, UnknownSystem
from pressure.problem import Axis, Quantity

FAMILY = catalogue.family("gauge-to-absolute")
positive = st.floats(1e-3, 1e6)

# A seed that has been dealt keeps its numbers for ever; a family that must change them raises its edition.
KEPT = {
    ("absolute-to-gauge", "us"): 131,
    ("absolute-to-gauge", "metric"): 58,
    ("depth-to-absolute", "us"): 574,
    ("depth-to-absolute", "metric"): 300,
    ("depth-to-gauge", "us"): 826,
    ("depth-to-gauge", "metric"): 559,
    ("depth-to-volume", "us"): 1161,
    ("depth-to-volume", "metric"): 948,
    ("gauge-to-absolute", "us"): 91,
    ("gauge-to-absolute", "metric"): 468,
    ("volume-on-ascent", "us"): 2577,
    ("volume-on-ascent", "metric"): 695,
}


def posed(**changes):
    return replace(FAMILY.pose("us", {"reading_psi": 34.0, "scene": 0.0}), **changes)


@pytest.mark.parametrize("seed", [-1, 1.0, True, "7", None, LARGEST_SEED + 1])
def test_a_seed_that_is_no_whole_number_is_refused(seed):
    with pytest.raises(BadSeed, match="A seed is a whole number from 0"):
        draw(FAMILY, seed, "us")


def test_an_unknown_family_or_system_is_refused_with_what_there_is():
    with pytest.raises(UnknownFamily, match="There is no family 'nothing'"):
        draw("nothing", 0, "us")
    with pytest.raises(UnknownSystem, match=r"not set in 'si'\. It is set in: us, metric"):
        draw("gauge-to-absolute", 0, "si")


def test_the_largest_seed_still_draws():
    assert draw(FAMILY, LARGEST_SEED, "metric").seed == LARGEST_SEED


def test_a_problem_cannot_be_changed():
    problem = draw(FAMILY, 0, "us")
    with pytest.raises(TypeError):
        problem.facts["reading_psi"] = 1.0
    with pytest.raises(AttributeError):
        problem.seed = 1


def test_a_family_with_nothing_to_ask_is_refused():
    lame = replace(FAMILY, axes={"us": (Axis("reading_psi", (0.0,)), Axis("scene", (0.0,)))})
    with pytest.raises(BrokenFamily, match="has no problem in 'us'"):
        walk(lame, "us")


@given(st.lists(positive, min_size=1, max_size=4), st.lists(positive, min_size=1, max_size=4))
def test_apart_is_the_separation_condition(ones, others):
    """The condition as the study of tolerances writes it: a gap of more than 2δ on the logarithm."""
    x, y = [log(v) for v in ones], [log(v) for v in others]
    gap = max(min(x) - max(y), min(y) - max(x))
    if abs(gap - 2 * DELTA) > 1e-9:
        assert apart((min(ones), max(ones)), (min(others), max(others))) == (gap > 2 * DELTA)


@given(
    st.floats(-1e6, 1e6).filter(lambda v: abs(v) > 1e-3), st.floats(-1e6, 1e6).filter(lambda v: abs(v) > 1e-3)
)
def test_ranges_that_are_apart_have_bands_that_do_not_touch(one, other):
    (low_1, high_1), (low_2, high_2) = band([one]), band([other])
    assert low_1 < one < high_1
    if apart((one, one), (other, other)):
        assert high_1 < low_2 or high_2 < low_1


def test_a_slip_near_the_answer_makes_a_draw_unfit():
    near = ("near", "near", "Mend.", (48.7 * exp(1.9 * DELTA),))
    assert list(flaws(posed(missteps=(near,)))) == ["The slip 'near' cannot be told from the answer."]


def test_two_slips_near_each_other_make_a_draw_unfit():
    one, other = ("one", "one", "Mend.", (10.0,)), ("other", "other", "Mend so.", (10.05,))
    assert list(flaws(posed(missteps=(one, other)))) == ["The slips 'one' and 'other' cannot be told apart."]


def test_an_answer_that_stands_in_the_prompt_makes_a_draw_unfit():
    given = replace(posed().givens[0], quantity=Quantity(48.8, "psi", "gauge"))
    assert list(flaws(posed(givens=(given,)))) == ["The answer coincides with the given gauge pressure."]


def test_an_answer_that_the_convention_gives_away_makes_a_draw_unfit():
    """33 ft under the convention "33 ft of sea water as one atmosphere, 14.7 psi" asks for nothing."""
    told = catalogue.family("depth-to-gauge").pose("us", {"depth_ft": 33.0, "scene": 0.0, "is_fresh": 0.0})
    assert list(flaws(told)) == ["The answer coincides with a number of the convention."]


def test_an_answer_of_nothing_makes_a_draw_unfit():
    assert next(flaws(posed(accepted=(0.0,)))) == "The answer 0 is not above zero."


@pytest.mark.parametrize(("slug", "system"), KEPT)
def test_a_seed_keeps_its_numbers(slug, system):
    assert draw(slug, 20_260_801, system).number == KEPT[slug, system]
