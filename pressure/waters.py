"""Sea and fresh water, and the conventions by which the trade turns depth into pressure.

A convention is a surface pressure and a gradient in one unit. Problems name one in the prompt and accept
the others of the same list; in metres the prompt fixes the one that counts, because 1 against 1.013 bar
alone would spend the rounding allowance.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from pressure import constants as c
from pressure.units import FACTORS, unit_text

Water = Literal["sea", "fresh"]

_PSI_PER_ATM = FACTORS["atm"] / FACTORS["psi"]
_SQUARE_INCHES = 144.0  # to a square foot


@dataclass(frozen=True, slots=True)
class Convention:
    """Pressure in ``pressure_unit`` is ``surface`` plus ``gradient`` for each ``depth_unit`` of water.

    ``sentence`` is how a prompt names it; ``source`` is where it is used.
    """

    name: str
    water: Water
    pressure_unit: str
    depth_unit: str
    surface: float
    gradient: float
    sentence: str
    source: str

    @property
    def column(self) -> float:
        """The depth of water that weighs as much as the atmosphere, in ``depth_unit``."""
        return self.surface / self.gradient

    def gauge(self, depth: float) -> float:
        return self.gradient * depth

    def absolute(self, depth: float) -> float:
        return self.surface + self.gradient * depth

    def atmospheres(self, depth: float) -> float:
        """Absolute pressure as a multiple of this convention's own surface pressure."""
        return 1.0 + self.gradient * depth / self.surface


def _feet(name: str, water: Water, surface: float, gradient: float, sentence: str, source: str) -> Convention:
    return Convention(name, water, "psi", "ft", surface, gradient, sentence, source)


def _metres(
    name: str, water: Water, surface: float, gradient: float, sentence: str, source: str
) -> Convention:
    return Convention(name, water, "bar", "m", surface, gradient, sentence, source)


def _density(name: str, water: Water, density: c.Constant) -> Convention:
    gradient = density.value * c.GRAVITY.value / 1000
    sentence = f"Take {water} water as {density.value:g} kg/m³ and the atmosphere as 101.325 kPa."
    return Convention(name, water, "kPa", "m", c.ATMOSPHERE.value / 1000, gradient, sentence, density.source)


_TRADE = c.SURFACE_PSI.value

SEA_33_FT = _feet(
    "33 ft to an atmosphere",
    "sea",
    _TRADE,
    _TRADE / c.SEA_FT_PER_ATM.value,
    "Take 33 ft of sea water as one atmosphere, 14.7 psi.",
    c.SEA_FT_PER_ATM.source,
)
SEA_0445_PSI = _feet(
    "0.445 psi to a foot",
    "sea",
    _TRADE,
    c.SEA_PSI_PER_FT.value,
    "Take 0.445 psi for each foot of sea water and 14.7 psi for the atmosphere.",
    c.SEA_PSI_PER_FT.source,
)
SEA_64_LB = _feet(
    "64 lb to a cubic foot",
    "sea",
    _PSI_PER_ATM,
    c.SEA_WEIGHT.value / _SQUARE_INCHES,
    "Take sea water at 64 lb/ft³ and the atmosphere as 14.696 psi.",
    c.SEA_WEIGHT.source,
)
SEA_33_07_FT = _feet(
    "33.07 ft to an atmosphere",
    "sea",
    _PSI_PER_ATM,
    _PSI_PER_ATM / c.SEA_FT_PER_ATM_EXACT.value,
    "Take 33.07 ft of sea water as one atmosphere, 14.696 psi.",
    c.SEA_FT_PER_ATM_EXACT.source,
)
FRESH_34_FT = _feet(
    "34 ft to an atmosphere",
    "fresh",
    _TRADE,
    _TRADE / c.FRESH_FT_PER_ATM.value,
    "Take 34 ft of fresh water as one atmosphere, 14.7 psi.",
    c.FRESH_FT_PER_ATM.source,
)
FRESH_0432_PSI = _feet(
    "0.432 psi to a foot",
    "fresh",
    _TRADE,
    c.FRESH_PSI_PER_FT.value,
    "Take 0.432 psi for each foot of fresh water and 14.7 psi for the atmosphere.",
    c.FRESH_PSI_PER_FT.source,
)
FRESH_62_4_LB = _feet(
    "62.4 lb to a cubic foot",
    "fresh",
    _PSI_PER_ATM,
    c.FRESH_WEIGHT.value / _SQUARE_INCHES,
    "Take fresh water at 62.4 lb/ft³ and the atmosphere as 14.696 psi.",
    c.FRESH_WEIGHT.source,
)
SEA_10_M = _metres(
    "10 m to a bar",
    "sea",
    c.SURFACE_BAR.value,
    1 / c.SEA_M_PER_BAR.value,
    "Take 1 bar at the surface and 10 m of sea water per bar.",
    c.SEA_M_PER_BAR.source,
)
FRESH_10_2_M = _metres(
    "10.2 m to a bar",
    "fresh",
    c.SURFACE_BAR.value,
    1 / c.FRESH_M_PER_BAR.value,
    "Take 1 bar at the surface and 10.2 m of fresh water per bar.",
    c.FRESH_M_PER_BAR.source,
)
SEA_DENSITY = _density("exact density", "sea", c.SEA_DENSITY)
FRESH_DENSITY = _density("exact density", "fresh", c.FRESH_DENSITY)

