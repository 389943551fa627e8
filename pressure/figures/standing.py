"""The column of ``column.py`` with what was found at its foot.

Facts: ``height``, ``area`` and ``found`` (labels) and ``liquid``, what the column is of.
"""

from __future__ import annotations

from pressure.figures.column import FACE, SPAN, WATER
from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import arrow, finish, label


def draw(facts: Facts) -> Sketch:
    parts = (
        f'<g transform="translate(40 0)">{WATER}{FACE}{SPAN}</g>',
        label(120, 119, str(facts["height"]), facts, anchor="end"),
        label(185, 18, str(facts["liquid"]), facts, anchor="middle"),
        label(185, 224, str(facts["area"]), facts, anchor="middle"),
        arrow(185, 130, 185, 188, wide=3),
        label(185, 246, str(facts["found"]), facts, anchor="middle"),
    )
    return finish("A column on its foot", "".join(parts), 262, facts)


FIGURE = Drawing("standing", "column of water", draw)
