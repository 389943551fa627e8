"""A helmeted diver falls faster than the supply can follow: the difference, and what the gas shrinks to."""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.boyle import volume_after
from pressure.laws.differences import across
from pressure.problem import (
    Asked,
    Axis,
    Cell,
    Facts,
    Family,
    Given,
    PosedTable,
    Problem,
    Quantity,
    Step,
    System,
    WorkedExample,
)
from pressure.slips import Misstep, other_water, slip
from pressure.steps import atmospheres_step
from pressure.units import shown, unit_text
from pressure.walls import difference_step
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A helmeted diver on a stage at {start} of sea water, with {volume} of gas in helmet and dress, steps "
    "off and falls to {end}.",
    "A descent line parts: a helmeted diver with {volume} of gas in helmet and dress drops from {start} of "
    "sea water to {end}.",
    "A helmeted diver slides off a quay footing at {start} of sea water and lands at {end}. Helmet and dress "
    "held {volume} of gas.",
)
_VOLUMES = {"us": "ft3", "metric": "L"}
_CAUTION = (
    "A fall without supply presses the whole body into the helmet and can kill: slack is taken up, and the "
    f"diver never goes down faster than the supply. {STANDARD}"
)


def pose(system: System, facts: Facts) -> PosedTable:
    conventions, unit = ALLOWED[system, "sea"], _VOLUMES[system]
    named = conventions[0]
    foot = named.depth_unit
    start, volume = facts[f"from_{foot}"], facts[f"volume_{unit}"]
    end = start + facts[f"fall_{foot}"]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, unit, given=True),
        start=shown(start, foot, given=True),
        end=shown(end, foot, given=True),
    )
    return PosedTable(
        situation=f"{scene} No gas comes or goes. While the helmet holds its old pressure, how much greater "
        f"is the water's, in {named.pressure_unit}? And what volume is the gas pressed to once its pressure "
        f"is the water's, in {unit_text(unit)}?",
        convention=named.sentence,
        givens=(
            Given("V₁", "volume of the gas before the fall", Quantity(volume, unit)),
            Given("D₁", "depth before the fall", Quantity(start, foot)),
            Given("D₂", "depth after the fall", Quantity(end, foot)),
        ),
        cells=(_difference(start, end, conventions), _volume(start, end, volume, unit, conventions)),
        sense="The difference grows with the fall alone; the share of the gas that is lost is largest near "
        "the surface.",
        caution=_CAUTION,
    )


def _difference(start: float, end: float, conventions: tuple[Convention, ...]) -> Cell:
    named, unit = conventions[0], conventions[0].pressure_unit
    missteps = (
        slip(
            "from-the-surface",
            "{typed} is the whole weight of the water above. The gas was at the water's pressure before the "
            "fall: count from there.",
            *[c.gauge(end) for c in conventions],
        ),
        slip(
            "absolute-for-difference",
            "{typed} is the absolute pressure after the fall. The gas presses back with the pressure it had: "
            "take that off.",
            *[c.absolute(end) for c in conventions],
        ),
        slip(
            "atmosphere-added",
            "The atmosphere is in both pressures and drops out of the difference. Add nothing.",
            *[c.absolute(end - start) for c in conventions],
        ),
        slip(
            "depth-for-pressure",
            f"The fall is a depth, not a pressure: {named.column:g} {named.depth_unit} of sea water make "
            f"{named.surface:g} {unit}.",
            end - start,
        ),
        other_water("sea", *[across(c.gradient, end, start) for c in ALLOWED[_system(named), "fresh"]]),
    )
    asked = Asked("Δp", "water's pressure above the gas's", "pressure", unit, "difference")
    return Cell(asked, tuple([across(c.gradient, end, start) for c in conventions]), missteps)


def _system(named: Convention) -> System:
    return "us" if named.depth_unit == "ft" else "metric"


def _volume(start: float, end: float, volume: float, unit: str, conventions: tuple[Convention, ...]) -> Cell:
    asked = Asked("V₂", "volume the gas is pressed to", "volume", unit)
    accepted = tuple([volume_after(volume, c.absolute(start), c.absolute(end)) for c in conventions])
    ends = [(c.gauge(start) / c.surface, c.gauge(end) / c.surface) for c in conventions]
    return Cell(asked, accepted, _volume_slips(volume, ends))


