"""A mountain lake: the air over it is known; what is the absolute pressure at a depth of its water?"""

from __future__ import annotations

from pressure.cautions import ALTITUDE, STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.altitude import barometer
from pressure.laws.hydrostatics import absolute
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
from pressure.slips import Misstep, other_water, slip
from pressure.units import shown
from pressure.waters import ALLOWED, LAKE, LAKE_SENTENCE, SEA_LEVEL_AIR, Convention

_SCENES = (
    "A reservoir lies {altitude} above the sea, and the air over it presses with {air}. A diver clears the "
    "intake screen under {depth} of its fresh water.",
    "At a mountain lake, {altitude} above the sea, the barometer on the jetty shows {air}. A diver inspects "
    "the dam under {depth} of fresh water.",
    "The unit works in a lake {altitude} above the sea, where the air presses with {air}. An open bell hangs "
    "under {depth} of its fresh water.",
)
_WATER = Symbol("P", "g", "gauge")


def pose(system: System, facts: Facts) -> Posed:
    conventions = LAKE[system]
    named = conventions[0]
    unit, foot = named.pressure_unit, named.depth_unit
    altitude, depth = facts[f"altitude_{foot}"], facts[f"depth_{foot}"]
    air = barometer(altitude, foot, unit)
    scene = _SCENES[int(facts["scene"])].format(
        altitude=shown(altitude, foot, given=True),
        air=shown(air, unit, "absolute", given=True),
        depth=shown(depth, foot, given=True),
    )
    return Posed(
        situation=f"{scene} What is the absolute pressure there, in {unit}?",
        convention=LAKE_SENTENCE[system],
        givens=(
            Given("P_air", "pressure of the air over the lake", Quantity(air, unit, "absolute")),
            Given("D", "depth", Quantity(depth, foot)),
        ),
        asked=Asked("P_abs", "absolute pressure", "pressure", unit, "absolute"),
        accepted=tuple([absolute(each.gauge(depth), air) for each in conventions]),
        missteps=_missteps(system, depth, air, conventions),
        sense="The water weighs as much as anywhere, the air over it less: the sum is below that of the same "
        "depth at sea level.",
        caution=f"{ALTITUDE} {STANDARD}",
    )


def _missteps(
    system: System, depth: float, air: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    return (
        slip(
            "sea-level-air",
            "The air over this lake is thinner than at the sea. Add what presses here, as the prompt gives "
            "it.",
            *[each.gauge(depth) + sea for each in conventions for sea in SEA_LEVEL_AIR[system]],
        ),
        slip(
            "atmosphere-left-out",
            "{typed} is the gauge pressure, the water alone. The air over the lake presses on it: add it.",
            *[each.gauge(depth) for each in conventions],
        ),
        slip(
            "atmosphere-subtracted",
            "{typed} has the air taken off the water's pressure. Add it: it presses on the water.",
            *[each.gauge(depth) - air for each in conventions],
        ),
        slip(
            "water-scaled-with-air",
            "Thin air makes no light water: a foot or a metre of it weighs the same at every height. Only "
            "the air counts for less.",
            *[air * (1 + depth / each.column) for each in conventions],
        ),
        slip(
            "depth-for-pressure",
            "{typed} has the depth added as if it were a pressure. Turn the depth into pressure first.",
            depth + air,
        ),
        other_water("fresh", *[each.gauge(depth) + air for each in ALLOWED[system, "sea"]]),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = LAKE[problem.system][0]
    unit, foot = named.pressure_unit, named.depth_unit
    depth = problem.facts[f"depth_{foot}"]
    air = barometer(problem.facts[f"altitude_{foot}"], foot, unit)
    total, above = Symbol("P", "abs", "absolute"), Symbol("P", "air")
    pressed = named.gauge(depth)
    return (
        _water_step(depth, named),
        Step(
            "Then the air over this lake, which is what presses on its water; the air of sea level does not "
            "reach here.",
            equation(total, _WATER + above),
            equation(total, computed(pressed, unit, figures=4) + given(air, unit)),
            result(total, problem.answer.value, unit, "absolute"),
        ),
    )


def _water_step(depth: float, named: Convention) -> Step:
    """By the metres to a bar where the prompt names those, else by the gradient."""
    why = "First the water, which weighs the same at every height above the sea."
    unit, foot, deep = named.pressure_unit, named.depth_unit, Symbol("D")
    done = result(_WATER, named.gauge(depth), unit, "gauge", figures=4)
    if unit == "bar":
        bar, column = given(named.surface, unit), given(named.column, foot)
        relation = equation(_WATER, bar * (deep / column))
        return Step(why, relation, equation(_WATER, bar * (given(depth, foot) / column)), done)
    each = computed(named.gradient, f"{unit}/{foot}", figures=6)
    return Step(why, equation(_WATER, each * deep), equation(_WATER, each * given(depth, foot)), done)


def _axes(foot: str, altitudes: range, depths: range) -> tuple[Axis, ...]:
    return (
        Axis(f"altitude_{foot}", tuple(map(float, altitudes))),
        Axis(f"depth_{foot}", tuple(map(float, depths))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="lake-pressure",
    edition=1,
    title="Absolute pressure in a mountain lake",
    topic="depth",
    level=2,
    axes={
        "us": _axes("ft", range(4000, 10_001, 500), range(40, 131, 5)),
        "metric": _axes("m", range(1200, 3001, 200), range(14, 41)),
        "si": _axes("m", range(1200, 3001, 200), range(14, 41)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"altitude_ft": 5000.0, "depth_ft": 60.0, "scene": 0.0},
            60 * 62.4 / 144 + 0.832 * 14.696,
            "US Navy Diving Manual, ch. 9: 0.832 ata at 5000 ft; 62.4 lb/ft³, L. Martin (1997)",
        ),
        WorkedExample(
            "metric",
            {"altitude_m": 2000.0, "depth_m": 20.0, "scene": 1.0},
            2.7563,
            "arithmetic from 1000 kg/m³ and the standard atmosphere (ambiance 1.3.1): 20 m at 2000 m",
        ),
        WorkedExample(
            "si",
            {"altitude_m": 2000.0, "depth_m": 20.0, "scene": 2.0},
            275.63,
            "arithmetic from 1000 kg/m³ and the standard atmosphere (ambiance 1.3.1): 20 m at 2000 m",
        ),
    ),
)
