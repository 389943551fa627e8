"""A typed answer: read as a number with a unit, then judged against the key.

What a trainee types is never evaluated. At most 64 characters are looked at. Two patterns that cannot
backtrack find the number, one look-up finds the unit. Nothing here raises, whatever the text.
"""

from __future__ import annotations

import re
from typing import Final, Literal, NamedTuple
from unicodedata import normalize

from pressure.problem import Asked, Key, Slip
from pressure.units import DIMENSIONS, FACTORS, UNIT_WORDS, Mark, exact, unit_text

LONGEST: Final = 64
"""The most characters an answer may have."""
LARGEST: Final = 1e12
SMALLEST: Final = 1e-9
"""Beyond these a number is a typing slip, not an answer."""

Verdict = Literal["right", "slip", "wrong"]


class Reading(NamedTuple):
    """How an answer was read.

    ``value`` and ``unit`` (a canonical symbol) are as typed, ``in_asked`` is the same in the asked unit.
    ``mark`` is "gauge" or "absolute" where the trainee said so; ``kind`` is what the number was taken as.
    """

    value: float
    unit: str
    mark: Mark | None
    kind: Mark | None
    in_asked: float

    @property
    def typed(self) -> str:
        """The trainee's own number with its unit and, if given, its mark: ``44.1 psi``."""
        return f"{exact(self.value)} {unit_text(self.unit, self.mark)}"

    @property
    def understood(self) -> str:
        """The same with what it was taken as: ``44.1 psi absolute``."""
        return f"{exact(self.value)} {unit_text(self.unit, self.kind)}"


class Trouble(NamedTuple):
    """Why an answer cannot be judged: a code, and one sentence that says what is wrong and how to mend it."""

    code: str
    sentence: str


class Marked(NamedTuple):
    """A judged answer. ``slip`` is the known misunderstanding it shows, if any."""

    verdict: Verdict
    reading: Reading
    slip: Slip | None

    @property
    def slip_name(self) -> str:
        return self.slip.name if self.slip else ""

    @property
    def label(self) -> str:
        return self.slip.label if self.slip else ""

    @property
    def mend(self) -> str:
        """The mending sentence with the trainee's own number in it; empty without a slip."""
        return self.slip.mend.replace("{typed}", self.reading.typed) if self.slip else ""


_EXAMPLES: Final = {
    "pressure": "psi, bar or kPa",
    "length": "ft or m",
    "area": "ft² or m²",
    "volume": "ft³, L or m³",
    "weight": "lb, kg or kN",
    "time": "min or s",
    "flow": "ft³/min or L/min",
    "density": "lb/ft³ or kg/m³",
    "share": "% or ppm",
}
_EMPTY = Trouble("empty", "Nothing is typed yet. Write your answer as a number with its unit.")
_LONG = Trouble(
    "long", f"That is too long to be read. Write one number and its unit, at most {LONGEST} characters."
)
_UNREADABLE = Trouble(
    "unreadable",
    "That cannot be read as a number. Begin with one number, such as 1234.5 or 2 1/2, then its unit.",
)
_ZERO = Trouble("zero", "A fraction cannot have 0 below the line. Check the fraction and type it again.")
_RANGE = Trouble(
    "range", "That number is too large or too small to be an answer here. Check its digits and exponent."
)
_MISSING = {
    dimension: Trouble("unit_missing", f"The unit is missing. Write it after the number, such as {examples}.")
    for dimension, examples in _EXAMPLES.items()
}

# A gauge reads a difference, from the air or water around it, so "gauge" is let pass on a difference.
_FITTING: Final = {
    ("gauge", "gauge"),
    ("absolute", "absolute"),
    ("difference", "gauge"),
    ("difference", "difference"),
}
_INFINITY = float("inf")
WRONG_MARK: Final = {
    kind: Slip("wrong_mark", "Right number, wrong mark", mend, -_INFINITY, _INFINITY)
    for kind, mend in {
        "absolute": "You wrote {typed}. The number is right, but it counts from a vacuum: it is an absolute "
        "pressure, marked as in psia, bar absolute or ata.",
        "gauge": "You wrote {typed}. The number is right, but it counts from the surface air: it is a gauge "
        "pressure, marked as in psig or bar gauge.",
        "difference": "You wrote {typed}. The number is right, but it is the difference of two pressures: "
        "write it without the mark.",
    }.items()
}
"""By the kind that was asked: the slip of a right number said to be of the other kind."""

