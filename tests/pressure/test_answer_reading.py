"""What a typed answer is read as, and what is said when it cannot be read."""

import pytest
import scipy.constants as si
from hypothesis import given
from hypothesis import strategies as st

from pressure.answer import Reading, Trouble, read
from pressure.problem import Asked
from pressure.units import DIMENSIONS, FACTORS, UNIT_WORDS

PRESSURE = Asked("p", "absolute pressure", "pressure", "psi", "absolute")
VOLUME = Asked("V", "volume of the air", "volume", "ft3")
DEPTH = Asked("d", "depth", "length", "ft")

ACCEPTED = [
    ("44.1 psi", PRESSURE, 44.1, "psi"),
    ("44.1psi", PRESSURE, 44.1, "psi"),
    ("44.1 PSI", PRESSURE, 44.1, "psi"),
    ("44.1 p.s.i.", PRESSURE, 44.1, "psi"),
    ("44.1 pounds per square inch", PRESSURE, 44.1, "psi"),
    ("  44.1   psi  ", PRESSURE, 44.1, "psi"),
    ("44.1\u00a0psi", PRESSURE, 44.1, "psi"),
    ("44.1 psi.", PRESSURE, 44.1, "psi"),
    ("44. psi", PRESSURE, 44.0, "psi"),
    ("3 ata", PRESSURE, 3.0, "atm"),
    ("304 kPa", PRESSURE, 304.0, "kPa"),
    ("2,5 bar", PRESSURE, 2.5, "bar"),
    ("0,125 bar", PRESSURE, 0.125, "bar"),
    ("1234,567 kPa", PRESSURE, 1234.567, "kPa"),
    ("1,234.5 psi", PRESSURE, 1234.5, "psi"),
    ("1.234,5 psi", PRESSURE, 1234.5, "psi"),
    ("1,234,567 Pa", PRESSURE, 1234567.0, "Pa"),
    ("1.234.567 Pa", PRESSURE, 1234567.0, "Pa"),
    ("1.234 psi", PRESSURE, 1.234, "psi"),
    ("1e3 psi", PRESSURE, 1000.0, "psi"),
    ("1.5E-2 bar", PRESSURE, 0.015, "bar"),
    ("+3 atm", PRESSURE, 3.0, "atm"),
    ("-3 psi", PRESSURE, -3.0, "psi"),
    ("\u22123 psi", PRESSURE, -3.0, "psi"),
    ("\u200e44.1 psi\u200f", PRESSURE, 44.1, "psi"),
    ("４４．１ psi", PRESSURE, 44.1, "psi"),
    ("1/3 ft³", VOLUME, 1 / 3, "ft3"),
    ("1/3ft3", VOLUME, 1 / 3, "ft3"),
    ("1 / 3 cubic feet", VOLUME, 1 / 3, "ft3"),
    ("1 1/2 ft3", VOLUME, 1.5, "ft3"),
    ("½ ft3", VOLUME, 0.5, "ft3"),
    ("1½ cu ft", VOLUME, 1.5, "ft3"),
    ("1 ½ ft^3", VOLUME, 1.5, "ft3"),
    ("1⁄4 ft³", VOLUME, 0.25, "ft3"),
    (".5 ft3", VOLUME, 0.5, "ft3"),
    (",5 ft3", VOLUME, 0.5, "ft3"),
    ("-1 1/2 ft3", VOLUME, -1.5, "ft3"),
    ("12 L", VOLUME, 12.0, "L"),
    ("12 litres", VOLUME, 12.0, "L"),
    ("66'", DEPTH, 66.0, "ft"),
    ("66′", DEPTH, 66.0, "ft"),
    ("66 feet", DEPTH, 66.0, "ft"),
    ("20 metres", DEPTH, 20.0, "m"),
]

