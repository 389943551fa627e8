"""Charles's law, constant volume and the general gas law, against printed worked examples.

The source stands beside each row; rows from memory say so.
"""

import pytest

from pressure.families.cylinder_heating import FAMILY as HEATING
from pressure.laws.charles import (
    absolute_temperature,
    gauge_warmed,
    pressure_warmed,
    volume_moved,
    volume_warmed,
)
from pressure.problem import Posed

CHEMISTRY, COLLEGE, UNIVERSITY = (
    "OpenStax Chemistry 2e, §9.2",
    "OpenStax College Physics 2e, §13.3",
    "OpenStax University Physics 2, §2.1",
)
NAVY = "US Navy Diving Manual, 2-11.2, from memory"
ATMOSPHERE = 1.013e5


def kelvin(celsius, zero=273.15):
    return absolute_temperature(celsius, zero)


def rankine(fahrenheit):
    return absolute_temperature(fahrenheit, 460)


ROWS = [
    (pressure_warmed(7.00e5, kelvin(18.0), kelvin(35.0)), 7.41e5, 0.001, f"{COLLEGE}: 18.0 to 35.0 °C, Pa"),
    (pressure_warmed(7.00e5, kelvin(18.0), kelvin(35.0)), 7.41e5, 0.001, f"{UNIVERSITY}: the same"),
    (pressure_warmed(360, kelvin(24), kelvin(50)), 390, 0.005, f"{CHEMISTRY}: a can, kPa, two figures"),
    (pressure_warmed(600, kelvin(27), kelvin(-73)), 400, 0.001, f"{CHEMISTRY}: 27 to −73 °C, torr"),
    (volume_warmed(0.300, kelvin(10), kelvin(30)), 0.321, 0.002, f"{CHEMISTRY}: 10 to 30 °C, L"),
    (volume_warmed(150.0, kelvin(0), 239.8), 131.7, 0.001, f"{CHEMISTRY}: a gas thermometer, cm³"),
    (kelvin(-33.4), 239.8, 0.001, f"{CHEMISTRY}: the same in kelvins"),
    (volume_warmed(405, 298, 467), 635, 0.001, f"{CHEMISTRY}: 298 to 467 K, mL"),
    (pressure_warmed(1344, kelvin(23), kelvin(475)), 3.40e3, 0.002, f"{CHEMISTRY}: a can in a fire, torr"),
    (
        gauge_warmed(2.50e5, ATMOSPHERE, kelvin(35.0), kelvin(-40.0)) / ATMOSPHERE,
        1.62,
        0.003,
        f"{COLLEGE}: a tyre, 35.0 to −40.0 °C, atm gauge",
    ),
    (gauge_warmed(0.0, 1.0, kelvin(20), kelvin(60)), 0.136, 0.004, f"{COLLEGE}: a bulb, atm gauge"),
    (
        gauge_warmed(0.0, 1.0, kelvin(20, 273), kelvin(60, 273)),
        0.137,
        0.004,
        f"{UNIVERSITY}: by 273, the same",
    ),
    (
        pressure_warmed(1.40e7, kelvin(25), kelvin(-78.5)),
        9.14e6,
        0.001,
        f"{COLLEGE}: a cylinder in dry ice, Pa",
    ),
    (0.9 * pressure_warmed(1.40e7, kelvin(25), kelvin(-78.5)), 8.23e6, 0.001, f"{COLLEGE}: a tenth let out"),
    (pressure_warmed(1.40e7, kelvin(25), 2.16), 1.013e5, 0.002, f"{COLLEGE}: at 2.16 K it is 1.00 atm"),
    (volume_moved(0.250, 1 / 0.850, kelvin(27), kelvin(0)), 0.193, 0.003, f"{CHEMISTRY}: ammonia to 0 °C, L"),
    (volume_warmed(6, rankine(80), rankine(45)), 5.61, 0.0005, f"{NAVY}: a bell at depth, ft³"),
    (pressure_warmed(3014.7, rankine(72), rankine(170)), 3570.03, 1e-5, f"{NAVY}: a flask in a fire, psia"),
    (gauge_warmed(3000, 14.7, rankine(72), rankine(170)), 3555.33, 1e-5, f"{NAVY}: the same, psig"),
    (gauge_warmed(200, 1.01325, kelvin(20), kelvin(60)) + 1.01325, 228.4, 0.0005, "arithmetic, bar absolute"),
    (pressure_warmed(200, kelvin(20), kelvin(50)), 220.5, 0.0005, "arithmetic, bar absolute"),
    (gauge_warmed(230, 1.01325, kelvin(40), kelvin(10)) + 1.01325, 208.9, 0.0005, "arithmetic, bar absolute"),
]


@pytest.mark.parametrize(
    ("computed", "printed", "within", "source"), ROWS, ids=lambda each: each if isinstance(each, str) else ""
)
def test_gas_and_temperature(computed, printed, within, source):
    assert computed == pytest.approx(printed, rel=within), source


def psi_per_degree(gauge, cool, warm):
    return (gauge_warmed(gauge, 14.7, rankine(cool), rankine(warm)) - gauge) / (warm - cool)


@pytest.mark.parametrize("cool", [70, 80])
def test_five_psi_for_each_degree_falls_short_of_the_law_at_3000_psi(cool):
    """Common practice, no source: the rule. The law gives 5.6 to 5.7 psi a degree, by arithmetic."""
    assert 5.55 < psi_per_degree(3000, cool, 170) < 5.75


def test_the_rule_of_thumb_is_a_slip_where_the_law_says_otherwise():
    facts = {"pressure_psi": 3000.0, "cool": 70.0, "warm": 155.0, "scene": 0.0}
    posed = HEATING.pose("us", facts)
    assert isinstance(posed, Posed)
    slips = {name: values for name, _, _, values in posed.missteps}
    assert slips["rule-of-thumb"] == (3000 + 5 * 85,)


def test_constants_of_the_trade_move_the_last_digits_only():
    """273 or 273.15, 460 or 459.67: the third or fourth digit, as the two OpenStax books show."""
    by_trade = pressure_warmed(3014.7, rankine(72), rankine(170))
    exact = pressure_warmed(3014.7, 72 + 459.67, 170 + 459.67)
    assert 0 < exact / by_trade - 1 < 0.0005
