"""Depth from pressure: published tables and worked examples read backwards, and errors in print.

Tables without another source are plain arithmetic from the stated convention, kept to the printed digits.
"""

import pytest

from pressure import catalogue
from pressure.constants import ATMOSPHERE, GRAVITY
from pressure.laws.hydrostatics import absolute, column_height, column_pressure, gauge
from pressure.units import FACTORS
from pressure.waters import FRESH_34_FT, FRESH_62_4_LB, FRESH_DENSITY, SEA_10_M, SEA_33_FT, SEA_64_LB
from tests.checks.test_conventions import FRESH_FEET, METRES, SEA_FEET, printed

COLLEGE = "OpenStax College Physics 2e"


def depths(slug, system, name, pressure, *, fresh):
    """The depths a family accepts for a pressure, the convention named in the prompt first."""
    facts = {name: pressure, "scene": 0.0, "is_fresh": float(fresh)}
    return catalogue.family(slug).pose(system, facts).accepted


@pytest.mark.parametrize("row", SEA_FEET[1:], ids=lambda row: f"{row[0]} fsw")
def test_feet_of_sea_water_from_the_tables_of_pressure(row):
    """33 ft and 14.7 psi; 0.445 psi and 14.7 psi; 64 lb/ft³ and 14.696 psi."""
    depth, by_gauge, psi_33, psi_0445, psi_64 = row[0], row[1], *row[4:7]
    within = printed(2) / 0.444
    for place, psi in ((0, psi_33), (1, psi_0445), (2, psi_64)):
        found = depths("absolute-to-depth", "us", "absolute_psi", psi, fresh=False)
        assert found[place] == pytest.approx(depth, abs=within)
    assert depths("gauge-to-depth", "us", "reading_psi", by_gauge, fresh=False)[1] == pytest.approx(
        depth, abs=within
    )


@pytest.mark.parametrize("row", FRESH_FEET, ids=lambda row: f"{row[0]} ffw")
def test_feet_of_fresh_water_from_the_tables_of_pressure(row):
    """0.432 psi and 14.7 psi; 62.4 lb/ft³ and 14.696 psi."""
    depth, by_gauge, _, _, psi_0432, psi_weight = row
    for place, psi in ((1, psi_0432), (2, psi_weight)):
        found = depths("absolute-to-depth", "us", "absolute_psi", psi, fresh=True)
        assert found[place] == pytest.approx(depth, abs=printed(3) / 0.432)
    assert depths("gauge-to-depth", "us", "reading_psi", by_gauge, fresh=True)[1] == pytest.approx(depth)


@pytest.mark.parametrize("row", METRES, ids=lambda row: f"{row[0]} m")
def test_metres_from_the_tables_of_pressure(row):
    """10 m and 1 bar; 1000 kg/m³ and 1.01325 bar."""
    depth, rule, fresh_bar = row[0], row[1], row[4]
    assert depths("absolute-to-depth", "metric", "absolute_bar", rule, fresh=False)[0] == pytest.approx(depth)
    found = depths("absolute-to-depth", "si", "absolute_kPa", fresh_bar * 100, fresh=True)
    assert found[0] == pytest.approx(depth, abs=printed(4) * 10.2)


BACKWARDS = [
    ("gauge-to-depth", "si", "reading_kPa", 101.0, True, 10.3, f"{COLLEGE}, §11.4: one atmosphere, m"),
    ("gauge-to-depth", "si", "reading_kPa", 392.0, True, 40.0, f"{COLLEGE}, §11.4: mean depth of a dam, m"),
    (
        "gauge-to-depth",
        "us",
        "reading_psi",
        24.6,
        True,
        57.0,
        "teaching sheet, undated (low authority): 57 ft of fresh water",
    ),
    (
        "absolute-to-depth",
        "us",
        "absolute_psi",
        39.3,
        True,
        57.0,
        "teaching sheet, undated (low authority): the same",
    ),
    ("absolute-to-depth", "us", "absolute_psi", 73.5, False, 132.0, "US Navy Diving Manual, ch. 12: 5 ata"),
    ("absolute-to-depth", "us", "absolute_psi", 2.3939 * 14.7, False, 46.0, "TERMIUM Plus, 2002: 46 fsw"),
    ("absolute-to-depth", "us", "absolute_psi", 4.02 * 14.7, False, 100.0, "OSHA, gas laws, κ = 33.1 ft"),
    ("absolute-to-depth", "us", "absolute_psi", 10.06 * 14.7, False, 300.0, "OSHA, gas laws, κ = 33.1 ft"),
    ("absolute-to-depth", "us", "absolute_psi", 29.4, False, 33.0, "common practice, no source"),
    ("absolute-to-depth", "us", "absolute_psi", 44.1, False, 66.0, "common practice, no source"),
    ("absolute-to-depth", "metric", "absolute_bar", 7.0, False, 60.0, "Scott et al., 2021: 60 m of sea"),
]


@pytest.mark.parametrize(("slug", "system", "name", "pressure", "fresh", "depth", "source"), BACKWARDS)
def test_published_pressures_give_back_their_depth(slug, system, name, pressure, fresh, depth, source):
    found = depths(slug, system, name, pressure, fresh=fresh)[0]
    assert found == pytest.approx(depth, rel=0.005), source


