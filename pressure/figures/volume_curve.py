"""Volume of a fixed amount of gas against depth of sea water: steep near the surface, then ever flatter.

Facts: the ``system``, "us" or "metric".
"""

from __future__ import annotations

from functools import cache

from pressure.figures.curves import Curve, sketch
from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.laws.boyle import volume_after
from pressure.units import exact, rounded
from pressure.waters import ALLOWED, Convention

ATMOSPHERES = 6
"""How far down the curve goes, in atmospheres absolute."""
_FINE = 10
"""Points to an atmosphere: enough for the bend to look round."""


def _water(facts: Facts) -> Convention:
    return ALLOWED[str(facts["system"]), "sea"][0]


def _share(water: Convention, depth: float) -> float:
    """Per cent of the surface volume that is left."""
    return volume_after(100.0, water.surface, water.absolute(depth))


@cache
def _curve(water: Convention) -> Curve:
    depths = tuple([n * water.column / _FINE for n in range((ATMOSPHERES - 1) * _FINE + 1)])
    return Curve(
        title="Volume of a fixed amount of gas against depth of sea water",
        across=f"depth, {water.depth_unit}",
        up="volume, % of that at the surface",
        xs=depths,
        ys=tuple([_share(water, depth) for depth in depths]),
        x_ticks=tuple([round(n * water.column, 6) for n in range(ATMOSPHERES)]),
        y_ticks=(0.0, 20.0, 40.0, 60.0, 80.0, 100.0),
    )


def draw(facts: Facts) -> Sketch:
    return sketch(_curve(_water(facts)))


def words(facts: Facts) -> str:
    water = _water(facts)
    stops = [n * water.column for n in range(1, ATMOSPHERES)]
    told = ", ".join(
        f"{rounded(_share(water, stop))} % at {exact(round(stop, 6))} {water.depth_unit}" for stop in stops
    )
    return f"A curve that falls steeply at first and then ever less: 100 % at the surface, {told}."


FIGURE = Drawing("volume-curve", "Boyle", draw, words)
