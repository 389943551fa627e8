"""Depth from pressure, in the sea, in fresh water and in a lake above both."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pressure import catalogue
from pressure.draw import draw
from pressure.laws.altitude import barometer, standard_pressure
from pressure.marking import judge

altitudes = st.floats(0, 11_000)
seeds = st.integers(0, 5_000)
unhurried = settings(deadline=None)  # the first draw of a family walks its whole grid
waters = st.sampled_from([0.0, 1.0])


def judged(problem, number, unit):
    return judge({"answer": f"{number:.4g} {unit}"}, problem.key)


@given(altitudes, altitudes)
def test_the_air_thins_with_height(one, other):
    low, high = sorted((one, other))
    assert standard_pressure(high) <= standard_pressure(low) <= standard_pressure(0) == 101_325


@pytest.mark.parametrize("altitude", [-1.0, 11_001.0])
def test_the_standard_atmosphere_ends_where_its_relation_does(altitude):
    with pytest.raises(ValueError, match="from the sea up to 11 km"):
        standard_pressure(altitude)


def test_a_barometer_shows_three_figures():
    assert barometer(5000, "ft", "psi") == 12.2
    assert barometer(2000, "m", "bar") == 0.795
    assert barometer(2000, "m", "kPa") == 79.5


@given(st.integers(10, 170), waters)
def test_depth_and_gauge_pressure_undo_each_other(feet, fresh):
    facts = {"depth_ft": float(feet), "scene": 0.0, "is_fresh": fresh}
    reading = catalogue.family("depth-to-gauge").pose("us", facts).accepted[0]
    back = {"reading_psi": reading, "scene": 0.0, "is_fresh": fresh}
    assert catalogue.family("gauge-to-depth").pose("us", back).accepted[0] == pytest.approx(feet)


@given(st.integers(3, 60), waters)
def test_depth_and_absolute_pressure_undo_each_other(metres, fresh):
    facts = {"depth_m": float(metres), "scene": 0.0, "is_fresh": fresh}
    total = catalogue.family("depth-to-absolute").pose("metric", facts).accepted[0]
    back = {"absolute_bar": total, "scene": 0.0, "is_fresh": fresh}
    assert catalogue.family("absolute-to-depth").pose("metric", back).accepted[0] == pytest.approx(metres)


@unhurried
@given(st.sampled_from(["us", "metric", "si"]), seeds)
def test_a_lake_gives_back_the_depth_it_was_asked_for(system, seed):
    asked = draw("lake-pressure", seed, system)
    foot, unit = ("ft" if system == "us" else "m"), asked.asked.unit
    facts = {**asked.facts, f"absolute_{unit}": asked.answer.value}
    found = catalogue.family("lake-depth").pose(system, facts).accepted[0]
    assert found == pytest.approx(asked.facts[f"depth_{foot}"])


@unhurried
@given(seeds)
def test_a_lake_presses_less_than_the_same_depth_beside_the_sea(seed):
    lake = draw("lake-pressure", seed, "metric")
    facts = {"depth_m": lake.facts["depth_m"], "scene": 0.0, "is_fresh": 1.0}
    assert lake.answer.value < catalogue.family("depth-to-absolute").pose("metric", facts).accepted[0]


def test_the_air_of_the_sea_is_named_when_it_is_taken_up_a_mountain():
    problem = draw("lake-pressure", 7, "metric")
    given_air = next(one.quantity.value for one in problem.givens if one.symbol == "P_air")
    for sea in (1.0, 1.01325):
        verdict = judged(problem, problem.answer.value - given_air + sea, "bar")
        assert (verdict.verdict, verdict.slip) == ("slip", "sea-level-air")


@pytest.mark.parametrize("slug", ["gauge-to-depth", "absolute-to-depth", "lake-depth"])
def test_a_depth_may_be_typed_in_feet_or_metres(slug):
    problem = draw(slug, 3, "us")
    assert judged(problem, problem.answer.value, "ft").verdict == "right"
    assert judged(problem, problem.answer.value * 0.3048, "m").verdict == "right"
    assert judged(problem, problem.answer.value * 0.3048, "ft").verdict != "right"


@pytest.mark.parametrize("slug", ["absolute-to-depth", "depth-for-fraction", "spill-depth"])
@pytest.mark.parametrize("system", ["us", "metric"])
def test_a_depth_survives_rounding_the_atmospheres_to_three_figures(slug, system):
    """A depth is a difference, so a figure rounded on the way counts for more near the surface."""
    column = {("us", 0): 33, ("us", 1): 34, ("metric", 0): 10, ("metric", 1): 10.2}
    for seed in range(600):
        problem = draw(slug, seed, system)
        atmosphere = column[system, int(problem.facts.get("is_fresh", 0))]
        rounded = round(1 + problem.answer.value / atmosphere, 2)
        judged = judge({"answer": f"{(rounded - 1) * atmosphere:.4g} {problem.asked.unit}"}, problem.key)
        assert judged.verdict == "right", problem.facts


@pytest.mark.parametrize("slug", ["lake-pressure", "lake-depth"])
def test_altitude_carries_a_caution(slug):
    caution = draw(slug, 0, "us").caution
    assert "at altitude" in caution
    assert "not a dive plan, a decompression schedule or medical advice" in caution


def test_density_in_si_is_worked_in_pascals():
    steps = catalogue.solve(draw("gauge-to-depth", 11, "si"))
    assert "kg/m³ times 9.80665 m/s²" in steps[-1].substitution.words
