"""A cylinder filled to its gauge pressure, and the diver below who breathes from it where there is one.

Facts: ``full``, ``high`` and ``low`` (gauge pressures on one scale; nothing where they play no part),
``n:level`` and ``n:label`` for each of ``count`` labels beside it, from the top, ``room`` (the label under
it) and ``depth`` (the label of the diver, or empty).
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import WIDE, apart, box, finish, label, line, span

_X, _WIDE, _TOP, _FOOT = 14.0, 44.0, 28.0, 158.0
_WATER, _SURFACE = 236.0, 70.0


def draw(facts: Facts) -> Sketch:
    full, high, low = (float(facts[name]) for name in ("full", "high", "low"))
    rise = (_FOOT - _TOP - 6) / max(full, high)
    upper, lower = _FOOT - rise * high, _FOOT - rise * low
    parts = (
        box("fig-face", _X, _TOP, _WIDE, _FOOT - _TOP, corner=10),
        f'<path class="fig-water" d="M{_X + 1:g} {upper:.4g}H{_X + _WIDE - 1:g}V{_FOOT - 10:g}'
        f'q0 9 -9 9H{_X + 10:g}q-9 0 -9 -9Z"/>',
        line(f"M{_X:g} {upper:.4g}h{_WIDE:g}", "fig-deep", 2),
        line(f"M{_X:g} {lower:.4g}h{_WIDE:g}", dashed=True) if low else "",
        line(f"M{_X + 15:g} {_TOP:g}v-14h14v14"),
        span(_X + _WIDE + 10, upper, _X + _WIDE + 10, lower) if high > low else "",
        *_labels(facts, rise),
        label(_X, _FOOT + 14, str(facts.get("room", "")), facts),
        _diver(str(facts["depth"]), facts) if facts.get("depth") else "",
    )
    return finish("A cylinder and its gas", "".join(parts), _FOOT + 28, facts)


def _labels(facts: Facts, rise: float) -> list[str]:
    count = range(int(facts["count"]))
    places = apart([_FOOT - rise * float(facts[f"{n}:level"]) for n in count], 20)
    return [
        label(_X + _WIDE + 20, y, str(facts[f"{n}:label"]), facts) for n, y in zip(count, places, strict=True)
    ]


def _diver(depth: str, facts: Facts) -> str:
    """A helmet on a hose in the water, with its depth under it."""
    x, y = (_WATER + WIDE) / 2, 118.0
    return (
        box("fig-water", _WATER, _SURFACE, WIDE - _WATER, _FOOT - _SURFACE + 4)
        + line(f"M{_WATER:g} {_SURFACE:g}H{WIDE:g}", "fig-deep")
        + line(f"M{_X + 22:g} {_TOP - 14:g}V8H{x:g}V{y - 12:g}", "fig-deep", 2)
        + f'<circle class="fig-face" cx="{x:g}" cy="{y:g}" r="12" stroke-width="1.5"/>'
        + box("fig-solid", x - 5, y - 4, 10, 8)
        + label(x, y + 28, depth, facts, anchor="middle")
    )


FIGURE = Drawing("cylinder", "supply", draw)
