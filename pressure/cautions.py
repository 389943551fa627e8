"""What is said beside everything that can hurt someone: one sentence, worded once."""

from __future__ import annotations

STANDARD = (
    "A training aid, not a dive plan, a decompression schedule or medical advice; local regulations, the "
    "employer's manual, the supervisor and a diving physician come first."
)
"""The standing caution. A family puts its own sentence about the hazard before it."""

HELD_BREATH = f"Air held in the lungs grows in the same way: never hold your breath on the way up. {STANDARD}"

BEFORE_DECOMPRESSION = (
    "This course stops short of decompression: it asks how gases share the pressure, never how long or how "
    "deep a diver may stay."
)
"""Stands before ``STANDARD`` wherever partial pressures of oxygen or nitrogen are asked for."""

LIFTING = (
    "A load that comes up by itself gathers speed and can kill: nobody stays over it, under it or tied to "
    "it, and the bag can be vented from a safe place."
)
"""Stands before ``STANDARD`` wherever air lifts a load."""

ALTITUDE = "Tables made for the sea do not hold for a dive at altitude."
"""Stands before ``STANDARD`` wherever a lake lies above the sea."""
