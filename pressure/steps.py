"""Steps of a worked solution that several families write in the same way."""

from __future__ import annotations

from pressure.constants import FRESH_DENSITY, GRAVITY, SEA_DENSITY
from pressure.formula import Number, Symbol, Term, computed, equation, given, result
from pressure.problem import Step
from pressure.units import FACTORS
from pressure.waters import Convention

_DENSITIES = {"sea": SEA_DENSITY.value, "fresh": FRESH_DENSITY.value}
_PA_PER_KPA = FACTORS["kPa"]


def atmospheres_step(why: str, ratio: Symbol, depth: float, named: Convention) -> Step:
    """The absolute pressure at ``depth``, in the convention's unit, as a multiple of the surface pressure.

    ``ratio`` is the symbol that the step finds; the symbol of the depth takes the same mark below it.
    """
    deep, column = Symbol("D", ratio.below), Symbol("h", "atm", "of one atmosphere")
    foot = named.depth_unit
    return Step(
        why,
        equation(ratio, given(1) + deep / column),
        equation(ratio, given(1) + given(depth, foot) / computed(named.column, foot, figures=6)),
        result(ratio, named.atmospheres(depth), "", figures=4),
    )


def depth_step(shown: Number, gauge: float, named: Convention) -> Step:
    """The depth under a gauge pressure of ``gauge``, ``shown`` as it is to stand on the board.

    By the column of one atmosphere, or by density and gravity where the convention is in kPa.
    """
    deep, water = Symbol("D"), Symbol("P", "g", "gauge")
    if named.pressure_unit == "kPa":
        return _density_step(deep, water, shown, gauge, named)
    air, column = Symbol("P", "atm", "atmosphere"), Symbol("h", "atm", "of one atmosphere")
    unit, foot = named.pressure_unit, named.depth_unit
    return Step(
        f"The water alone makes the gauge pressure, and {named.column:g} {foot} of this water make "
        f"{named.surface:g} {unit}.",
        equation(deep, column * (water / air)),
        equation(deep, given(named.column, foot) * (shown / given(named.surface, unit))),
        result(deep, gauge / named.gradient, foot),
    )


def _density_step(deep: Symbol, water: Symbol, shown: Number, gauge: float, named: Convention) -> Step:
    pascals = Number(shown.text, "kPa")
    weight: Term = given(_DENSITIES[named.water], "kg/m3") * given(GRAVITY.value, "m/s²")
    return Step(
        f"A column presses with height times density times gravity; 1 kPa is {_PA_PER_KPA:g} Pa.",
        equation(deep, water / (Symbol("ρ") * Symbol("g"))),
        equation(deep, given(_PA_PER_KPA, "Pa/kPa") * pascals / weight),
        result(deep, gauge / named.gradient, "m"),
    )
