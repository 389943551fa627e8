"""A space of the body or the gear has closed; how far does the water's pressure run from its gas's?"""

from __future__ import annotations

from typing import NamedTuple

from pressure.cautions import STANDARD
from pressure.laws.differences import across, allowed_in
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
from pressure.walls import difference_step
from pressure.waters import Convention, Water


class _Scene(NamedTuple):
    """One closed space: what happened, its wall, whether the diver is on the way down, and a word more."""

    text: str
    wall: str
    goes_down: bool
    aside: str = ""


_SCENES = (
    _Scene(
        "A diver last cleared the ears at {last} of {water} water and is now at {now}.",
        "the eardrum",
        True,
        "The tube to the throat is said to lock at about 1.2 m, 4 ft, of water: clear early and often.",
    ),
    _Scene(
        "A diver last let air into the mask at {last} of {water} water and has gone on down to {now}.",
        "the mask's glass",
        True,
    ),
    _Scene(
        "On the way down through {last} of {water} water swelling shuts a diver's sinus. The diver is now at "
        "{now}.",
        "the wall of the sinus",
        True,
    ),
    _Scene(
        "A stiff fold of a dry suit shuts on a pocket of air at {last} of {water} water. The diver is now at "
        "{now}.",
        "the fold",
        True,
    ),
    _Scene(
        "A tight hood seals the outer ear at {last} of {water} water. The diver goes on down to {now} with "
        "the middle ear cleared all the way.",
        "the eardrum",
        True,
    ),
    _Scene(
        "A gap under a filling is cut off at {last} of {water} water on the way down. The diver is now at "
        "{now}.",
        "the filling",
        True,
    ),
    _Scene(
        "At {last} of {water} water a diver's ears are clear. On the way up a swollen tube lets nothing out, "
        "and the diver is now at {now}.",
        "the eardrum",
        False,
    ),
    _Scene(
        "A diver's sinus, open at {last} of {water} water, is shut off as the ascent begins. The diver is "
        "now at {now}.",
        "the wall of the sinus",
        False,
    ),
)
_UNITS: dict[System, tuple[str, ...]] = {"us": ("psi", "mmHg"), "metric": ("kPa", "mmHg"), "si": ("kPa",)}
_CAUTION = (
    "Pain in an ear, a sinus or a tooth means stop and go back to where it was easy; never force it. "
    f"{STANDARD}"
)


class _Given(NamedTuple):
    scene: _Scene
    conventions: tuple[Convention, ...]
    waters: tuple[Water, Water]
    unit: str
    deeper: float
    shallower: float


def _read(system: System, facts: Facts) -> _Given:
    waters: tuple[Water, Water] = ("fresh", "sea") if facts["is_fresh"] else ("sea", "fresh")
    unit = _UNITS[system][int(facts["asked_in"])]
    conventions = allowed_in(system, waters[0], unit)
    foot = conventions[0].depth_unit
    shallower = facts[f"shallower_{foot}"]
    deeper = shallower + facts[f"between_{foot}"]
    return _Given(_SCENES[int(facts["scene"])], conventions, waters, unit, deeper, shallower)


def pose(system: System, facts: Facts) -> Posed:
    told = _read(system, facts)
    scene, deeper, shallower, unit = told.scene, told.deeper, told.shallower, told.unit
    last, now = (shallower, deeper) if scene.goes_down else (deeper, shallower)
    named = told.conventions[0]
    foot, way = named.depth_unit, "towards" if scene.goes_down else "out of"
    text = scene.text.format(
        last=shown(last, foot, given=True), now=shown(now, foot, given=True), water=told.waters[0]
    )
    return Posed(
        situation=f"{text} The space keeps its pressure. What is the difference across {scene.wall}, in "
        f"{unit}?",
        convention=named.sentence,
        givens=(
            Given("D₁", "depth where the space was last open", Quantity(last, foot)),
            Given("D₂", "depth now", Quantity(now, foot)),
        ),
        asked=Asked("Δp", f"difference across {scene.wall}", "pressure", unit, "difference"),
        accepted=tuple([across(c.gradient, deeper, shallower) for c in told.conventions]),
        missteps=_missteps(system, told),
        sense="Only the water between the two depths counts: as much as a gauge shows that far below the "
        f"surface. It presses {way} the closed space.",
        caution=_CAUTION,
    )


