"""Air as a real gas, against CoolProp 8.0.0 (reference equation of Lemmon et al., 2000).

The correlation of Lee and Kesler (1975) is not that equation: the two agree within the stated error.
"""

import pytest
from CoolProp import CoolProp

from pressure.cylinders import real_free_air
from pressure.laws.charles import gauge_warmed
from pressure.laws.real_gas import compressibility, free_volume, pressure_warmed
from pressure.laws.supply import free_gas
from pressure.vessels import real_gauge

ATM = 1.01325
STATED, STATED_BEYOND = 0.007, 0.010


def worst(pressures):
    return max(
        abs(compressibility(bar, kelvin) / CoolProp.PropsSI("Z", "T", kelvin, "P", bar * 1e5, "Air") - 1)
        for kelvin in range(264, 344, 4)
        for bar in pressures
    )


def test_the_stated_error_holds_from_nought_to_300_bar():
    assert worst(range(1, 301, 7)) < STATED


def test_the_stated_error_holds_to_350_bar():
    assert worst(range(300, 351, 10)) < STATED_BEYOND


@pytest.mark.parametrize(
    ("kelvin", "bar", "z"),
    [
        (273.15, 200, 1.00461),
        (273.15, 300, 1.09016),
        (288.15, 200, 1.02122),
        (288.15, 300, 1.10105),
        (293.15, 50, 0.98791),
        (293.15, 100, 0.98814),
        (293.15, 150, 1.00101),
        (293.15, 200, 1.02602),
        (293.15, 232, 1.04754),
        (293.15, 300, 1.10428),
        (298.15, 200, 1.03049),
        (298.15, 300, 1.10731),
        (300.00, 200, 1.0326),  # Perry's handbook, table for air at 300 K, from memory
        (300.00, 300, 1.1089),  # the same
    ],
)
def test_compressibility_of_air(kelvin, bar, z):
    """CoolProp 8.0.0 where no other source stands beside the row."""
    assert compressibility(bar, kelvin) == pytest.approx(z, rel=STATED)


@pytest.mark.parametrize(
    ("litres", "bar", "real", "ideal"),
    [
        (10, 200, 1922, 1974),
        (12, 200, 2306, 2369),
        (12, 232, 2619, 2748),
        (15, 232, 3274, 3434),
        (12, 300, 3212, 3553),
    ],
)
def test_what_a_full_cylinder_really_gives(litres, bar, real, ideal):
    """CoolProp 8.0.0: litres at 1 atm until the gauge stands at nought, 20 °C."""
    assert free_volume(litres, bar + ATM, ATM, 293.15) - litres == pytest.approx(real, rel=STATED)
    assert free_gas(litres, bar, ATM) == pytest.approx(ideal, rel=3e-4)


def test_what_a_cylinder_of_0399_cubic_feet_really_gives():
    """CoolProp 8.0.0: 78.89 ft³ at 70 °F, where the ideal gas law says 81.43."""
    assert real_free_air("us", 0.399, 3000) == pytest.approx(78.89, rel=STATED)


@pytest.mark.parametrize(
    ("bar", "before", "after", "real"),
    [(200, 20, 50, 229.3), (200 + ATM, 20, 60, 240.2), (230 + ATM, 40, 10, 199.8)],
)
def test_real_air_warmed_in_a_closed_vessel(bar, before, after, real):
    """CoolProp 8.0.0, at the same density, bar absolute."""
    assert pressure_warmed(bar, before + 273.15, after + 273.15) == pytest.approx(real, rel=STATED)


def test_the_flask_of_a_manual_would_show_more_than_it_prints():
    """US Navy Diving Manual, 2-11.2, from memory: 3555 psig, ideal; CoolProp 8.0.0: 3794 for real air."""
    assert gauge_warmed(3000, 14.7, 72 + 460, 170 + 460) == pytest.approx(3555.3, abs=0.1)
    real = real_gauge("us", 3000, 72, 170)
    assert real == pytest.approx(3794, rel=0.003)
    assert real > 1.06 * 3555.3


def test_real_air_gains_about_eight_psi_a_degree_where_the_rule_says_five():
    """CoolProp 8.0.0: about 8.1 psi a degree from 72 to 170 °F at 3000 psig; the rule is common practice."""
    assert (real_gauge("us", 3000, 72, 170) - 3000) / 98 == pytest.approx(8.1, rel=0.01)
