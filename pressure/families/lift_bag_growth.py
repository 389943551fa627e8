"""A lift bag leaves the bottom and is not vented; how much lift does it gain on the way?"""

from __future__ import annotations

from pressure.cautions import LIFTING, STANDARD
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
    "A half-filled lift bag with {volume} of air leaves the bottom at {start} of sea water and comes up to "
    "{end}.",
    "A load breaks out of the mud at {start} of sea water and carries its bag, {volume} of air, up to {end}.",
    "A big bag holds {volume} of air at {start} of sea water. It rises with its pipe to {end}.",
)


def pose(system: System, facts: Facts) -> Posed:
    water, conventions = HEAVINESS[system, "sea"], ALLOWED[system, "sea"]
    named = conventions[0]
    foot, unit = named.depth_unit, water.volume_unit
    start, end, volume = facts[f"from_{foot}"], facts[f"to_{foot}"], facts[f"volume_{unit}"]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, unit, given=True),
        start=shown(start, foot, given=True),
        end=shown(end, foot, given=True),
    )
    ends = [(c.gauge(start) / c.surface, c.gauge(end) / c.surface) for c in conventions]
    gains = [_gain(volume, *each) for each in ends]
    fresh = displaced_weight(1.0, HEAVINESS[system, "fresh"].value)
    return Posed(
        situation=f"{scene} It is not yet full and nothing is vented. How much lift has it gained, in "
        f"{water.weight_unit}?",
        convention=f"{water.sentence} {named.sentence}",
        givens=(
            Given("V₁", "volume of the air below", Quantity(volume, unit)),
            Given("D₁", "depth it comes from", Quantity(start, foot)),
            Given("D₂", "depth it comes to", Quantity(end, foot)),
        ),
        asked=Asked("G", "lift gained", "weight", water.weight_unit),
        accepted=tuple([displaced_weight(gain, water.value) for gain in gains]),
        missteps=(
            *_missteps(system, volume, ends),
            other_water("sea", *[gain * fresh for gain in gains]),
        ),
        sense="Shallower means more room for the air, so the bag pulls harder the higher it comes, and rises "
        "the faster for it.",
        caution=f"{LIFTING} {STANDARD}",
    )


def _gain(volume: float, low: float, high: float) -> float:
    """Growth of the air between two gauge pressures in atmospheres."""
    return volume_after(volume, 1 + low, 1 + high) - volume


def _missteps(system: System, volume: float, ends: list[tuple[float, float]]) -> tuple[Misstep, ...]:
    water = HEAVINESS[system, "sea"]
    lift = displaced_weight(volume, water.value)
    missteps: tuple[Misstep, ...] = (
        slip(
            "whole-for-change",
            "{typed} is the whole lift up there. Asked is the gain: take off the lift there was below.",
            *[lift * (1 + low) / (1 + high) for low, high in ends],
        ),
        slip(
            "inverted-ratio",
            "The air grows on the way up. Multiply by the greater absolute pressure over the lesser.",
            *[lift * (1 - (1 + high) / (1 + low)) for low, high in ends],
        ),
        slip(
            "gauge-ratio",
            "A ratio of depths or of gauge pressures leaves the atmosphere out. Boyle's law takes absolute "
            "pressures: add the atmosphere at both ends.",
            *[lift * (low / high - 1) for low, high in ends],
        ),
        slip(
            "surface-ratio",
            "{typed} is the gain all the way to the surface. It is asked for below: divide by the absolute "
            "pressure there.",
            *[lift * low for low, _ in ends],
        ),
    )
    if system == "us":  # a litre of water weighs too nearly a kilogram to tell
        missteps += (_volume_slip(volume, ends),)
    if abs(ends[0][1] - 1) < 0.05:  # one atmosphere down, the same share and the gauge ratio are one number
        return missteps
    share = slip(
        "fixed-share",
        "The growth is not the same for every atmosphere: it is greatest near the surface. Take the ratio of "
        "the absolute pressures.",
        *[lift * (low - high) for low, high in ends],
    )
    return (*missteps, share)


def _volume_slip(volume: float, ends: list[tuple[float, float]]) -> Misstep:
    return slip(
        "volume-for-weight",
        "{typed} is the growth in cubic feet. Each of them displaces 64 lb of sea water.",
        *[_gain(volume, *each) for each in ends],
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    water, named = HEAVINESS[problem.system, "sea"], ALLOWED[problem.system, "sea"][0]
    foot, unit = named.depth_unit, water.volume_unit
    start, end, volume = (problem.facts[name] for name in (f"from_{foot}", f"to_{foot}", f"volume_{unit}"))
    below, above = Symbol("V", "1"), Symbol("V", "2")
    lower, upper, gain = Symbol("n", "1"), Symbol("n", "2"), Symbol("G")
    grown = volume_after(volume, named.absolute(start), named.absolute(end))
    return (
        atmospheres_step("Absolute pressure below, as a multiple of the surface's.", lower, start, named),
        atmospheres_step("Absolute pressure where it comes to.", upper, end, named),
        _growth_step(volume, unit, named, (start, end), grown),
        Step(
            "Archimedes: the lift gained is the weight of the water that the growth displaces.",
            equation(gain, Symbol("w") * (above - below)),
            equation(
                gain,
                given(water.value, water.unit) * (computed(grown, unit, figures=5) - given(volume, unit)),
            ),
            result(gain, problem.answer.value, water.weight_unit),
        ),
    )


def _growth_step(
    volume: float, unit: str, named: Convention, depths: tuple[float, float], grown: float
) -> Step:
    below, above = Symbol("V", "1"), Symbol("V", "2")
    start, end = (computed(named.atmospheres(depth), figures=4) for depth in depths)
    return Step(
        "Boyle's law: pressure times volume stays the same, both pressures absolute.",
        equation(above, below * (Symbol("n", "1") / Symbol("n", "2"))),
        equation(above, given(volume, unit) * (start / end)),
        result(above, grown, unit, figures=5),
    )


def _axes(
    foot: str, starts: tuple[int, ...], ends: tuple[int, ...], unit: str, volumes: tuple[float, ...]
) -> tuple[Axis, ...]:
    return (
        Axis(f"from_{foot}", tuple(map(float, starts))),
        Axis(f"to_{foot}", tuple(map(float, ends))),
        Axis(f"volume_{unit}", volumes),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="lift-bag-growth",
    edition=1,
    title="Lift gained by a bag on the way up",
    topic="buoyancy",
    level=3,
    axes={
        "us": _axes(
            "ft",
            (55, 60, 66, 70, 80, 85, 90, 99, 105, 110, 120, 132, 140, 150),
            (8, 10, 12, 15, 18, 20, 24, 28, 33, 40),
            "ft3",
            (2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0),
        ),
        "metric": _axes(
            "m",
            (16, 18, 20, 22, 24, 26, 28, 30, 32, 35, 38, 40, 42, 45),
            (3, 4, 5, 6, 7, 8, 10, 12),
            "L",
            (50.0, 80.0, 100.0, 120.0, 150.0, 200.0, 250.0, 300.0, 400.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"from_ft": 99.0, "to_ft": 33.0, "volume_ft3": 15.625, "scene": 0.0},
            1000.0,
            "15.625 ft³ lift 1000 lb at 4 ata and twice that at 2 ata; arithmetic",
        ),
        WorkedExample(
            "metric",
            {"from_m": 30.0, "to_m": 10.0, "volume_L": 100.0, "scene": 0.0},
            102.5,
            "100 L at 4 bar are 200 L at 2 bar; common practice, no source",
        ),
    ),
)