ALLOWED: Mapping[tuple[str, Water], tuple[Convention, ...]] = MappingProxyType(
    {
        ("us", "sea"): (SEA_33_FT, SEA_0445_PSI, SEA_64_LB, SEA_33_07_FT),
        ("us", "fresh"): (FRESH_34_FT, FRESH_0432_PSI, FRESH_62_4_LB),
        ("metric", "sea"): (SEA_10_M,),
        ("metric", "fresh"): (FRESH_10_2_M,),
        ("si", "sea"): (SEA_DENSITY,),
        ("si", "fresh"): (FRESH_DENSITY,),
    }
)
"""The conventions a prompt allows, by system and water; the first is the one it names."""

LAKE: Mapping[str, tuple[Convention, ...]] = MappingProxyType(
    {"us": (FRESH_0432_PSI, FRESH_34_FT, FRESH_62_4_LB), "metric": (FRESH_10_2_M,), "si": (FRESH_DENSITY,)}
)
"""Fresh water above the sea. Only the gradients count there: the prompt names the air over the lake."""

LAKE_SENTENCE: Mapping[str, str] = MappingProxyType(
    {
        "us": "Take 0.432 psi for each foot of fresh water.",
        "metric": "Take 10.2 m of fresh water per bar.",
        "si": f"Take fresh water as {c.FRESH_DENSITY.value:g} kg/m³ and gravity as {c.GRAVITY.value:g} m/s².",
    }
)
"""How a prompt about a lake names the first of ``LAKE``."""


@dataclass(frozen=True, slots=True)
class Heaviness:
    """What water weighs: ``value`` in ``weight_unit`` for each ``volume_unit``, written with ``unit``."""

    water: Water
    value: float
    unit: str
    weight_unit: str
    volume_unit: str

    @property
    def sentence(self) -> str:
        """How a prompt names it."""
        return f"Take {self.water} water at {self.value:g} {unit_text(self.unit)}."


HEAVINESS: Mapping[tuple[str, Water], Heaviness] = MappingProxyType(
    {
        ("us", "sea"): Heaviness("sea", c.SEA_WEIGHT.value, "lb/ft3", "lb", "ft3"),
        ("us", "fresh"): Heaviness("fresh", c.FRESH_WEIGHT.value, "lb/ft3", "lb", "ft3"),
        ("metric", "sea"): Heaviness("sea", c.SEA_KILOGRAMS.value / 1000, "kg/L", "kg", "L"),
        ("metric", "fresh"): Heaviness("fresh", c.FRESH_DENSITY.value / 1000, "kg/L", "kg", "L"),
        ("si", "sea"): Heaviness("sea", c.SEA_KILOGRAMS.value, "kg/m3", "kg", "m3"),
        ("si", "fresh"): Heaviness("fresh", c.FRESH_DENSITY.value, "kg/m3", "kg", "m3"),
    }
)
"""What a prompt about buoyancy lets water weigh, by system and water. It fixes the one it names."""

SEA_LEVEL_AIR: Mapping[str, tuple[float, ...]] = MappingProxyType(
    {
        "us": (_TRADE, _PSI_PER_ATM),
        "metric": (c.SURFACE_BAR.value, c.ATMOSPHERE.value / c.BAR.value),
        "si": (c.BAR.value / 1000, c.ATMOSPHERE.value / 1000),
    }
)
"""What is taken for the air at sea level, by system, in the unit of its conventions."""

OTHER_COLUMN: Mapping[str, float] = MappingProxyType(
    {"us": c.SEA_M_PER_BAR.value, "metric": c.SEA_FT_PER_ATM.value}
)
"""The number of the other system for the water of one atmosphere: metres among feet, feet among metres."""


def water_and_other(is_fresh: float) -> tuple[Water, Water]:
    """The water of a problem, and the one it may be mistaken for."""
    return ("fresh", "sea") if is_fresh else ("sea", "fresh")
