"""Units of the trade: factors to SI, the spellings people type, how a number is shown and spoken.

Pressures that may not be mixed are the types of ``pressures.py``. pint defines the units; it is slow to
import, so ``registry()`` builds it only when asked, and the plain factors here are checked against it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import ROUND_HALF_UP, Decimal
from functools import cache
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal, NamedTuple

from pressure import constants as c

if TYPE_CHECKING:
    import pint

Mark = Literal["gauge", "absolute", "difference"]

_G = c.GRAVITY.value
_FT, _IN, _LB = c.FOOT.value, c.INCH.value, c.POUND.value
_PSI = _LB * _G / _IN**2
_PER_CUBIC_FOOT = _LB * _G / _FT**3
_MM_HG = c.MERCURY.value * _G / 1000

FACTORS: Mapping[str, float] = MappingProxyType(
    {
        "Pa": 1.0,
        "hPa": 100.0,
        "kPa": 1000.0,
        "MPa": 1e6,
        "bar": c.BAR.value,
        "mbar": c.BAR.value / 1000,
        "atm": c.ATMOSPHERE.value,
        "psi": _PSI,
        "mmHg": _MM_HG,
        "inHg": _MM_HG * 25.4,
        "torr": c.ATMOSPHERE.value / 760,
        "cmH2O": 10 * _G,  # conventional: water of 1000 kg/m³, NIST SP 811, 2008, appendix B, recalled
        # By weight of water, as the US Navy Diving Manual is quoted (1 fsw = 3064.3 Pa = 0.44444 psi):
        # 64 lb/ft³ for sea and 62.4 lb/ft³ for fresh water under standard gravity.
        "fsw": c.SEA_WEIGHT.value * _PER_CUBIC_FOOT * _FT,
        "ffw": c.FRESH_WEIGHT.value * _PER_CUBIC_FOOT * _FT,
        # 10 kPa exactly, by the definition of the metre of sea water.
        "msw": c.BAR.value / 10,
        "m": 1.0,
        "cm": 0.01,
        "mm": 0.001,
        "ft": _FT,
        "in": _IN,
        "m2": 1.0,
        "cm2": 1e-4,
        "ft2": _FT**2,
        "in2": _IN**2,
        "m3": 1.0,
        "L": 1e-3,
        "mL": 1e-6,
        "cm3": 1e-6,
        "ft3": _FT**3,
        "in3": _IN**3,
        "gal": c.GALLON.value,
        # Weights, under standard gravity: the trade weighs in pounds and kilograms what pushes in newtons.
        "kg": 1.0,
        "t": 1000.0,
        "lb": _LB,
        "N": 1 / _G,
        "kN": 1000 / _G,
        "s": 1.0,
        "min": 60.0,
        "h": 3600.0,
        "L/min": 1e-3 / 60,
        "m3/min": 1 / 60,
        "m3/h": 1 / 3600,
        "ft3/min": _FT**3 / 60,
        "kg/m3": 1.0,
        "g/L": 1.0,
        "lb/ft3": _LB / _FT**3,
        "%": 0.01,
        "ppm": 1e-6,
    }
)
"""What one of each unit is in Pa, m, m², m³, kg, s, m³/s, kg/m³ or parts of one, by canonical symbol."""


class _Unit(NamedTuple):
    """How a unit is read and said: one and many aloud, and further spellings beside the symbol and those."""

    dimension: str
    one: str
    many: str
    spellings: str = ""


_UNITS: Mapping[str, _Unit] = {
    "Pa": _Unit("pressure", "pascal", "pascals"),
    "hPa": _Unit("pressure", "hectopascal", "hectopascals"),
    "kPa": _Unit("pressure", "kilopascal", "kilopascals", "kn/m2 kn/m²"),
    "MPa": _Unit("pressure", "megapascal", "megapascals"),
    "bar": _Unit("pressure", "bar", "bar", "bars"),
    "mbar": _Unit("pressure", "millibar", "millibar", "mb millibars"),
    "atm": _Unit("pressure", "atmosphere", "atmospheres", "atms at.m"),
    "psi": _Unit(
        "pressure",
        "pound per square inch",
        "pounds per square inch",
        "p.s.i. p.s.i lb/in2 lb/in² lb/in^2 lbs/in2 lbs/in² lbf/in2 lbf/in² lb/sqin lbs/sqin lb/sq.in. "
        "poundspersqin lbpersquareinch lbspersquareinch poundsasquareinch",
    ),
    "mmHg": _Unit("pressure", "millimetre of mercury", "millimetres of mercury"),
    "inHg": _Unit("pressure", "inch of mercury", "inches of mercury", "inchhg incheshg in.hg"),
    "torr": _Unit("pressure", "torr", "torr"),
    "cmH2O": _Unit(
        "pressure", "centimetre of water", "centimetres of water", "cmh₂o cmwater cmofwater cmwc cmh20"
    ),
    "fsw": _Unit(
        "pressure", "foot of sea water", "feet of sea water", "ftsw feetseawater ftseawater ftofseawater"
    ),
    "ffw": _Unit("pressure", "foot of fresh water", "feet of fresh water", "feetfreshwater ftfreshwater"),
    "msw": _Unit(
        "pressure", "metre of sea water", "metres of sea water", "metresseawater mseawater mofseawater"
    ),
    "m": _Unit("length", "metre", "metres", "mtr mtrs"),
    "cm": _Unit("length", "centimetre", "centimetres"),
    "mm": _Unit("length", "millimetre", "millimetres"),
    "ft": _Unit("length", "foot", "feet", "ft. ' ′"),
    "in": _Unit("length", "inch", "inches", 'in. " ″'),
    "m2": _Unit("area", "square metre", "square metres", "m² m^2 sqm sq.m"),
    "cm2": _Unit("area", "square centimetre", "square centimetres", "cm² cm^2 sqcm"),
    "ft2": _Unit("area", "square foot", "square feet", "ft² ft^2 sqft sq.ft sq.ft."),
    "in2": _Unit("area", "square inch", "square inches", "in² in^2 sqin sq.in sq.in."),
    "m3": _Unit("volume", "cubic metre", "cubic metres", "m³ m^3 cum cu.m"),
    "L": _Unit("volume", "litre", "litres", "ℓ lt ltr ltrs dm3 dm³ dm^3"),
    "mL": _Unit("volume", "millilitre", "millilitres"),
    "cm3": _Unit("volume", "cubic centimetre", "cubic centimetres", "cm³ cm^3 cc"),
    "ft3": _Unit(
        "volume",
        "cubic foot",
        "cubic feet",
        "ft³ ft^3 cuft cu.ft cu.ft. cf cuft. cubicft cufeet cufoot feet3 feet³",
    ),
    "in3": _Unit("volume", "cubic inch", "cubic inches", "in³ in^3 cuin cu.in cu.in."),
    "gal": _Unit("volume", "gallon", "gallons", "usgal usgallon usgallons"),
    "kg": _Unit("weight", "kilogram", "kilograms", "kgs kilo kilos kgf kp"),
    "t": _Unit("weight", "tonne", "tonnes", "metricton metrictons tf"),
    "lb": _Unit("weight", "pound", "pounds", "lbs lb. lbs. lbf"),
    "N": _Unit("weight", "newton", "newtons"),
    "kN": _Unit("weight", "kilonewton", "kilonewtons"),
    "s": _Unit("time", "second", "seconds", "sec secs"),
    "min": _Unit("time", "minute", "minutes", "mins"),
    "h": _Unit("time", "hour", "hours", "hr hrs"),
    "L/min": _Unit("flow", "litre a minute", "litres a minute", "lpm l/m ltr/min lperminute litresperminute"),
    "m3/min": _Unit("flow", "cubic metre a minute", "cubic metres a minute", "m³/min"),
    "m3/h": _Unit("flow", "cubic metre an hour", "cubic metres an hour", "m³/h m3/hr m³/hr"),
    "ft3/min": _Unit(
        "flow",
        "cubic foot a minute",
        "cubic feet a minute",
        "ft³/min ft^3/min cfm scfm acfm cuft/min cu.ft/min cf/min cubicfeetperminute",
    ),
    "kg/m3": _Unit("density", "kilogram a cubic metre", "kilograms a cubic metre", "kg/m³ kg/m^3"),
    "g/L": _Unit("density", "gram a litre", "grams a litre", "g/dm3"),
    "lb/ft3": _Unit("density", "pound a cubic foot", "pounds a cubic foot", "lb/ft³ lb/ft^3 lb/cuft lbs/ft3"),
    "%": _Unit("share", "per cent", "per cent", "percent pct"),
    "ppm": _Unit("share", "part per million", "parts per million"),
}

DIMENSIONS: Mapping[str, str] = MappingProxyType({symbol: unit.dimension for symbol, unit in _UNITS.items()})
"""The dimension of each canonical symbol: pressure, length, area, volume, weight, time, flow and so on."""

# Temperatures are given and never asked for: a scale that does not begin at nought has no factor.
_DEGREES: Mapping[str, _Unit] = {
    "°F": _Unit("temperature", "degree Fahrenheit", "degrees Fahrenheit"),
    "°C": _Unit("temperature", "degree Celsius", "degrees Celsius"),
    "°R": _Unit("temperature", "degree Rankine", "degrees Rankine"),
    "K": _Unit("temperature", "kelvin", "kelvins"),
}

_ENDINGS: Mapping[Mark, tuple[str, ...]] = {
    "gauge": ("gauge", "gage", "(gauge)", "(g)", ",gauge"),
    "absolute": ("absolute", "abs", "abs.", "(absolute)", "(abs)", "(a)", ",absolute"),
}
# Letters close up only to symbols: "psia", never "atmospheresa".
_LETTERED = ("psi", "bar", "mbar", "atm", "kPa", "mmHg", "fsw", "ffw", "msw")


def _spellings(symbol: str, unit: _Unit) -> Iterator[str]:
    """Every way to type one unit, lower-cased and without spaces."""
    for word in (symbol, unit.one, unit.many, *unit.spellings.split()):
        plain = word.lower().replace(" ", "")
        yield plain
        if "metre" in plain or "litre" in plain:
            yield plain.replace("metre", "meter").replace("litre", "liter")


def _marked(symbol: str, unit: _Unit) -> Iterator[tuple[str, Mark]]:
    for spelling in _spellings(symbol, unit):
        for mark, endings in _ENDINGS.items():
            yield from ((spelling + ending, mark) for ending in endings)
    if symbol in _LETTERED:
        yield symbol.lower() + "g", "gauge"
        yield symbol.lower() + "a", "absolute"


def _unit_words() -> dict[str, tuple[str, str, float, Mark | None]]:
    words: dict[str, tuple[str, str, float, Mark | None]] = {}
    for symbol, unit in _UNITS.items():
        factor = FACTORS[symbol]
        for spelling in _spellings(symbol, unit):
            words.setdefault(spelling, (symbol, unit.dimension, factor, None))
        if unit.dimension == "pressure":
            for spelling, mark in _marked(symbol, unit):
                words.setdefault(spelling, (symbol, unit.dimension, factor, mark))
    words["ata"] = ("atm", "pressure", FACTORS["atm"], "absolute")
    return words


UNIT_WORDS: Mapping[str, tuple[str, str, float, Mark | None]] = MappingProxyType(_unit_words())
"""Spelling, lower-cased and without spaces -> canonical symbol, dimension, factor to SI, mark."""

_SIGNS: Mapping[str, str] = {
    symbol: symbol.replace("H2", "H₂").replace("2", "²").replace("3", "³")
    for symbol in _UNITS
    if set(symbol) & set("23")
}


def unit_text(unit: str, kind: Mark | None = None) -> str:
    """The unit as the trade prints it: ``ft³``, ``psi gauge``, ``bar absolute``, ``ata``."""
    if unit == "atm" and kind == "absolute":
        return "ata"
    sign = _SIGNS.get(unit, unit)
    return sign if kind in (None, "difference") else f"{sign} {kind}"


def unit_spoken(unit: str, kind: Mark | None = None, *, one: bool = False) -> str:
    """The unit in words for a screen reader: ``pounds per square inch, gauge``. A plain count has none."""
    if not unit:
        return ""
    said = _UNITS.get(unit) or _DEGREES[unit]
    words = said.one if one else said.many
    return words if kind in (None, "difference") else f"{words}, {kind}"


def exact(value: float) -> str:
    """A given number just as it is computed with, without a needless ``.0``."""
    return f"{value:.10f}".rstrip("0").rstrip(".") if value % 1 else f"{value:.0f}"


def rounded(value: float, figures: int = 3) -> str:
    """A computed number to so many significant figures, halves upwards: ``0.333``, ``29.4``, ``103``.

    Whole digits are never blanked out: 1234.5 shows as ``1235``, not ``1230``.
    """
    if not value:
        return "0"
    number = Decimal(repr(value))
    places = figures - 1 - number.adjusted()
    if abs(number.scaleb(places)) >= 10**figures - Decimal("0.5"):  # 99.96 rounds to 100, with a digit more
        places -= 1
    return f"{number.quantize(Decimal(1).scaleb(-max(places, 0)), ROUND_HALF_UP):f}"


def shown(value: float, unit: str, kind: Mark | None = None, *, given: bool = False) -> str:
    """``29.4 psi absolute``: a given number exactly, any other to three significant figures."""
    return f"{exact(value) if given else rounded(value)} {unit_text(unit, kind)}".rstrip()


def spoken(value: float, unit: str, kind: Mark | None = None, *, given: bool = False) -> str:
    """``29.4 pounds per square inch, absolute``: the same number in words for a screen reader."""
    text = exact(value) if given else rounded(value)
    return f"{text} {unit_spoken(unit, kind, one=value == 1 and given)}".rstrip()


@cache
def registry() -> pint.UnitRegistry[float]:
    """pint's registry with the units of the trade. Takes about 0.4 s, so nothing calls it at start-up."""
    import pint

    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    units.define(f"foot_sea_water = {c.SEA_WEIGHT.value} * pound_force / foot ** 3 * foot = fsw")
    units.define(f"foot_fresh_water = {c.FRESH_WEIGHT.value} * pound_force / foot ** 3 * foot = ffw")
    units.define("metre_sea_water = 10 * kilopascal = msw")
    return units
