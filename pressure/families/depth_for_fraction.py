"""Surface air in an open box has shrunk to a given volume; how deep is the box?

The depth comes from a difference, so draws begin where the absolute pressure is well above the surface's.
"""

from __future__ import annotations

from math import log2

from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.boyle import pressure_after
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
from pressure.waters import ALLOWED, OTHER_COLUMN, Convention, water_and_other

_SCENES = (
    "An open-bottomed box full of surface air, {before}, is lowered in {water} water until the air takes "
    "only {after}.",
    "An upturned drum takes {before} of surface air down in {water} water. Where it stops, {after} are left.",
    "A closed soft float of {before} at the surface is drawn down in {water} water until it has shrunk to "
    "{after}.",
)
_VOLUMES = {"us": "ft3", "metric": "L"}


def _volumes(facts: Facts, unit: str) -> tuple[float, float]:
    """The volume at the surface and the one it has shrunk to."""
    before = facts[f"volume_{unit}"]
    return before, before * facts["left_percent"] / 100


def pose(system: System, facts: Facts) -> Posed:
    water, other = water_and_other(facts["is_fresh"])
    conventions, unit = ALLOWED[system, water], _VOLUMES[system]
    named = conventions[0]
    before, after = _volumes(facts, unit)
    scene = _SCENES[int(facts["scene"])].format(
        before=shown(before, unit, given=True), after=shown(after, unit, given=True), water=water
    )
    ratio = pressure_after(1.0, before, after)
    return Posed(
        situation=f"{scene} No air is added or lost. How deep is it, in {named.depth_unit}?",
        convention=named.sentence,
        givens=(
            Given("V₁", "volume at the surface", Quantity(before, unit)),
            Given("V₂", "volume at depth", Quantity(after, unit)),
        ),
        asked=Asked("D", "depth", "length", named.depth_unit),
        accepted=tuple([(ratio - 1) * each.column for each in conventions]),
        missteps=(
            *_missteps(system, ratio, conventions),
            other_water(water, *[(ratio - 1) * each.column for each in ALLOWED[system, other]]),
        ),
        sense=f"Half the volume is at {named.column:g} {named.depth_unit}, a third at twice that, a quarter "
        "at three times.",
    )


def _missteps(system: System, ratio: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    left, foot = 1 / ratio, conventions[0].depth_unit
    columns = [each.column for each in conventions]
    return (
        slip(
            "atmosphere-kept",
            "{typed} counts the atmosphere as water. One of the atmospheres is the air at the surface: take "
            "it off.",
            *[ratio * each for each in columns],
        ),
        slip(
            "other-part",
            "The part that the water took was counted for the part left to the air.",
            *[(1 / (1 - left) - 1) * each for each in columns],
        ),
        slip(
            "fixed-share",
            "The loss is not the same for every atmosphere: half goes in the first, less in each after it. "
            "Take the ratio of the volumes.",
            *[2 * (1 - left) * each for each in columns],
        ),
        slip(
            "halved-each-time",
            "The first atmosphere of water halves the air; the second leaves a third, not a quarter. Take "
            "the ratio of the volumes.",
            *[log2(ratio) * each for each in columns],
        ),
        slip(
            "atmospheres-for-depth",
            f"{{typed}} is the water's pressure in atmospheres. Each of them is {columns[0]:g} {foot} of it.",
            ratio - 1,
        ),
        slip(
            "other-length-unit",
            f"Feet and metres were mixed up. It takes {columns[0]:g} {foot} of this water for each "
            "atmosphere.",
            (ratio - 1) * OTHER_COLUMN[system],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, water_and_other(problem.facts["is_fresh"])[0]][0]
    unit, foot = _VOLUMES[problem.system], named.depth_unit
    before, after = _volumes(problem.facts, unit)
    ratio, deep, column = Symbol("n"), Symbol("D"), Symbol("h", "atm", "of one atmosphere")
    times = pressure_after(1.0, before, after)
    return (
        Step(
            "Boyle's law: as many times as the volume has shrunk, so many times has the absolute pressure "
            "grown.",
            equation(ratio, Symbol("V", "1") / Symbol("V", "2")),
            equation(ratio, given(before, unit) / given(after, unit)),
            result(ratio, times, "", figures=4),
        ),
        Step(
            f"One of these atmospheres is the air; each of the others is {named.column:g} {foot} of water.",
            equation(deep, (ratio - given(1)) * column),
            equation(deep, (computed(times, figures=4) - given(1)) * given(named.column, foot)),
            result(deep, problem.answer.value, foot),
        ),
    )


def _axes(unit: str, volumes: tuple[float, ...]) -> tuple[Axis, ...]:
    # Near a half the part lost is the part left; above it a ratio of three figures must still do.
    left = (*range(18, 48, 2), 25, 35, 55, 60)
    return (
        Axis(f"volume_{unit}", volumes),
        Axis("left_percent", tuple(map(float, left))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
        Axis("is_fresh", (0.0, 1.0)),
    )


FAMILY = Family(
    slug="depth-for-fraction",
    edition=1,
    title="How deep for a given shrinking",
    topic="Boyle",
    level=2,
    axes={
        "us": _axes("ft3", (2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 20.0)),
        "metric": _axes("L", (20.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0, 120.0, 200.0)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"volume_ft3": 4.0, "left_percent": 25.0, "scene": 0.0, "is_fresh": 0.0},
            99.0,
            "one cubic foot of surface air is a quarter at 99 ft; common practice, no source",
        ),
        WorkedExample(
            "us",
            {"volume_ft3": 5.0, "left_percent": 20.0, "scene": 1.0, "is_fresh": 0.0},
            132.0,
            "one cubic foot of surface air is a fifth at 132 ft; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"volume_L": 40.0, "left_percent": 25.0, "scene": 1.0, "is_fresh": 0.0},
            30.0,
            "Encyclopaedia Britannica, thoracic squeeze: about one fourth at 100 ft or 30 m",
        ),
    ),
)
