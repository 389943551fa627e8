"""Henry's law against the worked examples of a textbook."""

import pytest

from pressure.laws.henry import dissolved, henry_constant


def test_the_constant_and_the_solution_at_a_lower_pressure():
    """OpenStax Chemistry 2e, §11.3 example: oxygen at 20 °C, 1.38e-3 mol/L at 101.3 kPa, then 20.7 kPa."""
    constant = henry_constant(1.38e-3, 101.3)
    assert constant == pytest.approx(1.36e-5, rel=0.005)
    assert dissolved(constant, 20.7) == pytest.approx(2.82e-4, rel=0.002)


def test_oxygen_in_a_stream_is_6_5_milligrams_a_litre_unless_rounded_on_the_way():
    """The same section: 1.2e-3 mol/(L atm) and 0.17 atm; 6.4 mg/L is printed, from a rounded 2.0e-4."""
    held = dissolved(1.2e-3, 0.17)
    assert held == pytest.approx(2.0e-4, rel=0.025)
    assert held * 32.00 * 1000 == pytest.approx(6.53, abs=0.005)
    assert round(held, 4) * 32.00 * 1000 == pytest.approx(6.4)


@pytest.mark.parametrize("pressure", [0.0, -1.0])
def test_nothing_is_measured_without_a_pressure(pressure):
    with pytest.raises(ValueError, match="Without a partial pressure"):
        henry_constant(1.38e-3, pressure)


def test_twice_the_pressure_holds_twice_the_gas():
    """The law itself, as the same section words it."""
    assert dissolved(1.36e-5, 2 * 101.3) == pytest.approx(2 * dissolved(1.36e-5, 101.3))
