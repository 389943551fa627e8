"""A full breath from the supply is held on the way up; how much room would its air need?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.boyle import volume_after
from pressure.laws.lungs import TEARS_CM_WATER
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
    "A diver at {start} of sea water fills the lungs to {volume} from the supply, loses the mouthpiece and "
    "comes up to {end} holding that breath.",
    "A diver loses the weight belt at {start} of sea water with {volume} of air in the lungs and is carried "
    "up to {end} without breathing out.",
    "At {start} of sea water a startled diver holds a breath of {volume} taken from the supply and kicks up "
    "to {end}.",
)
_CAUTION = f"Never hold your breath on the way up: a rise of a few feet can tear full lungs. {STANDARD}"


def pose(system: System, facts: Facts) -> Posed:
    conventions = ALLOWED[system, "sea"]
    named = conventions[0]
    foot = named.depth_unit
    start, end, volume = facts[f"from_{foot}"], facts[f"to_{foot}"], facts["volume_L"]
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, "L", given=True),
        start=shown(start, foot, given=True),
        end=shown(end, foot, given=True) if end else "the surface",
    )
    shallow = (Given("D₂", "depth the diver comes up to", Quantity(end, foot)),) if end else ()
    return Posed(
        situation=f"{scene} No air is let out. What volume would that air take there, if the chest could "
        "stretch without limit, in L?",
        convention=named.sentence,
        givens=(
            Given("V₁", "volume of the breath below", Quantity(volume, "L")),
            Given("D₁", "depth the breath is taken at", Quantity(start, foot)),
            *shallow,
        ),
        asked=Asked("V₂", "volume the held breath would take", "volume", "L"),
        accepted=tuple([volume_after(volume, c.absolute(start), c.absolute(end)) for c in conventions]),
        missteps=_missteps(start, end, volume, conventions),
        sense="Shallower means less pressure, so the breath needs more room than the lungs have.",
        caution=_CAUTION,
    )


def _missteps(
    start: float, end: float, volume: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    """Each works on the gauge pressures in atmospheres, under every convention."""
    ends = [(c.gauge(start) / c.surface, c.gauge(end) / c.surface) for c in conventions]
    missteps = (
        slip(
            "supply-for-held",
            "{typed} is what a diver who breathes on has in the lungs. A held breath is a closed bag: it "
            "grows as the pressure falls.",
            volume,
        ),
        slip(
            "inverted-ratio",
            "{typed} is less than there was below. Shallower means larger: turn the ratio over.",
            *[volume * (1 + high) / (1 + low) for low, high in ends],
        ),
        *(_stop_slips if end else _surface_slips)(volume, ends),
    )
    # From one atmosphere down to the surface the breath does double, and the growth is the breath itself.
    doubles = abs(ends[0][0] - 1) < 0.02 and not end
    return missteps if doubles else (*missteps, *_growth_slips(volume, ends))


def _growth_slips(volume: float, ends: list[tuple[float, float]]) -> tuple[Misstep, ...]:
    return (
        slip(
            "doubled-each-time",
            "A breath doubles only over the last atmosphere below the surface; deeper, one atmosphere "
            "changes it by less. Take the ratio of the absolute pressures.",
            *[volume * 2 ** (low - high) for low, high in ends],
        ),
        slip(
            "gain-only",
            "{typed} is the growth alone. Asked is the whole volume: add the breath below.",
            *[volume * (low - high) / (1 + high) for low, high in ends],
        ),
    )


def _stop_slips(volume: float, ends: list[tuple[float, float]]) -> tuple[Misstep, ...]:
    """What can only go wrong when the diver stops below the surface."""
    missteps = (
        slip(
            "gauge-ratio",
            "A ratio of depths or of gauge pressures leaves the atmosphere out. Boyle's law takes absolute "
            "pressures: add the atmosphere at both ends.",
            *[volume * low / high for low, high in ends],
        ),
        slip(
            "surface-ratio",
            "{typed} is the volume at the surface. The diver stops below: divide by the absolute pressure "
            "there.",
            *[volume * (1 + low) for low, _ in ends],
        ),
    )
    if abs(ends[0][1] - 1) < 0.02:  # one atmosphere down, the same share and the gauge ratio are one number
        return missteps
    share = slip(
        "fixed-share",
        "The growth is not the same for every atmosphere: it is greatest near the surface. Take the ratio "
        "of the absolute pressures.",
        *[volume * (1 + low - high) for low, high in ends],
    )
    return (*missteps, share)


def _surface_slips(volume: float, ends: list[tuple[float, float]]) -> tuple[Misstep, ...]:
    return (
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice below. Add it once to the water's pressure.",
            *[volume * (2 + low) for low, _ in ends],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, "sea"][0]
    foot, volume = named.depth_unit, problem.facts["volume_L"]
    start, end = problem.facts[f"from_{foot}"], problem.facts[f"to_{foot}"]
    below, above = Symbol("n", "1"), Symbol("n", "2")
    before, after = Symbol("V", "1"), Symbol("V", "2")
    return (
        atmospheres_step(
            "Absolute pressure where the breath is taken, as a multiple of the surface pressure.",
            below,
            start,
            named,
        ),
        atmospheres_step("Absolute pressure where the diver comes to.", above, end, named),
        Step(
            "A held breath is a closed bag: Boyle's law, both pressures absolute.",
            equation(after, before * (below / above)),
            equation(
                after,
                given(volume, "L")
                * (
                    computed(named.atmospheres(start), figures=4)
                    / computed(named.atmospheres(end), figures=4)
                ),
            ),
            result(after, problem.answer.value, "L"),
        ),
        Step(
            "A chest cannot stretch so far. Once the lungs are full, the pressure in them outdoes the "
            f"water's. They are said to tear at about {TEARS_CM_WATER[0]:g} to {TEARS_CM_WATER[1]:g} "
            f"{unit_text('cmH2O')}, a rise of roughly 1 m, 3 to 4 ft: the air must be breathed out all the "
            "way."
        ),
    )


def _axes(foot: str, starts: tuple[int, ...], ends: tuple[int, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"from_{foot}", tuple(map(float, starts))),
        Axis(f"to_{foot}", tuple(map(float, ends))),
        Axis("volume_L", (4.0, 4.5, 5.0, 5.5, 6.0, 6.5)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="held-breath-up",
    edition=1,
    title="A held breath on the way up",
    topic="lungs",
    level=2,
    axes={
        "us": _axes("ft", (33, 45, 50, 66, 70, 80, 99, 100, 110, 120, 132), (0, 10, 15, 18, 20, 22, 25)),
        "metric": _axes("m", (10, 14, 16, 20, 22, 25, 28, 30, 32, 35, 40), (0, 3, 4, 5, 6, 7, 8)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"from_ft": 33.0, "to_ft": 0.0, "volume_L": 6.0, "scene": 0.0},
            12.0,
            "MSD Manual, barotrauma: a full breath taken at 33 ft doubles by the surface",
        ),
        WorkedExample(
            "us",
            {"from_ft": 66.0, "to_ft": 33.0, "volume_L": 4.0, "scene": 0.0},
            6.0,
            "an algebra textbook: a diver's 4 quarts at 66 ft are 6 quarts at 33 ft",
        ),
        WorkedExample(
            "us",
            {"from_ft": 66.0, "to_ft": 0.0, "volume_L": 4.0, "scene": 0.0},
            12.0,
            "an algebra textbook: a diver's 4 quarts at 66 ft are 12 quarts at the surface",
        ),
        WorkedExample(
            "metric",
            {"from_m": 40.0, "to_m": 0.0, "volume_L": 1.0, "scene": 0.0},
            5.0,
            "1 L at 5 atm absolute is 5 L at the surface; common practice, no source",
        ),
    ),
)
