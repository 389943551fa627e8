"""A mix and the highest partial pressure of oxygen are laid down; at what depth is it reached?"""

from __future__ import annotations

from collections.abc import Mapping

from pressure.cautions import BEFORE_DECOMPRESSION, STANDARD
from pressure.constants import SEA_FT_PER_ATM, SEA_M_PER_BAR
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.dalton import total_for
from pressure.problem import (
    Asked,
    Axis,
    Facts,
    Family,
    Given,
    Posed,
    PressureKind,
    Problem,
    Quantity,
    Step,
    System,
    WorkedExample,
)
from pressure.slips import Misstep, other_water, slip
from pressure.units import shown
from pressure.waters import ALLOWED, Convention, Water

_SCENES = (
    "The supervisor's sheet allows an oxygen partial pressure of {limit}. The mix at hand has {oxygen} "
    "oxygen.",
    "A rack of cylinders holds {oxygen} oxygen, the rest nitrogen. The employer's manual stops at an oxygen "
    "partial pressure of {limit}.",
    "A panel is supplied with {oxygen} oxygen in nitrogen, and its alarm is set to an oxygen partial "
    "pressure of {limit}.",
)
_UNITS = {"us": "atm", "metric": "bar"}
_MARKS: Mapping[System, PressureKind | None] = {"us": "absolute", "metric": None}  # in ata, and in bar
_AIR = 0.21


def _water(facts: Facts) -> tuple[Water, Water]:
    """The water of the problem, and the other one."""
    return ("fresh", "sea") if facts["is_fresh"] else ("sea", "fresh")


def _depth(atmospheres: float, convention: Convention) -> float:
    return (atmospheres - 1) * convention.column


def pose(system: System, facts: Facts) -> Posed:
    water, other = _water(facts)
    conventions, unit = ALLOWED[system, water], _UNITS[system]
    named = conventions[0]
    percent, limit = facts["oxygen_percent"], facts[f"limit_{unit}"]
    atmospheres = total_for(limit, percent / 100)
    scene = _SCENES[int(facts["scene"])].format(
        limit=shown(limit, unit, _MARKS[system], given=True), oxygen=shown(percent, "%", given=True)
    )
    return Posed(
        situation=f"{scene} At what depth of {water} water does it reach that, in {named.depth_unit}?",
        convention=named.sentence,
        givens=(
            Given("p_O2", "partial pressure of the oxygen", Quantity(limit, unit, _MARKS[system])),
            Given("F_O2", "share of oxygen", Quantity(percent, "%")),
        ),
        asked=Asked("D", "depth", "length", named.depth_unit),
        accepted=tuple([_depth(atmospheres, each) for each in conventions]),
        missteps=(
            *_missteps(atmospheres, limit, percent / 100, conventions),
            _length_slip(system, atmospheres, named),
            other_water(water, *[_depth(atmospheres, each) for each in ALLOWED[system, other]]),
        ),
        sense="The richer the mix, the shallower the depth at which its oxygen reaches a given pressure.",
        caution=f"{BEFORE_DECOMPRESSION} {STANDARD}",
    )


def _missteps(
    atmospheres: float, limit: float, fraction: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    missteps = (
        slip(
            "atmosphere-kept",
            "{typed} counts the atmosphere as water. One of the atmospheres is air: take it off, then turn "
            "the rest into depth.",
            *[_depth(atmospheres + 1, each) for each in conventions],
        ),
        slip(
            "atmosphere-twice",
            "{typed} has the atmosphere taken off twice. Take it off once.",
            *[_depth(atmospheres - 1, each) for each in conventions],
        ),
        slip(
            "atmosphere-added",
            "The atmosphere was added. The absolute pressure counts it already: take it off.",
            *[_depth(atmospheres + 2, each) for each in conventions],
        ),
        slip(
            "atmospheres-for-depth",
            "{typed} is the absolute pressure, not a depth. Take one off for the air and turn the rest into "
            "depth of water.",
            atmospheres,
        ),
        slip(
            "other-gas",
            "You divided by the share of the nitrogen. The limit is for oxygen: divide by its share.",
            *[_depth(total_for(limit, 1 - fraction), each) for each in conventions],
        ),
    )
    if fraction == _AIR:
        return missteps
    air = slip(
        "air-for-mix",
        "21 % is the oxygen in air. This mix is richer: divide by its own share.",
        *[_depth(total_for(limit, _AIR), each) for each in conventions],
    )
    return (*missteps, air)


def _length_slip(system: System, atmospheres: float, named: Convention) -> Misstep:
    column, foot = f"{named.column:g} {named.depth_unit}", named.depth_unit
    unit, theirs, other = (
        ("feet", SEA_M_PER_BAR.value, "metres") if foot == "ft" else ("metres", SEA_FT_PER_ATM.value, "feet")
    )
    return slip(
        "other-length-unit",
        f"{theirs:g} is for {other}. In {unit} it takes {column} of this water to weigh an atmosphere.",
        (atmospheres - 1) * theirs,
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, _water(problem.facts)[0]][0], _UNITS[problem.system]
    percent, limit = problem.facts["oxygen_percent"], problem.facts[f"limit_{unit}"]
    total, foot = total_for(limit, percent / 100), named.depth_unit
    part, share = Symbol("p", "O₂", "oxygen"), Symbol("F", "O₂", "oxygen")
    whole, water = Symbol("P", "abs", "absolute"), Symbol("P", "g", "gauge")
    air, deep, column = Symbol("P", "atm", "atmosphere"), Symbol("D"), Symbol("h", "atm", "of one atmosphere")
    return (
        Step(
            "Dalton's law turned round: the whole is the part over its share, per cent as hundredths.",
            equation(whole, part / share),
            equation(whole, given(limit, unit, _MARKS[problem.system]) / given(percent / 100)),
            result(whole, total, unit, "absolute", figures=4),
        ),
        Step(
            "Of that, one atmosphere is air; the rest is water.",
            equation(water, whole - air),
            equation(water, computed(total, unit, figures=4) - given(1, unit)),
            result(water, total - 1, unit, "gauge", figures=4),
        ),
        Step(
            f"Each of them is {named.column:g} {foot} of this water.",
            equation(deep, column * (water / air)),
            equation(
                deep, given(named.column, foot) * (computed(total - 1, unit, figures=4) / given(1, unit))
            ),
            result(deep, problem.answer.value, foot),
        ),
    )


def _axes(unit: str) -> tuple[Axis, ...]:
    return (
        Axis(f"limit_{unit}", (1.2, 1.25, 1.3, 1.35, 1.4, 1.45, 1.5, 1.55, 1.6)),
        Axis("oxygen_percent", (21.0, *map(float, range(24, 41)))),
        Axis("is_fresh", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="depth-for-partial-pressure",
    edition=1,
    title="Depth at which a partial pressure is reached",
    topic="mixtures",
    level=2,
    axes={"us": _axes("atm"), "metric": _axes("bar")},
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"limit_atm": 1.6, "oxygen_percent": 21.0, "is_fresh": 0.0, "scene": 0.0},
            218.4,
            "air at 1.6 ata of oxygen: 7.62 ata, 218 fsw; a web page of low authority, and arithmetic",
        ),
        WorkedExample(
            "metric",
            {"limit_bar": 1.4, "oxygen_percent": 28.0, "is_fresh": 0.0, "scene": 0.0},
            40.0,
            "1.4 bar is 28 % of 5 bar; common practice, no source",
        ),
    ),
)
