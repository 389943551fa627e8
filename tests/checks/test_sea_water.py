"""The conventions for sea and fresh water against TEOS-10, the standard equation of state of sea water (gsw).

The printed figures were computed with gsw 3.6.23; each test computes them again with the package at hand
and then holds the project's own laws against them.
"""

import gsw
import pytest

from pressure.laws.hydrostatics import column_height, column_pressure
from pressure.waters import (
    ALLOWED,
    FRESH_34_FT,
    FRESH_62_4_LB,
    FRESH_DENSITY,
    SEA_10_M,
    SEA_33_FT,
    SEA_64_LB,
    SEA_DENSITY,
)

ATMOSPHERE = 101_325.0
FOOT = 0.3048
PSI = 6894.757293168
STEPS = 100


def conditions(salinity, temperature, latitude):
    """Absolute salinity and conservative temperature of a uniform column at 0 dbar."""
    absolute = gsw.SA_from_SP(salinity, 0, 0, latitude)
    return absolute, gsw.CT_from_t(absolute, temperature, 0)


def depth_under(pascals, water, latitude):
    """Metres of a uniform column that make a gauge pressure: the integral of dp/(ρ g)."""
    slice_ = pascals / STEPS
    middles = [(step + 0.5) * slice_ / 1e4 for step in range(STEPS)]
    return sum(slice_ / (gsw.rho(*water, p) * gsw.grav(latitude, p)) for p in middles)


def pressure_under(metres, water, latitude):
    """Gauge pascals under a uniform column: the integral of ρ g dz."""
    slice_, pascals = metres / STEPS, 0.0
    for _ in range(STEPS):
        dbar = pascals / 1e4
        pascals += gsw.rho(*water, dbar) * gsw.grav(latitude, dbar) * slice_
    return pascals


def test_the_package_gives_the_check_values_of_its_forerunner():
    """UNESCO Technical Papers in Marine Science 44 (1983), as the oce package for R quotes them."""
    assert gsw.p_from_z(-9712.653, 30) == pytest.approx(9998.863, abs=0.001)


# Latitude; atmospheres of gauge pressure; depth in m and ft; errors of 33 ft and of 10 m to an atmosphere.
OCEAN = [
    (0, 1, 10.0766, 33.060, -0.0018, -0.0076),
    (0, 3, 30.2283, 99.174, -0.0018, -0.0076),
    (0, 5, 50.3781, 165.282, -0.0017, -0.0075),
    (0, 10, 100.7438, 330.524, -0.0016, -0.0074),
    (30, 1, 10.0633, 33.016, -0.0005, -0.0063),
    (45, 1, 10.0500, 32.973, 0.0008, -0.0050),
    (45, 3, 30.1486, 98.913, 0.0009, -0.0049),
    (45, 5, 50.2451, 164.846, 0.0009, -0.0049),
    (45, 10, 100.4780, 329.652, 0.0011, -0.0048),
    (60, 1, 10.0367, 32.929, 0.0022, -0.0037),
    (60, 5, 50.1787, 164.628, 0.0023, -0.0036),
]


@pytest.mark.parametrize("row", OCEAN, ids=lambda row: f"{row[1]} atm at {row[0]} degrees")
def test_whole_atmospheres_of_the_standard_ocean(row):
    latitude, atmospheres, metres, feet, error_ft, error_m = row
    depth = -gsw.z_from_p(atmospheres * 10.1325, latitude)
    assert depth == pytest.approx(metres, abs=6e-5)
    assert depth / FOOT == pytest.approx(feet, abs=6e-4)
    assert atmospheres * SEA_33_FT.column / feet - 1 == pytest.approx(error_ft, abs=6e-5)
    assert atmospheres * SEA_10_M.column / metres - 1 == pytest.approx(error_m, abs=6e-5)
    assert atmospheres * SEA_DENSITY.column == pytest.approx(depth, rel=0.005)


# Salinity, °C, latitude; kg/m³ at the surface; feet to the first atmosphere.
COLUMNS = [
    (35, 0, 45, 1028.108, 32.972),
    (35, 10, 45, 1026.955, 33.010),
    (35, 20, 45, 1024.766, 33.080),
    (35, 30, 0, 1021.726, 33.266),
    (38.5, 25, 35, 1025.993, 33.070),
    (7, 10, 58, 1005.168, 33.686),
    (0, 4, 45, 999.976, 33.900),
    (0, 10, 45, 999.703, 33.909),
    (0, 20, 45, 998.208, 33.960),
]


