"""A closed, flexible bag goes from one depth to another, down or up; how much room does its air take?"""

from __future__ import annotations

from pressure.cautions import HELD_BREATH
from pressure.formula import Symbol, computed, equation, given, result
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
from pressure.slips import Misstep, slip
from pressure.steps import atmospheres_step
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A closed lift bag holds {volume} of air under {start} of sea water and is {moved} to {end}.",
    "A soft float tied to a mooring holds {volume} of air under {start} of sea water. It is {moved} to "
    "{end}.",
    "A sealed sampling bag holds {volume} of gas under {start} of sea water and is {moved} to {end}.",
)
_VOLUMES = {"us": "ft3", "metric": "L"}


def _ends(facts: Facts, foot: str) -> tuple[float, float]:
    """The depth it starts from and the depth it ends at."""
    shallow, deep = facts[f"shallow_{foot}"], facts[f"deep_{foot}"]
    return (deep, shallow) if facts["is_up"] else (shallow, deep)


def pose(system: System, facts: Facts) -> Posed:
    conventions, unit = ALLOWED[system, "sea"], _VOLUMES[system]
    named, up, volume = conventions[0], facts["is_up"], facts[f"volume_{unit}"]
    foot = named.depth_unit
    start, end = _ends(facts, foot)
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, unit, given=True),
        start=shown(start, foot, given=True),
        end=shown(end, foot, given=True),
        moved="raised" if up else "lowered",
    )
    return Posed(
        situation=f"{scene} It gives way freely and lets nothing in or out. What is its volume there, in "
        f"{unit_text(unit)}?",
        convention=named.sentence,
        givens=(
            Given("V₁", "volume at the first depth", Quantity(volume, unit)),
            Given("D₁", "depth it starts from", Quantity(start, foot)),
            Given("D₂", "depth it ends at", Quantity(end, foot)),
        ),
        asked=Asked("V₂", "volume at the second depth", "volume", unit),
        accepted=tuple([volume_after(volume, c.absolute(start), c.absolute(end)) for c in conventions]),
        missteps=_missteps(start, end, volume, conventions),
        sense="Shallower means less pressure, so more room."
        if up
        else "Deeper means more pressure, so less room.",
        caution=HELD_BREATH if up else "",
    )


def _missteps(
    start: float, end: float, volume: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    """Each works on the gauge pressures in atmospheres at the start and at the end."""
    ends = [(c.gauge(start) / c.surface, c.gauge(end) / c.surface) for c in conventions]
    return (
        *_ratio_slips(volume, ends, up=end < start),
        *_surface_slips(volume, ends),
    )


def _ratio_slips(volume: float, ends: list[tuple[float, float]], *, up: bool) -> tuple[Misstep, ...]:
    """A wrong ratio between the two depths."""
    way = [high - low for low, high in ends]
    return (
        slip(
            "inverted-ratio",
            f"{{typed}} is {'less' if up else 'more'} than there was. "
            f"{'Shallower means larger' if up else 'Deeper means smaller'}: turn the ratio over.",
            *[volume * (1 + high) / (1 + low) for low, high in ends],
        ),
        slip(
            "gauge-ratio",
            "A ratio of depths or of gauge pressures leaves the atmosphere out. Boyle's law takes absolute "
            "pressures: add the atmosphere at both ends.",
            *[volume * low / high for low, high in ends],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice. Add it once to the water's pressure.",
            *[volume * (2 + low) / (2 + high) for low, high in ends],
        ),
        slip(
            "depths-subtracted",
            "The way between the depths does not tell: the same way changes the air more in shallow water. "
            "Take the absolute pressure at each end.",
            *[volume * (1 - each) if up else volume / (1 + each) for each in way],
        ),
    )


def _surface_slips(volume: float, ends: list[tuple[float, float]]) -> tuple[Misstep, ...]:
    """One of the two depths forgotten."""
    return (
        slip(
            "start-at-surface",
            "The volume given is the one at the first depth, not at the surface. Multiply by the absolute "
            "pressure there too.",
            *[volume / (1 + high) for _, high in ends],
        ),
        slip(
            "surface-ratio",
            "{typed} is the volume at the surface. Divide by the absolute pressure at the second depth.",
            *[volume * (1 + low) for low, _ in ends],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], problem.asked.unit
    start, end = _ends(problem.facts, named.depth_unit)
    before, after = Symbol("V", "1"), Symbol("V", "2")
    first, second = Symbol("n", "1"), Symbol("n", "2")
    return (
        atmospheres_step(
            "Absolute pressure at the first depth, as a multiple of the surface pressure.",
            first,
            start,
            named,
        ),
        atmospheres_step("The same at the second depth.", second, end, named),
        Step(
            "Boyle's law: pressure times volume stays the same, both pressures absolute.",
            equation(after, before * (first / second)),
            equation(
                after,
                given(problem.facts[f"volume_{unit}"], unit)
                * (
                    computed(named.atmospheres(start), figures=4)
                    / computed(named.atmospheres(end), figures=4)
                ),
            ),
            result(after, problem.answer.value, unit),
        ),
    )


def _axes(
    foot: str, shallow: tuple[int, ...], deep: tuple[int, ...], unit: str, volumes: tuple[float, ...]
) -> tuple[Axis, ...]:
    return (
        Axis(f"shallow_{foot}", tuple(map(float, shallow))),
        Axis(f"deep_{foot}", tuple(map(float, deep))),
        Axis(f"volume_{unit}", volumes),
        Axis("is_up", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="between-depths",
    edition=1,
    title="Air in a closed bag between two depths",
    topic="Boyle",
    level=2,
    axes={
        "us": _axes(
            "ft",
            (15, 20, 25, 30, 33, 40, 45, 50),
            (66, 75, 80, 90, 99, 100, 110, 120, 132, 150, 165),
            "ft3",
            (0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0),
        ),
        "metric": _axes(
            "m",
            (4, 5, 6, 8, 10, 12, 14, 15),
            (20, 22, 25, 28, 30, 32, 35, 40, 42, 45, 50),
            "L",
            (2.0, 5.0, 8.0, 10.0, 15.0, 20.0, 30.0, 40.0, 60.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"shallow_ft": 33.0, "deep_ft": 66.0, "volume_ft3": 4.0, "is_up": 1.0, "scene": 0.0},
            6.0,
            "an algebra textbook: 4 quarts at 66 ft are 6 quarts at 33 ft",
        ),
        WorkedExample(
            "us",
            {"shallow_ft": 33.0, "deep_ft": 165.0, "volume_ft3": 3.0, "is_up": 0.0, "scene": 1.0},
            1.0,
            "1 ft³ at 6 atm is 3 ft³ at 2 atm; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"shallow_m": 10.0, "deep_m": 30.0, "volume_L": 10.0, "is_up": 0.0, "scene": 2.0},
            5.0,
            "2 bar to 4 bar; common practice, no source",
        ),
    ),
)
