"""Worked examples printed in textbooks, manuals and agencies' pages, reproduced to their own rounding.

The source stands beside each; "arithmetic" is our recomputation where the printed figure is in error.
"""

import pytest

from pressure.constants import ATMOSPHERE
from pressure.laws.boyle import pressure_after, volume_after
from pressure.laws.hydrostatics import absolute, atmospheres, column_height, column_pressure, gauge
from pressure.units import FACTORS
from pressure.waters import FRESH_0432_PSI, SEA_10_M, SEA_33_FT

COLLEGE = "OpenStax College Physics 2e"
CHEMISTRY = "OpenStax Chemistry 2e"


def converted(value, unit, into):
    return value * FACTORS[unit] / FACTORS[into]


COLUMNS = [
    (column_height(1.01e5, 1000, 9.80), 10.3, f"{COLLEGE}, §11.4: fresh water for one atmosphere, m"),
    (column_height(101_325, 1000, 9.81), 10.3, f"{CHEMISTRY}, §9.1: the same"),
    (column_pressure(40.0, 1000, 9.80) / 1e3, 392, f"{COLLEGE}, §11.4: mean pressure on a dam, kPa"),
    (column_pressure(40.0, 1000, 9.80) * 4.00e4, 1.57e10, f"{COLLEGE}, §11.4: force on the dam, N"),
    (column_height(1.013e5, 13.6e3, 9.80), 0.760, f"{COLLEGE}, §11.4: mercury for one atmosphere, m"),
    (column_pressure(0.500, 1050, 9.80) / 133, 38.7, f"{COLLEGE}, §11.6: blood over half a metre, mmHg"),
    (column_pressure(1.4, 1050, 9.80), 1.44e4, f"{COLLEGE}, §11.9: 1.4e4 Pa printed to two figures"),
]


@pytest.mark.parametrize(
    ("computed", "printed", "source"), COLUMNS, ids=lambda each: each if isinstance(each, str) else ""
)
def test_columns(computed, printed, source):
    assert computed == pytest.approx(printed, rel=0.005), source


READINGS = [
    (absolute(34, 14.7), 48.7, f"{COLLEGE}, §11.6: 34 psi gauge, psi absolute"),
    (converted(absolute(34, 14.7), "psi", "kPa"), 336, f"{COLLEGE}, §11.6: the same in kPa"),
    (absolute(5.00, 1030), 1035, f"{COLLEGE}, §11.6: 5.00 cm of water in a U-tube, cm"),
    (absolute(-50.0, 760), 710, f"{COLLEGE}, §11.6: 50.0 mm of mercury below the atmosphere, mm"),
    (gauge(710, 760), -50.0, f"{COLLEGE}, §11.6: the same back"),
    (
        FRESH_0432_PSI.gauge(57),
        24.6,
        "teaching sheet, undated (low authority): 57 ft of fresh water, psi gauge",
    ),
    (FRESH_0432_PSI.absolute(57), 39.3, "teaching sheet, undated (low authority): the same, psi absolute"),
]


@pytest.mark.parametrize(
    ("computed", "printed", "source"), READINGS, ids=lambda each: each if isinstance(each, str) else ""
)
def test_gauge_and_absolute(computed, printed, source):
    assert computed == pytest.approx(printed, rel=0.0015), source


CONVERSIONS = [
    (29.2, "inHg", 742, "torr", f"{CHEMISTRY}, §9.1 example"),
    (29.2, "inHg", 0.976, "atm", f"{CHEMISTRY}, §9.1 example"),
    (29.2, "inHg", 98.9, "kPa", f"{CHEMISTRY}, §9.1 example"),
    (29.2, "inHg", 989, "mbar", f"{CHEMISTRY}, §9.1 example"),
    (740, "torr", 0.974, "atm", f"{CHEMISTRY}, §9.1"),
    (740, "torr", 740, "mmHg", f"{CHEMISTRY}, §9.1"),
    (740, "torr", 98.7, "kPa", f"{CHEMISTRY}, §9.1"),
    (740, "torr", 0.987, "bar", f"{CHEMISTRY}, §9.1"),
    (615, "mmHg", 0.809, "atm", f"{CHEMISTRY}, §9.1 exercises"),
    (615, "mmHg", 82.0, "kPa", f"{CHEMISTRY}, §9.1 exercises"),
    (32, "psi", 220, "kPa", f"{CHEMISTRY}, §9.1 exercises, two figures"),
    (88.8, "atm", 1.30e3, "psi", f"{CHEMISTRY}, §9.1 exercises"),
    (
        3000,
        "psi",
        206.8,
        "bar",
        "arithmetic; OpenStax University Physics 1, §14.2 prints 207 atmospheres",
    ),
    (3000, "psi", 204.1, "atm", "arithmetic; the same slip of the pen, put right"),
    (1, "bar", 32.633, "fsw", "arithmetic from 64 lb/ft³"),
    (1, "fsw", 0.30643, "msw", "US Navy Diving Manual, as quoted in an encyclopedia"),
    (1, "fsw", 0.44444, "psi", "US Navy Diving Manual, as quoted in an encyclopedia"),
    (1, "atm", 33.066, "fsw", "arithmetic from 64 lb/ft³"),
    (1, "atm", 33.914, "ffw", "arithmetic from 62.4 lb/ft³"),
    (1, "atm", 10.1325, "msw", "definition of the metre of sea water"),
]


