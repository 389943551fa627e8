"""An open-bottomed box of surface air goes down; what room is left to the air?"""

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
from pressure.slips import Misstep, slip
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "An open-bottomed box full of air, {volume} at the surface, is lowered to {depth} of sea water.",
    "An upturned drum that traps {volume} of air at the surface is lowered to {depth} of sea water.",
    "An open-bottomed tool locker takes {volume} of air from the surface down to {depth} of sea water.",
)
_VOLUMES = {"us": "ft3", "metric": "L"}
# The waters change a volume by more than the rounding allowance only in deeper places.
_WATERS_DIFFER_FROM = {"us": 40.0, "metric": 20.0}


def pose(system: System, facts: Facts) -> Posed:
    conventions, unit = ALLOWED[system, "sea"], _VOLUMES[system]
    named = conventions[0]
    depth, volume = facts[f"depth_{named.depth_unit}"], facts[f"volume_{unit}"]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, unit, given=True), depth=shown(depth, named.depth_unit, given=True)
    )
    missteps = _missteps(depth, volume, conventions)
    if depth >= _WATERS_DIFFER_FROM[system]:
        missteps += (_water_slip(depth, volume, ALLOWED[system, "fresh"]),)
    return Posed(
        situation=f"{scene} No air is added or lost. What is its volume there, in {unit_text(unit)}?",
        convention=named.sentence,
        givens=(
            Given("V₁", "volume at the surface", Quantity(volume, unit)),
            Given("D", "depth", Quantity(depth, named.depth_unit)),
        ),
        asked=Asked("V₂", "volume of the air at depth", "volume", unit),
        accepted=tuple([volume_after(volume, c.surface, c.absolute(depth)) for c in conventions]),
        missteps=missteps,
        sense="Deeper means more pressure, so the air takes less room than at the surface.",
    )


def _missteps(depth: float, volume: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    """Each works on the gauge pressure in atmospheres, under every convention."""
    gauges = [c.gauge(depth) / c.surface for c in conventions]
    missteps = (
        slip(
            "gauge-ratio",
            "A ratio of gauge pressures leaves the atmosphere out. Boyle's law takes absolute pressures: add "
            "the atmosphere at both ends.",
            *[volume / g for g in gauges],
        ),
        slip(
            "inverted-ratio",
            "{typed} is more than there was at the surface. Deeper means smaller: turn the ratio over.",
            *[volume * (1 + g) for g in gauges],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice at depth. Add it once to the water's pressure.",
            *[volume / (2 + g) for g in gauges],
        ),
        slip(
            "halved-each-time",
            "The first atmosphere of water halves the air; the second leaves a third, not a quarter. Divide "
            "by the absolute pressure in atmospheres.",
            *[volume / 2**g for g in gauges],
        ),
        slip(
            "other-part",
            "{typed} is the part the water has taken. Asked is the part left to the air.",
            *[volume * g / (1 + g) for g in gauges],
        ),
    )
    # The same loss each time leaves nothing below the second atmosphere.
    return missteps if gauges[0] >= 2 else (*missteps, _share_slip(volume, gauges))


def _share_slip(volume: float, gauges: list[float]) -> Misstep:
    return slip(
        "fixed-share",
        "The loss is not the same for every atmosphere: half goes in the first, less in each after it. "
        "Divide by the absolute pressure in atmospheres.",
        *[volume * (1 - g / 2) for g in gauges],
    )


def _water_slip(depth: float, volume: float, waters: tuple[Convention, ...]) -> Misstep:
    return slip(
        "fresh-for-salt",
        "Sea water is the heavier: the number you used is for fresh water.",
        *[volume_after(volume, c.surface, c.absolute(depth)) for c in waters],
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], problem.asked.unit
    depth, volume = problem.facts[f"depth_{named.depth_unit}"], problem.facts[f"volume_{unit}"]
    ratio, deep, column = Symbol("n"), Symbol("D"), Symbol("h", "atm", "of one atmosphere")
    before, after = Symbol("V", "1"), Symbol("V", "2")
    atmospheres = named.atmospheres(depth)
    return (
        Step(
            "How many times the surface pressure is the absolute pressure at depth? One for the air, and one "
            f"more for every {named.column:g} {named.depth_unit} of water.",
            equation(ratio, given(1) + deep / column),
            equation(
                ratio, given(1) + given(depth, named.depth_unit) / given(named.column, named.depth_unit)
            ),
            result(ratio, atmospheres, "", figures=4),
        ),
        Step(
            "Boyle's law: so many times the absolute pressure, so many times less the volume.",
            equation(after, before / ratio),
            equation(after, given(volume, unit) / computed(atmospheres, figures=4)),
            result(after, problem.answer.value, unit),
        ),
    )


def _axes(depth: str, depths: range, volume: str, volumes: tuple[float, ...]) -> tuple[Axis, ...]:
    scenes = tuple(map(float, range(len(_SCENES))))
    return Axis(depth, tuple(map(float, depths))), Axis(volume, volumes), Axis("scene", scenes)


def _foot_example(depth: float, answer: float) -> WorkedExample:
    return WorkedExample(
        "us",
        {"depth_ft": depth, "volume_ft3": 1.0, "scene": 0.0},
        answer,
        "one cubic foot of surface air in an open box; common practice, no source",
    )


FAMILY = Family(
    slug="depth-to-volume",
    edition=1,
    title="Air in an open box going down",
    topic="Boyle",
    axes={
        "us": _axes(
            "depth_ft", range(9, 166, 3), "volume_ft3", (1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0)
        ),
        "metric": _axes(
            "depth_m",
            range(3, 51),
            "volume_L",
            (20.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0, 120.0, 150.0, 200.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        _foot_example(33.0, 1 / 2),
        _foot_example(66.0, 1 / 3),
        _foot_example(99.0, 1 / 4),
        _foot_example(132.0, 1 / 5),
        WorkedExample(
            "metric",
            {"depth_m": 30.0, "volume_L": 100.0, "scene": 0.0},
            25.0,
            "Encyclopaedia Britannica, thoracic squeeze: about one fourth at 100 ft or 30 m",
        ),
    ),
)
