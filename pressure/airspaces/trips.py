"""The ways down and up that are asked about, in feet and in metres of sea water."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal, NamedTuple

from pressure.problem import System

TripKind = Literal["down", "up", "stays", "deep breath", "short breath", "back on a breath"]


class Trip(NamedTuple):
    """From one depth to another, in the depth unit of the convention used with it."""

    start: float
    end: float


def _pairs(*depths: tuple[float, float]) -> tuple[Trip, ...]:
    return tuple(Trip(*pair) for pair in depths)


def _on_a_breath(*depths: float) -> tuple[Trip, ...]:
    return tuple(Trip(0.0, depth) for depth in depths)


# On one breath a trip lies well short of the depth where lungs reach their residual volume by any published
# volumes (28 to 40 m), or well beyond it.
_FEET: Mapping[TripKind, tuple[Trip, ...]] = {
    "down": _pairs((0, 33), (0, 50), (10, 40), (15, 66), (20, 90), (30, 99)),
    "up": _pairs((33, 0), (50, 10), (66, 20), (90, 0), (99, 30), (40, 15)),
    "stays": _pairs((33, 33), (40, 40), (50, 50), (66, 66), (80, 80), (99, 99)),
    "deep breath": _on_a_breath(165, 180, 190, 200, 210, 220),
    "short breath": _on_a_breath(25, 30, 33, 40, 50, 60),
    "back on a breath": _pairs((25, 0), (30, 0), (33, 0), (40, 0), (50, 0), (60, 0)),
}
_METRES: Mapping[TripKind, tuple[Trip, ...]] = {
    "down": _pairs((0, 10), (0, 15), (3, 12), (5, 20), (6, 27), (9, 30)),
    "up": _pairs((10, 0), (15, 3), (20, 6), (27, 0), (30, 9), (12, 5)),
    "stays": _pairs((10, 10), (12, 12), (15, 15), (20, 20), (25, 25), (30, 30)),
    "deep breath": _on_a_breath(50, 55, 60, 65, 70, 75),
    "short breath": _on_a_breath(8, 10, 12, 15, 18, 20),
    "back on a breath": _pairs((8, 0), (10, 0), (12, 0), (15, 0), (18, 0), (20, 0)),
}
TRIPS: Mapping[System, Mapping[TripKind, tuple[Trip, ...]]] = MappingProxyType(
    {"us": _FEET, "metric": _METRES}
)
EACH = 6
"""How many trips there are of each kind."""
