"""A suit holds gas that the water squeezes; how much lift is lost at depth?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.archimedes import displaced_weight
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
from pressure.units import shown
from pressure.waters import ALLOWED, HEAVINESS, Convention

_SCENES = (
    "The foam of a wet suit holds {volume} of gas at the surface. The diver goes to {depth} of sea water.",
    "A dry suit with {volume} of gas in it at the surface is worn down to {depth} of sea water. None is "
    "added.",
    "The foam padding of a tool sledge holds {volume} of gas at the surface and is taken to {depth} of sea "
    "water.",
)
_NOTES = (
    "Real foam is stiffer than free gas and loses somewhat less.",
    "The lift comes back with the gas that the diver lets in.",
    "Real foam is stiffer than free gas and loses somewhat less.",
)
_CAUTION = (
    "A diver who loses lift sinks faster and loses more of it; one who then adds gas must let it out on the "
    f"way up. {STANDARD}"
)
_CLEAR = 0.05  # of an atmosphere, on either side of where two slips give one number


def pose(system: System, facts: Facts) -> Posed:
    water, conventions = HEAVINESS[system, "sea"], ALLOWED[system, "sea"]
    named = conventions[0]
    foot, unit = named.depth_unit, water.volume_unit
    depth, volume = facts[f"depth_{foot}"], facts[f"volume_{unit}"]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, unit, given=True), depth=shown(depth, foot, given=True)
    )
    gauges = [each.gauge(depth) / each.surface for each in conventions]
    lost = [volume - volume_after(volume, 1.0, 1 + gauge) for gauge in gauges]
    return Posed(
        situation=f"{scene} The gas shrinks freely. How much lift is lost there, in {water.weight_unit}?",
        convention=f"{water.sentence} {named.sentence}",
        givens=(
            Given("V₁", "gas at the surface", Quantity(volume, unit)),
            Given("D", "depth", Quantity(depth, foot)),
        ),
        asked=Asked("L", "lift lost", "weight", water.weight_unit),
        accepted=tuple([displaced_weight(each, water.value) for each in lost]),
        missteps=(
            *_missteps(system, volume, gauges),
            other_water("sea", *[displaced_weight(each, HEAVINESS[system, "fresh"].value) for each in lost]),
        ),
        sense="Half the lift of the gas is gone one atmosphere down, and never quite all of it.",
        caution=_CAUTION,
    )


def _missteps(system: System, volume: float, gauges: list[float]) -> tuple[Misstep, ...]:
    lift = displaced_weight(volume, HEAVINESS[system, "sea"].value)
    missteps: tuple[Misstep, ...] = (
        slip(
            "part-left",
            "{typed} is the lift that is left. Asked is what is lost: take it off the lift at the surface.",
            *[lift / (1 + g) for g in gauges],
        ),
        slip(
            "whole-for-change",
            "{typed} is the whole lift of the gas at the surface. Some of it is left at depth.",
            lift,
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice at depth. Add it once to the water's pressure.",
            *[lift * (1 - 1 / (2 + g)) for g in gauges],
        ),
        slip(
            "halved-each-time",
            "The first atmosphere of water halves the gas; the second leaves a third, not a quarter. Divide "
            "by the absolute pressure in atmospheres.",
            *[lift * (1 - 2**-g) for g in gauges],
        ),
    )
    if system == "us":  # a litre of water weighs too nearly a kilogram to tell
        missteps += (
            slip(
                "volume-for-weight",
                "{typed} is the shrinking in cubic feet. Each of them displaced 64 lb of sea water.",
                *[volume * g / (1 + g) for g in gauges],
            ),
        )
    return (*missteps, *_ratio_slips(lift, gauges))


def _ratio_slips(lift: float, gauges: list[float]) -> tuple[Misstep, ...]:
    """Nothing is left by the gauge ratio at one atmosphere, nor by the same share at two."""
    named = gauges[0]
    if named < 2 - _CLEAR:
        return (
            slip(
                "fixed-share",
                "The loss is not the same for every atmosphere: half goes in the first, less in each after "
                "it. Divide by the absolute pressure in atmospheres.",
                *[lift * g / 2 for g in gauges],
            ),
        )
    return (
        slip(
            "gauge-ratio",
            "A ratio of gauge pressures leaves the atmosphere out. Boyle's law takes absolute pressures.",
            *[lift * (1 - 1 / g) for g in gauges],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    water, named = HEAVINESS[problem.system, "sea"], ALLOWED[problem.system, "sea"][0]
    foot, unit = named.depth_unit, water.volume_unit
    depth, volume = problem.facts[f"depth_{foot}"], problem.facts[f"volume_{unit}"]
    left = volume_after(volume, named.surface, named.absolute(depth))
    before, after, lost = Symbol("V", "1"), Symbol("V", "2"), Symbol("L")
    return (
        atmospheres_step(
            "How many times the surface pressure is the absolute pressure at depth?",
            Symbol("n"),
            depth,
            named,
        ),
        _shrink_step(volume, unit, named, depth, left),
        Step(
            "Archimedes: the lift lost is the weight of the water that the gas no longer displaces. "
            + _NOTES[int(problem.facts["scene"])],
            equation(lost, Symbol("w") * (before - after)),
            equation(
                lost, given(water.value, water.unit) * (given(volume, unit) - computed(left, unit, figures=5))
            ),
            result(lost, problem.answer.value, water.weight_unit),
        ),
    )


def _shrink_step(volume: float, unit: str, named: Convention, depth: float, left: float) -> Step:
    before, after = Symbol("V", "1"), Symbol("V", "2")
    return Step(
        "Boyle's law: so many times the absolute pressure, so many times less the volume.",
        equation(after, before / Symbol("n")),
        equation(after, given(volume, unit) / computed(named.atmospheres(depth), figures=4)),
        result(after, left, unit, figures=5),
    )


def _axes(foot: str, depths: range, unit: str, volumes: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"depth_{foot}", tuple(map(float, depths))),
        Axis(f"volume_{unit}", volumes),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="suit-compression",
    edition=1,
    title="Lift lost by a suit at depth",
    topic="buoyancy",
    level=3,
    axes={
        "us": _axes(
            "ft", range(15, 151, 3), "ft3", (0.1, 0.12, 0.15, 0.18, 0.2, 0.22, 0.25, 0.28, 0.3, 0.35, 0.4)
        ),
        "metric": _axes(
            "m", range(5, 46), "L", (3.0, 4.0, 4.5, 5.0, 5.5, 6.0, 6.5, 7.0, 8.0, 9.0, 11.0, 12.0)
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"depth_ft": 99.0, "volume_ft3": 0.25, "scene": 0.0},
            12.0,
            "0.25 ft³ lift 16 lb in the sea, a quarter of it at 4 ata; arithmetic",
        ),
        WorkedExample(
            "metric",
            {"depth_m": 30.0, "volume_L": 8.0, "scene": 0.0},
            6.15,
            "8 L become 2 L at 4 bar, 6 L of sea water less; common practice, no source",
        ),
    ),
)
