"""A closed, flexible bag filled at depth comes up; how much room does its air take?"""

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
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A closed lift bag is given {volume} of air under {start} of sea water and comes up to {end}.",
    "A soft float is filled with {volume} of air under {start} of sea water and rises to {end}.",
    "A sealed sampling bag holds {volume} of gas under {start} of sea water and is drawn up to {end}.",
)
_VOLUMES = {"us": "ft3", "metric": "L"}


def pose(system: System, facts: Facts) -> Posed:
    conventions, unit = ALLOWED[system, "sea"], _VOLUMES[system]
    named = conventions[0]
    foot = named.depth_unit
    start, end, volume = facts[f"from_{foot}"], facts[f"to_{foot}"], facts[f"volume_{unit}"]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, unit, given=True),
        start=shown(start, foot, given=True),
        end=shown(end, foot, given=True) if end else "the surface",
    )
    shallow = (Given("D₂", "depth it comes up to", Quantity(end, foot)),) if end else ()
    return Posed(
        situation=f"{scene} It stretches and lets nothing out. What is its volume, in {unit_text(unit)}?",
        convention=named.sentence,
        givens=(
            Given("V₁", "volume at the greater depth", Quantity(volume, unit)),
            Given("D₁", "depth it comes from", Quantity(start, foot)),
            *shallow,
        ),
        asked=Asked("V₂", "volume after the ascent", "volume", unit),
        accepted=tuple([volume_after(volume, c.absolute(start), c.absolute(end)) for c in conventions]),
        missteps=_missteps(start, end, volume, conventions),
        sense="Shallower means less pressure, so the air takes more room than it did below.",
        caution=HELD_BREATH,
    )


def _missteps(
    start: float, end: float, volume: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    """Each works on the gauge pressures in atmospheres, under every convention."""
    ends = [(c.gauge(start) / c.surface, c.gauge(end) / c.surface) for c in conventions]
    missteps = (
        slip(
            "inverted-ratio",
            "{typed} is less than there was below. Shallower means larger: turn the ratio over.",
            *[volume * (1 + high) / (1 + low) for low, high in ends],
        ),
        slip(
            "gain-only",
            "{typed} is what was gained. Asked is the whole volume: add what there was below.",
            *[volume * (low - high) / (1 + high) for low, high in ends],
        ),
        slip(
            "doubled-each-time",
            "Air doubles only over the last atmosphere below the surface; deeper, one atmosphere changes it "
            "by less. Take the ratio of the absolute pressures.",
            *[volume * 2 ** (low - high) for low, high in ends],
        ),
    )
    return (*missteps, *(_stop_slips(volume, ends) if end else (_surface_slip(volume, ends),)))


def _stop_slips(volume: float, ends: list[tuple[float, float]]) -> tuple[Misstep, ...]:
    """What can only go wrong when the ascent ends below the surface."""
    missteps = (
        slip(
            "gauge-ratio",
            "A ratio of depths or of gauge pressures leaves the atmosphere out. Boyle's law takes absolute "
            "pressures: add the atmosphere at both ends.",
            *[volume * low / high for low, high in ends],
        ),
        slip(
            "surface-ratio",
            "{typed} is the volume at the surface. It stops below: divide by the absolute pressure there.",
            *[volume * (1 + low) for low, _ in ends],
        ),
    )
    if abs(ends[0][1] - 1) < 0.01:  # one atmosphere down, the same share and the gauge ratio are one number
        return missteps
    share = slip(
        "fixed-share",
        "The growth is not the same for every atmosphere: it is greatest near the surface. Take the "
        "ratio of the absolute pressures.",
        *[volume * (1 + low - high) for low, high in ends],
    )
    return (*missteps, share)


def _surface_slip(volume: float, ends: list[tuple[float, float]]) -> Misstep:
    return slip(
        "atmosphere-twice",
        "The atmosphere was counted twice below. Add it once to the water's pressure.",
        *[volume * (2 + low) for low, _ in ends],
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], problem.asked.unit
    foot = named.depth_unit
    start, end = problem.facts[f"from_{foot}"], problem.facts[f"to_{foot}"]
    before, after = Symbol("V", "1"), Symbol("V", "2")
    below, above = Symbol("n", "1"), Symbol("n", "2")
    lower, upper = named.atmospheres(start), named.atmospheres(end)
    return (
        _atmospheres_step(
            "Absolute pressure below, as a multiple of the surface pressure.", below, "1", start, named
        ),
        _atmospheres_step("Absolute pressure where it comes to.", above, "2", end, named),
        Step(
            "Boyle's law: pressure times volume stays the same, both pressures absolute.",
            equation(after, before * (below / above)),
            equation(
                after,
                given(problem.facts[f"volume_{unit}"], unit)
                * (computed(lower, figures=4) / computed(upper, figures=4)),
            ),
            result(after, problem.answer.value, unit),
        ),
    )


def _atmospheres_step(why: str, ratio: Symbol, which: str, depth: float, named: Convention) -> Step:
    deep, column = Symbol("D", which), Symbol("h", "atm", "of one atmosphere")
    return Step(
        why,
        equation(ratio, given(1) + deep / column),
        equation(ratio, given(1) + given(depth, named.depth_unit) / given(named.column, named.depth_unit)),
        result(ratio, named.atmospheres(depth), "", figures=4),
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
    slug="volume-on-ascent",
    edition=1,
    title="Air in a closed bag coming up",
    topic="Boyle",
    level=2,
    axes={
        "us": _axes(
            "ft",
            (50, 60, 66, 70, 80, 90, 99, 100, 110, 120, 132, 140, 150, 165),
            (0, 10, 15, 20, 25, 30, 33, 40),
            "ft3",
            (0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0),
        ),
        "metric": _axes(
            "m",
            (15, 18, 20, 22, 25, 28, 30, 32, 35, 38, 40, 42, 45, 50),
            (0, 3, 4, 5, 6, 8, 10, 12),
            "L",
            (2.0, 5.0, 8.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"from_ft": 165.0, "to_ft": 33.0, "volume_ft3": 1.0, "scene": 0.0},
            3.0,
            "1 ft³ at 6 atm becomes 3 ft³ at 2 atm; common practice, no source",
        ),
        WorkedExample(
            "us",
            {"from_ft": 165.0, "to_ft": 0.0, "volume_ft3": 1.0, "scene": 0.0},
            6.0,
            "1 ft³ at 6 atm becomes 6 ft³ at the surface; common practice, no source",
        ),
        WorkedExample(
            "us",
            {"from_ft": 66.0, "to_ft": 33.0, "volume_ft3": 4.0, "scene": 0.0},
            6.0,
            "an algebra textbook: 4 quarts at 66 ft are 6 quarts at 33 ft",
        ),
        WorkedExample(
            "metric",
            {"from_m": 30.0, "to_m": 0.0, "volume_L": 5.0, "scene": 0.0},
            20.0,
            "4 bar to 1 bar; common practice, no source",
        ),
    ),
)
