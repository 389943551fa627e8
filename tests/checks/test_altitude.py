"""The air over a mountain lake, against the standard atmosphere of ICAO (1993) and of the US (1976)."""

import ambiance
import pytest

from pressure import catalogue
from pressure.laws.altitude import standard_pressure
from pressure.units import FACTORS

# Geometric metres; Pa, bar, atm, psi, mmHg: ambiance 1.3.1, and fluids 1.3.1 within 0.02 Pa.
STANDARD = [
    (0, 101_325.00, 1.01325, 1.00000, 14.6959, 760.00),
    (300, 97_772.74, 0.97773, 0.96494, 14.1807, 733.36),
    (304.8, 97_716.74, 0.97717, 0.96439, 14.1726, 732.94),
    (1000, 89_876.28, 0.89876, 0.88701, 13.0355, 674.13),
    (1524, 84_311.05, 0.84311, 0.83209, 12.2283, 632.38),
    (2000, 79_501.41, 0.79501, 0.78462, 11.5307, 596.31),
    (2438.4, 75_271.19, 0.75271, 0.74287, 10.9172, 564.58),
    (3000, 70_121.14, 0.70121, 0.69204, 10.1702, 525.95),
    (3048, 69_694.60, 0.69695, 0.68783, 10.1083, 522.75),
]


@pytest.mark.parametrize("row", STANDARD, ids=lambda row: f"{row[0]} m")
def test_the_standard_atmosphere(row):
    altitude, pascals, bar, atm, psi, mercury = row
    assert standard_pressure(altitude) == pytest.approx(pascals, abs=0.02)
    for unit, printed, within in (("bar", bar, 6e-6), ("atm", atm, 6e-6), ("psi", psi, 6e-5)):
        assert standard_pressure(altitude) / FACTORS[unit] == pytest.approx(printed, abs=within)
    assert standard_pressure(altitude) / FACTORS["mmHg"] == pytest.approx(mercury, abs=0.006)


@pytest.mark.parametrize("altitude", range(0, 11_000, 500))
def test_an_independent_package_gives_the_same(altitude):
    """ambiance, ICAO Doc 7488 (1993)."""
    published = float(ambiance.Atmosphere(altitude).pressure[0])
    assert standard_pressure(altitude) == pytest.approx(published, rel=1e-6)


def test_five_thousand_feet_is_843_millibar():
    """US Navy Diving Manual, ch. 9 (9-12.1.1): 843 mb, 0.832 ata."""
    pascals = standard_pressure(5000 * FACTORS["ft"])
    assert pascals / FACTORS["mbar"] == pytest.approx(843, abs=0.5)
    assert pascals / FACTORS["atm"] == pytest.approx(0.832, abs=0.0005)


@pytest.mark.parametrize(
    ("altitude", "geopotential"), [(1000, 89_874.56), (2000, 79_495.20), (3000, 70_108.53)]
)
def test_altitude_is_geometric_not_geopotential(altitude, geopotential):
    """The same relation with the height left as it is, by arithmetic: a few pascals less."""
    assert standard_pressure(altitude) - geopotential > 1.5


@pytest.mark.parametrize(("system", "unit"), [("metric", "bar"), ("si", "kPa")])
def test_twenty_metres_of_a_lake_at_two_thousand(system, unit):
    """Arithmetic from 1000 kg/m³ and ambiance 1.3.1: 2.7563 bar."""
    facts = {"altitude_m": 2000.0, "depth_m": 20.0, "scene": 0.0}
    posed = catalogue.family("lake-pressure").pose(system, facts)
    assert posed.asked.unit == unit
    assert posed.accepted[0] == pytest.approx(2.7563 if unit == "bar" else 275.63, rel=5e-4)


def test_a_lake_read_with_the_air_of_the_sea_is_out_by_what_is_missing():
    """ambiance 1.3.1: at 3000 m nearly a third of the atmosphere is missing."""
    facts = {"altitude_m": 3000.0, "depth_m": 20.0, "scene": 0.0}
    posed = catalogue.family("lake-pressure").pose("metric", facts)
    (_, _, _, wrong) = next(one for one in posed.missteps if one[0] == "sea-level-air")
    assert max(wrong) - posed.accepted[0] == pytest.approx(1.01325 - 0.70121, abs=5e-4)
