"""The step of a solution that finds the difference across a wall, as several families write it."""

from __future__ import annotations

from pressure.constants import FRESH_DENSITY, GRAVITY, SEA_DENSITY
from pressure.formula import Chain, Symbol, Term, equation, given, result
from pressure.laws.differences import across
from pressure.problem import Step
from pressure.waters import Convention

_DENSITIES = {"sea": SEA_DENSITY.value, "fresh": FRESH_DENSITY.value}


def difference_step(why: str, deeper: float, shallower: float, named: Convention) -> Step:
    """The water between the two depths, as a pressure in the convention's unit.

    By the column of one atmosphere, or by density and gravity where the convention is in kPa of SI. With
    nothing for ``shallower`` the whole depth counts.
    """
    foot, difference = named.depth_unit, Symbol("Δp")
    between: Term = Symbol("D", "deep") - Symbol("D", "shallow") if shallower else Symbol("D")
    depths: Term = given(deeper, foot) - given(shallower, foot) if shallower else given(deeper, foot)
    relation, substitution = (_by_density if _is_density(named) else _by_column)(between, depths, named)
    return Step(
        why,
        equation(difference, relation),
        equation(difference, substitution),
        result(difference, across(named.gradient, deeper, shallower), named.pressure_unit),
    )


def _is_density(named: Convention) -> bool:
    return named.name == "exact density"


def _by_column(between: Term, depths: Term, named: Convention) -> tuple[Term, Term]:
    air, column = Symbol("P", "atm", "atmosphere"), Symbol("h", "atm", "of one atmosphere")
    weight = given(named.surface, named.pressure_unit)
    return air * (between / column), weight * (depths / given(named.column, named.depth_unit))


def _by_density(between: Term, depths: Term, named: Convention) -> tuple[Chain, Term]:
    weight = given(_DENSITIES[named.water], "kg/m3") * given(GRAVITY.value, "m/s²")
    return Symbol("ρ") * Symbol("g") * between, weight * depths / given(1000, "Pa/kPa")
