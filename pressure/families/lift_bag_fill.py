"""A load lies on the bottom; how much surface air must go down to a lift bag to carry it?"""

from __future__ import annotations

from pressure.cautions import LIFTING, STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.archimedes import apparent_weight, displaced_weight, volume_to_carry
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
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED, HEAVINESS, Heaviness, Water

_SCENES = (
    "A mooring clump of {weight}, {volume} in size, lies free under {depth} of {water} water.",
    "A dropped sluice plate weighs {weight} in air, displaces {volume} and lies under {depth} of {water} "
    "water.",
    "A lost pump of {weight} that takes up {volume} is found under {depth} of {water} water.",
)


def _water(facts: Facts) -> tuple[Water, Water]:
    """The water of the problem, and the other one."""
    return ("fresh", "sea") if facts["is_fresh"] else ("sea", "fresh")


def _bag(weight: float, volume: float, heaviness: float) -> float:
    """The volume of the bag under water that just carries the load."""
    return volume_to_carry(apparent_weight(weight, volume, heaviness), heaviness)


def pose(system: System, facts: Facts) -> Posed:
    kind, other = _water(facts)
    water, conventions = HEAVINESS[system, kind], ALLOWED[system, kind]
    named = conventions[0]
    weight, volume = facts[f"weight_{water.weight_unit}"], facts[f"volume_{water.volume_unit}"]
    depth, unit = facts[f"depth_{named.depth_unit}"], unit_text(water.volume_unit)
    scene = _SCENES[int(facts["scene"])].format(
        weight=shown(weight, water.weight_unit, given=True),
        volume=shown(volume, water.volume_unit, given=True),
        depth=shown(depth, named.depth_unit, given=True),
        water=kind,
    )
    multiples = [each.atmospheres(depth) for each in conventions]
    bag = _bag(weight, volume, water.value)
    swapped = _bag(weight, volume, HEAVINESS[system, other].value)
    return Posed(
        situation=f"{scene} What volume of surface air must a lift bag get to just carry it, in {unit}? The "
        "bag itself weighs nothing, and the load does not stick.",
        convention=f"{water.sentence} {named.sentence}",
        givens=(
            Given("W", "weight in air", Quantity(weight, water.weight_unit)),
            Given("V", "volume of the load", Quantity(volume, water.volume_unit)),
            Given("D", "depth", Quantity(depth, named.depth_unit)),
        ),
        asked=Asked("V_s", "surface air", "volume", water.volume_unit),
        accepted=tuple([volume_after(bag, n, 1.0) for n in multiples]),
        missteps=(
            *_missteps(weight, bag, water, multiples),
            other_water(kind, *[volume_after(swapped, n, 1.0) for n in multiples]),
        ),
        sense="The bag displaces what the load weighs in water; at the surface the same air took more room.",
        caution=f"{LIFTING} {STANDARD}",
    )


def _missteps(weight: float, bag: float, water: Heaviness, multiples: list[float]) -> tuple[Misstep, ...]:
    in_air = volume_to_carry(weight, water.value)
    return (
        slip(
            "weight-in-air",
            "You lifted the weight in air. The load displaces water too: lift what is left of its weight.",
            *[in_air * n for n in multiples],
        ),
        slip(
            "volume-at-depth",
            "{typed} is what the air measures in the bag. At the surface it was more: multiply by the "
            "absolute pressure in atmospheres.",
            bag,
        ),
        slip(
            "atmosphere-left-out",
            "The gauge pressure leaves the atmosphere out. Multiply by the absolute pressure.",
            *[bag * (n - 1) for n in multiples],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice at depth. Add it once to the water's pressure.",
            *[bag * (n + 1) for n in multiples],
        ),
        slip(
            "inverted-ratio",
            "{typed} is less than the bag displaces. Surface air takes more room: turn the ratio over.",
            *[bag / n for n in multiples],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    kind = _water(problem.facts)[0]
    water, named = HEAVINESS[problem.system, kind], ALLOWED[problem.system, kind][0]
    weight, volume = (problem.facts[f"{w}_{u}"] for w, u in _named(water))
    depth, unit = problem.facts[f"depth_{named.depth_unit}"], water.volume_unit
    left = apparent_weight(weight, volume, water.value)
    bag, ratio = _bag(weight, volume, water.value), named.atmospheres(depth)
    heavy, wet, dry = Symbol("w"), Symbol("W", "w", "in water"), Symbol("W")
    size, inside, surface = Symbol("V"), Symbol("V", "b", "of the bag"), Symbol("V", "s", "at the surface")
    push = computed(displaced_weight(volume, water.value), water.weight_unit, figures=4)
    return (
        Step(
            "What is there to lift? The weight less the weight of the water that the load displaces.",
            equation(wet, dry - heavy * size),
            equation(wet, given(weight, water.weight_unit) - push),
            result(wet, left, water.weight_unit, figures=4),
        ),
        Step(
            "The bag must displace as much water as weighs that.",
            equation(inside, wet / heavy),
            equation(inside, computed(left, water.weight_unit, figures=4) / given(water.value, water.unit)),
            result(inside, bag, unit, figures=4),
        ),
        atmospheres_step(
            "How many times the surface pressure is the absolute pressure at depth?",
            Symbol("n"),
            depth,
            named,
        ),
        Step(
            "Boyle's law: at the surface the same air takes so many times the room.",
            equation(surface, inside * Symbol("n")),
            equation(surface, computed(bag, unit, figures=4) * computed(ratio, figures=4)),
            result(surface, problem.answer.value, unit),
        ),
    )


def _named(water: Heaviness) -> tuple[tuple[str, str], tuple[str, str]]:
    return ("weight", water.weight_unit), ("volume", water.volume_unit)


def _axes(
    units: tuple[str, str, str], weights: range, volumes: tuple[float, ...], depths: tuple[int, ...]
) -> tuple[Axis, ...]:
    return (
        Axis(f"weight_{units[0]}", tuple(map(float, weights))),
        Axis(f"volume_{units[1]}", volumes),
        Axis(f"depth_{units[2]}", tuple(map(float, depths))),
        Axis("is_fresh", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="lift-bag-fill",
    edition=1,
    title="Surface air for a lift bag",
    topic="buoyancy",
    level=3,
    axes={
        "us": _axes(
            ("lb", "ft3", "ft"),
            range(600, 2001, 100),
            (2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0),
            (20, 25, 30, 35, 40, 50, 60, 66, 75, 80, 90, 99, 110, 120, 130),
        ),
        "metric": _axes(
            ("kg", "L", "m"),
            range(300, 1001, 50),
            (60.0, 80.0, 100.0, 120.0, 140.0, 160.0, 180.0),
            (6, 8, 10, 12, 15, 18, 20, 22, 25, 28, 30, 32, 35, 38, 40),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"weight_lb": 1320.0, "volume_ft3": 5.0, "depth_ft": 99.0, "is_fresh": 0.0, "scene": 0.0},
            62.5,
            "1000 lb in the sea are 15.625 ft³ of it, 62.5 ft³ of surface air at 4 ata; arithmetic",
        ),
        WorkedExample(
            "metric",
            {"weight_kg": 500.0, "volume_L": 100.0, "depth_m": 20.4, "is_fresh": 1.0, "scene": 0.0},
            1200.0,
            "400 kg in fresh water at 3 bar; common practice, no source",
        ),
    ),
)