@pytest.mark.parametrize("row", COLUMNS, ids=lambda row: f"SP {row[0]}, {row[1]} °C")
def test_feet_of_real_water_to_an_atmosphere(row):
    salinity, temperature, latitude, density, feet = row
    water = conditions(salinity, temperature, latitude)
    gravity = float(gsw.grav(latitude, 0))
    assert gsw.rho(*water, 0) == pytest.approx(density, abs=0.006)
    assert depth_under(ATMOSPHERE, water, latitude) / FOOT == pytest.approx(feet, abs=0.002)
    assert column_height(ATMOSPHERE, density, gravity) / FOOT == pytest.approx(feet, rel=1e-4)


@pytest.mark.parametrize("row", COLUMNS, ids=lambda row: f"SP {row[0]}, {row[1]} °C")
def test_every_convention_stands_near_some_water(row):
    """The open sea within 0.9 %, fresh water within 0.4 %; brackish water belongs to neither."""
    salinity, feet = row[0], row[4]
    if salinity == 7:
        assert not any(each.column == pytest.approx(feet, rel=0.005) for each in (SEA_33_FT, FRESH_34_FT))
        return
    allowed = ALLOWED["us", "sea" if salinity else "fresh"]
    assert all(each.column == pytest.approx(feet, rel=0.009 if salinity else 0.004) for each in allowed)


# Metres; bar absolute in the sea (SP 35, 10 °C) and in fresh water (10 °C), latitude 45, 1013.25 hPa.
METRES = [
    (10, 2.0203, 1.9936),
    (18, 2.8260, 2.7779),
    (20, 3.0274, 2.9740),
    (30, 4.0346, 3.9545),
    (40, 5.0418, 4.9350),
    (50, 6.0491, 5.9155),
]
# Feet; psi absolute in the same waters.
FEET = [
    (33, 29.388, 28.998),
    (66, 44.080, 43.300),
    (99, 58.773, 57.604),
    (100, 59.218, 58.037),
    (130, 72.576, 71.041),
    (165, 88.161, 86.212),
]
SEA, FRESH = (35, 10, 45), (0, 10, 45)


@pytest.mark.parametrize(("depth", "sea", "fresh"), METRES)
def test_absolute_pressure_at_metres_of_real_water(depth, sea, fresh):
    for real, bar in ((SEA, sea), (FRESH, fresh)):
        pascals = ATMOSPHERE + pressure_under(depth, conditions(*real), real[2])
        assert pascals / 1e5 == pytest.approx(bar, abs=1.1e-4)
    assert SEA_DENSITY.absolute(depth) / 100 == pytest.approx(sea, rel=0.002)
    assert FRESH_DENSITY.absolute(depth) / 100 == pytest.approx(fresh, rel=0.001)


@pytest.mark.parametrize(("depth", "sea", "fresh"), FEET)
def test_absolute_pressure_at_feet_of_real_water(depth, sea, fresh):
    for real, psi in ((SEA, sea), (FRESH, fresh)):
        pascals = ATMOSPHERE + pressure_under(depth * FOOT, conditions(*real), real[2])
        assert pascals / PSI == pytest.approx(psi, abs=0.0015)
    for convention in (SEA_33_FT, SEA_64_LB):
        assert convention.absolute(depth) == pytest.approx(sea, rel=0.0025)
    for convention in (FRESH_34_FT, FRESH_62_4_LB):
        assert convention.absolute(depth) == pytest.approx(fresh, rel=0.0035)


@pytest.mark.parametrize(("depth", "sea", "fresh"), METRES)
def test_ten_metres_to_a_bar_is_a_rule_of_thumb_within_one_per_cent(depth, sea, fresh):
    """Against bar as TEOS-10 has them; in fresh water the rule errs by more, so prompts name 10.2 m there."""
    assert SEA_10_M.absolute(depth) == pytest.approx(sea, rel=0.0105)
    assert SEA_10_M.absolute(depth) > fresh
    assert column_pressure(depth, 1000, 9.80665) / 1e5 + 1.01325 == pytest.approx(fresh, rel=0.001)
