"""A depth of sea or fresh water is known; what does a gauge show there?"""

from __future__ import annotations

from pressure.formula import Symbol, equation, given, result
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

_SCENES = (
    "A diver clears a sluice under {depth} of {water} water.",
    "A gauge is lowered down the face of a quay wall to {depth} of {water} water.",
    "A sampling bottle hangs under {depth} of {water} water.",
)


def _water(facts: Facts) -> tuple[Water, Water]:
    """The water of the problem, and the other one."""
    return ("fresh", "sea") if facts["is_fresh"] else ("sea", "fresh")


def pose(system: System, facts: Facts) -> Posed:
    water, other = _water(facts)
    conventions = ALLOWED[system, water]
    named = conventions[0]
    depth = facts[f"depth_{named.depth_unit}"]
    scene = _SCENES[int(facts["scene"])].format(depth=shown(depth, named.depth_unit, given=True), water=water)
    return Posed(
        situation=f"{scene} What is the gauge pressure there, in {named.pressure_unit}?",
        convention=named.sentence,
        givens=(Given("D", "depth", Quantity(depth, named.depth_unit)),),
        asked=Asked("P_g", "gauge pressure", "pressure", named.pressure_unit, "gauge"),
        accepted=tuple([each.gauge(depth) for each in conventions]),
        missteps=(
            *_atmosphere_slips(depth, conventions),
            *(_feet_slips if system == "us" else _metre_slips)(depth, conventions),
            _water_slip(water, *[each.gauge(depth) for each in ALLOWED[system, other]]),
        ),
        sense="A gauge shows the weight of the water alone: nought at the surface, and more with every "
        f"{'foot' if system == 'us' else 'metre'}.",
    )


def _atmosphere_slips(depth: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "atmosphere-added",
            "{typed} is the absolute pressure. A gauge leaves the atmosphere out: give the water alone.",
            *[each.absolute(depth) for each in conventions],
        ),
        slip(
            "atmosphere-subtracted",
            "{typed} has the atmosphere taken off the water's pressure. The water's part alone is what a "
            "gauge shows: take nothing off.",
            *[each.gauge(depth) - each.surface for each in conventions],
        ),
    )


def _feet_slips(depth: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    named = conventions[0]
    return (
        slip(
            "depth-for-pressure",
            f"A foot of water is not a pound per square inch: {named.column:g} ft weigh 14.7 psi.",
            depth,
        ),
        slip(
            "atmospheres-not-converted",
            "{typed} is the pressure in atmospheres. Each of them is 14.7 psi.",
            *[each.gauge(depth) / each.surface for each in conventions],
        ),
        slip(
            "inverted-ratio",
            f"The ratio is upside down. Divide the depth by {named.column:g} ft; each is 14.7 psi.",
            *[depth / each.gradient for each in conventions],
        ),
        slip(
            "other-length-unit",
            f"10 is for metres. In feet it takes {named.column:g} ft of this water to weigh 14.7 psi.",
            depth / 10 * named.surface,
        ),
    )


def _metre_slips(depth: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    named = conventions[0]
    return (
        slip(
            "depth-for-pressure",
            f"A metre of water is not a bar: it takes {named.column:g} m.",
            depth,
        ),
        slip(
            "decimal-point",
            f"The point slipped one place. Divide the depth by {named.column:g}, once.",
            named.gauge(depth) / 10,
        ),
        slip(
            "inverted-ratio",
            f"The ratio is upside down. Divide the depth by {named.column:g}; do not multiply.",
            depth / named.gradient,
        ),
        slip(
            "other-length-unit",
            f"33 is for feet. In metres it takes {named.column:g} m of this water to weigh 1 bar.",
            depth / 33,
        ),
    )


def _water_slip(water: Water, *values: float) -> Misstep:
    if water == "sea":
        return slip(
            "fresh-for-salt", "Sea water is the heavier: the number you used is for fresh water.", *values
        )
    return slip(
        "salt-for-fresh", "Fresh water is the lighter: the number you used is for sea water.", *values
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, _water(problem.facts)[0]][0]
    depth = problem.facts[f"depth_{named.depth_unit}"]
    gauge, air = Symbol("P", "g", "gauge"), Symbol("P", "atm", "atmosphere")
    deep, column = Symbol("D"), Symbol("h", "atm", "of one atmosphere")
    return (
        Step(
            f"Every {named.column:g} {named.depth_unit} of this water weighs {named.surface:g} "
            f"{named.pressure_unit}; a gauge shows that weight and no more.",
            equation(gauge, air * (deep / column)),
            equation(
                gauge,
                given(named.surface, named.pressure_unit)
                * (given(depth, named.depth_unit) / given(named.column, named.depth_unit)),
            ),
            result(gauge, problem.answer.value, named.pressure_unit, "gauge"),
        ),
    )


def _axes(name: str, depths: tuple[float, ...]) -> tuple[Axis, ...]:
    scenes = tuple(map(float, range(len(_SCENES))))
    return Axis(name, depths), Axis("scene", scenes), Axis("is_fresh", (0.0, 1.0))


FAMILY = Family(
    slug="depth-to-gauge",
    edition=1,
    title="From depth to gauge pressure",
    topic="depth",
    axes={
        "us": _axes("depth_ft", tuple(map(float, range(10, 191)))),
        "metric": _axes("depth_m", tuple(n / 2 for n in range(6, 121))),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"depth_ft": 57.0, "scene": 0.0, "is_fresh": 1.0},
            24.6,
            "57 ft of fresh water at 0.432 psi to the foot: 24.6 psi gauge; teaching sheet, undated",
        ),
        WorkedExample(
            "us",
            {"depth_ft": 33.0, "scene": 0.0, "is_fresh": 0.0},
            14.7,
            "a column of sea water 33 ft high on a square inch weighs 14.7 lb; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"depth_m": 40.0, "scene": 1.0, "is_fresh": 0.0},
            4.0,
            "10 m of sea water to a bar; common practice, no source",
        ),
    ),
)