UNITS_OF_PRESSURE = "Use a unit such as psi, bar or kPa."
TROUBLES = [
    ("", "empty", "Nothing is typed yet. Write your answer as a number with its unit."),
    (" \u00a0\n", "empty", "Nothing is typed yet."),
    ("4" * 65, "long", "That is too long to be read. Write one number and its unit, at most 64 characters."),
    ("44.1", "unit_missing", "The unit is missing. Write it after the number, such as psi, bar or kPa."),
    ("1/3", "unit_missing", "The unit is missing."),
    ("44.1 ft", "unit_wrong", f"ft measures length, but pressure is asked for. {UNITS_OF_PRESSURE}"),
    ("2 ft3", "unit_wrong", "ft³ measures volume, but pressure is asked for."),
    ("44.1 psy", "unit_unknown", f"The unit “psy” is not known here. {UNITS_OF_PRESSURE}"),
    ("44.1 " + "x" * 40, "unit_unknown", f"The unit “{'x' * 16}…” is not known here."),
    ("44.1 \x00psi", "unit_unknown", f"The unit is not known here. {UNITS_OF_PRESSURE}"),
    ("44.1 \ud800", "unit_unknown", "The unit is not known here."),
    ("1,234 psi", "ambiguous", "Did you mean 1234 or 1.234? Write it without the comma, or with a point"),
    ("1,234", "ambiguous", "Did you mean 1234 or 1.234?"),
    ("-12,500 psi", "ambiguous", "Did you mean 12500 or 12.500?"),
    ("1/0 psi", "zero", "A fraction cannot have 0 below the line. Check the fraction and type it again."),
    ("1 1/0 psi", "zero", "A fraction cannot have 0 below the line."),
    ("1e999 psi", "range", "That number is too large or too small to be an answer here."),
    ("1e-999 psi", "range", "That number is too large or too small to be an answer here."),
    ("1e99999999999999999999 psi", "range", "Check its digits and exponent."),
    ("9" * 60 + " psi", "range", "That number is too large or too small to be an answer here."),
    *[
        (
            text,
            "unreadable",
            "That cannot be read as a number. Begin with one number, such as 1234.5 or 2 1/2",
        )
        for text in (
            "psi",
            "psi 44.1",
            "about 44 psi",
            "nan psi",
            "inf psi",
            "1_0 psi",
            "- psi",
            "9**9**9",
            "2+2 psi",
            "1/2/3 psi",
            "1 234 psi",
            "1,2,3 psi",
            "1.2.3 psi",
            "1,234.567.8 psi",
            "((((((44))))))",
            "__import__('os')",
        )
    ],
]


@pytest.mark.parametrize(("text", "asked", "value", "unit"), ACCEPTED)
def test_an_answer_is_read_as_number_and_unit(text, asked, value, unit):
    reading = read(text, asked)
    assert isinstance(reading, Reading), reading
    assert reading[:2] == (value, unit)


@pytest.mark.parametrize(("text", "code", "sentence"), TROUBLES)
def test_what_cannot_be_read_is_answered_with_how_to_mend_it(text, code, sentence):
    trouble = read(text, PRESSURE)
    assert isinstance(trouble, Trouble), trouble
    assert trouble.code == code
    assert sentence in trouble.sentence


@pytest.mark.parametrize("dimension", sorted(set(DIMENSIONS.values())))
def test_every_dimension_has_examples_of_its_units(dimension):
    unit = next(symbol for symbol in DIMENSIONS if DIMENSIONS[symbol] == dimension)
    sentence = read("1", Asked("x", "x", dimension, unit)).sentence
    examples = sentence.split("such as ")[1].rstrip(".").replace(" or ", ", ").split(", ")
    assert {UNIT_WORDS[example.lower()][1] for example in examples} == {dimension}


@pytest.mark.parametrize("sentence", sorted({read(text, PRESSURE).sentence for text, _, _ in TROUBLES}))
def test_every_sentence_can_be_sent_to_a_browser(sentence):
    assert sentence.encode("utf-8").decode("utf-8").isprintable()
    assert len(sentence) < 160


MARKS = {
    "gauge": "psig psi_g psi_gauge PSIG psi_(gauge) psi(g) gauge_psi bar_g barg bar(g) atm_gauge fsw_gauge",
    "absolute": "psia psi_a psi_abs psi_absolute psi,_abs absolute_psi bara bar_abs bar(abs) ata atm_abs",
    None: "psi bar atm kPa mmHg fsw msw ffw torr",
}


@pytest.mark.parametrize(
    ("word", "mark"), [(w.replace("_", " "), mark) for mark, words in MARKS.items() for w in words.split()]
)
def test_a_mark_is_read_and_without_one_the_asked_kind_is_taken(word, mark):
    reading = read(f"3 {word}", PRESSURE)
    assert isinstance(reading, Reading), reading
    assert (reading.mark, reading.kind) == (mark, mark or "absolute")


