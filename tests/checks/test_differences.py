"""Ears, masks, suits and helmets against figures published outside the project.

The table is plain arithmetic from 64 and 62.4 lb/ft³ and standard gravity, kept to its printed digits.
"""

import gsw
import pytest

from pressure.laws.differences import across, air_between, height_for
from pressure.units import FACTORS
from pressure.waters import SEA_10_M, SEA_33_FT, SEA_64_LB

# Pressure and unit; then kPa, psi, mmHg, ft sea, ft fresh, msw, m fresh.
TABLE = [
    (10, "mmHg", 1.333, 0.193, 10.0, 0.44, 0.45, 0.133, 0.136),
    (20, "mmHg", 2.666, 0.387, 20.0, 0.87, 0.89, 0.267, 0.272),
    (30, "mmHg", 4.000, 0.580, 30.0, 1.31, 1.34, 0.400, 0.408),
    (60, "mmHg", 7.999, 1.160, 60.0, 2.61, 2.68, 0.800, 0.816),
    (70, "mmHg", 9.333, 1.354, 70.0, 3.05, 3.12, 0.933, 0.952),
    (80, "mmHg", 10.666, 1.547, 80.0, 3.48, 3.57, 1.067, 1.088),
    (90, "mmHg", 11.999, 1.740, 90.0, 3.92, 4.02, 1.200, 1.224),
    (92, "mmHg", 12.266, 1.779, 92.0, 4.00, 4.11, 1.227, 1.251),
    (100, "mmHg", 13.332, 1.934, 100.0, 4.35, 4.46, 1.333, 1.360),
    (30, "kPa", 30.000, 4.351, 225.0, 9.79, 10.04, 3.000, 3.059),
    (500, "mmHg", 66.661, 9.668, 500.0, 21.75, 22.31, 6.666, 6.798),
    (760, "mmHg", 101.325, 14.696, 760.0, 33.07, 33.91, 10.133, 10.332),
    (90, "cmH2O", 8.826, 1.280, 66.2, 2.88, 2.95, 0.883, 0.900),
    (95, "cmH2O", 9.316, 1.351, 69.9, 3.04, 3.12, 0.932, 0.950),
    (110, "cmH2O", 10.787, 1.565, 80.9, 3.52, 3.61, 1.079, 1.100),
    (1, "psi", 6.895, 1.000, 51.7, 2.25, 2.31, 0.689, 0.703),
    (2, "psi", 13.790, 2.000, 103.4, 4.50, 4.62, 1.379, 1.406),
]
COLUMNS = (
    ("kPa", 3),
    ("psi", 3),
    ("mmHg", 1),
    ("fsw", 2),
    ("ffw", 2),
    ("msw", 3),
    ("metre of fresh water", 3),
)
SIZES = {**FACTORS, "metre of fresh water": 100 * FACTORS["cmH2O"]}


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row[0]} {row[1]}")
def test_differences_as_depths_of_water(row):
    pascals = row[0] * FACTORS[row[1]]
    for (unit, places), printed in zip(COLUMNS, row[2:], strict=True):
        assert height_for(pascals, SIZES[unit]) == pytest.approx(printed, abs=0.501 * 10**-places), unit


def mercury(feet):
    return across(SEA_64_LB.gradient, feet, 0.0) * FACTORS["psi"] / FACTORS["mmHg"]


EARS = [
    (4.0, 91.9, "Atlas of Emergency Medicine 5e, 2021: the tube locks at about 4 ft; mmHg by arithmetic"),
    (1.2 / 0.3048, 90.5, "the same Atlas: 1.2 m; mmHg by arithmetic"),
    (2.6, 59.8, "texts, recalled: pain near 60 mmHg at 2.6 ft"),
    (3.9, 89.6, "texts, recalled: the tube locks near 90 mmHg at 3.9 ft"),
    (4.3, 98.8, "texts, recalled: eardrums tear from 100 mmHg, 4.3 ft"),
    (17.4, 399.9, "texts, recalled: 17.4 ft pairs with 400 mmHg, not with 500"),
]


