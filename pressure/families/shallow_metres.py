"""Three stretches of equal length: in which does the volume change most, or least?"""

from __future__ import annotations

from pressure.cautions import HELD_BREATH
from pressure.formula import Symbol, computed, equation, given, result
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
from pressure.units import shown
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A closed soft float, {volume} at the surface, is {moved}.",
    "A closed lift bag that measures {volume} at the surface is {moved}.",
    "A sealed sampling bag, {volume} at the surface, is {moved}.",
)
_VOLUMES = {"us": "ft3", "metric": "L"}
_NAMES = ("shallowest-stretch", "middle-stretch", "deepest-stretch")
_LABELS = {
    "shallowest-stretch": "the shallowest stretch was taken to change the volume least",
    "middle-stretch": "the middle stretch was chosen",
    "deepest-stretch": "the deepest stretch was taken to change the volume most",
    "same-everywhere": "equal stretches were taken to change the volume alike",
}

Stretch = tuple[float, float]
"""The depths of a stretch, the shallower end first."""


def _stretches(facts: Facts, foot: str) -> tuple[Stretch, Stretch, Stretch]:
    top, length, apart = facts[f"top_{foot}"], facts[f"length_{foot}"], facts[f"apart_{foot}"]
    first, second, third = [(start, start + length) for start in (top, top + apart, top + 2 * apart)]
    return first, second, third


def _at(depth: float, foot: str) -> str:
    return shown(depth, foot, given=True) if depth else "the surface"


def _told(stretch: Stretch, foot: str, *, up: bool) -> str:
    start, end = (stretch[1], stretch[0]) if up else stretch
    return f"from {_at(start, foot)} to {_at(end, foot)}"


def _change(stretch: Stretch, volume: float, named: Convention) -> float:
    """By how much the volume changes over the stretch; ``volume`` is the one at the surface."""
    top, bottom = stretch
    return volume / named.atmospheres(top) - volume / named.atmospheres(bottom)


def pose(system: System, facts: Facts) -> PosedChoice:
    named, unit = ALLOWED[system, "sea"][0], _VOLUMES[system]
    foot, up, least = named.depth_unit, bool(facts["is_up"]), bool(facts["asks_least"])
    volume, stretches = facts[f"volume_{unit}"], _stretches(facts, foot)
    told = [_told(each, foot, up=up) for each in (reversed(stretches) if up else stretches)]
    moved = f"{'raised' if up else 'lowered'} slowly in sea water"
    scene = _SCENES[int(facts["scene"])].format(volume=shown(volume, unit, given=True), moved=moved)
    word = "least" if least else "most"
    return PosedChoice(
        situation=f"{scene} Compare three stretches of {shown(facts[f'length_{foot}'], foot, given=True)} on "
        f"its way: {told[0]}, {told[1]} and {told[2]}. No gas gets in or out. Where does the volume change "
        f"{word}?",
        convention=named.sentence,
        givens=(
            Given("V₀", "volume at the surface", Quantity(volume, unit)),
            Given("L", "length of each stretch", Quantity(facts[f"length_{foot}"], foot)),
        ),
        question=f"In which stretch does the volume change {word}?",
        options=_options(stretches, volume, named, up=up, least=least),
        sense="The nearer the surface, the more a foot or a metre changes the volume.",
        caution=HELD_BREATH if up else "",
    )


