"""What a gauge, the air in a box and the rest read under sea water: for the numbers in a lesson's text."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pressure.laws.boyle import volume_after
from pressure.problem import System
from pressure.units import rounded, shown
from pressure.waters import ALLOWED

BOXES: Mapping[System, tuple[float, str]] = {"us": (1.0, "ft3"), "metric": (60.0, "L")}
"""The air that the box holds at the surface, and its unit."""
_PARTS = ("all", "one half", "one third", "one quarter", "one fifth", "one sixth")


@dataclass(frozen=True, slots=True)
class Reading:
    """What is so at one depth; pressures in the convention's unit, ``part`` of the surface volume."""

    depth: float
    gauge: float
    absolute: float
    atmospheres: float
    volume: float
    part: float


def read(system: System, depth: float) -> Reading:
    """What the instruments read at a depth of sea water, in the system's length unit."""
    water = ALLOWED[system, "sea"][0]
    full, _ = BOXES[system]
    absolute = water.absolute(depth)
    volume = volume_after(full, water.surface, absolute)
    return Reading(depth, water.gauge(depth), absolute, water.atmospheres(depth), volume, part=volume / full)


def words(system: System, reading: Reading) -> dict[str, str]:
    """The reading as it is printed, each number with its unit."""
    water, (_, volume_unit) = ALLOWED[system, "sea"][0], BOXES[system]
    return {
        "depth": shown(reading.depth, water.depth_unit, given=True),
        "gauge": shown(reading.gauge, water.pressure_unit),
        "absolute": shown(reading.absolute, water.pressure_unit),
        "ata": shown(reading.atmospheres, "atm", "absolute"),
        "volume": shown(reading.volume, volume_unit),
        "part": part(reading.atmospheres, reading.part),
    }


def part(atmospheres: float, share: float) -> str:
    """A share in words where the pressure is a whole number of atmospheres, else in per cent."""
    whole = round(atmospheres)
    is_whole = abs(atmospheres - whole) < 1e-9 and 1 <= whole <= len(_PARTS)
    return _PARTS[whole - 1] if is_whole else f"{rounded(100 * share)} %"
