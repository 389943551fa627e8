"""Boyle's law as the families set it, against published results and a real-gas library."""

import pytest
from CoolProp.CoolProp import PropsSI

from pressure import catalogue
from pressure.laws.boyle import density_after, pressure_after, volume_after
from pressure.units import shown
from pressure.waters import SEA_10_M, SEA_33_FT


def answer(slug, system, **facts):
    posed = catalogue.family(slug).pose(system, {"scene": 0.0, **{n: float(v) for n, v in facts.items()}})
    return posed.accepted[0]


BETWEEN = [
    ("us", 33, 66, "ft3", 4, True, 6, "an algebra textbook: 4 qt at 66 ft are 6 qt at 33 ft"),
    ("us", 33, 66, "ft3", 6, False, 4, "the same, turned round"),
    ("us", 33, 165, "ft3", 1, True, 3, "1 ft³ at 6 atm is 3 ft³ at 2 atm; common practice, no source"),
    ("us", 33, 99, "ft3", 1, True, 2, "half the pressure, twice the volume; common practice, no source"),
    ("metric", 10, 30, "L", 10, True, 20, "4 bar to 2 bar; common practice, no source"),
    ("metric", 10, 60, "L", 7, False, 2, "Scott et al., 2021: 60 m is 7 atm; 2 atm at 10 m"),
]


@pytest.mark.parametrize(("system", "shallow", "deep", "unit", "volume", "up", "printed", "source"), BETWEEN)
def test_between_two_depths(system, shallow, deep, unit, volume, up, printed, source):
    foot = "ft" if system == "us" else "m"
    facts = {f"shallow_{foot}": shallow, f"deep_{foot}": deep, f"volume_{unit}": volume, "is_up": up}
    assert answer("between-depths", system, **facts) == pytest.approx(printed), source


SHRUNK = [
    ("us", 50, 33, "one half at 33 ft; common practice, no source"),
    ("us", 100 / 3, 66, "one third at 66 ft; common practice, no source"),
    ("us", 25, 99, "one quarter at 99 ft; common practice, no source"),
    ("us", 20, 132, "one fifth at 132 ft; common practice, no source"),
    ("us", 24.8, 100, "Encyclopaedia Britannica, Thoracic squeeze: about one fourth at 100 ft"),
    ("metric", 25, 30, "Encyclopaedia Britannica, Thoracic squeeze: about one fourth at 30 m"),
    ("metric", 20, 40, "OpenStax Anatomy and Physiology 2e, §22.3: 6.0 L over 1.2 L, arithmetic"),
    ("us", 20, 132, "OpenStax Anatomy and Physiology 2e, §22.3: the same in feet, arithmetic"),
    (
        "metric",
        100 * 1.1 / 4.2,
        28,
        "OpenStax Anatomy and Physiology 2e, §22.3: 4.2 L over 1.1 L, arithmetic",
    ),
]


@pytest.mark.parametrize(("system", "left", "depth", "source"), SHRUNK)
def test_the_depth_that_leaves_a_share(system, left, depth, source):
    unit = "volume_ft3" if system == "us" else "volume_L"
    found = answer("depth-for-fraction", system, **{unit: 10, "left_percent": left, "is_fresh": 0})
    assert found == pytest.approx(depth, rel=0.007), source


def test_the_table_of_a_cubic_foot():
    """Common practice, no source: 14.7 psi and a share more at each 33 ft."""
    facts = {"first_ft": 33.0, "step_ft": 33.0, "volume_ft3": 1.0, "scene": 0.0}
    cells = catalogue.family("air-table").pose("us", facts).cells
    assert [cell.accepted[0] for cell in cells[::2]] == pytest.approx([29.4, 44.1, 58.8, 73.5])
    assert [cell.accepted[0] for cell in cells[1::2]] == pytest.approx([1 / 2, 1 / 3, 1 / 4, 1 / 5])


def test_air_for_a_lift_at_99_ft():
    """Arithmetic from 64 lb/ft³: 1000 lb needs 15.625 ft³, which at 99 fsw takes 62.5 ft³ of surface air."""
    room = 1000 / 64
    added = answer("air-to-refill", "us", from_ft=0, to_ft=99, room_ft3=room)
    assert added + room == pytest.approx(62.5)  # what is added and what went down in the full bag