def _volume_slips(volume: float, ends: list[tuple[float, float]]) -> tuple[Misstep, ...]:
    """Each works on the gauge pressures in atmospheres, under every convention."""
    return (
        slip(
            "gauge-ratio",
            "A ratio of depths or of gauge pressures leaves the atmosphere out. Boyle's law takes absolute "
            "pressures: add the atmosphere at both ends.",
            *[volume * high / low for high, low in ends],
        ),
        slip(
            "from-the-surface",
            "{typed} would be left of surface gas. The gas was under pressure before the fall: start there.",
            *[volume / (1 + low) for _, low in ends],
        ),
        slip(
            "inverted-ratio",
            "{typed} is more than there was. Deeper means smaller: turn the ratio over.",
            *[volume * (1 + low) / (1 + high) for high, low in ends],
        ),
        slip(
            "fixed-share",
            "The gas is not halved by every atmosphere of fall: that is true from the surface only. Take the "
            "ratio of the absolute pressures.",
            *[volume / (1 + low - high) for high, low in ends],
        ),
        slip(
            "other-part",
            "{typed} is the room the gas has lost. Asked is what is left to it.",
            *[volume * (low - high) / (1 + low) for high, low in ends],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], _VOLUMES[problem.system]
    foot, volume = named.depth_unit, problem.facts[f"volume_{unit}"]
    start = problem.facts[f"from_{foot}"]
    end = start + problem.facts[f"fall_{foot}"]
    above, below = Symbol("n", "1"), Symbol("n", "2")
    before, after = Symbol("V", "1"), Symbol("V", "2")
    lesser, greater = named.atmospheres(start), named.atmospheres(end)
    return (
        difference_step(
            "The gas was at the water's pressure before the fall. The water has gained what lies between the "
            "two depths; the atmosphere is in both pressures and drops out.",
            end,
            start,
            named,
        ),
        atmospheres_step(
            "Absolute pressure before the fall, as a multiple of the surface pressure.", above, start, named
        ),
        atmospheres_step("Absolute pressure after the fall.", below, end, named),
        Step(
            "Boyle's law: pressure times volume stays the same, both pressures absolute.",
            equation(after, before * (above / below)),
            equation(
                after,
                given(volume, unit) * (computed(lesser, figures=4) / computed(greater, figures=4)),
            ),
            result(after, volume_after(volume, named.absolute(start), named.absolute(end)), unit),
        ),
        Step(
            "The dress gives way and the helmet does not: what the gas has lost is made good by the diver's "
            "body, pressed up into the helmet. Only gas at the water's pressure prevents it."
        ),
    )


def _axes(
    foot: str, starts: tuple[int, ...], falls: tuple[int, ...], unit: str, volumes: tuple[float, ...]
) -> tuple[Axis, ...]:
    return (
        Axis(f"from_{foot}", tuple(map(float, starts))),
        Axis(f"fall_{foot}", tuple(map(float, falls))),
        Axis(f"volume_{unit}", volumes),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="helmet-fall",
    edition=1,
    title="A helmeted diver falls away from the supply",
    topic="air spaces",
    level=2,
    axes={
        "us": _axes(
            "ft",
            (12, 15, 20, 25, 30, 40, 45, 50, 60),
            (15, 20, 25, 28, 30, 35, 45),
            "ft3",
            (0.9, 1.2, 1.5, 1.6, 1.8, 2.2, 2.5),
        ),
        "metric": _axes(
            "m",
            (3, 4, 5, 6, 8, 12, 14, 15, 18),
            (5, 6, 7, 8, 9, 11, 14),
            "L",
            (25.0, 30.0, 36.0, 42.0, 45.0, 54.0, 60.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"from_ft": 33.0, "fall_ft": 66.0, "volume_ft3": 2.0, "scene": 0.0},
            (29.4, 1.0),
            "two atmospheres of sea water; half of what was there at 2 atm is left at 4; common practice, no "
            "source",
        ),
        WorkedExample(
            "metric",
            {"from_m": 10.0, "fall_m": 20.0, "volume_L": 40.0, "scene": 0.0},
            (2.0, 20.0),
            "2 bar to 4 bar absolute; common practice, no source",
        ),
    ),
)
