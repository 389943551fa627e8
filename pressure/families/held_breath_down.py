"""A breath taken at the surface is held on the way down; what room is left to it?"""

from __future__ import annotations

from pressure.cautions import STANDARD
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
from pressure.units import shown
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A swimmer takes a breath at the surface that fills the lungs to {volume}, holds it and pulls down a "
    "mooring chain to {depth} of sea water.",
    "A breath-hold diver of the survey party leaves the surface with {volume} of air in the lungs and drops "
    "to a marker at {depth} of sea water.",
    "On the training raft a diver fills the lungs to {volume} and follows a shot line down to {depth} of sea "
    "water without breathing.",
)
_CAUTION = (
    "Lungs pressed together by the water can bleed, and a long held breath can end in a faint under water. "
    f"{STANDARD}"
)


def pose(system: System, facts: Facts) -> Posed:
    conventions = ALLOWED[system, "sea"]
    named = conventions[0]
    depth, volume = facts[f"depth_{named.depth_unit}"], facts["volume_L"]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, "L", given=True), depth=shown(depth, named.depth_unit, given=True)
    )
    return Posed(
        situation=f"{scene} No air comes or goes, and the chest gives way freely. What is the volume of the "
        "air in the lungs there, in L?",
        convention=named.sentence,
        givens=(
            Given("V₁", "volume of the breath at the surface", Quantity(volume, "L")),
            Given("D", "depth", Quantity(depth, named.depth_unit)),
        ),
        asked=Asked("V₂", "volume of the held breath at depth", "volume", "L"),
        accepted=tuple([volume_after(volume, c.surface, c.absolute(depth)) for c in conventions]),
        missteps=_missteps(depth, volume, conventions),
        sense="A held breath shrinks on the way down: never more than at the surface, never nothing.",
        caution=_CAUTION,
    )


def _missteps(depth: float, volume: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    """Each works on the gauge pressure in atmospheres, under every convention."""
    gauges = [c.gauge(depth) / c.surface for c in conventions]
    missteps = (
        slip(
            "supply-for-held",
            "Lungs keep their volume only when air comes at the water's pressure. Here none comes: the "
            "breath shrinks as Boyle's law says.",
            volume,
        ),
        slip(
            "inverted-ratio",
            "{typed} is more than there was at the surface. Deeper means smaller: turn the ratio over.",
            *[volume * (1 + g) for g in gauges],
        ),
        slip(
            "halved-each-time",
            "The first atmosphere of water halves the breath; the second leaves a third, not a quarter. "
            "Divide by the absolute pressure in atmospheres.",
            *[volume / 2**g for g in gauges],
        ),
    )
    # One atmosphere down, gauge pressure changes nothing and the parts are equal; two down, counting the
    # atmosphere twice and halving again are one number.
    if abs(gauges[0] - 1) < 0.02:
        return (missteps[0], missteps[1], _twice_slip(volume, gauges))
    parts = (_gauge_slip(volume, gauges), _part_slip(volume, gauges))
    twice = () if abs(gauges[0] - 2) < 0.05 else (_twice_slip(volume, gauges),)
    return (*missteps, *parts, *twice)


def _gauge_slip(volume: float, gauges: list[float]) -> Misstep:
    return slip(
        "gauge-ratio",
        "A ratio of depths or of gauge pressures leaves the atmosphere out. Boyle's law takes absolute "
        "pressures: add the atmosphere at both ends.",
        *[volume / g for g in gauges],
    )


def _part_slip(volume: float, gauges: list[float]) -> Misstep:
    return slip(
        "other-part",
        "{typed} is what the lungs have lost. Asked is what is left in them.",
        *[volume * g / (1 + g) for g in gauges],
    )


def _twice_slip(volume: float, gauges: list[float]) -> Misstep:
    return slip(
        "atmosphere-twice",
        "The atmosphere was counted twice at depth. Add it once to the water's pressure.",
        *[volume / (2 + g) for g in gauges],
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, "sea"][0]
    depth, volume = problem.facts[f"depth_{named.depth_unit}"], problem.facts["volume_L"]
    ratio, before, after = Symbol("n"), Symbol("V", "1"), Symbol("V", "2")
    return (
        atmospheres_step(
            "How many times the surface pressure is the absolute pressure at depth? One for the air, and one "
            f"more for every {named.column:g} {named.depth_unit} of water.",
            ratio,
            depth,
            named,
        ),
        Step(
            "A held breath is a closed bag: Boyle's law, so many times the absolute pressure, so many times "
            "less the volume.",
            equation(after, before / ratio),
            equation(after, given(volume, "L") / computed(named.atmospheres(depth), figures=4)),
            result(after, problem.answer.value, "L"),
        ),
        Step(
            "This is arithmetic for a chest that gives way freely, at one temperature. Near the residual "
            "volume the ribs follow no further, and blood shifts into the chest instead."
        ),
    )


def _axes(foot: str, depths: tuple[int, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"depth_{foot}", tuple(map(float, depths))),
        Axis("volume_L", tuple(n / 4 for n in range(16, 29))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


def _example(
    system: System, fact: str, depth: float, volume: float, answer: float, why: str
) -> WorkedExample:
    return WorkedExample(system, {fact: depth, "volume_L": volume, "scene": 0.0}, answer, why, within=0.01)


_CUSTOM = "lungs of 5 L at the surface are 1 L at 5 atm absolute, 132 ft; common practice, no source"
_BRITANNICA = "Encyclopaedia Britannica, thoracic squeeze: about one fourth at 100 ft or 30 m"

# Where a slip's answer meets another's or the right one, the depth is left out.
_FEET = (15, 18, 20, 22, 25, 28, 33, 40, 42, 45, 48, 58, 60, 66, 70, 72, 75, 78, *range(80, 131, 5), 99, 132)

FAMILY = Family(
    slug="held-breath-down",
    edition=1,
    title="A held breath on the way down",
    topic="lungs",
    axes={
        "us": _axes("ft", _FEET),
        "metric": _axes("m", (*range(5, 9), 10, *range(12, 16), 18, *range(20, 41))),
    },
    pose=pose,
    solve=solve,
    examples=(
        _example("us", "depth_ft", 132.0, 5.0, 1.0, _CUSTOM),
        _example("metric", "depth_m", 40.0, 5.0, 1.0, _CUSTOM),
        _example("us", "depth_ft", 100.0, 6.0, 1.5, _BRITANNICA),
        _example("metric", "depth_m", 30.0, 6.0, 1.5, _BRITANNICA),
    ),
)