def test_four_litres_at_99_ft_are_sixteen_at_the_surface():
    """Arithmetic: unvented, 4 L grow to 16 L, so a box of 4 L spills 12 L."""
    assert volume_after(4, SEA_33_FT.absolute(99), SEA_33_FT.surface) == pytest.approx(16)
    lost = answer("box-on-ascent", "us", from_ft=99, to_ft=0, room_ft3=4, filled_percent=100)
    assert lost == pytest.approx(12)


def test_a_full_breath_doubles_over_the_last_33_ft():
    """MSD Manual, pulmonary barotrauma: a full breath at 33 ft doubles by the surface."""
    assert volume_after(1, SEA_33_FT.absolute(33), SEA_33_FT.surface) == pytest.approx(2)


def test_half_a_box_at_33_ft_spills_at_the_surface_only():
    """The same doubling: half full at 33 ft, it is just full where the water ends."""
    found = answer("spill-depth", "us", from_ft=33, filled_percent=50, room_ft3=8)
    assert found == pytest.approx(0, abs=1e-9)


def test_half_the_density_is_half_the_pressure():
    """OpenStax College Physics 2e, §13.3: 1.20 at 1.00 atm, 0.60 at 0.50 atm."""
    assert density_after(1.20, 1.00, 0.50) == pytest.approx(0.60)
    assert pressure_after(1.00, 1 / 1.20, 1 / 0.60) == pytest.approx(0.50)


@pytest.mark.parametrize("depth", range(0, 61, 10))
def test_the_density_of_real_air_at_depth(depth):
    """CoolProp 8.0.0, air at 20 °C: within 0.3 % of the ideal gas down to 60 m."""
    surface = PropsSI("D", "T", 293.15, "P", 1e5, "Air")
    real = PropsSI("D", "T", 293.15, "P", SEA_10_M.absolute(depth) * 1e5, "Air")
    assert answer("density-at-depth", "metric", depth_m=depth, density=surface) == pytest.approx(
        real, rel=0.003
    )


def test_the_air_of_the_prompts_is_air():
    """CoolProp 8.0.0: air at 1 atm is 1.18 g/L at about 26 °C and 1.29 g/L at about 0 °C."""
    axes = catalogue.family("density-at-depth").axes["metric"]
    densities = next(axis.values for axis in axes if axis.name == "density")
    warm, cold = (PropsSI("D", "T", kelvin, "P", 101_325, "Air") for kelvin in (300.15, 273.15))
    assert warm < min(densities)
    assert max(densities) < cold * 1.001


STRETCHES = [
    ("us", {"top_ft": 0, "length_ft": 33, "apart_ft": 33, "volume_ft3": 12}, (6, 2, 1)),
    ("metric", {"top_m": 0, "length_m": 10, "apart_m": 10, "volume_L": 120}, (60, 20, 10)),
]


@pytest.mark.parametrize(("system", "facts", "changes"), STRETCHES, ids=["feet", "metres"])
def test_half_a_sixth_and_a_twelfth_go_over_the_first_three_atmospheres(system, facts, changes):
    """Common practice, no source: 1/2, 1/3, 1/4 are left, so 1/2, 1/6, 1/12 go."""
    facts = {**facts, "is_up": 0, "asks_least": 0, "scene": 0}
    posed = catalogue.family("shallow-metres").pose(system, {n: float(v) for n, v in facts.items()})
    words = " ".join(option.why for option in posed.options)
    assert all(
        f"changes by {shown(change, 'ft3' if system == 'us' else 'L')}." in words for change in changes
    )
    assert posed.options[0].name == "shallowest-stretch"


def test_a_sixty_litre_bell_takes_a_fill_for_each_atmosphere():
    """Common practice, no source: one more fill of surface air every 33 ft or 10 m."""
    assert answer("air-to-refill", "us", from_ft=0, to_ft=66, room_ft3=60) == pytest.approx(120)
    assert answer("air-to-refill", "metric", from_m=10, to_m=30, room_L=60) == pytest.approx(120)
