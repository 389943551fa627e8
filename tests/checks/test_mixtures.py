"""Partial pressures printed in textbooks, manuals and agencies' pages, reproduced to their own rounding."""

import pytest
from scipy.constants import R, atm

from pressure.draw import key_of
from pressure.families.depth_for_partial_pressure import FAMILY as DEPTH_FOR_PARTIAL
from pressure.families.partial_pressure import FAMILY as PARTIAL
from pressure.families.surface_equivalent import FAMILY as EQUIVALENT
from pressure.laws.boyle import volume_after
from pressure.laws.dalton import partial_pressure, share, surface_equivalent, total_for
from pressure.laws.hydrostatics import atmospheres
from pressure.waters import SEA_33_FT

CHEMISTRY = "OpenStax Chemistry 2e"
COLLEGE = "OpenStax College Physics 2e"
NAVY = "US Navy Diving Manual"
ALVEOLI = "OpenStax Anatomy & Physiology 2e, §22.4, gases in the alveoli, mmHg; their shares recalled"


def moles_in(litres, celsius, moles):
    """Atmospheres of an ideal gas; R from scipy, kelvin with 273.15."""
    return moles * R * (celsius + 273.15) / (litres / 1000) / atm


H2_HE_NE = [2.50e-3, 1.00e-3, 3.00e-4]
WEIGHED = [0.200 / 2.016, 1.00 / 28.01, 0.820 / 39.95]  # moles of H2, N2, Ar
SHARES = [
    (moles_in(10.0, 35, H2_HE_NE[0]), 6.32e-3, f"{CHEMISTRY}, §9.3 example: hydrogen, atm"),
    (moles_in(10.0, 35, H2_HE_NE[1]), 2.53e-3, f"{CHEMISTRY}, §9.3 example: helium, atm"),
    (moles_in(10.0, 35, H2_HE_NE[2]), 7.58e-4, f"{CHEMISTRY}, §9.3 example: neon, atm"),
    (sum(moles_in(10.0, 35, n) for n in H2_HE_NE), 9.61e-3, f"{CHEMISTRY}, §9.3 example: the whole, atm"),
    (sum(moles_in(2.00, 20, n) for n in WEIGHED), 1.87, f"{CHEMISTRY}, §9.3: the whole by weighing, atm"),
    (share(2.83, 2.83 + 8.41), 0.252, f"{CHEMISTRY}, §9.3 example: share of oxygen by moles"),
    (partial_pressure(share(2.83, 11.24), 192), 48.4, f"{CHEMISTRY}, §9.3 example: its pressure, kPa"),
    (share(8.41, 2.83 + 8.41), 0.748, f"{CHEMISTRY}, §9.3 example: share of the other gas"),
    (partial_pressure(share(8.41, 11.24), 192), 144, f"{CHEMISTRY}, §9.3 example: its pressure, kPa"),
    (
        partial_pressure(1 - share(25.2, 750), 750),
        725,
        f"{CHEMISTRY}, §9.3 example: gas over water without its vapour, torr",
    ),
    (share(partial_pressure(0.209, atm), 2.00e6) * 100, 1.06, f"{COLLEGE}, §13.6: oxygen in a mix, %"),
    (partial_pressure(0.749, 760), 569, f"{ALVEOLI}: nitrogen"),
    (partial_pressure(0.137, 760), 104, f"{ALVEOLI}: oxygen"),
    (partial_pressure(0.062, 760), 47, f"{ALVEOLI}: water"),
]


@pytest.mark.parametrize(
    ("computed", "printed", "source"), SHARES, ids=lambda each: each if isinstance(each, str) else ""
)
def test_shares_and_their_pressures(computed, printed, source):
    assert computed == pytest.approx(printed, rel=0.003), source


