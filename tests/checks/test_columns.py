"""Columns, faces and presses against figures printed outside the project; the source stands beside each."""

import gsw
import pytest
from scipy import constants as si

from pressure.families import atmosphere_column, column_pressure, column_weight, face_force
from pressure.laws.columns import force_passed_on, height_held, pressure_of
from pressure.laws.hydrostatics import column_weight as weigh

COLLEGE = "OpenStax College Physics 2e"
MARTIN = "L. Martin, Scuba Diving Explained (1997), section E"
PRACTICE = "common practice, no source"


def weight(system, height, area, is_large, is_fresh):
    length = "ft" if system == "us" else "m"
    facts = {
        f"height_{length}": height,
        "area": area,
        "is_large": is_large,
        "is_fresh": is_fresh,
        "scene": 0.0,
    }
    return column_weight.FAMILY.pose(system, facts).accepted[0]


US_NAMES = ("height_ft", "density_lb_ft3", "area_ft2")
SI_NAMES = ("height_m", "density_kg_m3", "area_m2")


def foot_pressure(system, height, density):
    names = US_NAMES if system == "us" else SI_NAMES
    facts = dict(zip(names, (height, density, 2.0), strict=True)) | {"scene": 0.0}
    return column_pressure.FAMILY.pose(system, facts).accepted[0]


def push(system, depth, inside, area, is_large, is_fresh):
    length, unit = {"us": ("ft", "psi"), "metric": ("m", "bar"), "si": ("m", "kPa")}[system]
    facts = {f"depth_{length}": depth, f"inside_{unit}": inside, "area": area, "is_large": is_large}
    return face_force.FAMILY.pose(system, facts | {"is_fresh": is_fresh, "scene": 0.0}).accepted[0]


def column(system, air, gap, is_fresh):
    unit = {"us": "psi", "metric": "bar", "si": "kPa"}[system]
    facts = {f"air_{unit}": air, f"gap_{unit}": gap, "is_pumped": 1.0, "is_fresh": is_fresh, "scene": 0.0}
    return atmosphere_column.FAMILY.pose(system, facts).accepted[0]


PRINTED = [
    (weight("us", 33, 1, 0.0, 0.0), 14.7, f"33 ft of sea water on a square inch, lb; {PRACTICE}"),
    (weight("us", 1, 1, 1.0, 0.0), 64, f"{MARTIN}: a cubic foot of sea water, lb"),
    (weight("us", 1, 1, 1.0, 1.0), 62.4, f"{MARTIN}: a cubic foot of fresh water, lb"),
    (weight("us", 34, 1, 0.0, 1.0), 14.7, f"{MARTIN}: 34 ft of fresh water weigh an atmosphere, lb on 1 in²"),
    (weight("metric", 1, 1, 1.0, 0.0), 1025, f"{COLLEGE}, §11.2: sea water 1.025 g/mL, kg in a cubic metre"),
    (weight("metric", 10.33227, 1, 0.0, 1.0), 1.0332, "1 atm in kg on a cm²; arithmetic, 101325/98066.5"),
    (weight("si", 40.0, 4.00e4, 1.0, 1.0), 1.57e7, f"{COLLEGE}, §11.4: force on a dam, kN"),
    (foot_pressure("us", 33, 64), 14.7, f"33 ft of sea water, psi; {PRACTICE}"),
    (foot_pressure("us", 100, 64), 44.4, "100 ft at 64 lb/ft³, psi; arithmetic"),
    (foot_pressure("si", 40.0, 1000), 392, f"{COLLEGE}, §11.4: mean pressure on a dam, kPa"),
    (foot_pressure("si", 1.4, 1050), 14.4, f"{COLLEGE}, §11.9: 1.4e4 Pa printed to two figures, kPa"),
    (foot_pressure("si", 0.500, 1050), 38.7 * 0.133, f"{COLLEGE}, §11.6: 38.7 mmHg at 133 Pa, kPa"),
    (foot_pressure("metric", 0.760, 13.6e3), 1.013, f"{COLLEGE}, §11.4: mercury for 1.00 atm, bar"),
    (push("us", 33, 0, 1, 0.0, 0.0), 14.7, f"33 ft of sea water on a square inch, lb; {PRACTICE}"),
    (push("si", 40.0, 0, 4.00e4, 1.0, 1.0), 1.57e7, f"{COLLEGE}, §11.4: force on a dam, kN"),
    (push("metric", 10.2, 0, 1, 1.0, 1.0), 100, "1 bar is 100 kPa by definition: kN on a square metre"),
    (column("us", 14.7, 14.7, 0.0), 33, f"sea water held by the atmosphere, ft; {PRACTICE}"),
    (column("us", 14.7, 14.7, 1.0), 34, f"{MARTIN}: fresh water held by the atmosphere, ft"),
    (column("si", 101.0, 101.0, 1.0), 10.3, f"{COLLEGE}, §11.4: fresh water held by 1.01e5 Pa, m"),
    (column("metric", 1.0, 1.0, 0.0), 10, f"sea water held by 1 bar, m; {PRACTICE}"),
    (height_held(101_325, 1000 * 9.81), 10.3, "OpenStax Chemistry 2e, §9.1: fresh water for 1 atm, m"),
    (height_held(760 * 133.322, 13_595.1 * si.g), 0.760, "760 mmHg by the conventional millimetre, m"),
    (force_passed_on(500, 0.500**2, 2.50**2), 1.25e4, f"{COLLEGE}, §11.5: hydraulic brake, 500 N in, N out"),
    (pressure_of(3.00, 1.00e-4) / 133, 226, f"{COLLEGE}, §11.9: 3.00 N on 1.00 cm² of eardrum, mmHg"),
]  # fmt: skip


@pytest.mark.parametrize(("computed", "printed", "source"), PRINTED, ids=[source for _, _, source in PRINTED])
def test_columns_and_faces_come_out_as_printed(computed, printed, source):
    assert computed == pytest.approx(printed, rel=0.005), source


def test_a_cubic_foot_of_the_trades_sea_water_is_real_sea_water():
    """TEOS-10 (gsw 3.6.23): practical salinity 35 at 10 °C at the surface, 45° north; 64.11 lb/ft³."""
    salinity = gsw.SA_from_SP(35, 0, 0, 45)
    density = gsw.rho(salinity, gsw.CT_from_t(salinity, 10, 0), 0)
    assert weight("us", 1, 1, 1.0, 0.0) == pytest.approx(density * si.foot**3 / si.pound, rel=0.002)
    assert weight("metric", 1, 1, 1.0, 0.0) == pytest.approx(density, rel=0.002)


@pytest.mark.parametrize(("height_ft", "area_in2"), [(33, 1), (66, 4), (99, 10)])
def test_us_and_si_weigh_one_column_alike(height_ft, area_in2):
    """scipy.constants 1.17: the foot, the inch and the pound-force; 64 lb/ft³ (L. Martin, 1997)."""
    newtons = height_ft * si.foot * area_in2 * si.inch**2 * 64 * si.lbf / si.foot**3
    assert weight("us", height_ft, area_in2, 0.0, 0.0) * si.lbf == pytest.approx(newtons)
    assert weigh(height_ft, area_in2 / 144, 64) * si.lbf == pytest.approx(newtons)


def test_a_published_table_of_units_in_error_is_not_followed():
    """College Physics 2e, §11.6 prints 1 atm as 1.013 kg/cm²; its own 9.8e4 Pa to the kg/cm² gives 1.034."""
    held = weight("metric", 10.33227, 1, 0.0, 1.0)
    assert held == pytest.approx(1.033, rel=1e-3)
    assert abs(held - 1.013) > 0.015