_TURNING: Final = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
# What people paste or a phone types, as the plain characters that are meant.
_PLAINER: Final = str.maketrans(
    {
        **{chr(0xFEE0 + code): chr(code) for code in range(0x21, 0x7F)},  # full width
        **{sign: " " + normalize("NFKC", sign).replace("\u2044", "/") for sign in "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒"},
        **dict.fromkeys("\u2212\u2010\u2011\u2012\u2013\u2014\ufe63", "-"),
        **dict.fromkeys("\u2044\u2215", "/"),
        **dict.fromkeys("\u200b\u200e\u200f\u2060\ufeff" + _TURNING, ""),
        **dict(zip("²³′″’”", "23'\"'\"", strict=True)),
    }
)
_DROPPED: Final = str.maketrans("²³", "23", " \t\u00a0\u2009\u202f.,()^")

# Possessive throughout: no text makes them try twice.
_plain = re.compile(r"([-+]?+[0-9]++(?:\.[0-9]*+)?+) ?+([A-Za-z].*+)").fullmatch
_number = re.compile(
    r"([-+]?+)\s*+(?:(?:([0-9]++)\s++(?=[0-9]))?+([0-9]++)\s*+/\s*+([0-9]++)"
    r"|([0-9][0-9.,]*+|[.,][0-9]++)(?:[eE]([-+]?+[0-9]++))?+)\s*+"
).match
_thousands = re.compile(r"[1-9][0-9]{0,2}+([,.])[0-9]{3}(?:\1[0-9]{3})*+").fullmatch

_Unit = tuple[str, str, float, Mark | None]


def _squeezed(word: str) -> str:
    return word.lower().translate(_DROPPED)


def _words() -> dict[str, _Unit]:
    """Every spelling of a unit, squeezed; beside these the commonest as typed, found without squeezing."""
    words = {_squeezed(spelling): unit for spelling, unit in UNIT_WORDS.items()} | dict(UNIT_WORDS)
    for spelling, (symbol, dimension, factor, mark) in UNIT_WORDS.items():
        if dimension == "pressure" and mark is None:
            words.setdefault("gauge" + spelling, (symbol, dimension, factor, "gauge"))
            words.setdefault("absolute" + spelling, (symbol, dimension, factor, "absolute"))
    for symbol in DIMENSIONS:
        for ending in ("", " gauge", " absolute", " abs", " g", " a"):
            unit = words.get(_squeezed(symbol + ending))
            if unit is not None:
                words.setdefault(symbol + ending, unit)
    return words


_WORDS: Final = _words()
_new = tuple.__new__  # what a named tuple's own constructor ends in, at half the cost


def read(text: str, asked: Asked) -> Reading | Trouble:
    """Read a typed answer to what is asked. A pressure without a mark is taken as the asked kind."""
    if len(text) > LONGEST:
        return _LONG
    found = _plain(text)
    if found:
        number, word = found.groups()
        unit = _WORDS.get(word)
        if unit is not None:
            return _measured(float(number), unit, asked)
    return _read_odd(text, asked)


def mark(text: str, key: Key) -> Marked | Trouble:
    """Read an answer and judge it: right within the key's band, else the first slip whose band holds it.

    A right number with the wrong mark is a slip of its own. A mark never shifts a number by an atmosphere:
    who is asked for absolute pressure and writes the gauge pressure, well marked, has not answered yet.
    Where slips overlap the first of the key is named.
    """
    reading = read(text, key.asked)
    if isinstance(reading, Trouble):
        return reading
    value = reading.in_asked
    kind = key.asked.kind
    if key.low <= value <= key.high:
        if reading.mark is None or kind is None or (kind, reading.mark) in _FITTING:
            return _new(Marked, ("right", reading, None))
        return Marked("slip", reading, WRONG_MARK[kind])
    for slip in key.slips:
        if slip.low <= value <= slip.high:
            return _new(Marked, ("slip", reading, slip))
    return _new(Marked, ("wrong", reading, None))


