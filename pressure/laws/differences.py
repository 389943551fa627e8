"""Pressure differences: what lies across the wall of a space whose gas cannot follow the water.

A difference needs no atmosphere: it presses on both sides and drops out. Source of the relation: OpenStax,
College Physics 2e, §11.4 (Δp = ρ g Δh).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from types import MappingProxyType

from pressure.problem import System
from pressure.units import FACTORS, unit_text
from pressure.waters import ALLOWED, Convention, Water

ROUND_SURFACES: Mapping[tuple[str, str], float] = MappingProxyType(
    {
        ("psi", "mmHg"): 760.0,
        ("psi", "cmH2O"): 1033.0,
        ("bar", "kPa"): 100.0,
        ("bar", "mmHg"): 750.0,
        ("bar", "cmH2O"): 1020.0,
    }
)
"""The trade's atmosphere (14.7 psi or 1 bar) in further units, to as many digits as are used.

Source: 760 mmHg by OpenStax, Chemistry 2e, §9.1; the others by arithmetic (1033.2, 750.06 and 1019.7).
"""


def across(gradient: float, deeper: float, shallower: float) -> float:
    """The difference across a closed wall, in the unit of ``gradient``: the water between the two depths."""
    return gradient * (deeper - shallower)


def height_for(difference: float, gradient: float) -> float:
    """The rise or fall, in the length unit of ``gradient``, that makes so large a ``difference``."""
    return difference / gradient


def air_between(volume: float, higher: float, lower: float, measured_at: float) -> float:
    """What a space of one ``volume`` holds more at the ``higher`` pressure, as it measures elsewhere.

    Absolute pressures in one unit. Boyle's law for the air that is let in on the way down or out on the way
    up. Raises ValueError when ``measured_at`` is not above vacuum.
    """
    if measured_at <= 0.0:
        raise ValueError("Air is measured at an absolute pressure above zero; a gauge reading will not do.")
    return volume * (higher - lower) / measured_at


@cache
def allowed_in(system: System, water: Water, unit: str) -> tuple[Convention, ...]:
    """The conventions of ``waters.ALLOWED`` with their pressures in ``unit``, the named one first.

    The named one takes the trade's round figure and says it; the others are converted exactly. Raises
    KeyError for a unit in which the trade has no round figure.
    """
    conventions = ALLOWED[system, water]
    named, *others = conventions
    own = named.pressure_unit
    if unit == own:
        return conventions
    surface = ROUND_SURFACES[own, unit]
    whole = "An atmosphere" if own == "psi" else "A bar"
    first = replace(
        named,
        pressure_unit=unit,
        surface=surface,
        gradient=surface / named.column,
        sentence=f"{named.sentence} {whole} is {surface:g} {unit_text(unit)}.",
    )
    size = FACTORS[own] / FACTORS[unit]
    rest = [
        replace(each, pressure_unit=unit, surface=each.surface * size, gradient=each.gradient * size)
        for each in others
    ]
    return (first, *rest)
