"""A mountain lake: the air over it and the absolute pressure below are known; how deep is that?

The depth comes from a difference, so a figure rounded on the way counts for more near the surface: draws
begin where the water makes about as much pressure as the air.
"""

from __future__ import annotations

from pressure.cautions import ALTITUDE, STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.altitude import barometer
from pressure.laws.hydrostatics import gauge
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
from pressure.steps import depth_step
from pressure.units import shown
from pressure.waters import ALLOWED, LAKE, LAKE_SENTENCE, SEA_LEVEL_AIR, Convention

_SCENES = (
    "The air over a lake, {altitude} above the sea, presses with {air}. A logger on the bed of its fresh "
    "water recorded {total}.",
    "At a reservoir, {altitude} above the sea, the barometer in the gate house shows {air}. The air in an "
    "open bell in its fresh water stands at {total}.",
    "In a mountain lake, {altitude} above the sea, a sampling bottle was closed in fresh water at {total}. "
    "The air over the lake pressed with {air}.",
)


def pose(system: System, facts: Facts) -> Posed:
    conventions = LAKE[system]
    named = conventions[0]
    unit, foot = named.pressure_unit, named.depth_unit
    altitude, total = facts[f"altitude_{foot}"], facts[f"absolute_{unit}"]
    air = barometer(altitude, foot, unit)
    scene = _SCENES[int(facts["scene"])].format(
        altitude=shown(altitude, foot, given=True),
        air=shown(air, unit, "absolute", given=True),
        total=shown(total, unit, "absolute", given=True),
    )
    return Posed(
        situation=f"{scene} How deep was that, in {foot}?",
        convention=LAKE_SENTENCE[system],
        givens=(
            Given("P_air", "pressure of the air over the lake", Quantity(air, unit, "absolute")),
            Given("P_abs", "absolute pressure below", Quantity(total, unit, "absolute")),
        ),
        asked=Asked("D", "depth", "length", foot),
        accepted=tuple([gauge(total, air) / each.gradient for each in conventions]),
        missteps=_missteps(system, total, air, conventions),
        sense="Less air presses on this lake, so the same absolute pressure lies deeper than at sea level.",
        caution=f"{ALTITUDE} {STANDARD}",
    )


def _missteps(
    system: System, total: float, air: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    return (
        slip(
            "sea-level-air",
            "The air over this lake is thinner than at the sea. Take off what presses here.",
            *[(total - sea) / each.gradient for each in conventions for sea in SEA_LEVEL_AIR[system]],
        ),
        slip(
            "atmosphere-kept",
            "{typed} has the air counted as water. Take it off first; the rest is the water's.",
            *[total / each.gradient for each in conventions],
        ),
        slip(
            "atmosphere-added",
            "{typed} has the air added. Absolute counts it already: take it off.",
            *[(total + air) / each.gradient for each in conventions],
        ),
        slip(
            "water-scaled-with-air",
            "Thin air makes no light water: a foot or a metre of it weighs the same at every height. Only "
            "the air counts for less.",
            *[(total / air - 1) * each.column for each in conventions],
        ),
        slip(
            "pressure-for-depth",
            "{typed} is the pressure of the water. Turn it into depth.",
            total - air,
        ),
        other_water("fresh", *[(total - air) / each.gradient for each in ALLOWED[system, "sea"]]),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = LAKE[problem.system][0]
    unit, foot = named.pressure_unit, named.depth_unit
    total = problem.facts[f"absolute_{unit}"]
    air = barometer(problem.facts[f"altitude_{foot}"], foot, unit)
    water, whole, above = Symbol("P", "g", "gauge"), Symbol("P", "abs", "absolute"), Symbol("P", "air")
    rest = gauge(total, air)
    taken = Step(
        "Absolute pressure counts the air that presses on this lake. Take that off, not the air of sea "
        "level.",
        equation(water, whole - above),
        equation(water, given(total, unit) - given(air, unit)),
        result(water, rest, unit, "gauge", figures=4),
    )
    return taken, _depth_step(rest, named) if unit == "psi" else depth_step(
        computed(rest, unit, figures=4), rest, named
    )


def _depth_step(rest: float, named: Convention) -> Step:
    """By the gradient, which is what the prompt names in feet."""
    deep, water = Symbol("D"), Symbol("P", "g", "gauge")
    each = given(named.gradient, "psi/ft")
    return Step(
        "Each foot of the water weighs the same at every height above the sea.",
        equation(deep, water / each),
        equation(deep, computed(rest, "psi", figures=4) / each),
        result(deep, rest / named.gradient, "ft"),
    )


def _axes(foot: str, altitudes: range, name: str, totals: range, per: float) -> tuple[Axis, ...]:
    return (
        Axis(f"altitude_{foot}", tuple(map(float, altitudes))),
        Axis(name, tuple(n / per for n in totals)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="lake-depth",
    edition=1,
    title="Depth in a mountain lake",
    topic="depth",
    level=2,
    axes={
        "us": _axes("ft", range(4000, 10_001, 500), "absolute_psi", range(28, 71, 2), 1),
        "metric": _axes("m", range(1200, 3001, 200), "absolute_bar", range(18, 46), 10),
        "si": _axes("m", range(1200, 3001, 200), "absolute_kPa", range(18, 46), 0.1),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"altitude_ft": 5000.0, "absolute_psi": 60 * 62.4 / 144 + 0.832 * 14.696, "scene": 0.0},
            60.0,
            "US Navy Diving Manual, ch. 9: 0.832 ata at 5000 ft; 62.4 lb/ft³, L. Martin (1997)",
        ),
        WorkedExample(
            "metric",
            {"altitude_m": 2000.0, "absolute_bar": 2.7563, "scene": 1.0},
            20.0,
            "arithmetic from 1000 kg/m³ and the standard atmosphere (ambiance 1.3.1): 20 m at 2000 m",
        ),
        WorkedExample(
            "si",
            {"altitude_m": 2000.0, "absolute_kPa": 275.63, "scene": 2.0},
            20.0,
            "arithmetic from 1000 kg/m³ and the standard atmosphere (ambiance 1.3.1): 20 m at 2000 m",
        ),
    ),
)