def _options(
    stretches: tuple[Stretch, Stretch, Stretch], volume: float, named: Convention, *, up: bool, least: bool
) -> tuple[Option, ...]:
    unit = "ft3" if named.depth_unit == "ft" else "L"
    right = 2 if least else 0
    changes = [shown(_change(each, volume, named), unit) for each in stretches]
    options = [
        Option(
            name,
            _told(stretch, named.depth_unit, up=up),
            f"Here it changes by {change}. "
            + (
                f"That is the {'least: far down' if least else 'most: near the surface'} the same step is "
                f"the {'smallest' if least else 'largest'} share of the absolute pressure."
                if place == right
                else f"{_told(stretches[right], named.depth_unit, up=up).capitalize()} it changes by "
                f"{changes[right]}."
            ),
            "" if place == right else _LABELS[name],
        )
        for place, (name, stretch, change) in enumerate(zip(_NAMES, stretches, changes, strict=True))
    ]
    same = Option(
        "same-everywhere",
        "in all three alike",
        "Equal stretches change the pressure alike, not the volume: that follows the ratio of the absolute "
        f"pressures. It changes by {changes[0]}, {changes[1]} and {changes[2]}, from the top down.",
        _LABELS["same-everywhere"],
    )
    return (options.pop(right), *options, same)


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], _VOLUMES[problem.system]
    volume, up = problem.facts[f"volume_{unit}"], bool(problem.facts["is_up"])
    least = bool(problem.facts["asks_least"])
    stretches = _stretches(problem.facts, named.depth_unit)
    return (
        Step(
            "Boyle's law: at each depth the volume is the one at the surface over the absolute pressure in "
            "atmospheres. Over equal stretches the pressure changes alike, the volume does not."
        ),
        *[_change_step(each, volume, unit, named, up=up) for each in stretches],
        Step(
            "The deepest stretch changes it least: there the same step is the smallest share of the pressure."
            if least
            else "The shallowest stretch changes it most: there the same step is the largest share of the "
            "pressure."
        ),
    )


def _change_step(stretch: Stretch, volume: float, unit: str, named: Convention, *, up: bool) -> Step:
    change, surface = Symbol("ΔV"), Symbol("V", "0")
    upper, lower = [computed(named.atmospheres(depth), figures=4) for depth in stretch]
    return Step(
        f"{_told(stretch, named.depth_unit, up=up).capitalize()}.",
        equation(change, surface / Symbol("n", "upper") - surface / Symbol("n", "lower")),
        equation(change, given(volume, unit) / upper - given(volume, unit) / lower),
        result(change, _change(stretch, volume, named), unit),
    )


def _axes(
    foot: str,
    tops: tuple[int, ...],
    lengths: tuple[int, ...],
    aparts: tuple[int, ...],
    unit: str,
    volumes: tuple[float, ...],
) -> tuple[Axis, ...]:
    return (
        Axis(f"top_{foot}", tuple(map(float, tops))),
        Axis(f"length_{foot}", tuple(map(float, lengths))),
        Axis(f"apart_{foot}", tuple(map(float, aparts))),
        Axis(f"volume_{unit}", volumes),
        Axis("is_up", (0.0, 1.0)),
        Axis("asks_least", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="shallow-metres",
    edition=1,
    title="Where a stretch of water matters most",
    topic="Boyle",
    axes={
        "us": _axes("ft", (0, 10, 15), (15, 20, 30, 33), (33, 40, 50), "ft3", (4.0, 8.0, 12.0, 20.0)),
        "metric": _axes("m", (0, 3, 5), (5, 6, 8, 10), (10, 12, 15), "L", (40.0, 80.0, 120.0, 200.0)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {
                "top_ft": 0.0,
                "length_ft": 33.0,
                "apart_ft": 33.0,
                "volume_ft3": 12.0,
                "is_up": 1.0,
                "asks_least": 0.0,
                "scene": 0.0,
            },
            "shallowest-stretch",
            "surface air is 1/2, 1/3, 1/4 at 33, 66, 99 ft: 6, 2 and 1 ft³ of 12 go; common practice, no "
            "source",
        ),
        WorkedExample(
            "metric",
            {
                "top_m": 0.0,
                "length_m": 10.0,
                "apart_m": 10.0,
                "volume_L": 120.0,
                "is_up": 0.0,
                "asks_least": 1.0,
                "scene": 1.0,
            },
            "deepest-stretch",
            "the last ten metres double a full breath (MSD Manual); those below change it by less",
        ),
    ),
)