# mmHg; kPa; feet of sea and of fresh water, msw, metres of fresh water: arithmetic from 64 and 62.4 lb/ft³.
DIFFERENCES = [
    (10, 1.333, 0.44, 0.45, 0.133, 0.136),
    (30, 4.000, 1.31, 1.34, 0.400, 0.408),
    (60, 7.999, 2.61, 2.68, 0.800, 0.816),
    (90, 11.999, 3.92, 4.02, 1.200, 1.224),
    (100, 13.332, 4.35, 4.46, 1.333, 1.360),
    (500, 66.661, 21.75, 22.31, 6.666, 6.798),
    (760, 101.325, 33.07, 33.91, 10.133, 10.332),
]


@pytest.mark.parametrize("row", DIFFERENCES, ids=lambda row: f"{row[0]} mmHg")
def test_a_difference_of_pressure_is_a_height_of_water(row):
    mercury, kilopascals, sea_ft, fresh_ft, msw, fresh_m = row
    pascals = mercury * FACTORS["mmHg"]
    assert pascals / 1000 == pytest.approx(kilopascals, abs=printed(3))
    assert pascals / FACTORS["psi"] / SEA_64_LB.gradient == pytest.approx(sea_ft, abs=printed(2))
    assert pascals / FACTORS["psi"] / FRESH_62_4_LB.gradient == pytest.approx(fresh_ft, abs=printed(2))
    assert pascals / FACTORS["bar"] / SEA_10_M.gradient == pytest.approx(msw, abs=printed(3))
    assert pascals / 1000 / FRESH_DENSITY.gradient == pytest.approx(fresh_m, abs=printed(3))


def test_a_breathing_tube_at_sixty_centimetres_asks_for_63_cm_of_suction():
    """OpenStax College Physics 2e, §11.9: −3.00 cm of water at the mouth, lungs 60.0 cm below."""
    assert gauge(-3.00, 60.0) == pytest.approx(-63.0)


def test_an_atmosphere_is_1_033_kilograms_to_a_square_centimetre_not_1_013():
    """OpenStax College Physics 2e, §11.6, prints 1.013; arithmetic gives 1.0332."""
    metres = column_height(ATMOSPHERE.value, 1000, GRAVITY.value)  # 10 m of water is 1 kgf/cm²
    assert metres / 10 == pytest.approx(1.0332, abs=printed(4))
    assert abs(metres / 10 - 1.013) > 0.02


def test_three_thousand_psi_is_not_207_atmospheres():
    """OpenStax University Physics 1, §14.2, prints 207 atmospheres; those are bar."""
    pascals = 3000 * FACTORS["psi"]
    assert pascals / ATMOSPHERE.value == pytest.approx(204.1, abs=printed(1))
    assert absolute(pascals, ATMOSPHERE.value) / ATMOSPHERE.value == pytest.approx(205.1, abs=printed(1))
    assert pascals / FACTORS["bar"] == pytest.approx(206.8, abs=0.06)


def test_ten_millimetres_of_mercury_is_13_6_centimetres_of_water_not_metres():
    """OpenStax College Physics 2e, §11.9: the key prints metres."""
    pascals = column_pressure(0.010, 13_600, 9.80)
    assert column_height(pascals, 1000, 9.80) == pytest.approx(0.136)


def test_a_bar_is_not_33_ft_of_sea_water():
    """Arithmetic from 64 lb/ft³: 32.633 ft, so the rule for an atmosphere is 1.1 % out for a bar."""
    feet = FACTORS["bar"] / FACTORS["psi"] / SEA_64_LB.gradient
    assert feet == pytest.approx(32.633, abs=printed(3))
    assert 33 / feet - 1 == pytest.approx(0.011, abs=printed(3))


def test_no_real_fresh_water_weighs_an_atmosphere_in_33_8_ft():
    """OSHA, gas laws, takes 33.8 ft; TEOS-10 (gsw 3.6.23) gives 33.90 to 33.96."""
    assert all(each.column > 33.89 for each in (FRESH_62_4_LB, FRESH_34_FT))
    assert FRESH_62_4_LB.column / 33.8 - 1 == pytest.approx(0.0034, abs=printed(4))


def test_a_depth_of_250_ft_does_not_come_out_of_the_table_that_prints_8_3_atm():
    """OSHA, gas laws, Table 1: its own formula gives 8.55; 8.3 atm lies nearly ten feet higher."""
    found = depths("absolute-to-depth", "us", "absolute_psi", 8.3 * 14.7, fresh=False)
    assert 250 - max(found) > 8


def test_the_sea_at_214_m_is_22_4_atmospheres_not_21_7():
    """A medical review prints 21.7; arithmetic from 10 m to a bar gives 22.4, and 4.5 % of the volume."""
    assert SEA_10_M.atmospheres(214) == pytest.approx(22.4)
    assert 1 / SEA_10_M.atmospheres(214) == pytest.approx(0.045, abs=printed(3))


def test_thirty_three_feet_are_two_atmospheres_and_thirty_four_of_fresh_water_too():
    """L. Martin, Scuba Diving Explained (1997), section E, and common practice."""
    assert SEA_33_FT.atmospheres(33) == pytest.approx(2)
    assert FRESH_34_FT.atmospheres(34) == pytest.approx(2)
