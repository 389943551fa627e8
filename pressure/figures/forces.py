"""A body under water with what bears it up and what draws it down: arrows as long as the forces.

Facts: ``ups`` and ``downs`` arrows with ``up:n`` and ``down:n`` (shares of the greatest) and their labels
``up:n:label`` and ``down:n:label``; ``body``, what is written in it; ``bag`` 1 where a lift bag is over it.
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import WIDE, arrow, box, finish, label, line

_LEFT, _RIGHT, _TOP, _FOOT, _LONGEST = 70.0, 250.0, 104.0, 138.0, 66.0
_SURFACE = 14.0


def draw(facts: Facts) -> Sketch:
    foot = _FOOT + _LONGEST + 12
    parts = (
        box("fig-water", 0, _SURFACE, WIDE, foot - _SURFACE),
        line(f"M0 {_SURFACE:g}H{WIDE:g}", "fig-deep"),
        box("fig-face", _LEFT, _TOP, _RIGHT - _LEFT, _FOOT - _TOP),
        label((_LEFT + _RIGHT) / 2, (_TOP + _FOOT) / 2, str(facts["body"]), facts, anchor="middle"),
        *_arrows(facts, "up", _TOP, -1),
        *_arrows(facts, "down", _FOOT, 1),
    )
    return finish("Forces on a body under water", "".join(parts), foot + 4, facts)


def _arrows(facts: Facts, way: str, edge: float, sign: int) -> list[str]:
    """One arrow in the middle, or two with their labels to their outer sides."""
    count = int(facts[f"{way}s"])
    places = ((160.0, "start"),) if count == 1 else ((136.0, "end"), (184.0, "start"))
    parts = []
    for n, (x, anchor) in enumerate(places[:count]):
        long = max(_LONGEST * float(facts[f"{way}:{n}"]), 4.0)
        beside, words = x + (9 if anchor == "start" else -9), str(facts[f"{way}:{n}:label"])
        parts.append(arrow(x, edge, x, edge + sign * long))
        parts.append(label(beside, edge + sign * max(long / 2, 14), words, facts, anchor=anchor))
    return parts


FIGURE = Drawing("forces", "buoyancy", draw)
