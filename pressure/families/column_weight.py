"""A column of water stands on a face; what does it weigh?"""

from __future__ import annotations

from typing import NamedTuple

from pressure.constants import (
    ATMOSPHERE,
    FRESH_DENSITY,
    FRESH_WEIGHT,
    GRAVITY,
    SEA_DENSITY,
    SEA_KILOGRAMS,
    SEA_WEIGHT,
    SURFACE_PSI,
)
from pressure.formula import Symbol, Term, computed, equation, given, result
from pressure.laws.columns import SQUARE_INCHES
from pressure.problem import (
    Asked,
    Axis,
    Facts,
    Family,
    Figure,
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
from pressure.waters import ALLOWED, Water

_SMALL = (
    "A column of {water} water {height} high stands over {area} of a valve disc.",
    "A drain plug with a face of {area} lies flat under a column of {water} water {height} high.",
    "A lamp glass of {area} faces straight up under a column of {water} water {height} high.",
)
_LARGE = (
    "A column of {water} water {height} high stands over {area} of a concrete slab.",
    "A hatch cover of {area} lies flat under a column of {water} water {height} high.",
    "The roof of a sunken caisson has a face of {area} under a column of {water} water {height} high.",
)


class _Measures(NamedTuple):
    """The units of one kind of problem: of the height, of the face, of the face where volumes are reckoned.

    ``per`` of the face's unit make one ``big``; ``side`` is how often its side goes into that of ``big``.
    ``air`` is what the atmosphere weighs on one ``big``, in the unit of the answer.
    """

    foot: str
    face: str
    big: str
    per: float
    side: float
    unit: str
    air: float


_US_AIR, _KG_AIR = SURFACE_PSI.value * SQUARE_INCHES, ATMOSPHERE.value / GRAVITY.value
_MEASURES: dict[tuple[System, float], _Measures] = {
    ("us", 0.0): _Measures("ft", "in2", "ft2", SQUARE_INCHES, 12.0, "lb", _US_AIR),
    ("us", 1.0): _Measures("ft", "ft2", "ft2", 1.0, 1.0, "lb", _US_AIR),
    ("metric", 0.0): _Measures("m", "cm2", "m2", 1e4, 100.0, "kg", _KG_AIR),
    ("metric", 1.0): _Measures("m", "m2", "m2", 1.0, 1.0, "kg", _KG_AIR),
    ("si", 1.0): _Measures("m", "m2", "m2", 1.0, 1.0, "kN", ATMOSPHERE.value / 1000),
}
_DENSITIES = {"sea": SEA_DENSITY.value, "fresh": FRESH_DENSITY.value}
_TAKE = {
    "us": "Take {water} water as {weight:g} lb/ft³.",
    "metric": "Take a cubic metre of {water} water as {weight:g} kg.",
    "si": "Take {water} water as {density:g} kg/m³ and gravity as 9.80665 m/s².",
}


def _heavy(system: System, water: Water) -> tuple[float, ...]:
    """What a cubic foot or metre weighs under every convention, the one the prompt names first."""
    if system == "us":
        named = (SEA_WEIGHT if water == "sea" else FRESH_WEIGHT).value
        return (named, *[each.gradient * SQUARE_INCHES for each in ALLOWED["us", water]])
    density = _DENSITIES[water]
    if system == "metric":
        return (SEA_KILOGRAMS.value, density) if water == "sea" else (density,)
    return (density * GRAVITY.value / 1000,)


_SYSTEMS: tuple[System, ...] = ("us", "metric", "si")
_WATERS: tuple[Water, ...] = ("sea", "fresh")
_HEAVY = {(system, water): _heavy(system, water) for system in _SYSTEMS for water in _WATERS}


def pose(system: System, facts: Facts) -> Posed:
    measures = _MEASURES[system, facts["is_large"]]
    water, other = (_WATERS[1], _WATERS[0]) if facts["is_fresh"] else _WATERS
    height, area = facts[f"height_{measures.foot}"], facts["area"]
    volume, heavy = height * area / measures.per, _HEAVY[system, water]
    tall, wide = shown(height, measures.foot, given=True), shown(area, measures.face, given=True)
    scene = (_LARGE if facts["is_large"] else _SMALL)[int(facts["scene"])]
    words = f"A straight column of {water} water, {tall} high, on a flat face of {wide}."
    return Posed(
        situation=f"{scene.format(water=water, height=tall, area=wide)} What does the water in the column "
        f"weigh, in {measures.unit}?",
        convention=_TAKE[system].format(water=water, weight=heavy[0], density=_DENSITIES[water]),
        givens=(
            Given("h", "height of the column", Quantity(height, measures.foot)),
            Given("A", "area it stands on", Quantity(area, measures.face)),
        ),
        asked=Asked("W", "weight of the column", "weight", measures.unit),
        accepted=tuple([volume * each for each in heavy]),
        missteps=(
            *_missteps(measures, height, area, heavy),
            *_kind_slips(system, measures, volume, heavy),
            _water_slip(water, *[volume * each for each in _HEAVY[system, other]]),
        ),
        sense="The weight grows with the height and with the area; the air above the water is no part of it.",
        figure=Figure("column", {"height": tall, "area": wide, "water": water}, words),
    )


def _missteps(
    measures: _Measures, height: float, area: float, heavy: tuple[float, ...]
) -> tuple[Misstep, ...]:
    whole = area / measures.per
    added = slip(
        "atmosphere-added",
        "{typed} counts the air above as well. Asked is the water alone: leave the atmosphere out.",
        *[whole * (height * each + measures.air) for each in heavy],
    )
    alone = slip(
        "height-left-out",
        "{typed} takes no account of the height. Multiply by it: every layer has its weight.",
        *[whole * each for each in heavy],
    )
    if area == 1:
        return added, alone
    left_out = slip(
        "area-left-out",
        f"{{typed}} is the weight over 1 {unit_text(measures.face)}. Multiply it by the area.",
        *[height / measures.per * each for each in heavy],
    )
    return added, alone, left_out


_MIXED = {
    "in2": ("{typed} takes square inches for square feet. 144 in² make 1 ft².", 144.0),
    "cm2": ("{typed} takes square centimetres for square metres. 10,000 cm² make 1 m².", 1e4),
    "ft2": ("{typed} multiplies a pressure in psi by square feet. Each of them is 144 in².", 1 / 144),
    "m2": ("{typed} takes square metres for square centimetres. Each of them is 10,000 cm².", 1e-4),
}


def _kind_slips(
    system: System, measures: _Measures, volume: float, heavy: tuple[float, ...]
) -> tuple[Misstep, ...]:
    """What depends on the unit of the area, and in SI on the mass that is not yet a weight."""
    mend, factor = _MIXED[measures.face]
    mixed = slip("area-unit", mend, *[volume * each * factor for each in heavy])
    if system == "si":
        mass = "{typed} is the mass in tonnes. Its weight in kilonewtons is that times 9.80665."
        return mixed, slip("gravity-left-out", mass, *[volume * each / GRAVITY.value for each in heavy])
    if measures.per == 1:
        return (mixed,)
    side = (
        f"{measures.side:g} is how often the side goes into it. The area goes {measures.per:,g} times into "
        f"1 {unit_text(measures.big)}: divide by that."
    )
    return mixed, slip("side-for-area", side, *[volume * each * measures.side for each in heavy])


def _water_slip(water: Water, *values: float) -> Misstep:
    if water == "sea":
        return slip("fresh-for-salt", "Sea water is the heavier: you weighed fresh water.", *values)
    return slip("salt-for-fresh", "Fresh water is the lighter: you weighed sea water.", *values)


def solve(problem: Problem) -> tuple[Step, ...]:
    facts = problem.facts
    measures = _MEASURES[problem.system, facts["is_large"]]
    height, area = facts[f"height_{measures.foot}"], facts["area"]
    wide, volume = Symbol("A"), Symbol("V")
    ground: Term = given(area, measures.face)
    if measures.per != 1:
        ground = ground / given(measures.per, f"{measures.face}/{measures.big}")
    cubed = measures.big.replace("2", "3")
    return (
        Step(
            "The column's volume is its height times the area it stands on, both in units that fit.",
            equation(volume, Symbol("h") * wide),
            equation(volume, given(height, measures.foot) * ground),
            result(volume, height * area / measures.per, cubed, figures=4),
        ),
        _weighing(problem, height * area / measures.per, cubed),
    )


def _weighing(problem: Problem, volume: float, cubed: str) -> Step:
    weight = Symbol("W")
    water: Water = "fresh" if problem.facts["is_fresh"] else "sea"
    room = computed(volume, cubed, figures=4)
    heavy = given(_HEAVY[problem.system, water][0], {"us": "lb/ft3"}.get(problem.system, "kg/m3"))
    relation, numbers = equation(weight, Symbol("w") * Symbol("V")), heavy * room
    why = "Every unit of volume weighs the same."
    if problem.system == "si":
        why = "Density times volume is the mass; times gravity, in newtons, it is the weight. 1 kN is 1000 N."
        relation = equation(weight, Symbol("ρ") * Symbol("g") * Symbol("V"))
        numbers = given(_DENSITIES[water], "kg/m3") * given(GRAVITY.value, "m/s²") * room
        numbers_in_kn = numbers / given(1000, "N/kN")
        return Step(
            why, relation, equation(weight, numbers_in_kn), result(weight, problem.answer.value, "kN")
        )
    return Step(
        why, relation, equation(weight, numbers), result(weight, problem.answer.value, problem.asked.unit)
    )


def _axes(foot: str, heights: range, areas: tuple[float, ...], sizes: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"height_{foot}", tuple(map(float, heights))),
        Axis("area", areas),
        Axis("is_large", sizes),
        Axis("is_fresh", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SMALL))))),
    )


