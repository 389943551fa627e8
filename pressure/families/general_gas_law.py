"""A closed, soft bag of air goes down and cools; pressure and temperature change together."""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.cylinders import VOLUME_UNITS
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.charles import volume_moved
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
from pressure.temperatures import SCALES, absolute_steps, ratio_slips
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED

_SCENES = (
    "A soft float is filled with {volume} of air at {warm} on deck and drawn down to {depth} of sea water "
    "of {cool}.",
    "An open bell takes {volume} of air of {warm} from the surface down to {depth} of sea water, where it "
    "is at "
    "{cool}.",
    "A balloon of {volume} at {warm} is sunk to {depth} of sea water and comes to the water's {cool}.",
    "A bag with {volume} of surface air at {warm} is lowered to {depth} of sea water. There its air cools "
    "to {cool}.",
)
_CAUTION = "Soft floats lose lift as they go down and as they cool: keep a margin. " + STANDARD


def pose(system: System, facts: Facts) -> Posed:
    scale, unit, conventions = SCALES[system], VOLUME_UNITS[system], ALLOWED[system, "sea"]
    named = conventions[0]
    foot = named.depth_unit
    volume, warm, cool, depth = facts[f"volume_{unit}"], facts["warm"], facts["cool"], facts[f"depth_{foot}"]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, unit, given=True),
        depth=shown(depth, foot, given=True),
        warm=shown(warm, scale.unit, given=True),
        cool=shown(cool, scale.unit, given=True),
    )
    ratios = tuple([each.atmospheres(depth) for each in conventions])
    return Posed(
        situation=f"{scene} No air is added or lost. What is its volume there, in {unit_text(unit)}?",
        convention=f"{named.sentence} Take {scale.sentence}.",
        givens=(
            Given("V₁", "volume at the surface", Quantity(volume, unit)),
            Given("t₁", "temperature at the surface", Quantity(warm, scale.unit)),
            Given("t₂", "temperature at depth", Quantity(cool, scale.unit)),
            Given("D", "depth", Quantity(depth, foot)),
        ),
        asked=Asked("V₂", "volume at depth", "volume", unit),
        accepted=tuple(
            [volume_moved(volume, ratio, *ends) for ends in scale.ends(warm, cool) for ratio in ratios]
        ),
        missteps=_missteps(system, volume, warm, cool, ratios),
        sense="Deeper and cooler both make it smaller; the depth does by far the most of it.",
        caution=_CAUTION,
    )


def _missteps(
    system: System, volume: float, warm: float, cool: float, ratios: tuple[float, ...]
) -> tuple[Misstep, ...]:
    scale = SCALES[system]
    cooled = [volume * last / first for first, last in scale.ends(warm, cool)]
    return (
        *ratio_slips(scale, warm, cool, lambda warmth: tuple([volume * warmth / ratio for ratio in ratios])),
        slip(
            "temperature-left-out",
            "{typed} is Boyle's law alone. The air has cooled too: multiply by the ratio of the absolute "
            "temperatures.",
            *[volume / ratio for ratio in ratios],
        ),
        slip(
            "pressure-left-out",
            "{typed} counts only the cooling. The pressure has grown too: divide by it in atmospheres.",
            *cooled,
        ),
        slip(
            "gauge-ratio",
            "The water alone was divided by. The gas laws take absolute pressures: add one atmosphere.",
            *[each / (ratio - 1) for each in cooled for ratio in ratios],
        ),
        slip(
            "inverted-ratio",
            "{typed} is more than there was at the surface. Deeper means smaller: turn the ratio of "
            "pressures over.",
            *[each * ratio for each in cooled for ratio in ratios],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    system, facts, unit = problem.system, problem.facts, problem.asked.unit
    scale, named = SCALES[system], ALLOWED[system, "sea"][0]
    kelvins, depth = scale.absolute_unit, facts[f"depth_{named.depth_unit}"]
    before, after, ratio = Symbol("V", "1"), Symbol("V", "2"), Symbol("n")
    return (
        atmospheres_step(
            "Absolute pressure at depth, as a multiple of the surface pressure.", ratio, depth, named
        ),
        *absolute_steps(scale, facts["warm"], facts["cool"]),
        Step(
            "The general gas law: pressure times volume over absolute temperature stays the same.",
            equation(after, (before / ratio) * (Symbol("T", "2") / Symbol("T", "1"))),
            equation(
                after,
                (given(facts[f"volume_{unit}"], unit) / computed(named.atmospheres(depth), figures=4))
                * (
                    computed(scale.absolute(facts["cool"]), kelvins, figures=4)
                    / computed(scale.absolute(facts["warm"]), kelvins, figures=4)
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
    slug="general-gas-law",
    edition=1,
    title="Air taken down and cooled",
    topic="temperature",
    level=3,
    axes={
        "us": _axes(
            "us",
            (5.0, 8.0, 16.0, 24.0, 30.0, 40.0),
            (75.0, 80.0, 85.0, 90.0),
            (40.0, 45.0, 50.0),
            range(45, 136, 10),
        ),
        "metric": _axes(
            "metric",
            (150.0, 200.0, 250.0, 400.0, 600.0, 900.0),
            (24.0, 26.0, 28.0, 32.0),
            (4.0, 6.0, 8.0),
            range(14, 42, 3),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "metric",
            {"volume_L": 0.250, "warm": 27.0, "cool": 0.0, "depth_m": 10 * (1 / 0.850 - 1), "scene": 0.0},
            0.193,
            "OpenStax Chemistry 2e, §9.2: 0.250 L at 27 °C and 0.850 atm, at 0 °C and 1 atm",
        ),
        WorkedExample(
            "us",
            {"volume_ft3": 6.0, "warm": 80.0, "cool": 45.0, "depth_ft": 33.0, "scene": 0.0},
            2.806,
            "half of 5.61 ft³, to which 6 ft³ cool from 80 to 45 °F; US Navy Diving Manual, 2-11.2, from "
            "memory",
        ),
    ),
)