@pytest.mark.parametrize(
    ("text", "asked", "understood", "typed"),
    [
        ("44.1psi", PRESSURE, "44.1 psi absolute", "44.1 psi"),
        ("44.1 psig", PRESSURE, "44.1 psi gauge", "44.1 psi gauge"),
        ("3 ata", PRESSURE, "3 ata", "3 ata"),
        ("3 bar", Asked("Δp", "difference", "pressure", "bar", "difference"), "3 bar", "3 bar"),
        ("1 1/2 cu ft", VOLUME, "1.5 ft³", "1.5 ft³"),
        ("1.234,5 L", VOLUME, "1234.5 L", "1234.5 L"),
    ],
)
def test_a_reading_says_what_was_understood(text, asked, understood, typed):
    reading = read(text, asked)
    assert (reading.understood, reading.typed) == (understood, typed)


# scipy.constants 1.17 (CODATA 2022 and NIST SP 811); mmHg differs from the torr by 1.4e-7.
IN_SI = {
    "Pa": 1, "hPa": si.hecto, "kPa": si.kilo, "MPa": si.mega, "bar": si.bar, "mbar": si.milli * si.bar,
    "atm": si.atm, "psi": si.psi, "mmHg": si.mmHg, "torr": si.torr, "inHg": si.mmHg * 25.4,
    "m": 1, "cm": si.centi, "mm": si.milli, "ft": si.foot, "in": si.inch,
    "m2": 1, "cm2": si.centi**2, "ft2": si.foot**2, "in2": si.inch**2,
    "m3": 1, "L": si.liter, "mL": si.milli * si.liter, "cm3": si.centi**3, "ft3": si.foot**3,
    "in3": si.inch**3, "gal": si.gallon, "s": 1, "min": si.minute, "h": si.hour,
    "kg": si.g, "t": 1000 * si.g, "lb": si.lbf, "N": 1, "kN": si.kilo,
    "L/min": si.liter / si.minute, "m3/min": 1 / si.minute, "m3/h": 1 / si.hour,
    "ft3/min": si.foot**3 / si.minute, "kg/m3": 1, "g/L": si.gram / si.liter, "lb/ft3": si.pound / si.foot**3,
    "%": si.centi, "ppm": si.micro,
}  # fmt: skip
# Not in scipy: by definition a foot of water of 64 or 62.4 lb/ft³, and 10 kPa for a metre of sea water.
IN_SI |= {
    "fsw": 64 * si.lbf / si.foot**2,
    "ffw": 62.4 * si.lbf / si.foot**2,
    "msw": 1e4,
    "cmH2O": 1000 * si.g / 100,  # a centimetre of water of 1000 kg/m³
}


@pytest.mark.parametrize("unit", FACTORS)
def test_any_unit_is_converted_as_scipy_does(unit):
    for asked_unit in (other for other in FACTORS if DIMENSIONS[other] == DIMENSIONS[unit]):
        reading = read(f"7.25 {unit}", Asked("x", "x", DIMENSIONS[unit], asked_unit))
        assert reading.in_asked == pytest.approx(7.25 * IN_SI[unit] / IN_SI[asked_unit], rel=1e-6)


@given(st.floats(1e-3, 1e6), st.sampled_from(sorted(FACTORS)), st.booleans())
def test_six_digits_read_back_as_written(value, unit, is_negative):
    text = f"{'-' if is_negative else ''}{value:.6g} {unit}"
    reading = read(text, Asked("x", "x", DIMENSIONS[unit], unit))
    assert isinstance(reading, Reading), (text, reading)
    assert (reading.value, reading.unit) == (float(text.split()[0]), unit)
    assert reading.in_asked == reading.value


def test_every_spelling_of_a_unit_is_read_however_it_is_cased():
    for spelling, (symbol, dimension, _, mark) in UNIT_WORDS.items():
        for word in (spelling, spelling.upper(), f" {spelling.title()} "):
            reading = read(f"2{word}", Asked("x", "x", dimension, symbol))
            assert (reading[1], reading[2]) == (symbol, mark), word