DIVES = [
    (
        share(0.9, SEA_33_FT.atmospheres(660)) * 100,
        4.286,
        1e-3,
        f"{NAVY}, 12-5: 0.9 ata at 660 fsw, per cent",
    ),
    (
        partial_pressure(0.043, SEA_33_FT.atmospheres(726)),
        0.99,
        0.002,
        f"{NAVY}, 12-5: 4.3 % at 726 fsw, ata",
    ),
    (partial_pressure(0.7808, 137), 106.97, 0.001, f"{NAVY}, ch. 2 air at 137 ata, recalled: nitrogen, ata"),
    (partial_pressure(0.209, 137), 28.63, 0.001, f"{NAVY}, ch. 2 air at 137 ata, recalled: oxygen, ata"),
    (
        surface_equivalent(1.0, SEA_33_FT.atmospheres(132)),
        5.0,
        1e-9,
        f"{NAVY}, ch. 2, recalled: 1 % at 5 ata",
    ),
    (total_for(1.6, 0.21), 7.62, 0.001, "a web page of low authority: air at 1.6 ata of oxygen, ata"),
    (
        total_for(0.16, 0.21),
        0.76,
        0.005,
        "OpenStax University Physics 2, §2.2: 0.16 atm impairs; air at, ata",
    ),
    *[
        (
            partial_pressure(0.78, atmospheres(depth, 33.1)),
            printed,
            0.02,
            f"OSHA, gas laws, Table 1: {depth} ft",
        )
        for depth, printed in ((150, 4.3), (200, 5.5), (300, 7.9))
    ],
]


@pytest.mark.parametrize(("computed", "printed", "within", "source"), DIVES)
def test_partial_pressures_at_depth(computed, printed, within, source):
    assert computed == pytest.approx(printed, rel=within), source


def test_the_nitrogen_printed_as_3_0_and_6_4_atm_does_not_follow_from_its_own_table():
    """OSHA, commercial diving, gas laws, Table 1: 100 and 250 ft; with 78 % the rest of the column agrees."""
    assert partial_pressure(0.78, atmospheres(100, 33.1)) == pytest.approx(3.14, abs=0.005)
    assert partial_pressure(0.78, atmospheres(250, 33.1)) == pytest.approx(6.67, abs=0.005)


def test_the_partial_pressure_printed_as_21_200_pa_needs_another_atmosphere():
    """OpenStax College Physics 2e, §13.6: 2.12e4 Pa from 20.9 % of 1.01e5 Pa, which is 2.11e4."""
    assert round(partial_pressure(0.209, 1.01e5), -2) == 2.11e4
    assert round(partial_pressure(0.209, 1.013e5), -2) == 2.12e4


def test_the_total_printed_as_1_137_atm_comes_out_a_thousandth_less():
    """OpenStax Chemistry 2e, §9.3 check your learning: 5.73 L at 25 °C; 1.136 with its own constants."""
    total = sum(moles_in(5.73, 25, n) for n in (0.0388, 0.147, 0.0803))
    assert total == pytest.approx(1.136, abs=0.001)
    assert abs(total - 1.137) > 0.0005


def test_the_dry_volume_printed_as_0_537_litres_is_0_538():
    """OpenStax Chemistry 2e, §9.3 check your learning: 0.560 L wet at 764 torr, vapour 30.0 torr."""
    assert volume_after(0.560, 764 - 30.0, 764) == pytest.approx(0.5380, abs=5e-5)


PROBLEMS = [
    (PARTIAL, "us", {"depth_ft": 99.0, "oxygen_percent": 21.0, "is_nitrogen": 0.0, "scene": 0.0}, 0.84),
    (PARTIAL, "metric", {"depth_m": 30.0, "oxygen_percent": 32.0, "is_nitrogen": 1.0, "scene": 1.0}, 2.72),
    (DEPTH_FOR_PARTIAL, "us", {"limit_atm": 1.4, "oxygen_percent": 35.0, "is_fresh": 1.0, "scene": 0.0}, 102),
    (EQUIVALENT, "us", {"depth_ft": 66.0, "share_percent": 0.5, "scene": 0.0}, 1.5),
]


@pytest.mark.parametrize(("family", "system", "facts", "answer"), PROBLEMS, ids=lambda each: str(each)[:20])
def test_whole_atmospheres_come_out_whole(family, system, facts, answer):
    """Common practice, no source: 33 ft of sea, 34 ft of fresh water or 10 m to an atmosphere."""
    assert key_of(family.pose(system, facts)).answer == pytest.approx(answer)