def _measured(value: float, unit: _Unit, asked: Asked) -> Reading | Trouble:
    symbol, dimension, factor, said = unit
    if dimension != asked.dimension:
        return _wrong_dimension(symbol, dimension, asked)
    if not -LARGEST < value < LARGEST or (-SMALLEST < value < SMALLEST and value):
        return _RANGE
    if symbol != asked.unit and asked.only:
        return _other_unit(value, symbol, said, asked)
    in_asked = value if symbol == asked.unit else value * factor / FACTORS[asked.unit]
    return _new(Reading, (value, symbol, said, said or asked.kind, in_asked))


def _read_odd(text: str, asked: Asked) -> Reading | Trouble:
    """As ``read``, for fractions, commas, exponents, pasted signs and unusual spellings."""
    plain = (text if text.isascii() else text.translate(_PLAINER)).strip()
    found = _number(plain)
    if not found:
        return _UNREADABLE if plain else _EMPTY
    sign, whole, top, bottom, digits, exponent = found.groups()
    value = _fraction(whole, top, bottom) if top else _decimal(digits, exponent)
    if isinstance(value, Trouble):
        return value
    return _with_unit(-value if sign == "-" else value, plain[found.end() :], asked)


def _with_unit(value: float, word: str, asked: Asked) -> Reading | Trouble:
    if not word:
        return _MISSING[asked.dimension]
    unit = _WORDS.get(word) or _WORDS.get(_squeezed(word))
    if unit is not None:
        return _measured(value, unit, asked)
    return _UNREADABLE if word[0] in "0123456789/.,*+-^_" else _unknown(word, asked)


def _fraction(whole: str | None, top: str, bottom: str) -> float | Trouble:
    below = float(bottom)
    return float(whole or 0) + float(top) / below if below else _ZERO


def _decimal(digits: str, exponent: str | None) -> float | Trouble:
    number = _pointed(digits)
    if isinstance(number, Trouble):
        return number
    value = float(f"{number}e{exponent}" if exponent else number)
    # 1e-999 comes out as nought, which was not what was typed.
    return value if value or not number.strip("0.") else SMALLEST / 10


def _pointed(digits: str) -> str | Trouble:
    """The digits with at most a decimal point, whichever of comma and point groups the thousands."""
    digits = digits.rstrip(",")
    if "," not in digits and digits.count(".") < 2:
        return digits
    last = "," if digits.rfind(",") > digits.rfind(".") else "."
    whole, _, part = digits.rpartition(last)
    if whole.isdecimal() or not whole:
        return _ambiguous(whole, part) if _thousands(digits) else f"{whole}.{part}"
    if last in whole:
        whole, part = digits, ""
    return re.sub("[,.]", "", whole) + "." + part if _thousands(whole) else _UNREADABLE


def _ambiguous(head: str, tail: str) -> Trouble:
    mend = "Write it without the comma, or with a point for the decimals."
    return Trouble("ambiguous", f"Did you mean {head}{tail} or {head}.{tail}? {mend}")


def _wrong_dimension(symbol: str, dimension: str, asked: Asked) -> Trouble:
    return Trouble(
        "unit_wrong",
        f"{unit_text(symbol)} measures {dimension}, but {asked.dimension} is asked for. "
        f"Use a unit such as {_EXAMPLES[asked.dimension]}.",
    )


def _other_unit(value: float, symbol: str, said: Mark | None, asked: Asked) -> Trouble:
    wanted = unit_text(asked.unit, asked.kind)
    return Trouble(
        "unit_other",
        f"This problem is about the unit: it asks for {wanted} and takes no other. Say "
        f"{exact(value)} {unit_text(symbol, said)} in {unit_text(asked.unit)}.",
    )


def _unknown(word: str, asked: Asked) -> Trouble:
    # Signs that do not print, or turn the writing round, are not shown back.
    shown = f"“{word[:16]}…”" if len(word) > 16 else f"“{word}”"
    named = f"The unit {shown}" if shown.isprintable() else "The unit"
    return Trouble(
        "unit_unknown", f"{named} is not known here. Use a unit such as {_EXAMPLES[asked.dimension]}."
    )