@pytest.mark.parametrize(("value", "unit", "printed", "into", "source"), CONVERSIONS)
def test_conversions(value, unit, printed, into, source):
    assert converted(value, unit, into) == pytest.approx(printed, rel=0.005), source


DEPTHS = [
    (SEA_33_FT.atmospheres(132), 5, 1e-9, "US Navy Diving Manual, ch. 12 (12-2): 132 fsw"),
    (SEA_33_FT.atmospheres(46), 2.3939, 5e-5, "TERMIUM Plus, Government of Canada, 2002: 46 fsw"),
    (SEA_10_M.absolute(60), 7, 1e-9, "Scott et al., J Appl Physiol 130:1490, 2021: 60 m of sea"),
    *[
        (
            atmospheres(depth, 33.1),
            printed,
            0.07,
            f"OSHA, commercial diving, gas laws, Table 1: {depth} ft",
        )
        for depth, printed in ((100, 4.0), (150, 5.5), (200, 7.1), (300, 10.0))
    ],
]


@pytest.mark.parametrize(("computed", "printed", "within", "source"), DEPTHS)
def test_depth_in_atmospheres(computed, printed, within, source):
    assert computed == pytest.approx(printed, abs=within), source


def test_the_table_that_prints_8_3_atm_at_250_ft_is_in_error():
    """OSHA, commercial diving, gas laws, Table 1; its own formula gives 8.55."""
    assert atmospheres(250, 33.1) == pytest.approx(8.55, abs=0.005)
    assert abs(atmospheres(250, 33.1) - 8.3) > 0.2


BOYLE = [
    (volume_after(4, 3, 2), 6, "an algebra textbook: 4 qt at 66 ft, at 33 ft"),
    (volume_after(4, 3, 1), 12, "an algebra textbook: 4 qt at 66 ft, at the surface"),
    (pressure_after(13.0, 15.0, 7.5), 26, f"{CHEMISTRY}, §9.2 example, psi"),
    (volume_after(30.0, 6.5, 11.0), 17.7, f"{CHEMISTRY}, §9.2, mL"),
    (pressure_after(1.0, 4.0, 3.0), 1.33, "NASA Glenn, Boyle's law page, kPa"),
    (volume_after(1, 1, SEA_33_FT.atmospheres(100)), 0.25, "Encyclopaedia Britannica, Thoracic squeeze"),
    (volume_after(1, 1, SEA_10_M.atmospheres(30)), 0.25, "Encyclopaedia Britannica, Thoracic squeeze"),
    (
        7.00e5 - pressure_after(ATMOSPHERE.value, 100e-6, 2.00e-3),
        6.95e5,
        "OpenStax University Physics 2, §2.1: 100 cm³ at 1 atm let out of a 2.00 L tyre, Pa",
    ),
    (pressure_after(1.00, 1 / 1.20, 1 / 0.60), 0.50, f"{COLLEGE}, §13.3: half the density, half the atm"),
]


@pytest.mark.parametrize(
    ("computed", "printed", "source"), BOYLE, ids=lambda each: each if isinstance(each, str) else ""
)
def test_boyle(computed, printed, source):
    assert computed == pytest.approx(printed, rel=0.01), source


@pytest.mark.parametrize(
    ("depth_ft", "share"),
    [(33, 1 / 2), (66, 1 / 3), (99, 1 / 4), (132, 1 / 5)],
    ids=lambda each: f"{each:.4g}",
)
def test_surface_air_in_an_open_box(depth_ft, share):
    """Common practice, no source: one cubic foot of surface air in an open box going down."""
    assert volume_after(1.0, SEA_33_FT.surface, SEA_33_FT.absolute(depth_ft)) == pytest.approx(share)


@pytest.mark.parametrize(("ata", "cubic_feet"), [(2, 3), (1, 6)])
def test_a_cubic_foot_from_six_atmospheres(ata, cubic_feet):
    """Common practice, no source: 1 ft³ at 6 atm."""
    assert volume_after(1.0, 6.0, ata) == pytest.approx(cubic_feet)
