"""A tube whose foot stands in water: the stronger air outside pushes a column up into it.

Facts: ``height``, ``inner`` and ``outer`` (labels of the column, of the air over it and over the water).
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import arrow, box, finish, label, line, span

_LEVEL, _COLUMN = 146.0, 62.0


def draw(facts: Facts) -> Sketch:
    parts = (
        box("fig-water", 16, _LEVEL, 288, 42),
        line(f"M16 {_LEVEL - 16:g}V{_LEVEL + 42:g}H304V{_LEVEL - 16:g}"),
        line(f"M16 {_LEVEL:g}H44M72 {_LEVEL:g}H304", "fig-deep"),
        box("fig-water", 44, _COLUMN, 28, _LEVEL - _COLUMN),
        line(f"M44 {_COLUMN:g}H72", "fig-deep"),
        line(f"M44 16V{_LEVEL + 28:g}M72 16V{_LEVEL + 28:g}", wide=2),
        arrow(58, 36, 58, _COLUMN - 4),
        *[arrow(x, _LEVEL - 22, x, _LEVEL - 4) for x in (30, 268, 290)],
        label(82, 34, str(facts["inner"]), facts),
        span(88, _COLUMN, 88, _LEVEL),
        label(100, (_COLUMN + _LEVEL) / 2 - 12, str(facts["height"]), facts),
        label(100, _LEVEL - 14, str(facts["outer"]), facts),
    )
    return finish("A column held up by air", "".join(parts), _LEVEL + 50, facts)


FIGURE = Drawing("tube", "column of water", draw)
