"""A diver trimmed for one water goes to the other; how much does the ballast change?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.constants import LEAD_DENSITY
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.archimedes import displaced_weight
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
from pressure.waters import HEAVINESS, Heaviness, Water

_SCENES = (
    "A diver and gear, {weight} without ballast, displace {volume} and hang neutral in {water} water. The "
    "next job is in {other} water: how much lead must {change}, in {unit}?",
    "Without its ballast a survey frame weighs {weight}; it takes up {volume} and is trimmed neutral in "
    "{water} water. For {other} water, how much lead must {change}, in {unit}?",
    "A tool float displaces {volume}, weighs {weight} before the lead is put in, and is neutral in {water} "
    "water. How much lead must {change} before it is used in {other} water, in {unit}?",
)


def _waters(facts: Facts) -> tuple[Water, Water]:
    """The water of before and of after."""
    return ("fresh", "sea") if facts["is_to_sea"] else ("sea", "fresh")


def _body(facts: Facts, before: Heaviness) -> tuple[float, float]:
    """The weight without ballast, to a tenth, and the volume."""
    volume, ballast = facts[f"volume_{before.volume_unit}"], facts[f"ballast_{before.weight_unit}"]
    return round(displaced_weight(volume, before.value) - ballast, 1), volume


def pose(system: System, facts: Facts) -> Posed:
    names = _waters(facts)
    before, after = (HEAVINESS[system, name] for name in names)
    weight, volume = _body(facts, before)
    unit = before.weight_unit
    scene = _SCENES[int(facts["scene"])].format(
        weight=shown(weight, unit, given=True),
        volume=shown(volume, before.volume_unit, given=True),
        water=names[0],
        other=names[1],
        change="go on" if facts["is_to_sea"] else "come off",
        unit=unit_text(unit),
    )
    return Posed(
        situation=f"{scene} Leave the small volume of the lead out of account.",
        convention=f"{HEAVINESS[system, 'sea'].sentence} {HEAVINESS[system, 'fresh'].sentence}",
        givens=(
            Given("W", "weight without ballast", Quantity(weight, unit)),
            Given("V", "volume displaced", Quantity(volume, before.volume_unit)),
        ),
        asked=Asked("L", "change of ballast", "weight", unit),
        accepted=(volume * abs(before.value - after.value),),
        missteps=_missteps(weight, volume, before, after),
        sense="The waters differ by one part in forty, and so do the weights they carry: a few pounds or "
        "kilograms on a diver, off for fresh water, on for the sea.",
        caution=f"Trim is proved in the water, under supervision, before the work begins. {STANDARD}",
    )


def _missteps(weight: float, volume: float, before: Heaviness, after: Heaviness) -> tuple[Misstep, ...]:
    change = abs(before.value - after.value)
    pushes = [displaced_weight(volume, each.value) for each in (before, after)]
    missteps: tuple[Misstep, ...] = (
        slip(
            "weight-in-air",
            "You took the share of the weight in air. The water pushes with the weight of what is displaced: "
            "take the difference for each unit of volume, times the volume.",
            *[weight * change / each.value for each in (before, after)],
        ),
        slip(
            "ballast-before",
            "{typed} is the ballast carried before. Asked is how much of it changes.",
            pushes[0] - weight,
        ),
        slip(
            "ballast-after",
            "{typed} is the ballast needed after. Asked is the change from the ballast of before.",
            pushes[1] - weight,
        ),
        slip(
            "whole-for-change",
            "{typed} is the whole push of the water. Asked is the difference between the two waters.",
            *pushes,
        ),
    )
    if before.volume_unit == "L":  # a litre of water weighs too nearly a kilogram to tell
        return missteps
    counted = slip(
        "volume-for-weight",
        "{typed} has the volume counted as a weight. Multiply it by the difference of the two waters.",
        volume,
    )
    return (*missteps, counted)


def solve(problem: Problem) -> tuple[Step, ...]:
    names = _waters(problem.facts)
    before, after = (HEAVINESS[problem.system, name] for name in names)
    weight, volume = _body(problem.facts, before)
    lead, body, carried = Symbol("L"), Symbol("W"), [Symbol("L", each) for each in names]
    pushes = [displaced_weight(volume, each.value) for each in (before, after)]
    unit = before.weight_unit
    ballasts = tuple(
        Step(
            f"Neutral in {each.water} water: body and lead together weigh what is displaced.",
            equation(symbol, Symbol("w", each.water) * Symbol("V") - body),
            equation(
                symbol, given(each.value, each.unit) * given(volume, each.volume_unit) - given(weight, unit)
            ),
            result(symbol, push - weight, unit, figures=5),
        )
        for each, symbol, push in zip((before, after), carried, pushes, strict=True)
    )
    big, small = (1, 0) if problem.facts["is_to_sea"] else (0, 1)
    return (
        *ballasts,
        Step(
            "The change is the difference; the weight of the body falls out of it, only its volume counts. "
            f"The lead displaces water too: in practice the change is about {_lead_share():.0f} % more.",
            equation(lead, carried[big] - carried[small]),
            equation(
                lead,
                computed(pushes[big] - weight, unit, figures=5)
                - computed(pushes[small] - weight, unit, figures=5),
            ),
            result(lead, problem.answer.value, unit),
        ),
    )


def _lead_share() -> float:
    """How much more lead it takes since lead displaces water itself, in per cent."""
    water = HEAVINESS["si", "fresh"].value
    return 100 * water / (LEAD_DENSITY.value - water)


def _axes(volume: str, volumes: tuple[float, ...], weight: str, ballasts: range) -> tuple[Axis, ...]:
    return (
        Axis(f"volume_{volume}", volumes),
        Axis(f"ballast_{weight}", tuple(map(float, ballasts))),
        Axis("is_to_sea", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="salt-to-fresh",
    edition=1,
    title="Ballast from sea to fresh water",
    topic="buoyancy",
    level=2,
    axes={
        "us": _axes("ft3", tuple(n / 10 for n in range(24, 46)), "lb", range(10, 31)),
        "metric": _axes("L", tuple(map(float, range(70, 131, 3))), "kg", range(5, 16)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"volume_ft3": 2.5, "ballast_lb": 12.0, "is_to_sea": 0.0, "scene": 0.0},
            4.0,
            "2.5 ft³ weigh 160 lb of sea and 156 lb of fresh water; arithmetic",
        ),
        WorkedExample(
            "metric",
            {"volume_L": 100.0, "ballast_kg": 8.0, "is_to_sea": 1.0, "scene": 0.0},
            2.5,
            "100 L are 102.5 kg of sea and 100 kg of fresh water; common practice, no source",
        ),
    ),
)
