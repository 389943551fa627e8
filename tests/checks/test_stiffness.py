"""How little water gives: the bulk modulus against a textbook and against CoolProp 8.0.0."""

import pytest
from CoolProp import CoolProp

from pressure.laws.stiffness import share_lost


def test_water_under_five_kilometres_of_sea_loses_about_a_fiftieth():
    """OpenStax, College Physics 2e, §5.3: 5.00e7 Pa on water takes 2.3 % of its volume."""
    assert share_lost(5.00e7) == pytest.approx(0.023, abs=0.0005)


def test_water_gives_as_little_as_the_reference_equation_says():
    """CoolProp 8.0.0, water at 20 °C: from 1 to 6 atmospheres the density grows by as much."""
    before, after = [CoolProp.PropsSI("D", "T", 293.15, "P", n * 101_325.0, "Water") for n in (1, 6)]
    assert share_lost(5 * 101_325.0) == pytest.approx(1 - before / after, rel=0.02)
