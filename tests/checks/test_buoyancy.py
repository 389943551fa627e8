"""Buoyancy printed in a textbook, and the density of real sea water from the international standard."""

import gsw
import pytest

from pressure.constants import LEAD_DENSITY, POUND
from pressure.draw import key_of
from pressure.families.float_or_sink import FAMILY as FLOAT_OR_SINK
from pressure.laws.archimedes import (
    apparent_weight,
    density_from_weighing,
    displaced_weight,
    share_submerged,
    volume_to_carry,
)
from pressure.laws.boyle import volume_after
from pressure.units import FACTORS
from pressure.waters import HEAVINESS, SEA_33_FT

COLLEGE = "OpenStax College Physics 2e, §11.7"
SEA, FRESH = HEAVINESS["us", "sea"], HEAVINESS["us", "fresh"]
STEEL_M3 = volume_to_carry(1.00e7, 7.8e3)

PRINTED = [
    (STEEL_M3, 1.28e3, 0.002, f"{COLLEGE} example: ten thousand tonnes of steel, m³"),
    (displaced_weight(STEEL_M3, 1000) * 9.80, 1.3e7, 0.04, f"{COLLEGE}: push on it, N, two figures"),
    (apparent_weight(1.00e7, STEEL_M3, 1000) * 9.80, 8.5e7, 0.01, f"{COLLEGE}: 9.80e7 N of weight less that"),
    (displaced_weight(1.00e5, 1000) * 9.80, 9.80e8, 1e-9, f"{COLLEGE}: as a boat, N"),
    (share_submerged(970, 1000), 0.970, 1e-9, f"{COLLEGE} example: 970 kg/m³ in fresh water"),
    (density_from_weighing(8.630, 7.800, 1.000), 10.4, 0.001, f"{COLLEGE} example: a coin, g/cm³"),
    (share_submerged(0.917, 1.000), 0.917, 1e-9, f"{COLLEGE} exercises: ice in fresh water"),
    (apparent_weight(45.0, 41.4, 1.000), 3.60, 1e-9, f"{COLLEGE} exercises: apparent mass, g"),
    (volume_to_carry(41.4, 1.000), 41.4, 1e-9, f"{COLLEGE} exercises: its volume, cm³"),
    (density_from_weighing(45.0, 3.60, 1.000), 1.09, 0.003, f"{COLLEGE} exercises: its density, g/cm³"),
    (apparent_weight(390.0, 50.0, 0.79), 350.5, 1e-9, f"{COLLEGE} exercises: iron weighed in a fluid, g"),
    (volume_to_carry(390.0, 7.8), 50.0, 1e-9, f"{COLLEGE} exercises: volume of the iron, cm³"),
    (39.5 / volume_to_carry(390.0, 7.8), 0.79, 1e-9, f"{COLLEGE} exercises: density of the fluid, g/cm³"),
]


@pytest.mark.parametrize(("computed", "printed", "within", "source"), PRINTED)
def test_printed_examples(computed, printed, within, source):
    assert computed == pytest.approx(printed, rel=within), source


TRADE = [
    (volume_to_carry(1000, SEA.value), 15.625, "arithmetic: 1000 lb in the sea, ft³"),
    (volume_to_carry(1000, FRESH.value), 16.03, "arithmetic: 1000 lb in fresh water, ft³"),
    (
        volume_after(volume_to_carry(1000, SEA.value), SEA_33_FT.absolute(99), SEA_33_FT.surface),
        62.5,
        "arithmetic: the same as surface air at 99 fsw, ft³",
    ),
    (-apparent_weight(158, 2.5, SEA.value), 2.0, "arithmetic: 2.5 ft³ and 158 lb rise in the sea, lb"),
    (apparent_weight(158, 2.5, FRESH.value), 2.0, "arithmetic: the same sinks in fresh water, lb"),
    (volume_after(4, SEA_33_FT.absolute(99), SEA_33_FT.surface), 16, "arithmetic: 4 L at 99 fsw, not vented"),
]


@pytest.mark.parametrize(("computed", "known", "source"), TRADE)
def test_pounds_and_cubic_feet_of_the_trade(computed, known, source):
    assert computed == pytest.approx(known, rel=0.0003), source


def test_the_floating_cork_is_three_quarters_under_when_its_magnet_stays_dry():
    """OpenStax College Physics 2e §11.7 prints 0.68, University Physics 1 §14.4 0.72, for the same 10.0 g
    of cork at 0.24 g/cm³ under 20.0 g: whole floating weight over the whole of the cork's volume."""
    cork_cm3 = volume_to_carry(10.0, 0.24)
    assert share_submerged(10.0 / cork_cm3, 1.000) == pytest.approx(0.24)
    assert share_submerged((10.0 + 20.0) / cork_cm3, 1.000) == pytest.approx(0.72)


@pytest.mark.parametrize(("celsius", "salinity"), [(4, 35), (15, 35), (25, 35), (15, 37)])
def test_sea_water_is_as_heavy_as_the_international_standard_says(celsius, salinity):
    """TEOS-10 by gsw: density of surface sea water; 64 lb/ft³ and 1.025 kg/L lie within 0.3 % of it."""
    absolute = gsw.SA_from_SP(salinity, 0, 0, 45)
    density = gsw.rho(absolute, gsw.CT_from_t(absolute, celsius, 0), 0)
    pounds = SEA.value * POUND.value / FACTORS["ft3"]
    assert pounds == pytest.approx(density, rel=0.003)
    assert HEAVINESS["metric", "sea"].value * 1000 == pytest.approx(density, rel=0.003)


@pytest.mark.parametrize("celsius", [4, 10, 20])
def test_fresh_water_is_as_heavy_as_the_international_standard_says(celsius):
    """TEOS-10 by gsw at no salinity; University Physics 1 §14.1 prints 1000 at 4 °C and 998.2 at 20 °C."""
    density = gsw.rho(0, gsw.CT_from_t(0, celsius, 0), 0)
    assert HEAVINESS["metric", "fresh"].value * 1000 == pytest.approx(density, rel=0.002)
    assert FRESH.value * POUND.value / FACTORS["ft3"] == pytest.approx(density, rel=0.002)


SUBSTANCES = [
    ("ice", 0.917, "floats-in-both"),
    ("polystyrene", 0.10, "floats-in-both"),
    ("steel", 7.8, "sinks-in-both"),
    ("lead", 11.3, "sinks-in-both"),
    ("bone", 1.7, "sinks-in-both"),
]


@pytest.mark.parametrize(("substance", "density", "outcome"), SUBSTANCES)
def test_what_floats_and_what_sinks(substance, density, outcome):
    """OpenStax College Physics for AP Courses, table 11.1: densities in g/cm³; the outcome everyone knows."""
    posed = FLOAT_OR_SINK.pose("metric", {"volume_L": 100.0, "density": density, "thing": 0.0})
    assert key_of(posed).right == outcome, substance


def test_lead_displaces_a_tenth_of_its_weight_at_most():
    """The same table: lead 11.3 g/cm³; what the ballast problems leave out of account."""
    assert apparent_weight(LEAD_DENSITY.value, 1.0, 1000.0) / LEAD_DENSITY.value == pytest.approx(
        0.912, abs=0.001
    )
