"""How a typed answer is judged against the key."""

from math import inf, nextafter

import pytest

from pressure.answer import Marked, Trouble, mark
from pressure.problem import Asked, Key, Slip

OMITTED = Slip("atmosphere-omitted", "Atmosphere left out", "{typed} is what the gauge shows.", 29.2, 29.6)
TWICE = Slip("atmosphere-twice", "Atmosphere counted twice", "{typed} has it twice.", 58.5, 59.1)


def a_key(kind="absolute", unit="psi"):
    # 66 ft of sea water: 29.4 psi gauge, 44.1 psi absolute (common practice, no source).
    asked = Asked("p", "pressure", "pressure", unit, kind)
    return Key(asked, 44.1, 43.88, 44.32, (OMITTED, TWICE))


@pytest.mark.parametrize(
    "text",
    [
        "44.1 psi",
        "44.1 psia",
        "44.1 psi absolute",
        "44 psi",
        "3 ata",
        "3 atm",
        "3.04 bar",
        "304 kPa",
        "2280 mmHg",
    ],
)
def test_the_right_pressure_is_right_in_any_unit(text):
    marked = mark(text, a_key())
    assert (marked.verdict, marked.slip, marked.mend) == ("right", None, "")


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("29.4 psi", "atmosphere-omitted"),
        ("29.4 psig", "atmosphere-omitted"),
        ("2 atm", "atmosphere-omitted"),
        ("58.8 psi", "atmosphere-twice"),
        ("4 ata", "atmosphere-twice"),
    ],
)
def test_a_known_slip_is_named_and_mended_whatever_its_mark(text, name):
    marked = mark(text, a_key())
    assert (marked.verdict, marked.slip_name) == ("slip", name)
    assert marked.label
    assert marked.mend.startswith(marked.reading.typed)


@pytest.mark.parametrize("text", ["40 psi", "-44.1 psi", "44.1 bar", "0 psi", "50 psig", "999999 kPa"])
def test_any_other_value_is_wrong_without_a_slip(text):
    marked = mark(text, a_key())
    assert (marked.verdict, marked.slip, marked.slip_name, marked.label, marked.mend) == (
        "wrong",
        None,
        "",
        "",
        "",
    )


@pytest.mark.parametrize(
    ("kind", "word", "verdict"),
    [
        ("absolute", "psig", "slip"),
        ("absolute", "psia", "right"),
        ("gauge", "psia", "slip"),
        ("gauge", "psig", "right"),
        ("gauge", "psi", "right"),
        ("difference", "psi", "right"),
        ("difference", "psig", "right"),
        ("difference", "psia", "slip"),
        (None, "psia", "right"),
        (None, "psig", "right"),
    ],
)
def test_a_right_number_with_the_wrong_mark_is_a_slip_of_its_own(kind, word, verdict):
    marked = mark(f"44.1 {word}", a_key(kind))
    assert marked.verdict == verdict
    assert marked.slip_name == ("wrong_mark" if verdict == "slip" else "")


def test_the_wrong_mark_is_mended_with_what_was_typed():
    absolute, gauge = mark("44.1 psig", a_key()), mark("3 ata", a_key("gauge"))
    assert absolute.mend.startswith(
        "You wrote 44.1 psi gauge. The number is right, but it counts from a vacuum"
    )
    assert gauge.mend.startswith("You wrote 3 ata. The number is right, but it counts from the surface air")


@pytest.mark.parametrize(
    ("edge", "outwards", "verdict"),
    [
        (43.88, -inf, "right"),
        (44.32, inf, "right"),
        (OMITTED.low, -inf, "slip"),
        (OMITTED.high, inf, "slip"),
        (TWICE.low, -inf, "slip"),
        (TWICE.high, inf, "slip"),
    ],
)
def test_both_ends_of_every_band_belong_to_it(edge, outwards, verdict):
    assert mark(f"{edge!r} psi", a_key()).verdict == verdict
    assert mark(f"{nextafter(edge, outwards)!r} psi", a_key()).verdict == "wrong"


def test_where_two_slips_meet_the_first_is_named():
    key = Key(a_key().asked, 44.1, 43.88, 44.32, (TWICE, OMITTED, Slip("third", "Third", "", 0, 100)))
    assert mark("29.4 psi", key).slip_name == "atmosphere-omitted"
    assert mark("31 psi", key).slip_name == "third"


def test_braces_in_a_mending_sentence_are_left_alone():
    odd = Slip("odd", "Odd", "{typed} {0} {typed.__class__} {", 0, 1)
    key = Key(a_key().asked, 44.1, 43.88, 44.32, (odd,))
    assert mark("1/2 psi", key).mend == "0.5 psi {0} {typed.__class__} {"


@pytest.mark.parametrize("text", ["", "44.1", "44.1 ft", "1,234 psi", "9**9**9"])
def test_what_cannot_be_read_is_not_judged(text):
    assert isinstance(mark(text, a_key()), Trouble)


def test_a_verdict_keeps_the_reading_in_both_units():
    marked = mark("3 ata", a_key())
    assert isinstance(marked, Marked)
    assert (marked.reading.value, marked.reading.unit) == (3.0, "atm")
    # scipy.constants: 3 * atm / psi
    assert marked.reading.in_asked == pytest.approx(44.087848, rel=1e-7)
