"""A surface supply must press harder than the water: by how much, or how much does it?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.supply import over_bottom, supply_pressure
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
from pressure.waters import ALLOWED, Convention

_NEEDED = (
    "A diver works at {depth} of sea water on a hose. The helmet needs {margin} above the water's pressure "
    "there.",
    "The mask of a diver at {depth} of sea water is to be fed with {margin} above the pressure at the "
    "bottom.",
    "The standby diver's hose is to reach {depth} of sea water with {margin} to spare over the pressure "
    "there.",
)
_LEFT = (
    "A diver works at {depth} of sea water on a hose. At the rack the gauge of the supply shows {supply}.",
    "A bank feeds a diver at {depth} of sea water. The gauge of the bank has fallen to {supply}.",
    "The compressor holds its receiver at {supply} while the diver is at {depth} of sea water.",
)
_ASKED = {
    1.0: "What must the gauge of the supply show, in {unit}?",
    0.0: "By how much does the supply exceed the pressure at the bottom, in {unit}?",
}
_CAUTION = (
    "Hose, valves and helmet take pressure as gas flows; the maker's and the employer's tables say how "
    "much must "
    "be added, and they come before this sum. " + STANDARD
)


def pose(system: System, facts: Facts) -> Posed:
    conventions = ALLOWED[system, "sea"]
    named, is_needed = conventions[0], bool(facts["is_needed"])
    unit, foot = named.pressure_unit, named.depth_unit
    depth, pressure = facts[f"depth_{foot}"], _pressure(system, facts)
    scene = (_NEEDED if is_needed else _LEFT)[int(facts["scene"])].format(
        depth=shown(depth, foot, given=True),
        margin=shown(pressure, unit, given=True),
        supply=shown(pressure, unit, "gauge", given=True),
    )
    return Posed(
        situation=f"{scene} {_ASKED[facts['is_needed']].format(unit=unit)}",
        convention=f"{named.sentence} Leave losses in the hose out.",
        givens=(_given_pressure(pressure, unit, is_needed), Given("D", "depth", Quantity(depth, foot))),
        asked=(
            Asked("P_s", "supply pressure", "pressure", unit, "gauge")
            if is_needed
            else Asked("P_over", "over-bottom pressure", "pressure", unit, "difference")
        ),
        accepted=tuple(
            [
                supply_pressure(c.gauge(depth), pressure)
                if is_needed
                else over_bottom(pressure, c.gauge(depth))
                for c in conventions
            ]
        ),
        missteps=(_needed_slips if is_needed else _left_slips)(depth, pressure, conventions),
        sense="Every foot or metre of depth takes its pressure off what the supply has to spare.",
        caution=_CAUTION,
    )


def _pressure(system: System, facts: Facts) -> float:
    """The margin a supply must have; or, where that is asked for, what its gauge shows."""
    margin = facts["margin"]
    if facts["is_needed"]:
        return margin
    return 100.0 + margin if system == "us" else 6.0 + margin


def _given_pressure(pressure: float, unit: str, is_needed: bool) -> Given:
    if is_needed:
        return Given("P_over", "over-bottom pressure", Quantity(pressure, unit))
    return Given("P_s", "supply pressure", Quantity(pressure, unit, "gauge"))


def _needed_slips(depth: float, margin: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    bottoms = [(each.gauge(depth), each.surface) for each in conventions]
    return (
        slip(
            "atmosphere-added",
            "{typed} is the absolute pressure. The gauge of the supply leaves the atmosphere out: take it "
            "off.",
            *[bottom + margin + air for bottom, air in bottoms],
        ),
        slip(
            "margin-left-out",
            "{typed} only balances the water: no gas would flow. Add the margin.",
            *[bottom for bottom, _ in bottoms],
        ),
        slip(
            "bottom-left-out",
            "{typed} is the margin alone. The water at depth presses back: add its pressure.",
            margin,
        ),
        slip(
            "margin-subtracted",
            "The margin comes on top of the water's pressure. Add the two.",
            *[abs(bottom - margin) for bottom, _ in bottoms],
        ),
        slip(
            "depth-for-pressure",
            f"A {conventions[0].depth_unit} of water is not a {conventions[0].pressure_unit}. Turn the "
            "depth into "
            "pressure, then add the margin.",
            depth + margin,
        ),
    )


def _left_slips(depth: float, supply: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    bottoms = [(each.gauge(depth), each.surface) for each in conventions]
    return (
        slip(
            "atmosphere-subtracted",
            "{typed} takes an absolute pressure from a gauge reading. Take the water's gauge pressure: the "
            "atmosphere is in neither.",
            *[supply - bottom - air for bottom, air in bottoms],
        ),
        slip(
            "atmosphere-added",
            "{typed} takes a gauge pressure from an absolute one. The supply is read by gauge, and so is "
            "the water: "
            "add nothing.",
            *[supply - bottom + air for bottom, air in bottoms],
        ),
        slip(
            "bottom-left-out",
            "{typed} is what the supply shows. The water at depth presses back: take its pressure off.",
            supply,
        ),
        slip(
            "bottom-added",
            "{typed} is more than the supply has. The water presses back: take its pressure off.",
            *[supply + bottom for bottom, _ in bottoms],
        ),
        slip(
            "depth-for-pressure",
            f"A {conventions[0].depth_unit} of water is not a {conventions[0].pressure_unit}. Turn the "
            "depth into "
            "pressure, then take it off.",
            supply - depth,
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, facts = ALLOWED[problem.system, "sea"][0], problem.facts
    unit, foot = named.pressure_unit, named.depth_unit
    depth, pressure = facts[f"depth_{foot}"], _pressure(problem.system, facts)
    bottom, over, supply = (
        Symbol("P", "b", "at the bottom"),
        Symbol("P", "over", "over bottom"),
        Symbol("P", "s", "of the supply"),
    )
    air, column = Symbol("P", "atm", "atmosphere"), Symbol("h", "atm", "of one atmosphere")
    water = computed(named.gauge(depth), unit, figures=4)
    first = Step(
        f"The water's pressure at the bottom, by gauge: {named.surface:g} {unit} for every "
        f"{named.column:g} {foot}.",
        equation(bottom, air * (Symbol("D") / column)),
        equation(bottom, given(named.surface, unit) * (given(depth, foot) / given(named.column, foot))),
        result(bottom, named.gauge(depth), unit, "gauge", figures=4),
    )
    if facts["is_needed"]:
        return (
            first,
            Step(
                "Gas flows only if the supply presses harder than the water. Both are read by gauge, so the "
                "atmosphere drops out.",
                equation(supply, bottom + over),
                equation(supply, water + given(pressure, unit)),
                result(supply, problem.answer.value, unit, "gauge"),
            ),
        )
    return (
        first,
        Step(
            "What the supply has to spare is the difference. Both are read by gauge, so the atmosphere "
            "drops out.",
            equation(over, supply - bottom),
            equation(over, given(pressure, unit) - water),
            result(over, problem.answer.value, unit),
        ),
    )


def _axes(foot: str, depths: range, margins: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"depth_{foot}", tuple(map(float, depths))),
        Axis("margin", margins),
        Axis("is_needed", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_NEEDED))))),
    )


FAMILY = Family(
    slug="overbottom-pressure",
    edition=1,
    title="Over-bottom pressure of a surface supply",
    topic="supply",
    level=2,
    axes={
        "us": _axes("ft", range(40, 191, 5), (75.0, 90.0, 100.0, 115.0, 125.0, 135.0, 150.0)),
        "metric": _axes("m", range(12, 58), (6.0, 7.0, 8.0, 9.0, 10.0, 11.0)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"depth_ft": 100.0, "margin": 150.0, "is_needed": 1.0, "scene": 0.0},
            194.5,
            "44.5 psi gauge at 100 fsw, US Navy Diving Manual, p. 8-3, Revision 4, Change A; with 150 psi "
            "above it",
        ),
        WorkedExample(
            "us",
            {"depth_ft": 66.0, "margin": 100.0, "is_needed": 0.0, "scene": 0.0},
            170.6,
            "29.4 psi gauge at 66 ft, taken from 200; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"depth_m": 30.0, "margin": 7.0, "is_needed": 1.0, "scene": 0.0},
            10.0,
            "3 bar gauge at 30 m with 7 bar above it; common practice, no source",
        ),
    ),
)