def _missteps(system: System, told: _Given) -> tuple[Misstep, ...]:
    _, conventions, waters, unit, deeper, shallower = told
    between, other = deeper - shallower, allowed_in(system, waters[1], unit)
    return (
        slip(
            "from-the-surface",
            "{typed} is the whole weight of the water above the deeper place. The space was open at the "
            "other depth: count from there.",
            *[c.gauge(deeper) for c in conventions],
        ),
        slip(
            "absolute-for-difference",
            "{typed} is the absolute pressure at the deeper place. The space holds gas that presses back: "
            "take its pressure off.",
            *[c.absolute(deeper) for c in conventions],
        ),
        slip(
            "atmosphere-added",
            "The atmosphere is in the pressure on both sides, so it drops out of the difference. Add "
            "nothing.",
            *[c.absolute(between) for c in conventions],
        ),
        other_water(waters[0], *[across(c.gradient, deeper, shallower) for c in other]),
        *_UNIT_SLIPS[unit](between, conventions),
    )


def _psi_slips(between: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "depth-for-pressure",
            f"A foot of water is not a pound per square inch: {conventions[0].column:g} ft weigh 14.7 psi.",
            between,
        ),
        slip(
            "atmospheres-not-converted",
            "{typed} is the difference in atmospheres. Each of them is 14.7 psi.",
            *[c.gauge(between) / c.surface for c in conventions],
        ),
    )


def _kilopascal_slips(between: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "decimal-point",
            "The point slipped one place: a metre of water makes about 10 kPa.",
            *[c.gauge(between) / 10 for c in conventions],
        ),
    )


# Millimetres of mercury are near no other unit that a diver reckons in: nothing to confuse them with.
_UNIT_SLIPS = {"psi": _psi_slips, "kPa": _kilopascal_slips, "mmHg": lambda *_: ()}


def solve(problem: Problem) -> tuple[Step, ...]:
    told = _read(problem.system, problem.facts)
    if told.scene.goes_down:
        end = "The water's pressure is the greater: it presses towards the closed space, a squeeze."
    else:
        end = "The pressure in the closed space is the greater: it presses outwards."
    return (
        difference_step(
            "The closed space keeps the pressure of the depth where it was last open; the other side has the "
            "pressure of the depth now. The atmosphere is in both and drops out.",
            told.deeper,
            told.shallower,
            told.conventions[0],
        ),
        Step(f"{end} An open space has the water's pressure inside, and no difference arises."),
        *([Step(told.scene.aside)] if told.scene.aside else []),
    )


def _axes(
    system: System, foot: str, shallower: tuple[float, ...], between: tuple[float, ...]
) -> tuple[Axis, ...]:
    return (
        Axis(f"shallower_{foot}", shallower),
        Axis(f"between_{foot}", between),
        Axis("is_fresh", (0.0, 1.0)),
        Axis("asked_in", tuple(map(float, range(len(_UNITS[system]))))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


_METRES = (
    (3.0, 4.0, 5.0, 6.0, 8.0, 9.0, 12.0, 15.0),
    (1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0),
)


def _example(system: System, between: float, asked_in: float, answer: float, why: str) -> WorkedExample:
    foot = "ft" if system == "us" else "m"
    facts = {f"shallower_{foot}": 10.0, f"between_{foot}": between, "is_fresh": 0.0}
    return WorkedExample(system, {**facts, "asked_in": asked_in, "scene": 0.0}, answer, why)


_ATLAS = "Atlas of Emergency Medicine 5e, 2021: the tube locks about 1.2 m (4 ft) down; mmHg by arithmetic"

FAMILY = Family(
    slug="closed-space-difference",
    edition=1,
    title="The difference across a closed ear, sinus, mask or suit",
    topic="air spaces",
    axes={
        "us": _axes(
            "us",
            "ft",
            (8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 40.0, 60.0),
            (3.0, 4.0, 5.0, 6.0, 7.0, 9.0, 13.0, 16.0),
        ),
        "metric": _axes("metric", "m", *_METRES),
        "si": _axes("si", "m", *_METRES),
    },
    pose=pose,
    solve=solve,
    examples=(
        _example("us", 4.0, 1.0, 91.9, _ATLAS),
        _example("metric", 1.2, 1.0, 90.0, _ATLAS),
        _example("us", 2.25, 0.0, 1.0, "2.25 ft of sea water make 1 psi, 64 lb/ft³; arithmetic"),
        _example("metric", 1.0, 0.0, 10.0, "a metre of sea water is 10 kPa, as it is defined"),
    ),
)
