"""The apparatus on a lesson's bench: what its instruments show at every depth, computed by ``pressure``.

The page's script only looks rows up in this table; the page without script is one row of it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from pressure.figures import box
from pressure.figures.dials import Dial, dial
from pressure.laws.boyle import volume_after
from pressure.problem import System
from pressure.units import rounded, shown
from pressure.waters import ALLOWED, Convention

NAMES = ("box",)
"""The apparatus a lesson may ask for."""

_BOXES: Mapping[System, tuple[float, str]] = {"us": (1.0, "ft3"), "metric": (60.0, "L")}
_SCALES: Mapping[System, tuple[float, float, int]] = {"us": (90.0, 15.0, 3), "metric": (6.0, 1.0, 4)}
_PARTS = ("all", "one half", "one third", "one quarter", "one fifth", "one sixth")
_DEPTH = re.compile(r"-?[0-9]{1,6}(?:\.[0-9]{1,6})?")


@dataclass(frozen=True, slots=True)
class Reading:
    """What is so at one depth; pressures in the convention's unit, ``part`` of the surface volume."""

    depth: float
    gauge: float
    absolute: float
    atmospheres: float
    volume: float
    part: float


@dataclass(frozen=True, slots=True)
class Bench:
    """The apparatus in one system of units: its dials, its depths and the table of what it shows.

    ``rows`` has a line for every whole depth, nought first; ``columns`` names what stands in it.
    """

    system: System
    convention: Convention
    gauge: Dial
    absolute: Dial
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]

    @property
    def stops(self) -> tuple[int, ...]:
        """The depths that have a link of their own: each whole atmosphere of water."""
        return tuple(round(n * self.convention.column) for n in range(box.DEEPEST + 1))

    @property
    def deepest(self) -> int:
        return self.stops[-1]

    def at(self, depth: int) -> dict[str, str]:
        return dict(zip(self.columns, self.rows[depth], strict=True))

    def data(self) -> dict[str, Any]:
        """For the page's script."""
        return {"columns": self.columns, "rows": self.rows}


def read(system: System, depth: float) -> Reading:
    """What the instruments read at a depth of sea water, in the system's length unit."""
    water = ALLOWED[system, "sea"][0]
    full, _ = _BOXES[system]
    absolute = water.absolute(depth)
    volume = volume_after(full, water.surface, absolute)
    return Reading(depth, water.gauge(depth), absolute, water.atmospheres(depth), volume, part=volume / full)


def words(system: System, reading: Reading) -> dict[str, str]:
    """The reading as it is printed, each number with its unit."""
    water, (_, volume_unit) = ALLOWED[system, "sea"][0], _BOXES[system]
    whole = round(reading.atmospheres)
    is_whole = abs(reading.atmospheres - whole) < 1e-9 and 1 <= whole <= len(_PARTS)
    return {
        "depth": shown(reading.depth, water.depth_unit, given=True),
        "gauge": shown(reading.gauge, water.pressure_unit),
        "absolute": shown(reading.absolute, water.pressure_unit),
        "ata": shown(reading.atmospheres, "atm", "absolute"),
        "volume": shown(reading.volume, volume_unit),
        "part": _PARTS[whole - 1] if is_whole else f"{rounded(100 * reading.part)} %",
    }


@cache
def bench(system: System) -> Bench:
    """The apparatus in US customary or metric units."""
    water = ALLOWED[system, "sea"][0]
    gauge, absolute = _dial(water, system, "gauge"), _dial(water, system, "absolute")
    depths = range(round(box.DEEPEST * water.column) + 1)
    rows = [_row(system, read(system, depth), gauge, absolute) for depth in depths]
    return Bench(system, water, gauge, absolute, tuple(rows[0]), tuple([tuple(row.values()) for row in rows]))


def _dial(water: Convention, system: System, name: str) -> Dial:
    top, step, fine = _SCALES[system]
    return dial(
        name,
        f"{name.capitalize()} pressure",
        unit=water.pressure_unit,
        top=top,
        step=step,
        fine=fine,
        atmosphere=water.surface,
        band=name == "absolute",
    )


def _row(system: System, reading: Reading, gauge: Dial, absolute: Dial) -> dict[str, str]:
    hanging = box.hang(reading.atmospheres - 1, reading.part)
    return words(system, reading) | {
        "gauge_turn": f"{gauge.turn(reading.gauge):.1f}",
        "absolute_turn": f"{absolute.turn(reading.absolute):.1f}",
        "top": f"{hanging.top:.1f}",
        "level": f"{hanging.level:.1f}",
        "air": f"{hanging.air:.1f}",
    }


def find_depth(asked: str | None, on: Bench) -> tuple[int, str]:
    """The whole depth nearest to what the address asks for, and a sentence where it had to be changed."""
    if not asked:
        return 0, ""
    unit = on.convention.depth_unit
    reach = f"This apparatus goes from 0 to {on.deepest} {unit} in whole steps"
    if not _DEPTH.fullmatch(asked):
        return 0, f"That was not a depth. {reach}; it stands at the surface."
    depth = min(max(round(float(asked)), 0), on.deepest)
    return depth, "" if depth == float(asked) else f"{reach}; it stands at {depth} {unit}, the nearest."


def stage(on: Bench, depth: int) -> dict[str, Any]:
    """All that the page needs to show the apparatus at a depth, with or without script."""
    stops, passed = on.stops, [stop for stop in on.stops if stop < depth]
    return {
        "bench": on,
        "depth": depth,
        "now": on.at(depth),
        "log": [on.at(stop) | {"at": stop} for stop in [*passed, depth]],
        "before": passed[-1] if passed else None,
        "next": next((stop for stop in stops if stop > depth), None),
        "scale": [(stop, box.SURFACE + n * box.ATMOSPHERE) for n, stop in enumerate(stops)],
        "floor": box.FLOOR,
        "water": box.FLOOR - box.SURFACE,
        "box_height": box.HEIGHT,
        "surface": box.SURFACE,
    }
