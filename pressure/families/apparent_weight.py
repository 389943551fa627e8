"""A load is weighed in air and its volume is known; what does it seem to weigh under water?"""

from __future__ import annotations

from pressure.constants import GRAVITY
from pressure.formula import Symbol, Term, computed, equation, given, result
from pressure.laws.archimedes import apparent_weight, displaced_weight
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
from pressure.waters import HEAVINESS, Heaviness, Water

_SCENES = (
    "A mooring clump of {weight} displaces {volume} and hangs from the crane in {water} water.",
    "A sluice hinge of {weight}, {volume} in size, is slung wholly under {water} water.",
    "A pump of {weight} takes up {volume} and is lowered until {water} water covers it.",
)
_UNITS = {"us": "lb", "metric": "kg", "si": "kN"}
_SI_GRAVITIES = (9.81, GRAVITY.value, 9.8)  # the first is named, the others are as common
_SI_SENTENCE = f" Take gravity as {_SI_GRAVITIES[0]:g} m/s²."
_DIFFERENT = 0.011  # of the answer: less would not be told from it


def _water(facts: Facts) -> tuple[Water, Water]:
    """The water of the problem, and the other one."""
    return ("fresh", "sea") if facts["is_fresh"] else ("sea", "fresh")


def _load(facts: Facts, water: Heaviness) -> tuple[float, float]:
    """Weight in air, to half a unit, and volume."""
    volume = facts[f"volume_{water.volume_unit}"]
    return round(volume * facts["density"] * 2) / 2, volume


def _scales(system: System) -> tuple[float, ...]:
    """From the unit of the weights to the asked one, the named way first."""
    return tuple([g / 1000 for g in _SI_GRAVITIES]) if system == "si" else (1.0,)


def pose(system: System, facts: Facts) -> Posed:
    kind, other = _water(facts)
    water, scales = HEAVINESS[system, kind], _scales(system)
    weight, volume = _load(facts, water)
    scene = _SCENES[int(facts["scene"])].format(
        weight=shown(weight, water.weight_unit, given=True),
        volume=shown(volume, water.volume_unit, given=True),
        water=kind,
    )
    answer = apparent_weight(weight, volume, water.value)
    swapped = apparent_weight(weight, volume, HEAVINESS[system, other].value)
    missteps = _missteps(weight, volume, water, scales)
    if abs(swapped - answer) > _DIFFERENT * answer:
        missteps += (other_water(kind, *[swapped * scale for scale in scales]),)
    return Posed(
        situation=f"{scene} What does it seem to weigh there, in {_UNITS[system]}?",
        convention=water.sentence + (_SI_SENTENCE if system == "si" else ""),
        givens=(
            Given("W", "weight in air", Quantity(weight, water.weight_unit)),
            Given("V", "volume", Quantity(volume, water.volume_unit)),
        ),
        asked=Asked("W_w", "apparent weight", "weight", _UNITS[system]),
        accepted=tuple([answer * scale for scale in scales]),
        missteps=missteps,
        sense="Water carries part of the load, so it seems to weigh less than in air.",
    )


def _missteps(
    weight: float, volume: float, water: Heaviness, scales: tuple[float, ...]
) -> tuple[Misstep, ...]:
    """Little can go wrong in one subtraction; for steel the waters cannot be told apart either."""
    push = displaced_weight(volume, water.value)
    missteps: tuple[Misstep, ...] = (
        slip(
            "displaced-for-apparent",
            "{typed} is the push of the water. Asked is what is left of the weight: subtract it.",
            *[push * scale for scale in scales],
        ),
        slip(
            "weight-in-air",
            "{typed} is the weight in air. Under water, subtract the weight of the water displaced.",
            *[weight * scale for scale in scales],
        ),
        slip(
            "buoyancy-added",
            "{typed} is more than in air. The water pushes up: subtract its push.",
            *[(weight + push) * scale for scale in scales],
        ),
    )
    if water.unit == "kg/m3":
        missteps += (
            slip(
                "gravity-left-out",
                "That number is in thousands of kilograms. In newtons, each kilogram weighs 9.81.",
                (weight - push) / 1000,
            ),
        )
    return missteps


def solve(problem: Problem) -> tuple[Step, ...]:
    water = HEAVINESS[problem.system, _water(problem.facts)[0]]
    weight, volume = _load(problem.facts, water)
    push, heavy, size = Symbol("B"), Symbol("w"), Symbol("V")
    seen, dry = Symbol("W", "w", "in water"), Symbol("W")
    unit, displaced = water.weight_unit, displaced_weight(volume, water.value)
    steps = (
        Step(
            "Archimedes: the water pushes up with the weight of the water displaced.",
            equation(push, heavy * size),
            equation(push, given(water.value, water.unit) * given(volume, water.volume_unit)),
            result(push, displaced, unit, figures=4),
        ),
        Step(
            "What is left of the weight hangs on the hook.",
            equation(seen, dry - push),
            equation(seen, given(weight, unit) - computed(displaced, unit, figures=4)),
            result(seen, weight - displaced, unit, figures=4 if problem.system == "si" else 3),
        ),
    )
    if problem.system != "si":
        return steps
    force: Term = computed(weight - displaced, unit, figures=4)
    return (
        *steps,
        Step(
            "As a force: each kilogram weighs as many newtons as gravity says; a thousand are a kilonewton.",
            equation(Symbol("F"), seen * Symbol("g")),
            equation(Symbol("F"), force * given(_SI_GRAVITIES[0], "m/s²")),
            result(Symbol("F"), problem.answer.value, "kN"),
        ),
    )


def _axes(volume: str, volumes: tuple[float, ...], densities: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"volume_{volume}", volumes),
        Axis("density", densities),
        Axis("is_fresh", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="apparent-weight",
    edition=1,
    title="Weight under water",
    topic="buoyancy",
    level=2,
    axes={
        "us": _axes(
            "ft3",
            tuple(n / 2 for n in range(2, 25)),
            (90.0, 105.0, 120.0, 130.0, 140.0, 150.0, 160.0, 170.0, 185.0, 200.0, 490.0),
        ),
        "metric": _axes(
            "L",
            tuple(map(float, (*range(20, 100, 5), *range(100, 301, 25)))),
            (1.4, 1.6, 1.8, 2.1, 2.2, 2.3, 2.4, 2.5, 2.7, 3.0, 7.8),
        ),
        "si": _axes(
            "m3",
            tuple(n / 100 for n in (*range(4, 20, 2), *range(20, 101, 5))),
            (1400.0, 1600.0, 1800.0, 2100.0, 2200.0, 2300.0, 2400.0, 2500.0, 2700.0, 3000.0, 7800.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "metric",
            {"volume_L": 41.4, "density": 1.0869565, "is_fresh": 1.0, "scene": 0.0},
            3.6,
            "OpenStax College Physics 2e, §11.7 exercises: 45.0 and 3.60 for 41.4 displaced, in grams there",
        ),
        WorkedExample(
            "si",
            {"volume_m3": 1282.0, "density": 7800.0, "is_fresh": 1.0, "scene": 0.0},
            8.55e4,
            "OpenStax College Physics 2e, §11.7 example: 9.80e7 N of steel less 1.26e7 N of water",
        ),
        WorkedExample(
            "us",
            {"volume_ft3": 10.0, "density": 150.0, "is_fresh": 0.0, "scene": 0.0},
            860.0,
            "concrete at 150 lb/ft³ weighs 86 lb/ft³ in the sea; common practice, no source",
        ),
    ),
)
