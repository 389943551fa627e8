"""Two pressures of air stand against each other over water; how high a column holds the balance?"""

from __future__ import annotations

from typing import NamedTuple

from pressure.constants import FRESH_DENSITY, GRAVITY, SEA_DENSITY
from pressure.formula import Symbol, Term, equation, given, result
from pressure.laws.columns import height_held
from pressure.problem import (
    Asked,
    Axis,
    Facts,
    Family,
    Given,
    Posed,
    Problem,
    Quantity,
    Step,
    System,
    WorkedExample,
)
from pressure.slips import Misstep, slip
from pressure.units import shown
from pressure.waters import ALLOWED, Convention, Water

_PUMPED = (
    "An upright pipe stands with its foot in {water} water. On a day when the atmosphere is {high}, a pump "
    "draws the air in it down to {low}. How high above the water outside",
    "The suction hose of a pump on the quay hangs down into {water} water. The atmosphere is {high}; at the "
    "top of the hose the pump leaves {low}. How high above the water outside",
)
_PRESSED = (
    "Air at {high} is let into the top of a closed tank of {water} water. A pipe from its foot rises beside "
    "it, open to an atmosphere of {low}. How high above the water in the tank",
    "A caisson half full of {water} water is closed and its air pumped up to {high}. A glass tube on its "
    "side is open to an atmosphere of {low}. How high above the water inside",
)
_DENSITIES = {"sea": SEA_DENSITY.value, "fresh": FRESH_DENSITY.value}


class _Sides(NamedTuple):
    """The stronger and the weaker pressure, both absolute, and their difference."""

    high: float
    low: float
    gap: float


def _waters(facts: Facts) -> tuple[Water, Water]:
    """The water of the problem, and the other one."""
    return ("fresh", "sea") if facts["is_fresh"] else ("sea", "fresh")


def _sides(facts: Facts, unit: str) -> _Sides:
    air, gap = facts[f"air_{unit}"], facts[f"gap_{unit}"]
    if facts["is_pumped"]:
        return _Sides(air, round(air - gap, 6), gap)
    return _Sides(round(air + gap, 6), air, gap)


def _convention(system: System, named: Convention, water: Water) -> str:
    if system == "si":
        return f"Take {water} water as {_DENSITIES[water]:g} kg/m³ and gravity as 9.80665 m/s²."
    return (
        f"Take {named.column:g} {named.depth_unit} of {water} water as {named.surface:g} "
        f"{named.pressure_unit}."
    )


def pose(system: System, facts: Facts) -> Posed:
    water, other = _waters(facts)
    conventions = ALLOWED[system, water]
    named = conventions[0]
    unit, foot = named.pressure_unit, named.depth_unit
    sides = _sides(facts, unit)
    scene = (_PUMPED if facts["is_pumped"] else _PRESSED)[int(facts["scene"])].format(
        water=water,
        high=shown(sides.high, unit, "absolute", given=True),
        low=shown(sides.low, unit, "absolute", given=True),
    )
    return Posed(
        situation=f"{scene} does the column come to stand, in {foot}?",
        convention=_convention(system, named, water),
        givens=(
            Given("P₁", "stronger pressure of air", Quantity(sides.high, unit, "absolute")),
            Given("P₂", "weaker pressure of air", Quantity(sides.low, unit, "absolute")),
        ),
        asked=Asked("h", "height of the column", "length", foot),
        accepted=tuple([height_held(sides.gap, each.gradient) for each in conventions]),
        missteps=(
            *_missteps(sides, conventions),
            _water_slip(water, *[height_held(sides.gap, each.gradient) for each in ALLOWED[system, other]]),
        ),
        sense="Air presses on both ends of the column, so it stands lower than the stronger pressure would "
        "hold it over a vacuum.",
    )


