"""An open box with air in it is raised until it spills; how much surface air is lost?

The loss is a difference, so the draws spill at least a third of the air.
"""

from __future__ import annotations

from pressure.cautions import HELD_BREATH
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
from pressure.slips import Misstep, slip
from pressure.steps import atmospheres_step
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "An open-bottomed box of {room} holds {air} of air under {start} of sea water. It is raised to {end}",
    "An open-bottomed lift bag has room for {room}. Under {start} of sea water it is given {air} of air, and "
    "it rises to {end}",
    "An upturned tank of {room} is given {air} of air under {start} of sea water and hoisted to {end}",
)
_VOLUMES = {"us": "ft3", "metric": "L"}


def _volumes(facts: Facts, unit: str) -> tuple[float, float]:
    """The room in the box, and the air in it at the greater depth."""
    room = facts[f"room_{unit}"]
    return room, room * facts["filled_percent"] / 100


def pose(system: System, facts: Facts) -> Posed:
    conventions, unit = ALLOWED[system, "sea"], _VOLUMES[system]
    foot = conventions[0].depth_unit
    start, end = facts[f"from_{foot}"], facts[f"to_{foot}"]
    room, air = _volumes(facts, unit)
    scene = _SCENES[int(facts["scene"])].format(
        room=shown(room, unit, given=True),
        air=shown(air, unit, given=True),
        start=shown(start, foot, given=True),
        end=shown(end, foot, given=True),
    )
    return Posed(
        situation=f"{scene} and spills what it cannot hold. How much air is lost, as measured at the "
        f"surface, in {unit_text(unit)}?",
        convention=conventions[0].sentence,
        givens=(
            Given("V_box", "room in the box", Quantity(room, unit)),
            Given("V₁", "air in it at the greater depth", Quantity(air, unit)),
            Given("D₁", "depth it comes from", Quantity(start, foot)),
            Given("D₂", "depth it comes up to", Quantity(end, foot)),
        ),
        asked=Asked("V_lost", "air lost, as measured at the surface", "volume", unit),
        accepted=tuple([air * c.atmospheres(start) - room * c.atmospheres(end) for c in conventions]),
        missteps=_missteps(start, end, room, air, conventions),
        sense="What is lost and what is left add up to the surface air that was in the box below.",
        caution=HELD_BREATH,
    )


def _missteps(
    start: float, end: float, room: float, air: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    ends = [(c.atmospheres(start), c.atmospheres(end)) for c in conventions]
    return (
        slip(
            "spilling-ignored",
            "{typed} is the room all the air would take. The box holds less: the rest spills.",
            *[volume_after(air, below, above) for below, above in ends],
        ),
        slip(
            "volume-at-depth",
            "{typed} is what spilled as measured where it came to. Asked is surface air: multiply by the "
            "absolute pressure there.",
            *[volume_after(air, below, above) - room for below, above in ends],
        ),
        slip(
            "box-not-converted",
            "The air left in the box is under pressure too. Turn it into surface air before you take it off.",
            *[air * below - room for below, _ in ends],
        ),
        slip(
            "rest-counted-lost",
            "{typed} is all the air, as measured at the surface. Take off what is still in the box.",
            *[air * below for below, _ in ends],
        ),
        slip(
            "atmosphere-left-out",
            "A gauge pressure leaves the atmosphere out. Use the absolute pressure at both depths.",
            *[air * (below - 1) - room * (above - 1) for below, above in ends],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], problem.asked.unit
    start, end = problem.facts[f"from_{named.depth_unit}"], problem.facts[f"to_{named.depth_unit}"]
    room, air = _volumes(problem.facts, unit)
    lower, upper = named.atmospheres(start), named.atmospheres(end)
    first, second = Symbol("n", "1"), Symbol("n", "2")
    whole, left, lost = Symbol("V", "all"), Symbol("V", "left"), Symbol("V", "lost")
    return (
        atmospheres_step(
            "Absolute pressure below, as a multiple of the surface pressure.", first, start, named
        ),
        atmospheres_step("The same where it comes to.", second, end, named),
        Step(
            "Volumes at different depths cannot be added or subtracted: count all the air as it would "
            "measure at the surface.",
            equation(whole, Symbol("V", "1") * first),
            equation(whole, given(air, unit) * computed(lower, figures=4)),
            result(whole, air * lower, unit, figures=4),
        ),
        Step(
            "It spills, so the box is full where it comes to. This is what it still holds, in surface air.",
            equation(left, Symbol("V", "box") * second),
            equation(left, given(room, unit) * computed(upper, figures=4)),
            result(left, room * upper, unit, figures=4),
        ),
        Step(
            "The rest is lost.",
            equation(lost, whole - left),
            equation(lost, computed(air * lower, unit, figures=4) - computed(room * upper, unit, figures=4)),
            result(lost, problem.answer.value, unit),
        ),
    )


def _axes(
    foot: str, starts: tuple[int, ...], ends: tuple[int, ...], unit: str, rooms: tuple[float, ...]
) -> tuple[Axis, ...]:
    return (
        Axis(f"from_{foot}", tuple(map(float, starts))),
        Axis(f"to_{foot}", tuple(map(float, ends))),
        Axis(f"room_{unit}", rooms),
        Axis("filled_percent", (75.0, 80.0, 90.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="box-on-ascent",
    edition=1,
    title="Air lost from an open box coming up",
    topic="Boyle",
    level=3,
    axes={
        "us": _axes(
            "ft",
            (85, 90, 99, 100, 110, 120, 132, 140, 150, 165),
            (10, 12, 15, 18, 20, 25),
            "ft3",
            (2.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 20.0),
        ),
        "metric": _axes(
            "m",
            (26, 28, 30, 32, 35, 38, 40, 42, 45, 50),
            (3, 4, 5, 6, 7, 8),
            "L",
            (40.0, 50.0, 60.0, 80.0, 100.0, 120.0, 150.0, 200.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"from_ft": 165.0, "to_ft": 33.0, "room_ft3": 1.0, "filled_percent": 100.0, "scene": 0.0},
            4.0,
            "1 ft³ at 6 atm is 6 ft³ of surface air, and a full box of 1 ft³ at 2 atm keeps 2; common "
            "practice, no source",
        ),
        WorkedExample(
            "metric",
            {"from_m": 30.0, "to_m": 0.0, "room_L": 4.0, "filled_percent": 100.0, "scene": 1.0},
            12.0,
            "arithmetic: a full 4 L at 4 atm is 16 L at the surface",
        ),
    ),
)
