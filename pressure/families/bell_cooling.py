"""The air in an open bell cools at one depth; how much room does it take then?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.cylinders import VOLUME_UNITS
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.charles import volume_warmed
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
from pressure.temperatures import SCALES, absolute_steps, ratio_slips
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED

_SCENES = (
    "An open bell hangs at {depth} of sea water. Its air, just blown in, takes {volume} at {warm} and "
    "cools to "
    "{cool}.",
    "A lift bag tied down at {depth} of sea water is filled with {volume} of air at {warm}. The air cools "
    "to {cool}.",
    "Under an open habitat at {depth} of sea water {volume} of air has come from the compressor at {warm}. "
    "It "
    "cools to {cool}.",
    "A soft float is held at {depth} of sea water with {volume} of air at {warm} in it. The air cools to "
    "{cool}.",
)
_CAUTION = "Where air shrinks, water rises in the bell: watch the level and let air in. " + STANDARD


def pose(system: System, facts: Facts) -> Posed:
    scale, unit, foot = SCALES[system], VOLUME_UNITS[system], ALLOWED[system, "sea"][0].depth_unit
    volume, warm, cool, depth = facts[f"volume_{unit}"], facts["warm"], facts["cool"], facts[f"depth_{foot}"]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, unit, given=True),
        depth=shown(depth, foot, given=True),
        warm=shown(warm, scale.unit, given=True),
        cool=shown(cool, scale.unit, given=True),
    )
    return Posed(
        situation=f"{scene} It stays at that depth and no air is lost. What is its volume then, in "
        f"{unit_text(unit)}?",
        convention=f"Take {scale.sentence}.",
        givens=(
            Given("V₁", "volume when warm", Quantity(volume, unit)),
            Given("t₁", "temperature at first", Quantity(warm, scale.unit)),
            Given("t₂", "temperature at the end", Quantity(cool, scale.unit)),
            Given("D", "depth", Quantity(depth, foot)),
        ),
        asked=Asked("V₂", "volume when cool", "volume", unit),
        accepted=tuple([volume_warmed(volume, first, last) for first, last in scale.ends(warm, cool)]),
        missteps=_missteps(system, volume, warm, cool, depth),
        sense="Cooler air takes less room, but from summer to winter only by some per cent.",
        caution=_CAUTION,
    )


def _missteps(system: System, volume: float, warm: float, cool: float, depth: float) -> tuple[Misstep, ...]:
    scale, ends = SCALES[system], SCALES[system].ends(warm, cool)
    ratios = [each.atmospheres(depth) for each in ALLOWED[system, "sea"]]
    return (
        *ratio_slips(scale, warm, cool, lambda ratio: (volume * ratio,)),
        slip(
            "other-part",
            "{typed} is the room that was lost. Asked is the room that the air still takes.",
            *[volume * (1 - last / first) for first, last in ends],
        ),
        slip(
            "pressure-counted",
            "The depth does not change, so the pressure does not either. Only the temperatures count.",
            *[volume * last / first / ratio for first, last in ends for ratio in ratios],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    scale, unit, facts = SCALES[problem.system], problem.asked.unit, problem.facts
    volume, warm, cool = facts[f"volume_{unit}"], facts["warm"], facts["cool"]
    before, after, kelvins = Symbol("V", "1"), Symbol("V", "2"), scale.absolute_unit
    return (
        *absolute_steps(scale, warm, cool),
        Step(
            "The depth, and so the pressure, stays the same: the volume goes with the absolute temperature.",
            equation(after, before * (Symbol("T", "2") / Symbol("T", "1"))),
            equation(
                after,
                given(volume, unit)
                * (
                    computed(scale.absolute(cool), kelvins, figures=4)
                    / computed(scale.absolute(warm), kelvins, figures=4)
                ),
            ),
            result(after, problem.answer.value, unit),
        ),
    )


def _axes(
    system: System,
    volumes: tuple[float, ...],
    warm: tuple[float, ...],
    cool: tuple[float, ...],
    depths: range,
) -> tuple[Axis, ...]:
    return (
        Axis(f"volume_{VOLUME_UNITS[system]}", volumes),
        Axis("warm", warm),
        Axis("cool", cool),
        Axis(f"depth_{ALLOWED[system, 'sea'][0].depth_unit}", tuple(map(float, depths))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="bell-cooling",
    edition=1,
    title="Air that cools in an open bell",
    topic="temperature",
    axes={
        "us": _axes(
            "us",
            (6.0, 8.0, 16.0, 24.0, 30.0, 42.0, 64.0),
            (80.0, 90.0, 95.0, 105.0),
            (40.0, 45.0, 50.0, 55.0),
            range(50, 131, 20),
        ),
        "metric": _axes(
            "metric",
            (150.0, 180.0, 250.0, 400.0, 600.0, 900.0, 1500.0),
            (28.0, 32.0, 36.0, 42.0),
            (4.0, 6.0, 8.0, 10.0),
            range(14, 41, 6),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"volume_ft3": 6.0, "warm": 80.0, "cool": 45.0, "depth_ft": 90.0, "scene": 0.0},
            5.61,
            "US Navy Diving Manual, 2-11.2, sample problem 1, from memory: 6 ft³ from 80 to 45 °F",
            within=0.001,
        ),
        WorkedExample(
            "metric",
            {"volume_L": 0.300, "warm": 10.0, "cool": 30.0, "depth_m": 20.0, "scene": 0.0},
            0.321,
            "OpenStax Chemistry 2e, §9.2: 0.300 L from 10 to 30 °C",
            within=0.002,
        ),
    ),
)
