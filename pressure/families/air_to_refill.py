"""An open box goes down full of air and is to be full again below; how much surface air does that take?"""

from __future__ import annotations

from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.boyle import volume_after
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
from pressure.steps import atmospheres_step
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED, OTHER_COLUMN, Convention

_SCENES = (
    "An open bell of {room}, full of air at {start}, is lowered to {end} of sea water",
    "An open-bottomed work box of {room} is full of air at {start} and goes down to {end} of sea water",
    "An upturned tank of {room} is full of air at {start} and is let down to {end} of sea water",
)
_VOLUMES = {"us": "ft3", "metric": "L"}


def pose(system: System, facts: Facts) -> Posed:
    conventions, unit = ALLOWED[system, "sea"], _VOLUMES[system]
    foot = conventions[0].depth_unit
    start, end, room = facts[f"from_{foot}"], facts[f"to_{foot}"], facts[f"room_{unit}"]
    scene = _SCENES[int(facts["scene"])].format(
        room=shown(room, unit, given=True),
        start=shown(start, foot, given=True) if start else "the surface",
        end=shown(end, foot, given=True),
    )
    shallow = (Given("D₁", "depth where it was full", Quantity(start, foot)),) if start else ()
    return Posed(
        situation=f"{scene}. How much air, as measured at the surface, fills it there again, in "
        f"{unit_text(unit)}? No air is lost on the way.",
        convention=conventions[0].sentence,
        givens=(
            Given("V", "room in the box", Quantity(room, unit)),
            *shallow,
            Given("D₂", "depth where it is filled again", Quantity(end, foot)),
        ),
        asked=Asked("V_air", "air to add, as measured at the surface", "volume", unit),
        accepted=tuple([room * _rise(start, end, c) for c in conventions]),
        missteps=_missteps(system, start, end, room, conventions),
        sense="Each atmosphere of water it goes down takes one more fill of surface air.",
    )


def _rise(start: float, end: float, convention: Convention) -> float:
    """By how many of the convention's atmospheres the absolute pressure has grown."""
    return convention.atmospheres(end) - convention.atmospheres(start)


def _missteps(
    system: System, start: float, end: float, room: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    named = conventions[0]
    missteps = (
        slip(
            "contents-forgotten",
            "{typed} is all the air in the full box, as measured at the surface. It went down with air in "
            "it: take that off.",
            *[room * c.atmospheres(end) for c in conventions],
        ),
        slip(
            "volume-at-depth",
            "{typed} is the room that the water took, at depth. Air to fill it comes from the surface, where "
            "it takes more room.",
            *[room - volume_after(room, c.absolute(start), c.absolute(end)) for c in conventions],
        ),
        slip(
            "other-length-unit",
            f"Feet and metres were mixed up. It takes {named.column:g} {named.depth_unit} of sea water for "
            "each atmosphere.",
            room * (end - start) / OTHER_COLUMN[system],
        ),
        other_water("sea", *[room * _rise(start, end, c) for c in ALLOWED[system, "fresh"]]),
    )
    if not start:
        return missteps
    return (
        *missteps,
        slip(
            "start-at-surface",
            "It was full at the first depth, not at the surface. Count from the absolute pressure there.",
            *[room * (c.atmospheres(end) - 1) for c in conventions],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], problem.asked.unit
    foot = named.depth_unit
    start, end = problem.facts[f"from_{foot}"], problem.facts[f"to_{foot}"]
    room, air = Symbol("V"), Symbol("V", "air")
    first, second = Symbol("n", "1"), Symbol("n", "2")
    return (
        atmospheres_step(
            "Absolute pressure where it was full, as a multiple of the surface pressure.", first, start, named
        ),
        atmospheres_step("The same where it is filled again.", second, end, named),
        Step(
            "Full, it holds its room times the absolute pressure, counted in surface air. The difference is "
            "to be added.",
            equation(air, room * (second - first)),
            equation(
                air,
                given(problem.facts[f"room_{unit}"], unit)
                * (
                    computed(named.atmospheres(end), figures=4)
                    - computed(named.atmospheres(start), figures=4)
                ),
            ),
            result(air, problem.answer.value, unit),
        ),
    )


def _axes(
    foot: str, starts: tuple[int, ...], ends: range, unit: str, rooms: tuple[float, ...]
) -> tuple[Axis, ...]:
    return (
        Axis(f"from_{foot}", tuple(map(float, starts))),
        Axis(f"to_{foot}", tuple(map(float, ends))),
        Axis(f"room_{unit}", rooms),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="air-to-refill",
    edition=1,
    title="Surface air to fill an open box again",
    topic="Boyle",
    level=3,
    axes={
        "us": _axes(
            "ft", (0, 10, 12, 15, 20, 25), range(50, 166, 5), "ft3", (6.0, 8.0, 10.0, 15.0, 20.0, 30.0, 60.0)
        ),
        "metric": _axes(
            "m", (0, 3, 4, 5, 6, 8), range(15, 51), "L", (60.0, 80.0, 120.0, 150.0, 200.0, 300.0, 600.0)
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"from_ft": 0.0, "to_ft": 99.0, "room_ft3": 10.0, "scene": 0.0},
            30.0,
            "at 4 atm a full box holds four fills of surface air, and one went down in it; common practice, "
            "no source",
        ),
        WorkedExample(
            "metric",
            {"from_m": 10.0, "to_m": 40.0, "room_L": 200.0, "scene": 1.0},
            600.0,
            "five fills at 5 bar, two of them there already; common practice, no source",
        ),
    ),
)
