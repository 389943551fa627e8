"""An open-bottomed box of air let down into water: where it hangs and how far the water has risen in it.

Lengths are in the drawing's own units, y downwards. The water inside the box stands at the depth asked for,
because the air has the pressure of the water that it touches. The box is drawn larger than the depth scale.
"""

from __future__ import annotations

from dataclasses import dataclass

SURFACE = 78.0
"""Where the water begins."""
ATMOSPHERE = 44.0
"""The depth of one atmosphere of water, as drawn."""
HEIGHT = 60.0
"""The box from its top to its open mouth."""
DEEPEST = 5
"""Atmospheres of water shown."""
FLOOR = SURFACE + DEEPEST * ATMOSPHERE + HEIGHT
"""The foot of the drawing."""


@dataclass(frozen=True, slots=True)
class Hanging:
    """The box at one depth: its ``top``, the ``level`` of the water in it, the ``air`` between them."""

    top: float
    level: float
    air: float


def hang(atmospheres: float, part: float) -> Hanging:
    """The box under so many ``atmospheres`` of water with that ``part`` of it still filled with air."""
    level = SURFACE + atmospheres * ATMOSPHERE
    air = HEIGHT * part
    return Hanging(top=level - air, level=level, air=air)