FAMILY = Family(
    slug="column-weight",
    edition=1,
    title="What a column of water weighs",
    topic="column of water",
    axes={
        "us": _axes("ft", range(8, 125, 3), (2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0), (0.0, 1.0)),
        "metric": _axes("m", range(3, 41), (2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 12.0, 15.0), (0.0, 1.0)),
        "si": _axes("m", range(3, 41), (0.5, 0.8, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0), (1.0,)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"height_ft": 33.0, "area": 1.0, "is_large": 0.0, "is_fresh": 0.0, "scene": 0.0},
            14.7,
            "a sea-water column 33 ft high over one square inch weighs 14.7 lb; common practice, no source",
        ),
        WorkedExample(
            "us",
            {"height_ft": 1.0, "area": 1.0, "is_large": 1.0, "is_fresh": 1.0, "scene": 0.0},
            62.4,
            "L. Martin, Scuba Diving Explained (1997), section E: fresh water weighs 62.4 lb/ft³",
        ),
        WorkedExample(
            "metric",
            {"height_m": 10.33227, "area": 1.0, "is_large": 0.0, "is_fresh": 1.0, "scene": 0.0},
            1.0332,
            "one atmosphere is 1.0332 kg on a square centimetre; arithmetic from the standard atmosphere",
        ),
        WorkedExample(
            "si",
            {"height_m": 40.0, "area": 4.00e4, "is_large": 1.0, "is_fresh": 1.0, "scene": 0.0},
            1.57e7,
            "OpenStax College Physics 2e, §11.4: 40.0 m of fresh water on 4.00e4 m² press with 1.57e10 N",
        ),
    ),
)