@pytest.mark.parametrize(("feet", "printed", "source"), EARS)
def test_pressure_across_an_eardrum(feet, printed, source):
    assert mercury(feet) == pytest.approx(printed, abs=0.06), source


def test_half_a_thousand_millimetres_do_not_belong_to_17_feet():
    """Texts that pair 17.4 ft with 500 mmHg are in error by a fifth: 500 mmHg is 21.75 ft; arithmetic."""
    assert mercury(17.4) < 0.81 * 500
    assert mercury(21.75) == pytest.approx(500, rel=0.001)


def test_the_tube_opens_by_itself_at_a_hand_or_two_of_water():
    """Edmonds et al., Diving and Subaquatic Medicine: 10 to 30 mmHg, about 25 cm of water."""
    least, most = (height_for(each * FACTORS["mmHg"], FACTORS["msw"]) for each in (10, 30))
    assert least < 0.25 < most


def test_ears_hurt_well_within_the_first_fifteen_feet():
    """A clinical summary page repeating a medical text: pain within 15 ft unless equalised."""
    assert mercury(15) > 5 * 60


def test_a_newton_textbook_eardrum():
    """OpenStax College Physics 2e, §11.9: 3.00 N on 1.00 cm² is 226 mmHg (133 Pa) and 3.06 m of fresh."""
    pascals = 3.00 / 1.00e-4
    assert pascals / 133 == pytest.approx(226, abs=0.5)
    assert pascals / FACTORS["mmHg"] == pytest.approx(225, abs=0.05)
    assert height_for(pascals, SIZES["metre of fresh water"]) == pytest.approx(3.06, abs=0.005)


def test_half_a_psi_to_a_foot_is_rounded_up():
    """A diver-safety article: about 0.5 psi to the foot, 0.1 kg/cm² to the metre; exactly 0.444, 0.1025."""
    assert SEA_64_LB.gradient == pytest.approx(0.4444, abs=1e-4)
    kilograms = SEA_64_LB.gradient * FACTORS["psi"] / 0.3048 / 98_066.5
    assert kilograms == pytest.approx(0.1025, abs=1e-4)


@pytest.mark.parametrize(("last", "now"), [(10.0, 14.0), (33.0, 45.0), (60.0, 66.0)])
def test_the_difference_between_two_depths_in_the_standard_ocean(last, now):
    """TEOS-10 (gsw 3.6.23), SP 35 at 10 °C, latitude 45: all conventions of the trade within 1 %."""
    upper, lower = (gsw.p_from_z(-feet * 0.3048, 45) for feet in (last, now))
    density = gsw.rho(35.165, gsw.CT_from_t(35.165, 10.0, 10.0), 10.0)
    weight = density * gsw.grav(45, 0.0) * (now - last) * 0.3048
    assert across(SEA_33_FT.gradient, now, last) * FACTORS["psi"] == pytest.approx(weight, rel=0.01)
    assert (lower - upper) * 1e4 == pytest.approx(weight, rel=0.003)


@pytest.mark.parametrize(("depth", "atmospheres"), [(33.0, 1), (66.0, 2), (99.0, 3)])
def test_a_helmet_open_to_the_deck_bears_the_water_alone(depth, atmospheres):
    """Common practice, no source: an atmosphere of difference for every 33 ft."""
    assert across(SEA_33_FT.gradient, depth, 0.0) == pytest.approx(14.7 * atmospheres)


def test_air_to_keep_a_space_full_goes_with_the_absolute_pressure():
    """Common practice, no source: every 33 ft takes the volume of the space once more in free air."""
    for depth, free in ((33, 1), (66, 2), (99, 3)):
        taken = air_between(1.0, SEA_33_FT.absolute(depth), SEA_33_FT.surface, SEA_33_FT.surface)
        assert taken == pytest.approx(free)


def test_an_open_space_has_no_difference():
    """Common practice, no source: a difference arises only where a space is closed."""
    for convention in (SEA_33_FT, SEA_10_M, SEA_64_LB):
        assert across(convention.gradient, 40.0, 40.0) == 0.0
