"""A depth of sea or fresh water is known; what is the absolute pressure there?"""

from __future__ import annotations

from pressure.formula import Symbol, computed, equation, given, result
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
    "A diver burns off a sheet pile under {depth} of {water} water.",
    "An open diving bell hangs under {depth} of {water} water.",
    "A lift bag is filled under {depth} of {water} water.",
)
# The atmosphere drowns the difference between the waters in shallower places.
_WATERS_DIFFER_FROM = {"us": 30.0, "metric": 15.0}


def _water(facts: Facts) -> tuple[Water, Water]:
    """The water of the problem, and the other one."""
    return ("fresh", "sea") if facts["is_fresh"] else ("sea", "fresh")


def pose(system: System, facts: Facts) -> Posed:
    water, other = _water(facts)
    conventions = ALLOWED[system, water]
    named = conventions[0]
    depth = facts[f"depth_{named.depth_unit}"]
    scene = _SCENES[int(facts["scene"])].format(depth=shown(depth, named.depth_unit, given=True), water=water)
    missteps = (
        *_atmosphere_slips(depth, conventions),
        *(_feet_slips if system == "us" else _metre_slips)(depth, conventions),
    )
    if depth >= _WATERS_DIFFER_FROM[system]:
        missteps += (_water_slip(water, *[each.absolute(depth) for each in ALLOWED[system, other]]),)
    return Posed(
        situation=f"{scene} What is the absolute pressure there, in {named.pressure_unit}?",
        convention=named.sentence,
        givens=(Given("D", "depth", Quantity(depth, named.depth_unit)),),
        asked=Asked("P_abs", "absolute pressure", "pressure", named.pressure_unit, "absolute"),
        accepted=tuple([each.absolute(depth) for each in conventions]),
        missteps=missteps,
        sense="Absolute pressure counts the atmosphere and the water: more than one atmosphere anywhere "
        "below the surface.",
    )


def _atmosphere_slips(depth: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "atmosphere-left-out",
            "{typed} is the gauge pressure, the water alone. The atmosphere presses on the water: add it.",
            *[each.gauge(depth) for each in conventions],
        ),
        slip(
            "atmosphere-subtracted",
            "{typed} has the atmosphere taken off the water's pressure. Add it: it presses on the water.",
            *[each.gauge(depth) - each.surface for each in conventions],
        ),
        slip(
            "atmosphere-twice",
            "{typed} has the atmosphere in it twice. Add it once to the water's pressure.",
            *[each.absolute(depth) + each.surface for each in conventions],
        ),
    )


def _feet_slips(depth: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    named = conventions[0]
    return (
        slip(
            "one-for-psi",
            "One atmosphere is 14.7 psi, not 1 psi. Add 14.7 to a pressure in psi.",
            *[each.gauge(depth) + 1 for each in conventions],
        ),
        slip(
            "depth-for-atmosphere",
            f"{named.column:g} ft is the depth that weighs as much as the atmosphere. Its pressure is 14.7 "
            "psi: add that.",
            *[each.gauge(depth) + named.column for each in conventions],
        ),
        slip(
            "atmospheres-not-converted",
            "{typed} is the absolute pressure in atmospheres. Each of them is 14.7 psi.",
            *[each.atmospheres(depth) for each in conventions],
        ),
        slip(
            "other-length-unit",
            f"10 is for metres. In feet it takes {named.column:g} ft of this water to weigh 14.7 psi.",
            (depth / 10 + 1) * named.surface,
        ),
    )


def _metre_slips(depth: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    named = conventions[0]
    return (
        slip(
            "depth-for-pressure",
            f"A metre of water is not a bar: it takes {named.column:g} m.",
            depth + named.surface,
        ),
        slip(
            "depth-for-atmosphere",
            f"{named.column:g} m is the depth that weighs 1 bar. Add 1 bar for the atmosphere.",
            named.gauge(depth) + named.column,
        ),
        slip(
            "other-length-unit",
            f"33 is for feet. In metres it takes {named.column:g} m of this water to weigh 1 bar.",
            depth / 33 + named.surface,
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
    depth, unit = problem.facts[f"depth_{named.depth_unit}"], named.pressure_unit
    gauge, air = Symbol("P", "g", "gauge"), Symbol("P", "atm", "atmosphere")
    total, deep, column = Symbol("P", "abs", "absolute"), Symbol("D"), Symbol("h", "atm", "of one atmosphere")
    return (
        Step(
            f"First the water: {named.column:g} {named.depth_unit} of it weighs {named.surface:g} {unit}.",
            equation(gauge, air * (deep / column)),
            equation(
                gauge,
                given(named.surface, unit)
                * (given(depth, named.depth_unit) / given(named.column, named.depth_unit)),
            ),
            result(gauge, named.gauge(depth), unit, "gauge", figures=4),
        ),
        Step(
            "Then the atmosphere, which presses on the water.",
            equation(total, gauge + air),
            equation(total, computed(named.gauge(depth), unit, figures=4) + given(named.surface, unit)),
            result(total, problem.answer.value, unit, "absolute"),
        ),
    )


def _axes(name: str, depths: tuple[float, ...]) -> tuple[Axis, ...]:
    scenes = tuple(map(float, range(len(_SCENES))))
    return Axis(name, depths), Axis("scene", scenes), Axis("is_fresh", (0.0, 1.0))


FAMILY = Family(
    slug="depth-to-absolute",
    edition=1,
    title="From depth to absolute pressure",
    topic="depth",
    level=2,
    axes={
        "us": _axes("depth_ft", tuple(map(float, range(10, 171)))),
        "metric": _axes("depth_m", tuple(n / 2 for n in range(6, 121))),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"depth_ft": 66.0, "scene": 0.0, "is_fresh": 0.0},
            44.1,
            "66 ft of sea water: 44.1 psi absolute; common practice, no source",
        ),
        WorkedExample(
            "us",
            {"depth_ft": 132.0, "scene": 0.0, "is_fresh": 0.0},
            5 * 14.7,
            "US Navy Diving Manual, ch. 12: 132 fsw is 5 ata",
        ),
        WorkedExample(
            "us",
            {"depth_ft": 57.0, "scene": 0.0, "is_fresh": 1.0},
            39.3,
            "57 ft of fresh water: 39.3 psi absolute; teaching sheet, undated (low authority)",
        ),
        WorkedExample(
            "metric",
            {"depth_m": 60.0, "scene": 1.0, "is_fresh": 0.0},
            7.0,
            "Scott et al., J Appl Physiol 130:1490 (2021): 60 m of sea is 7 atmospheres absolute",
        ),
    ),
)