def _missteps(sides: _Sides, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "absolute-for-difference",
            "{typed} would stand under a vacuum. There is air over the water too: take its pressure off.",
            *[height_held(sides.high, each.gradient) for each in conventions],
        ),
        slip(
            "weaker-alone",
            "{typed} is the column of the weaker pressure alone. The difference of the two holds the water.",
            *[height_held(sides.low, each.gradient) for each in conventions],
        ),
        slip(
            "sides-added",
            "{typed} adds the two pressures. They press against each other: take one from the other.",
            *[height_held(sides.high + sides.low, each.gradient) for each in conventions],
        ),
        slip(
            "inverted-factor",
            "The factor is upside down. Divide the pressure by what each length of water weighs.",
            *[sides.gap * each.gradient for each in conventions],
        ),
    )


def _water_slip(water: Water, *values: float) -> Misstep:
    if water == "sea":
        return slip("fresh-for-salt", "{typed} is a column of fresh water. Sea water is heavier.", *values)
    return slip("salt-for-fresh", "{typed} is a column of sea water. Fresh water is lighter.", *values)


def solve(problem: Problem) -> tuple[Step, ...]:
    water, _ = _waters(problem.facts)
    named = ALLOWED[problem.system, water][0]
    unit, foot = named.pressure_unit, named.depth_unit
    sides = _sides(problem.facts, unit)
    net, high = Symbol("Δp"), Symbol("h")
    relation, numbers = _column(problem.system, named, water, given(sides.gap, unit))
    return (
        Step(
            "Air presses on the water at both ends. The column is held by the difference.",
            equation(net, Symbol("P", "1") - Symbol("P", "2")),
            equation(net, given(sides.high, unit) - given(sides.low, unit)),
            result(net, sides.gap, unit),
        ),
        Step(
            "The water stands as high as its own weight balances that difference.",
            equation(high, relation),
            equation(high, numbers),
            result(high, problem.answer.value, foot),
        ),
    )


def _column(system: System, named: Convention, water: Water, gap: Term) -> tuple[Term, Term]:
    """The height of the column as a relation and with its numbers put in."""
    net = Symbol("Δp")
    if system == "si":
        weight = given(_DENSITIES[water], "kg/m3") * given(GRAVITY.value, "m/s²")
        return net / (Symbol("ρ") * Symbol("g")), gap * given(1000, "Pa/kPa") / weight
    whole, surface = Symbol("h", "0", "of the column named"), Symbol("P", "0", "of the column named")
    column = given(named.column, named.depth_unit)
    return whole * (net / surface), column * (gap / given(named.surface, named.pressure_unit))


def _grid(first: int, last: int, per: int, step: int = 1) -> tuple[float, ...]:
    return tuple(n / per for n in range(first, last + 1, step))


def _axes(unit: str, airs: tuple[float, ...], gaps: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"air_{unit}", airs),
        Axis(f"gap_{unit}", gaps),
        Axis("is_pumped", (0.0, 1.0)),
        Axis("is_fresh", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_PUMPED))))),
    )


FAMILY = Family(
    slug="atmosphere-column",
    edition=1,
    title="The atmosphere against a column of water",
    topic="column of water",
    level=2,
    axes={
        "us": _axes("psi", _grid(139, 151, 10, 2), _grid(40, 128, 10, 2)),
        "metric": _axes("bar", _grid(96, 104, 100), _grid(20, 88, 100, 2)),
        "si": _axes("kPa", _grid(96, 104, 1), _grid(20, 88, 1, 2)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"air_psi": 14.7, "gap_psi": 14.7, "is_pumped": 1.0, "is_fresh": 0.0, "scene": 0.0},
            33.0,
            "the whole atmosphere holds 33 ft of sea water; common practice, no source",
        ),
        WorkedExample(
            "us",
            {"air_psi": 14.7, "gap_psi": 14.7, "is_pumped": 1.0, "is_fresh": 1.0, "scene": 1.0},
            34.0,
            "L. Martin, Scuba Diving Explained (1997), section E: 34 ft of fresh water",
        ),
        WorkedExample(
            "si",
            {"air_kPa": 101.325, "gap_kPa": 101.325, "is_pumped": 1.0, "is_fresh": 1.0, "scene": 1.0},
            10.3,
            "OpenStax College Physics 2e, §11.4: the atmosphere holds 10.3 m of fresh water",
        ),
    ),
)
