"""A plain dial: where its marks stand and how far its needle turns. Geometry only; a template draws it.

Lengths are in the drawing's own units round a centre at the origin, y downwards; angles are degrees
clockwise from straight up.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin

SWEEP = 270.0
RADIUS = 76.0
_START = -SWEEP / 2
_LABELS, _BAND, _DOTS = 50.0, 69.0, 83.0


@dataclass(frozen=True, slots=True)
class Mark:
    """A stroke on the scale from (x1, y1) to (x2, y2); ``label`` is centred on (x, y), or empty."""

    x1: float
    y1: float
    x2: float
    y2: float
    x: float
    y: float
    label: str


@dataclass(frozen=True, slots=True)
class Dial:
    """A scale from nought to ``top``; ``dots`` stand at whole atmospheres, ``band`` is a path or empty."""

    name: str
    title: str
    unit: str
    top: float
    marks: tuple[Mark, ...]
    dots: tuple[tuple[float, float], ...]
    band: str

    def turn(self, value: float) -> float:
        """How far the needle turns. Raises ValueError for a value off the scale."""
        if not 0 <= value <= self.top:
            raise ValueError(f"{value:g} {self.unit} is off this dial, which ends at {self.top:g}.")
        return _turn(value, self.top)


def dial(
    name: str,
    title: str,
    *,
    unit: str,
    top: float,
    step: float,
    fine: int,
    atmosphere: float = 0.0,
    band: bool = False,
) -> Dial:
    """A dial labelled every ``step``, with ``fine`` strokes to a step and a dot at each ``atmosphere``.

    With ``band`` the first atmosphere is drawn as a band along the scale; without ``atmosphere`` the dial
    is plain.
    """
    strokes = round(top / step) * fine
    marks = tuple(_mark(n * step / fine, top, labelled=n % fine == 0) for n in range(strokes + 1))
    whole = int(top / atmosphere) + 1 if atmosphere else 0
    dots = tuple(_point(n * atmosphere, top, _DOTS) for n in range(whole))
    return Dial(name, title, unit, top, marks, dots, _arc(atmosphere, top) if band else "")


def _turn(value: float, top: float) -> float:
    return _START + SWEEP * value / top


def _point(value: float, top: float, radius: float) -> tuple[float, float]:
    angle = radians(_turn(value, top))
    return round(radius * sin(angle), 2), round(-radius * cos(angle), 2)


def _mark(value: float, top: float, *, labelled: bool) -> Mark:
    outer = _point(value, top, RADIUS)
    inner = _point(value, top, RADIUS - (12 if labelled else 6))
    return Mark(*outer, *inner, *_point(value, top, _LABELS), f"{value:g}" if labelled else "")


def _arc(value: float, top: float) -> str:
    (x1, y1), (x2, y2) = _point(0, top, _BAND), _point(value, top, _BAND)
    large = int(SWEEP * value / top > 180)
    return f"M{x1} {y1}A{_BAND:g} {_BAND:g} 0 {large} 1 {x2} {y2}"
