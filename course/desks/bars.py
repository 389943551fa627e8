"""Bar charts: a bar for each class, its name under it, the figure above it, and all of it in words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pressure.figures.drawing import Sketch, svg, text
from pressure.figures.parts import box, line

_WIDE, _TOP, _FLOOR, _HIGH = 360.0, 28.0, 150.0, 196.0
_MOST = 14


@dataclass(frozen=True, slots=True)
class Bar:
    """``height`` runs from 0 to 1; ``value`` stands above the bar, ``said`` is what a voice says of it."""

    name: str
    height: float
    value: str
    said: str


def chart(name: str, title: str, across: str, bars: Sequence[Bar]) -> str:
    """The chart as one accessible image; at most fourteen bars, the rest is left to the table beside it."""
    shown = bars[:_MOST]
    step = (_WIDE - 16) / max(len(shown), 1)
    parts = [line(f"M8 {_FLOOR:g}H{_WIDE - 8:g}", wide=1)]
    for place, bar in enumerate(shown):
        parts.append(_bar(8 + step * place, step, bar))
    parts.append(text(_WIDE / 2, _HIGH - 10, across, size=13, muted=True))
    words = f"{across.capitalize()}. " + "; ".join(bar.said for bar in shown) + "."
    return svg(name, Sketch(title, (0.0, 0.0, _WIDE, _HIGH), "".join(parts)), words, width=480)


def _bar(left: float, step: float, bar: Bar) -> str:
    high = max(bar.height, 0.0) * (_FLOOR - _TOP)
    wide = min(step * 0.7, 40.0)
    middle = left + step / 2
    size = 12 if step > 26 else 9
    return (
        box("fig-solid", middle - wide / 2, _FLOOR - high, wide, high)
        + text(middle, _FLOOR - high - 9, bar.value, size=size)
        + text(middle, _FLOOR + 13, bar.name, size=size)
    )
