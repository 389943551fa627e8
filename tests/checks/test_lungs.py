"""Lungs against figures published outside the project; the source stands beside each.

Where sources disagree the test holds the range. Rows marked recalled were not read but remembered.
"""

import pytest

from pressure.constants import GRAVITY
from pressure.laws.boyle import volume_after
from pressure.laws.differences import across, height_for
from pressure.laws.hydrostatics import column_pressure
from pressure.laws.lungs import TEARS_CM_WATER, residual_depth
from pressure.units import FACTORS
from pressure.waters import SEA_10_M, SEA_33_FT

FT_SEA = FACTORS["fsw"]
M_SEA = FACTORS["msw"]
ANATOMY = "OpenStax Anatomy and Physiology 2e, §22.3"
CUSTOM = "common practice, no source"

# Total and residual volume in litres, column of one atmosphere, depth.
RESIDUAL = [
    (6.0, 1.2, 33.0, 132.0, f"{ANATOMY}: 6000 mL; 1200 mL recalled; 5 atm by arithmetic"),
    (6.0, 1.2, 10.0, 40.0, f"{ANATOMY}: the same in metres"),
    (4.2, 1.1, 10.0, 28.0, f"{ANATOMY}: 4200 mL; 1100 mL recalled"),
    (4.0, 1.0, 10.0, 30.0, "a hyperbaric clinic's page: a quarter of the capacity, at about 30 m"),
    (4.0, 1.0, 33.0, 99.0, "the same quarter in feet, by arithmetic"),
]


@pytest.mark.parametrize(("total", "residual", "column", "depth", "source"), RESIDUAL)
def test_depth_of_the_residual_volume(total, residual, column, depth, source):
    assert residual_depth(total, residual, column) == pytest.approx(depth, rel=0.01), source


def test_published_vital_capacities_span_the_depths_that_sources_disagree_about():
    """OpenStax Anatomy and Physiology 2e, §22.3: 6000 mL, of which 4000 to 5000 mL can be breathed out."""
    shallow, deep = (residual_depth(6.0, 6.0 - vital, 10.0) for vital in (4.0, 5.0))
    assert shallow < 30 < 40 < deep


def test_divers_have_been_far_below_the_limit_of_a_rigid_chest():
    """Medscape, dysbarism: 214 m with the lungs at 4.6 %; its 21.7 atm do not follow from 214 m (22.4)."""
    assert SEA_10_M.atmospheres(214) == pytest.approx(22.4)
    assert 100 * volume_after(1.0, 1.0, SEA_10_M.atmospheres(214)) == pytest.approx(4.5, abs=0.05)
    assert 100 * volume_after(1.0, 1.0, 21.7) == pytest.approx(4.6, abs=0.05)
    assert residual_depth(6.0, 1.2, 10.0) < 214


HELD = [
    (volume_after(5.0, 1.0, SEA_33_FT.atmospheres(132)), 1.0, f"5 L are 1 L at 5 atm, 132 ft; {CUSTOM}"),
    (SEA_33_FT.atmospheres(132), 5.0, "US Navy Diving Manual, ch. 12 (12-2): 132 fsw is 5 ata"),
    (volume_after(1.0, 1.0, SEA_33_FT.atmospheres(100)), 0.25, "Encyclopaedia Britannica, thoracic squeeze"),
    (volume_after(1.0, SEA_33_FT.atmospheres(33), 1.0), 2.0, "MSD Manual: a breath at 33 ft doubles"),
    (volume_after(4.0, 3.0, 2.0), 6.0, "an algebra textbook: 4 quarts at 66 ft, held to 33 ft"),
    (volume_after(4.0, 3.0, 1.0), 12.0, "an algebra textbook: the same to the surface"),
]


@pytest.mark.parametrize(("computed", "printed", "source"), HELD)
def test_held_breath(computed, printed, source):
    assert computed == pytest.approx(printed, rel=0.01), source


# Over-pressure, unit, feet of sea water.
RUPTURE = [
    (80, "mmHg", 3.47, "text beside a demonstration video, 2008: estimate for human alveoli"),
    (92, "mmHg", 4.0, "the same: mean of a bench model"),
    (70, "mmHg", 3.05, "Malhotra and Wright, 1961, recalled; depth by arithmetic"),
    (90, "cmH2O", 2.88, "IAFF, diving medicine page; depth by arithmetic"),
    (95, "cmH2O", 3.04, "later texts, recalled; depth by arithmetic"),
    (110, "cmH2O", 3.52, "later texts, recalled; depth by arithmetic"),
]


@pytest.mark.parametrize(("pressure", "unit", "feet", "source"), RUPTURE)
def test_rise_to_a_published_over_pressure(pressure, unit, feet, source):
    rise = height_for(pressure * FACTORS[unit], FT_SEA)
    assert rise == pytest.approx(feet, rel=0.005), source
    assert 2.2 < rise < 4.02  # teach "about 1 m, 3 to 4 ft"


def test_ninety_centimetres_of_water_are_66_millimetres_of_mercury():
    """IAFF, diving medicine page, prints 90 cmH2O; the conversion is arithmetic."""
    assert 90 * FACTORS["cmH2O"] / FACTORS["mmHg"] == pytest.approx(66.2, abs=0.05)


def test_the_range_that_is_taught_lies_about_a_metre():
    """MSD Manual: as little as 4 ft, about 1 m. James, 1993: deaths on an ascent of less than 2 m."""
    lowest, highest = (height_for(each * FACTORS["cmH2O"], M_SEA) for each in TEARS_CM_WATER)
    assert 0.68 < lowest < 1.0 < highest < 1.1
    assert highest < 4 * 0.3048 < 2.0


def test_what_lungs_bear_in_quiet_breathing_is_a_hand_of_water():
    """OpenStax College Physics 2e, §11.9: −2 to +3 mmHg inside the lungs; far below what tears them."""
    assert height_for(3 * FACTORS["mmHg"], M_SEA) == pytest.approx(0.04, abs=0.001)
    assert 3 * FACTORS["mmHg"] < 0.1 * TEARS_CM_WATER[0] * FACTORS["cmH2O"]


def test_a_tube_to_the_surface_asks_more_of_the_lungs_with_every_centimetre():
    """OpenStax College Physics 2e, §11.9: lungs 60.0 cm down, −3.00 cmH2O to breathe: −63.0 cmH2O."""
    fresh = column_pressure(1.0, 1000.0, GRAVITY.value)
    assert -across(fresh, 0.600, 0.0) / FACTORS["cmH2O"] - 3.00 == pytest.approx(-63.0)


@pytest.mark.parametrize(("depth", "psi"), [(0, 14.7), (33, 29.4), (132, 73.5)])
def test_supplied_air_has_the_waters_pressure_at_the_chest(depth, psi):
    """Common practice, no source: so lungs of 5 L stay 5 L, where surface air would shrink."""
    assert volume_after(5.0, psi, SEA_33_FT.absolute(depth)) == pytest.approx(5.0)
    assert volume_after(5.0, SEA_33_FT.surface, SEA_33_FT.absolute(depth)) <= 5.0
