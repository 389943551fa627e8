"""Absolute pressure against depth of sea water: a straight line that does not begin at nought.

Facts: the ``system``, "us" or "metric".
"""

from __future__ import annotations

from functools import cache

from pressure.figures.curves import Curve, sketch
from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.units import exact, shown
from pressure.waters import ALLOWED, Convention

ATMOSPHERES = 6
"""How far down the curve goes, in atmospheres absolute."""


def _water(facts: Facts) -> Convention:
    return ALLOWED[str(facts["system"]), "sea"][0]


@cache
def _curve(water: Convention) -> Curve:
    depths = tuple([round(n * water.column, 6) for n in range(ATMOSPHERES)])
    return Curve(
        title="Absolute pressure against depth of sea water",
        across=f"depth, {water.depth_unit}",
        up=f"absolute pressure, {water.pressure_unit}",
        xs=depths,
        ys=tuple([water.absolute(depth) for depth in depths]),
        x_ticks=depths,
        y_ticks=tuple([round(n * water.surface, 6) for n in range(ATMOSPHERES + 1)]),
    )


def draw(facts: Facts) -> Sketch:
    return sketch(_curve(_water(facts)))


def words(facts: Facts) -> str:
    water = _water(facts)
    column, air = exact(water.column), shown(water.surface, water.pressure_unit)
    deepest = (ATMOSPHERES - 1) * water.column
    return (
        f"A straight line. It begins at {air} at the surface, not at nought, and rises by as much again with "
        f"every {column} {water.depth_unit}, to {shown(water.absolute(deepest), water.pressure_unit)} at "
        f"{exact(deepest)} {water.depth_unit}."
    )


FIGURE = Drawing("absolute-curve", "depth", draw, words)
