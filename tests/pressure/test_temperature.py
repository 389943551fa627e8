"""Temperature: the laws, the scales, and what the families about it promise."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.constants import convert_temperature

from pressure import catalogue, record
from pressure.draw import draw
from pressure.laws import charles
from pressure.temperatures import SCALES
from pressure.units import shown, spoken

amounts = st.floats(1e-3, 1e4)
temperatures = st.floats(200, 700)


@given(amounts, temperatures, temperatures)
def test_volume_over_temperature_stays_the_same(volume, before, after):
    assert charles.volume_warmed(volume, before, after) / after == pytest.approx(volume / before)


@given(amounts, amounts, temperatures, temperatures)
def test_warming_a_gauge_and_cooling_it_again_gives_the_reading_back(gauge, surface, before, after):
    there = charles.gauge_warmed(gauge, surface, before, after)
    assert charles.gauge_warmed(there, surface, after, before) == pytest.approx(gauge, rel=1e-6, abs=1e-6)


@given(amounts, st.floats(0.1, 20), temperatures)
def test_at_one_temperature_the_general_law_is_boyles(volume, shrinking, temperature):
    assert charles.volume_moved(volume, shrinking, temperature, temperature) == pytest.approx(
        volume / shrinking
    )


@pytest.mark.parametrize(("before", "after"), [(0.0, 300.0), (300.0, -20.0)])
def test_degrees_below_nought_are_no_absolute_temperatures(before, after):
    with pytest.raises(ValueError, match="degrees will not do"):
        charles.pressure_warmed(200.0, before, after)
    with pytest.raises(ValueError, match="absolute zero"):
        charles.absolute_temperature(-300.0, 273.15)
    with pytest.raises(ValueError, match="absolute pressures"):
        charles.volume_moved(1.0, 0.0, 300.0, 280.0)


@pytest.mark.parametrize(
    ("system", "scale", "absolute"), [("us", "Fahrenheit", "Rankine"), ("metric", "Celsius", "Kelvin")]
)
@pytest.mark.parametrize("degrees", [0.0, 32.0, 72.0])
def test_scales_are_those_of_scipy(system, scale, absolute, degrees):
    """scipy.constants 1.17.1; the trade's own number lies within a degree."""
    exact = convert_temperature(degrees, scale, absolute)
    assert SCALES[system].ends(degrees, degrees)[1][0] == pytest.approx(exact, rel=1e-12)
    assert SCALES[system].absolute(degrees) == pytest.approx(exact, abs=0.5)


def test_degrees_are_shown_and_said_and_never_asked_for():
    assert shown(72.0, "°F", given=True) == "72 °F"
    assert spoken(72.0, "°F", given=True) == "72 degrees Fahrenheit"
    assert spoken(1.0, "°C", given=True) == "1 degree Celsius"


def warm_families():
    return [each for each in catalogue.families().values() if each.topic == "temperature"]


@pytest.mark.parametrize("family", warm_families(), ids=lambda each: each.slug)
@pytest.mark.parametrize("system", ["us", "metric"])
def test_every_problem_can_be_kept_and_solved_and_carries_the_caution(family, system):
    for seed in range(60):
        problem = draw(family, seed, system)
        assert record.shown(problem)["givens"]
        assert record.key(problem)["steps"]
        assert "degrees-ratio" in {slip.name for slip in problem.number_key.slips}
        assert "not a dive plan" in problem.caution


@pytest.mark.parametrize("slug", ["cylinder-heating", "cylinder-cooling"])
def test_a_full_cylinder_is_also_reckoned_with_real_air(slug):
    steps = catalogue.solve(draw(slug, 1, "us"))
    assert "Real air is not ideal" in steps[-1].why
    assert "per cent" in steps[-1].why


def test_only_at_low_pressure_can_a_ratio_of_gauges_be_found():
    low = draw("receiver-temperature", 0, "us").number_key.slips
    high = draw("cylinder-heating", 0, "us").number_key.slips
    assert {"gauge-ratio", "atmosphere-kept"} <= {slip.name for slip in low}
    assert not {"gauge-ratio", "atmosphere-kept"} & {slip.name for slip in high}
