"""What a layout hands over: the drawing's name, its facts, and a sentence on how it is drawn."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple


class Laid(NamedTuple):
    """``words`` describe the drawing; the values are told after them, the same for every drawing."""

    name: str
    facts: Mapping[str, float | str]
    words: str


def fraction(number: float) -> float:
    """A share for the drawing, short enough to be stored a thousand times."""
    return round(number, 4)
