"""Units: the factors are pint's, the spellings are the trade's, numbers show as they should."""

import subprocess
import sys

import pytest
from scipy import constants as scipy_constants

from pressure import units

SI = {
    "pressure": "Pa",
    "length": "m",
    "area": "m ** 2",
    "volume": "m ** 3",
    "weight": "kilogram_force",
    "time": "s",
    "flow": "m ** 3 / s",
    "density": "kg / m ** 3",
    "share": "dimensionless",
}
IN_PINT = {"L": "liter", "mL": "milliliter", "in": "inch", "s": "second", "min": "minute"} | {
    "kg": "kilogram_force",
    "t": "1000 kilogram_force",
    "lb": "pound_force",
    "h": "hour",
    "L/min": "liter / minute",
    "m3/min": "m ** 3 / minute",
    "m3/h": "m ** 3 / hour",
    "ft3/min": "ft ** 3 / minute",
    "kg/m3": "kg / m ** 3",
    "g/L": "g / liter",
    "lb/ft3": "pound / ft ** 3",
    "%": "percent",
    "m2": "m ** 2",
    "cm2": "cm ** 2",
    "ft2": "ft ** 2",
    "in2": "inch ** 2",
    "m3": "m ** 3",
    "cm3": "cm ** 3",
    "ft3": "ft ** 3",
    "in3": "inch ** 3",
    "gal": "gallon",
}


@pytest.mark.parametrize("symbol", units.FACTORS)
def test_the_factor_table_is_what_pint_computes(symbol):
    quantity = units.registry().Quantity(IN_PINT.get(symbol, symbol))
    assert quantity.to(SI[units.DIMENSIONS[symbol]]).magnitude == pytest.approx(
        units.FACTORS[symbol], rel=1e-12
    )


@pytest.mark.parametrize(
    ("symbol", "pascals", "within"),
    [
        ("psi", scipy_constants.psi, 1e-12),  # scipy.constants 1.17.1
        ("atm", scipy_constants.atm, 0),
        ("torr", scipy_constants.torr, 1e-12),
        ("mmHg", 133.322387415, 1e-12),  # 13 595.1 kg/m³ × 9.80665 m/s², arithmetic
        ("fsw", 3064.3, 2e-5),  # US Navy Diving Manual, as quoted in an encyclopedia: 1 fsw = 3064.3 Pa
        ("ffw", 2987.73, 2e-6),  # 62.4 lb/ft³ under standard gravity, arithmetic
        ("cmH2O", 2989.067 / 30.48, 1e-6),  # NIST SP 811, appendix B: 2.989067e3 Pa per ftH2O; recalled
        ("msw", 10_000, 0),  # the definition of the metre of sea water, as quoted in the same place
    ],
)
def test_pressure_units_have_their_published_size(symbol, pascals, within):
    assert units.FACTORS[symbol] == pytest.approx(pascals, rel=within)


@pytest.mark.parametrize(
    ("spelling", "symbol", "mark"),
    [
        ("psi", "psi", None),
        ("psig", "psi", "gauge"),
        ("psia", "psi", "absolute"),
        ("poundspersquareinch,absolute", "psi", "absolute"),
        ("ata", "atm", "absolute"),
        ("barg", "bar", "gauge"),
        ("barabsolute", "bar", "absolute"),
        ("meters", "m", None),
        ("ft³", "ft3", None),
        ("cuft", "ft3", None),
        ("cf", "ft3", None),
        ("liters", "L", None),
        ("fsw", "fsw", None),
        ("cmh2o", "cmH2O", None),
        ("centimetersofwater", "cmH2O", None),
    ],
)
def test_the_spellings_of_the_trade_are_known(spelling, symbol, mark):
    assert units.UNIT_WORDS[spelling] == (symbol, units.DIMENSIONS[symbol], units.FACTORS[symbol], mark)


def test_spellings_are_lower_case_without_spaces_and_marks_stand_on_pressures_only():
    for spelling, (symbol, dimension, factor, mark) in units.UNIT_WORDS.items():
        assert spelling == spelling.lower().replace(" ", "")
        assert (dimension, factor) == (units.DIMENSIONS[symbol], units.FACTORS[symbol])
        assert mark is None or dimension == "pressure"


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (29.4, "29.4"),
        (1 / 3, "0.333"),
        (2.0, "2.00"),
        (16.25, "16.3"),
        (9.996, "10.0"),
        (99.96, "100"),
        (102.9, "103"),
        (1234.5, "1235"),
        (-3.456, "-3.46"),
        (0.0, "0"),
    ],
)
def test_computed_numbers_show_three_significant_figures(value, text):
    assert units.rounded(value) == text


@pytest.mark.parametrize(("value", "text"), [(33.0, "33"), (0.445, "0.445"), (14.7, "14.7"), (100.0, "100")])
def test_given_numbers_show_exactly(value, text):
    assert units.exact(value) == text
    assert float(text) == value


def test_a_pressure_says_what_it_is_measured_from():
    assert units.shown(44.1, "psi", "gauge") == "44.1 psi gauge"
    assert units.shown(3.0, "atm", "absolute") == "3.00 ata"
    assert units.spoken(29.4, "psi", "gauge") == "29.4 pounds per square inch, gauge"
    assert units.spoken(1.0, "ft3", given=True) == "1 cubic foot"


def test_drawing_and_marking_import_neither_pint_nor_matplotlib():
    modules = "pressure.draw, pressure.record, pressure.answer, pressure.management.commands.problem"
    script = f"import sys, {modules}; pressure.draw.draw('depth-to-volume', 1, 'us'); print(*sys.modules)"
    run = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert not {"pint", "matplotlib", "numpy"} & set(run.stdout.split())
