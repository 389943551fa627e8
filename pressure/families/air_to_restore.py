"""A mask, a suit or a middle ear was squeezed on the way down; how much surface air puts it right?"""

from __future__ import annotations

from typing import NamedTuple

from pressure.cautions import STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.differences import air_between
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


class _Scene(NamedTuple):
    """One space: what happens to it, its unit and the volumes it comes in."""

    text: str
    unit: str
    volumes: tuple[float, ...]


_MASK = (
    "A mask holds {volume} and was at the water's pressure at {start} of sea water. The diver goes down to "
    "{end} and breathes into it until it is as before."
)
_SUIT = (
    "A dry suit holds {volume} of gas and was full at {start} of sea water. The diver goes down to {end} and "
    "lets in gas until it is full again."
)
_EAR = (
    "A middle ear with its cells holds {volume} and was clear at {start} of sea water. The diver goes down "
    "to {end} and clears it."
)
_HELMET = (
    "A helmet and breastplate hold {volume} of gas and were clear of water at {start} of sea water. The "
    "diver goes down to {end} and opens the supply until they are clear again."
)
_SCENES: dict[System, tuple[_Scene, ...]] = {
    "us": (
        _Scene(_MASK, "in3", (12.0, 14.0, 15.0, 16.0, 18.0, 20.0, 22.0, 24.0)),
        _Scene(_SUIT, "ft3", (0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.9, 1.2)),
        _Scene(_EAR, "in3", (0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65)),
        _Scene(_HELMET, "ft3", (0.6, 0.7, 0.8, 0.9, 1.1, 1.2, 1.4, 1.5)),
    ),
    "metric": (
        _Scene(_MASK, "mL", (180.0, 200.0, 220.0, 250.0, 280.0, 300.0, 320.0, 350.0)),
        _Scene(_SUIT, "L", (11.0, 14.0, 16.0, 18.0, 22.0, 24.0, 26.0, 28.0)),
        _Scene(_EAR, "mL", (5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0)),
        _Scene(_HELMET, "L", (16.0, 18.0, 22.0, 24.0, 26.0, 28.0, 32.0, 36.0)),
    ),
}
_CAUTION = (
    "Let air in early and often on the way down; a space that will not clear means stop and go back up. "
    f"{STANDARD}"
)


def _read(system: System, facts: Facts) -> tuple[_Scene, float]:
    scene = _SCENES[system][int(facts["scene"])]
    return scene, scene.volumes[int(facts["size"])]


def pose(system: System, facts: Facts) -> Posed:
    conventions = ALLOWED[system, "sea"]
    named = conventions[0]
    foot = named.depth_unit
    start, end = facts[f"from_{foot}"], facts[f"to_{foot}"]
    scene, volume = _read(system, facts)
    text = scene.text.format(
        volume=shown(volume, scene.unit, given=True),
        start=shown(start, foot, given=True),
        end=shown(end, foot, given=True),
    )
    return Posed(
        situation=f"{text} How much free air does that take, measured at the surface, in "
        f"{unit_text(scene.unit)}?",
        convention=named.sentence,
        givens=(
            Given("V", "volume of the space", Quantity(volume, scene.unit)),
            Given("D₁", "depth where it was full", Quantity(start, foot)),
            Given("D₂", "depth where it is filled again", Quantity(end, foot)),
        ),
        asked=Asked("V_free", "free air let in", "volume", scene.unit),
        accepted=tuple(
            [air_between(volume, c.absolute(end), c.absolute(start), c.surface) for c in conventions]
        ),
        missteps=_missteps(start, end, volume, conventions),
        sense="Every atmosphere further down takes one more of the space's own volume in surface air.",
        caution=_CAUTION,
    )


def _missteps(
    start: float, end: float, volume: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    """Each works on the gauge pressures in atmospheres, under every convention."""
    ends = [(c.gauge(start) / c.surface, c.gauge(end) / c.surface) for c in conventions]
    return (
        slip(
            "from-the-surface",
            "{typed} is what it takes from the surface down. The space was full at the lesser depth: take "
            "off the air let in by then.",
            *[volume * deep for _, deep in ends],
        ),
        slip(
            "contents-forgotten",
            "{typed} would fill it from empty. It still holds its air: take that off.",
            *[volume * (1 + deep) for _, deep in ends],
        ),
        slip(
            "volume-at-depth",
            "{typed} is the room to be filled at depth. Surface air is asked: multiply by the absolute "
            "pressure there in atmospheres.",
            *[volume * (1 - (1 + shallow) / (1 + deep)) for shallow, deep in ends],
        ),
        slip(
            "measured-above",
            "{typed} is the air as it measures at the lesser depth. Free air is measured at the surface, "
            "where it takes more room.",
            *[volume * ((1 + deep) / (1 + shallow) - 1) for shallow, deep in ends],
        ),
        slip(
            "other-part",
            "{typed} is the room the old air still takes at depth. Asked is the air that has to come.",
            *[volume * (1 + shallow) / (1 + deep) for shallow, deep in ends],
        ),
        slip(
            "atmosphere-added",
            "In a difference the atmosphere drops out: take one pressure from the other, add nothing.",
            *[volume * (1 + deep - shallow) for shallow, deep in ends],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, "sea"][0]
    foot = named.depth_unit
    start, end = problem.facts[f"from_{foot}"], problem.facts[f"to_{foot}"]
    scene, volume = _read(problem.system, problem.facts)
    above, below, space, free = Symbol("n", "1"), Symbol("n", "2"), Symbol("V"), Symbol("V", "free")
    high, low = (computed(named.atmospheres(depth), figures=4) for depth in (start, end))
    return (
        atmospheres_step(
            "Absolute pressure where the space was full, as a multiple of the surface pressure.",
            above,
            start,
            named,
        ),
        atmospheres_step("Absolute pressure where it is filled again.", below, end, named),
        Step(
            "A full space holds its volume times the absolute pressure in atmospheres, as surface air. It "
            "needs what it holds more at the greater depth.",
            equation(free, space * (below - above)),
            equation(free, given(volume, scene.unit) * (low - high)),
            result(free, problem.answer.value, scene.unit),
        ),
    )


def _axes(foot: str, starts: tuple[int, ...], ends: tuple[int, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"from_{foot}", tuple(map(float, starts))),
        Axis(f"to_{foot}", tuple(map(float, ends))),
        Axis("size", tuple(map(float, range(8)))),
        Axis("scene", tuple(map(float, range(4)))),
    )


FAMILY = Family(
    slug="air-to-restore",
    edition=1,
    title="Air to restore a squeezed space",
    topic="air spaces",
    level=3,
    axes={
        "us": _axes("ft", (10, 15, 20, 25, 30), (42, 50, 60, 70, 80, 90, 99, 100, 110, 120)),
        "metric": _axes("m", (3, 4, 5, 6, 8), (13, 16, 18, 20, 24, 28, 30, 32, 36, 40)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"from_ft": 0.0, "to_ft": 132.0, "size": 1.0, "scene": 1.0},
            2.0,
            "half a cubic foot is a fifth of it at 5 atm: four more are needed; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"from_m": 10.0, "to_m": 30.0, "size": 1.0, "scene": 0.0},
            400.0,
            "a fifth of a litre at 2 bar and at 4 bar; common practice, no source",
        ),
    ),
)
