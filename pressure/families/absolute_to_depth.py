"""An absolute pressure under water is known; how deep is it?

The depth comes from a difference, so a figure rounded on the way counts for more near the surface: draws
begin where the water makes as much pressure as the air.
"""

from __future__ import annotations

from pressure.constants import SEA_FT_PER_ATM
from pressure.formula import Symbol, computed, equation, given, result
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
from pressure.slips import Misstep, by_density, other_water, slip
from pressure.steps import depth_step
from pressure.units import shown
from pressure.waters import ALLOWED, Convention, water_and_other

_SCENES = (
    "The air in an open bell in {water} water stands at {total}. How deep is the water's edge in it, in "
    "{foot}?",
    "A logger on the bed under {water} water recorded {total}. How deep is it, in {foot}?",
    "A sampling bottle was closed in {water} water at {total}. How deep was it, in {foot}?",
)


def pose(system: System, facts: Facts) -> Posed:
    water, other = water_and_other(facts["is_fresh"])
    conventions = ALLOWED[system, water]
    named = conventions[0]
    unit, foot = named.pressure_unit, named.depth_unit
    total = facts[f"absolute_{unit}"]
    told = shown(total, unit, "absolute", given=True)
    return Posed(
        situation=_SCENES[int(facts["scene"])].format(total=told, water=water, foot=foot),
        convention=named.sentence,
        givens=(Given("P_abs", "absolute pressure", Quantity(total, unit, "absolute")),),
        asked=Asked("D", "depth", "length", foot),
        accepted=_depths(total, conventions),
        missteps=(
            *_atmosphere_slips(total, conventions),
            *_SLIPS[system](total, named),
            other_water(water, *_depths(total, ALLOWED[system, other])),
        ),
        sense="At one atmosphere absolute the depth is nought: only what is above that is water.",
    )


def _depths(total: float, conventions: tuple[Convention, ...]) -> tuple[float, ...]:
    return tuple([gauge(total, each.surface) / each.gradient for each in conventions])


def _atmosphere_slips(total: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "atmosphere-kept",
            "{typed} has the atmosphere counted as water. Take it off first; the rest is the water's.",
            *[total / each.gradient for each in conventions],
        ),
        slip(
            "atmosphere-added",
            "{typed} has the atmosphere added. Absolute counts it already: take it off.",
            *[(total + each.surface) / each.gradient for each in conventions],
        ),
        slip(
            "atmosphere-twice",
            "{typed} has the atmosphere taken off twice. Take it off once.",
            *[(total - 2 * each.surface) / each.gradient for each in conventions],
        ),
    )


def _feet_slips(total: float, named: Convention) -> tuple[Misstep, ...]:
    return (
        slip(
            "one-for-psi",
            "One atmosphere is 14.7 psi, not 1 psi. Take 14.7 from a pressure in psi.",
            (total - 1) / named.gradient,
        ),
        slip(
            "pressure-for-depth",
            f"A pound per square inch is more than a foot of water: {named.column:g} ft weigh 14.7 psi.",
            total - named.surface,
        ),
        slip(
            "atmospheres-for-depth",
            f"{{typed}} is the water's pressure in atmospheres. Each of them is {named.column:g} ft of it.",
            total / named.surface - 1,
        ),
    )


def _metre_slips(total: float, named: Convention) -> tuple[Misstep, ...]:
    return (
        slip(
            "pressure-for-depth",
            f"A bar is more than a metre of water: it takes {named.column:g} m.",
            total - named.surface,
        ),
        slip(
            "other-length-unit",
            f"33 is for feet. In metres it takes {named.column:g} m of this water to weigh 1 bar.",
            (total - named.surface) * SEA_FT_PER_ATM.value,
        ),
    )


def _density_slips(total: float, named: Convention) -> tuple[Misstep, ...]:
    return by_density(gauge(total, named.surface) / named.gradient)


_SLIPS = {"us": _feet_slips, "metric": _metre_slips, "si": _density_slips}


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, water_and_other(problem.facts["is_fresh"])[0]][0]
    unit = named.pressure_unit
    total = problem.facts[f"absolute_{unit}"]
    water, whole, air = (
        Symbol("P", "g", "gauge"),
        Symbol("P", "abs", "absolute"),
        Symbol("P", "atm", "atmosphere"),
    )
    rest = gauge(total, named.surface)
    return (
        Step(
            "Absolute pressure counts the atmosphere. Take it off: the rest is what the water makes.",
            equation(water, whole - air),
            equation(water, given(total, unit) - given(named.surface, unit)),
            result(water, rest, unit, "gauge", figures=4),
        ),
        depth_step(computed(rest, unit, figures=4), rest, named),
    )


def _axes(name: str, first: int, last: int, per: float) -> tuple[Axis, ...]:
    totals = tuple(n / per for n in range(first, last + 1))
    scenes = tuple(map(float, range(len(_SCENES))))
    return Axis(name, totals), Axis("scene", scenes), Axis("is_fresh", (0.0, 1.0))


FAMILY = Family(
    slug="absolute-to-depth",
    edition=1,
    title="From absolute pressure to depth",
    topic="depth",
    level=2,
    axes={
        "us": _axes("absolute_psi", 61, 190, 2),
        "metric": _axes("absolute_bar", 41, 140, 20),
        "si": _axes("absolute_kPa", 42, 140, 0.2),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"absolute_psi": 44.1, "scene": 0.0, "is_fresh": 0.0},
            66.0,
            "66 ft of sea water: 44.1 psi absolute; common practice, no source",
        ),
        WorkedExample(
            "us",
            {"absolute_psi": 39.3, "scene": 1.0, "is_fresh": 1.0},
            57.0,
            "57 ft of fresh water: 39.3 psi absolute; teaching sheet, undated (low authority)",
        ),
        WorkedExample(
            "us",
            {"absolute_psi": 5 * 14.7, "scene": 2.0, "is_fresh": 0.0},
            132.0,
            "US Navy Diving Manual, ch. 12: 132 fsw is 5 ata",
        ),
        WorkedExample(
            "metric",
            {"absolute_bar": 7.0, "scene": 1.0, "is_fresh": 0.0},
            60.0,
            "Scott et al., J Appl Physiol 130:1490 (2021): 60 m of sea is 7 atmospheres absolute",
        ),
        WorkedExample(
            "si",
            {"absolute_kPa": 403.46, "scene": 1.0, "is_fresh": 0.0},
            30.0,
            "TEOS-10 (gsw 3.6.23), sea water of SP 35 at 10 °C, latitude 45: 4.0346 bar at 30 m",
        ),
        WorkedExample(
            "si",
            {"absolute_kPa": 493.5, "scene": 1.0, "is_fresh": 1.0},
            40.0,
            "TEOS-10 (gsw 3.6.23), fresh water at 10 °C, latitude 45: 4.9350 bar at 40 m",
        ),
    ),
)
