"""The laws behave as laws, whatever the numbers."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure.laws import boyle, hydrostatics
from pressure.waters import ALLOWED

pressures = st.floats(1e-3, 1e4)
volumes = st.floats(1e-3, 1e4)
conventions = st.sampled_from([each for allowed in ALLOWED.values() for each in allowed])


@given(volumes, pressures, pressures)
def test_pressure_times_volume_stays_the_same(volume, before, after):
    assert boyle.volume_after(volume, before, after) * after == pytest.approx(volume * before)


@given(pressures, volumes, volumes)
def test_pressure_follows_from_the_volumes_and_back(before, volume, smaller):
    after = boyle.pressure_after(before, volume, smaller)
    assert boyle.volume_after(volume, before, after) == pytest.approx(smaller)


@given(volumes, pressures)
def test_going_down_and_up_again_gives_the_air_back(volume, depth_pressure):
    below = boyle.volume_after(volume, 1.0, 1.0 + depth_pressure)
    assert below < volume
    assert boyle.volume_after(below, 1.0 + depth_pressure, 1.0) == pytest.approx(volume)


@pytest.mark.parametrize("pressure", [0.0, -14.7])
def test_boyle_refuses_what_is_not_an_absolute_pressure(pressure):
    with pytest.raises(ValueError, match="absolute pressures above zero"):
        boyle.volume_after(1.0, pressure, 14.7)
    with pytest.raises(ValueError, match="volumes above zero"):
        boyle.pressure_after(14.7, 0.0, 1.0)


@given(conventions, st.floats(0, 1000), st.floats(0, 1000))
def test_pressure_grows_evenly_with_depth(convention, depth, more):
    assert convention.gauge(depth) + convention.gauge(more) == pytest.approx(convention.gauge(depth + more))
    assert convention.absolute(depth) - convention.gauge(depth) == pytest.approx(convention.surface)


@given(conventions, st.floats(0, 1000))
def test_atmospheres_count_columns_and_one(convention, depth):
    assert convention.atmospheres(depth) == pytest.approx(
        hydrostatics.atmospheres(depth, convention.column), rel=1e-9
    )


@given(st.floats(0.001, 1e4), st.floats(1, 2e4), st.floats(1, 20))
def test_a_column_stands_as_high_as_its_pressure_says(height, density, gravity):
    pressure = hydrostatics.column_pressure(height, density, gravity)
    assert hydrostatics.column_height(pressure, density, gravity) == pytest.approx(height)


@given(st.floats(-100, 1e4), st.floats(1, 100))
def test_gauge_and_absolute_undo_each_other(reading, surface):
    there = hydrostatics.absolute(reading, surface)
    assert hydrostatics.gauge(there, surface) == pytest.approx(reading, abs=1e-9)


def test_sea_water_conventions_agree_within_a_quarter_of_a_percent():
    gradients = [each.gradient for each in ALLOWED["us", "sea"]]
    assert max(gradients) / min(gradients) < 1.0025


def test_a_prompt_in_metres_allows_one_convention_only():
    assert [len(ALLOWED["metric", water]) for water in ("sea", "fresh")] == [1, 1]
