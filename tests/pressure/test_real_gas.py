"""Real air behaves as a gas should, whatever the numbers."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure.laws.real_gas import compressibility, free_volume, pressure_warmed

pressures = st.floats(0.01, 300)
temperatures = st.floats(264, 340)


@given(temperatures)
def test_thin_air_is_ideal(temperature):
    assert compressibility(0.01, temperature) == pytest.approx(1, abs=1e-4)


@given(pressures, temperatures)
def test_more_pressure_always_means_more_air(pressure, temperature):
    assert free_volume(1, pressure * 1.1, 1, temperature) > free_volume(1, pressure, 1, temperature)


@given(st.floats(1, 250), temperatures, temperatures)
def test_warming_and_cooling_again_gives_the_pressure_back(pressure, before, after):
    there = pressure_warmed(pressure, before, after)
    assert pressure_warmed(there, after, before) == pytest.approx(pressure, rel=1e-9)
    assert (there > pressure) == (after > before) or after == pytest.approx(before)


@pytest.mark.parametrize(("bar", "kelvin"), [(0, 293), (-1, 293), (351, 293), (200, 20), (200, 500)])
def test_beyond_what_was_compared_it_refuses(bar, kelvin):
    with pytest.raises(ValueError, match="up to 350 bar absolute"):
        compressibility(bar, kelvin)
