"""A box with a little air in it is raised; at what depth is it full and begins to spill?

The depth comes from a difference, so draws end where the absolute pressure is well above the surface's.
"""

from __future__ import annotations

from pressure.cautions import HELD_BREATH
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
from pressure.slips import Misstep, slip
from pressure.steps import atmospheres_step
from pressure.units import shown
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "An open-bottomed box of {room} holds {air} of air under {start} of sea water and is raised.",
    "An open-bottomed lift bag has room for {room}. It is given {air} of air under {start} of sea water and "
    "breaks away upwards.",
    "An upturned tank of {room} is hoisted from {start} of sea water with {air} of air in it.",
)
_VOLUMES = {"us": "ft3", "metric": "L"}


def _volumes(facts: Facts, unit: str) -> tuple[float, float]:
    """The room in the box, and the air in it at the greater depth."""
    room = facts[f"room_{unit}"]
    return room, room * facts["filled_percent"] / 100


def pose(system: System, facts: Facts) -> Posed:
    conventions, unit = ALLOWED[system, "sea"], _VOLUMES[system]
    named = conventions[0]
    foot = named.depth_unit
    start = facts[f"from_{foot}"]
    room, air = _volumes(facts, unit)
    scene = _SCENES[int(facts["scene"])].format(
        room=shown(room, unit, given=True),
        air=shown(air, unit, given=True),
        start=shown(start, foot, given=True),
    )
    return Posed(
        situation=f"{scene} No air is added. At what depth does it begin to spill, in {foot}?",
        convention=named.sentence,
        givens=(
            Given("V₂", "room in the box", Quantity(room, unit)),
            Given("V₁", "air in it at the greater depth", Quantity(air, unit)),
            Given("D₁", "depth it comes from", Quantity(start, foot)),
        ),
        asked=Asked("D₂", "depth where it begins to spill", "length", foot),
        accepted=tuple([_spills(start, room, air, each) for each in conventions]),
        missteps=_missteps(start, room, air, conventions),
        sense="It spills above where it was filled and below the surface.",
        caution=HELD_BREATH,
    )


def _spills(start: float, room: float, air: float, convention: Convention) -> float:
    """The depth at which ``air`` from the depth ``start`` takes up all the ``room``."""
    return (pressure_after(convention.atmospheres(start), air, room) - 1) * convention.column


def _missteps(
    start: float, room: float, air: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    named, share = conventions[0], air / room
    fills = [(each.atmospheres(start) * share, each.column) for each in conventions]
    return (
        slip(
            "gauge-ratio",
            "A share of the depth leaves the atmosphere out. Boyle's law takes absolute pressures: add the "
            "atmosphere first, take it off last.",
            start * share,
        ),
        slip(
            "atmosphere-kept",
            "{typed} counts the atmosphere as water. One of the atmospheres is the air at the surface: take "
            "it off.",
            *[pressure * column for pressure, column in fills],
        ),
        slip(
            "inverted-ratio",
            "{typed} is deeper than where it was filled. The air must grow: turn the ratio over.",
            *[(each.atmospheres(start) / share - 1) * each.column for each in conventions],
        ),
        slip(
            "atmospheres-for-depth",
            f"{{typed}} is the water's pressure in atmospheres. Each of them is {named.column:g} "
            f"{named.depth_unit} of it.",
            *[pressure - 1 for pressure, _ in fills],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, foot = ALLOWED[problem.system, "sea"][0], problem.asked.unit
    unit = _VOLUMES[problem.system]
    start = problem.facts[f"from_{foot}"]
    room, air = _volumes(problem.facts, unit)
    first, second = Symbol("n", "1"), Symbol("n", "2")
    deep, column = Symbol("D", "2"), Symbol("h", "atm", "of one atmosphere")
    below = named.atmospheres(start)
    full = pressure_after(below, air, room)
    return (
        atmospheres_step(
            "Absolute pressure where it was filled, as a multiple of the surface pressure.",
            first,
            start,
            named,
        ),
        Step(
            "Boyle's law: it spills when the air has grown to the whole room of the box.",
            equation(second, first * (Symbol("V", "1") / Symbol("V", "2"))),
            equation(second, computed(below, figures=4) * (given(air, unit) / given(room, unit))),
            result(second, full, "", figures=4),
        ),
        Step(
            f"One of these atmospheres is the air; each of the others is {named.column:g} {foot} of water.",
            equation(deep, (second - given(1)) * column),
            equation(deep, (computed(full, figures=4) - given(1)) * given(named.column, foot)),
            result(deep, problem.answer.value, foot),
        ),
    )


def _axes(foot: str, starts: tuple[int, ...], unit: str, rooms: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"from_{foot}", tuple(map(float, starts))),
        Axis("filled_percent", (50.0, 55.0, 60.0, 65.0, 70.0, 75.0, 80.0)),
        Axis(f"room_{unit}", rooms),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="spill-depth",
    edition=1,
    title="Where a rising box begins to spill",
    topic="Boyle",
    level=2,
    axes={
        "us": _axes(
            "ft",
            (90, 99, 100, 110, 115, 120, 130, 132, 140, 150, 165),
            "ft3",
            (4.0, 6.0, 8.0, 10.0, 12.0, 16.0),
        ),
        "metric": _axes(
            "m",
            (26, 28, 30, 32, 34, 36, 38, 40, 42, 45, 50),
            "L",
            (40.0, 60.0, 80.0, 120.0, 160.0, 240.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"from_ft": 66.0, "filled_percent": 100 * 2 / 3, "room_ft3": 6.0, "scene": 0.0},
            33.0,
            "an algebra textbook, turned round: 4 quarts at 66 ft are 6 quarts at 33 ft",
        ),
        WorkedExample(
            "metric",
            {"from_m": 30.0, "filled_percent": 50.0, "room_L": 40.0, "scene": 1.0},
            10.0,
            "half the pressure of 4 bar is 2 bar, at 10 m; common practice, no source",
        ),
    ),
)
