"""A body's weight and size are known; does it float or sink, in the sea and in fresh water?"""

from __future__ import annotations

from pressure.formula import Symbol, equation, given, result
from pressure.laws.archimedes import displaced_weight
from pressure.problem import (
    Axis,
    Facts,
    Family,
    Given,
    Option,
    PosedChoice,
    Problem,
    Quantity,
    Step,
    System,
    WorkedExample,
)
from pressure.units import shown, unit_text
from pressure.waters import HEAVINESS, Heaviness

_THINGS = (
    "A sealed instrument case",
    "A closed length of dredge pipe",
    "A capped steel drum",
    "A waterlogged mooring float",
    "A diver in full gear, breath half out,",
)
_TEXTS = {
    "floats-in-both": "It floats in the sea and in fresh water.",
    "floats-in-sea": "It floats in the sea and sinks in fresh water.",
    "sinks-in-both": "It sinks in the sea and in fresh water.",
    "floats-in-fresh": "It sinks in the sea and floats in fresh water.",
}
_LABELS = {
    "floats-in-both": "the push of the water was taken too great",
    "floats-in-sea": "one of the two waters was compared wrongly",
    "sinks-in-both": "the push of the water was taken too small",
    "floats-in-fresh": "the waters were swapped",
}


def _waters(system: System) -> tuple[Heaviness, Heaviness]:
    return HEAVINESS[system, "sea"], HEAVINESS[system, "fresh"]


def _weight(volume: float, density: float) -> float:
    """A weight that can be read off a scale: to a tenth."""
    return round(volume * density, 1)


def _outcome(weight: float, sea: float, fresh: float) -> str:
    """Which of the options holds for a body that displaces the weights ``sea`` and ``fresh``."""
    if weight < fresh:
        return "floats-in-both"
    return "floats-in-sea" if weight < sea else "sinks-in-both"


def pose(system: System, facts: Facts) -> PosedChoice:
    waters = sea, fresh = _waters(system)
    volume = facts[f"volume_{sea.volume_unit}"]
    weight = _weight(volume, facts["density"])
    pushes = [displaced_weight(volume, each.value) for each in waters]
    right = _outcome(weight, *pushes)
    known = shown(weight, sea.weight_unit, given=True)
    salt, sweet = (f"{push:.5g} {unit_text(sea.weight_unit)}" for push in pushes)
    told = f"It displaces {salt} of sea water or {sweet} of fresh, and weighs {known}"
    names = (right, *(name for name in _TEXTS if name != right))
    return PosedChoice(
        situation=f"{_THINGS[int(facts['thing'])]} weighs {known} in air and "
        f"takes up {shown(volume, sea.volume_unit, given=True)}. It is let go wholly under water, just "
        "below the surface.",
        convention=f"{sea.sentence} {fresh.sentence}",
        givens=(
            Given("W", "weight in air", Quantity(weight, sea.weight_unit)),
            Given("V", "volume", Quantity(volume, sea.volume_unit)),
        ),
        question="What does it do?",
        options=tuple([Option(name, _TEXTS[name], _why(name, right, told), _LABELS[name]) for name in names]),
        sense="What weighs less than the water it pushes aside floats. Sea water is the heavier, so whatever "
        "floats in fresh water floats in the sea.",
    )


def _why(name: str, right: str, told: str) -> str:
    """What speaks for an option or against it."""
    if name == "floats-in-fresh":
        return "Sea water is the heavier and pushes harder: what floats in fresh water floats in the sea."
    ends = {
        "floats-in-both": "less than either: both waters carry it.",
        "floats-in-sea": "between the two: the sea carries it and fresh water does not.",
        "sinks-in-both": "more than either: neither carries it.",
    }
    return f"{told}, {ends[right]}"


def solve(problem: Problem) -> tuple[Step, ...]:
    sea, fresh = _waters(problem.system)
    volume = problem.facts[f"volume_{sea.volume_unit}"]
    weight = _weight(volume, problem.facts["density"])
    right = _outcome(weight, *[displaced_weight(volume, each.value) for each in (sea, fresh)])
    shown_weight = shown(weight, sea.weight_unit, given=True)
    return (
        _push_step("The sea pushes up with the weight of the sea water displaced.", sea, volume),
        _push_step("Fresh water does the same with its own weight.", fresh, volume),
        Step(f"The body weighs {shown_weight}. Compare it with each push. {_TEXTS[right]}"),
    )


def _push_step(why: str, water: Heaviness, volume: float) -> Step:
    push, weight = Symbol("B", water.water), Symbol("w", water.water)
    return Step(
        why,
        equation(push, weight * Symbol("V")),
        equation(push, given(water.value, water.unit) * given(volume, water.volume_unit)),
        result(push, displaced_weight(volume, water.value), water.weight_unit, figures=5),
    )


def _axes(volume: str, volumes: tuple[float, ...], densities: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"volume_{volume}", volumes),
        Axis("density", densities),
        Axis("thing", tuple(map(float, range(len(_THINGS))))),
    )


FAMILY = Family(
    slug="float-or-sink",
    edition=1,
    title="Floats or sinks",
    topic="buoyancy",
    axes={
        # Densities between the waters come as often as those above or below both, one per cent clear of each.
        "us": _axes(
            "ft3",
            tuple(n / 4 for n in range(6, 23)),
            (55.0, 59.0, 61.0, 63.05, 63.15, 63.25, 63.35, 65.5, 67.0, 72.0),
        ),
        "metric": _axes(
            "L",
            tuple(map(float, range(48, 169, 8))),
            (0.88, 0.94, 0.98, 1.01, 1.0125, 1.015, 1.05, 1.08, 1.15),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"volume_ft3": 2.5, "density": 63.2, "thing": 4.0},
            "floats-in-sea",
            "2.5 ft³ and 158 lb: 2 lb up in the sea, 2 lb down in fresh water; arithmetic",
        ),
        WorkedExample(
            "metric",
            {"volume_L": 100.0, "density": 0.917, "thing": 0.0},
            "floats-in-both",
            "ice, 0.917 of fresh water; OpenStax College Physics 2e, §11.7 exercises",
        ),
        WorkedExample(
            "metric",
            {"volume_L": 100.0, "density": 7.8, "thing": 0.0},
            "sinks-in-both",
            "solid steel, 7.8 times fresh water; OpenStax College Physics 2e, §11.7 example",
        ),
    ),
)
