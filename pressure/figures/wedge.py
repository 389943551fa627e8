"""Pressure growing with depth: the air on top keeps its width all the way down, the water's part grows.

Facts: ``air`` (the atmosphere as a share of the absolute pressure at depth), ``depth``, ``over`` and
``under`` (labels at the depth line, above the water, and at the foot), ``water`` and ``is_gauge`` (1 where
the label at the foot counts the water alone).
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import WIDE, box, finish, label, line, span, width, within

_TOP, _DEEP, _LEFT, _RIGHT = 46.0, 166.0, 116.0, 300.0


def draw(facts: Facts) -> Sketch:
    edge = _LEFT + (_RIGHT - _LEFT) * float(facts["air"])
    start = edge if facts.get("is_gauge") else _LEFT
    over, under = str(facts["over"]), str(facts["under"])
    parts = (
        box("fig-water", 0, _TOP, WIDE, _DEEP + 16 - _TOP),
        f'<path class="fig-face" d="M{_LEFT:g} {_TOP:g}H{edge:.4g}L{_RIGHT:g} {_DEEP:g}H{_LEFT:g}Z" '
        'stroke-width="1.5"/>',
        line(f"M{edge:.4g} {_TOP:g}V{_DEEP:g}", dashed=True),
        line(f"M0 {_TOP:g}H{WIDE:g}", "fig-deep"),
        span(_LEFT - 12, _TOP, _LEFT - 12, _DEEP),
        label(_LEFT - 22, (_TOP + _DEEP) / 2, str(facts["depth"]), facts, anchor="end"),
        line(f"M{(_LEFT + edge) / 2:.4g} {_TOP - 4:g}V{_TOP - 14:g}", wide=1),
        label(max((_LEFT + edge) / 2, width(over, facts) / 2 + 4), _TOP - 24, over, facts, anchor="middle"),
        span(start, _DEEP + 26, _RIGHT, _DEEP + 26),
        label(within((start + _RIGHT) / 2, under, facts), _DEEP + 44, under, facts, anchor="middle"),
        label(WIDE - 8, _TOP + 14, f"{facts['water']} water", facts, anchor="end", muted=True),
    )
    return finish("Pressure growing with depth", "".join(parts), _DEEP + 58, facts)


FIGURE = Drawing("wedge", "depth", draw)
