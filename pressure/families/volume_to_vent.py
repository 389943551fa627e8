"""A diver comes up with full lungs; how much air must leave them, as it measures here or there?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.differences import air_between
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
from pressure.units import shown
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A diver at {start} of sea water has lost the supply and comes up to {end} with lungs that hold {volume} "
    "and are full all the way.",
    "In a drill from {start} of sea water to {end} a diver breathes out just so much that the lungs stay "
    "full at {volume}.",
    "Coming up from {start} of sea water to {end}, a diver lets air trickle out so that the full lungs, "
    "{volume}, are never stretched.",
)
_QUESTIONS = (
    "How much air leaves them in all, in L, measured at the pressure of the depth the diver comes to?",
    "How much air leaves them in all, in L, measured as surface air?",
)
_CAUTION = (
    "Breathe out all the way up and never hold your breath; a drill of this kind belongs under supervision. "
    f"{STANDARD}"
)

_Ends = list[tuple[float, float]]


def pose(system: System, facts: Facts) -> Posed:
    conventions = ALLOWED[system, "sea"]
    named = conventions[0]
    foot = named.depth_unit
    start, end, volume = facts[f"from_{foot}"], facts[f"to_{foot}"], facts["volume_L"]
    as_surface_air = bool(facts["as_surface_air"])
    scene = _SCENES[int(facts["scene"])].format(
        volume=shown(volume, "L", given=True),
        start=shown(start, foot, given=True),
        end=shown(end, foot, given=True),
    )
    return Posed(
        situation=f"{scene} {_QUESTIONS[as_surface_air]}",
        convention=named.sentence,
        givens=(
            Given("V", "volume of the full lungs", Quantity(volume, "L")),
            Given("D₁", "depth the diver comes from", Quantity(start, foot)),
            Given("D₂", "depth the diver comes up to", Quantity(end, foot)),
        ),
        asked=Asked("V_out", "air that leaves the lungs", "volume", "L"),
        accepted=_leaving(start, end, volume, conventions, as_surface_air),
        missteps=_missteps(start, end, volume, conventions, as_surface_air),
        sense="The lungs end as full as they began: only what a closed bag would grow by leaves them.",
        caution=_CAUTION,
    )


def _leaving(
    start: float, end: float, volume: float, conventions: tuple[Convention, ...], as_surface_air: bool
) -> tuple[float, ...]:
    return tuple(
        [
            air_between(
                volume,
                c.absolute(start),
                c.absolute(end),
                measured_at=c.surface if as_surface_air else c.absolute(end),
            )
            for c in conventions
        ]
    )


def _missteps(
    start: float, end: float, volume: float, conventions: tuple[Convention, ...], as_surface_air: bool
) -> tuple[Misstep, ...]:
    """Each works on the gauge pressures in atmospheres, under every convention."""
    ends = [(c.gauge(start) / c.surface, c.gauge(end) / c.surface) for c in conventions]
    return (
        slip(
            "measured-below",
            "{typed} is the air that leaves as it measures at the depth it came from. It grows on the way: "
            "measure it where the question says.",
            *[volume * (1 - (1 + high) / (1 + low)) for low, high in ends],
        ),
        slip(
            "surface-ratio",
            "{typed} is what leaves on the way to the surface itself. The diver stops below it: there the "
            "lungs still hold air at more than the surface pressure.",
            *[volume * low for low, _ in ends],
        ),
        *(_surface_air_slips if as_surface_air else _slips_there)(volume, ends),
    )


def _slips_there(volume: float, ends: _Ends) -> tuple[Misstep, ...]:
    """Slips about the growth as it measures where the diver comes to."""
    return (
        slip(
            "kept-air-counted",
            "{typed} is all the air, with what may stay. The lungs keep their own volume: take it off.",
            *[volume * (1 + low) / (1 + high) for low, high in ends],
        ),
        slip(
            "measured-at-surface",
            "{typed} is the air that leaves as it measures at the surface. The diver stops below: divide by "
            "the absolute pressure there.",
            *[volume * (low - high) for low, high in ends],
        ),
        slip(
            "gauge-ratio",
            "A ratio of depths or of gauge pressures leaves the atmosphere out. Boyle's law takes absolute "
            "pressures: add the atmosphere at both ends.",
            *[volume * (low / high - 1) for low, high in ends],
        ),
    )


def _surface_air_slips(volume: float, ends: _Ends) -> tuple[Misstep, ...]:
    """Slips about the same air measured at the surface."""
    return (
        slip(
            "kept-air-counted",
            "{typed} is all the air of the breath below, with what may stay. The lungs arrive full: take off "
            "what they still hold.",
            *[volume * (1 + low) for low, _ in ends],
        ),
        slip(
            "measured-above",
            "{typed} is the air that leaves as it measures at the depth the diver comes to. Surface air "
            "takes more room: multiply by the absolute pressure there in atmospheres.",
            *[volume * (low - high) / (1 + high) for low, high in ends],
        ),
        slip(
            "atmosphere-added",
            "In a difference the atmosphere drops out: take one absolute pressure from the other, and add "
            "nothing.",
            *[volume * (1 + low - high) for low, high in ends],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, "sea"][0]
    foot, volume = named.depth_unit, problem.facts["volume_L"]
    start, end = problem.facts[f"from_{foot}"], problem.facts[f"to_{foot}"]
    below, above, lungs, out = Symbol("n", "1"), Symbol("n", "2"), Symbol("V"), Symbol("V", "out")
    low, high = (computed(named.atmospheres(depth), figures=4) for depth in (start, end))
    steps = (
        atmospheres_step(
            "Absolute pressure below, as a multiple of the surface pressure.", below, start, named
        ),
        atmospheres_step("Absolute pressure where the diver comes to.", above, end, named),
    )
    if problem.facts["as_surface_air"]:
        last = Step(
            "Full lungs hold their volume times the absolute pressure in atmospheres, as surface air. What "
            "they hold less at the end has left.",
            equation(out, lungs * (below - above)),
            equation(out, given(volume, "L") * (low - high)),
            result(out, problem.answer.value, "L"),
        )
    else:
        last = Step(
            "By Boyle's law the breath would grow with the ratio of the absolute pressures. The lungs keep "
            "their own volume of it; the rest has left.",
            equation(out, lungs * (below / above) - lungs),
            equation(out, given(volume, "L") * (low / high) - given(volume, "L")),
            result(out, problem.answer.value, "L"),
        )
    return (
        *steps,
        last,
        Step(
            "Counted as surface air, every stretch of the rise lets out the same; as it comes out of the "
            "mouth, it takes more room the nearer the surface."
        ),
    )


def _axes(foot: str, starts: tuple[int, ...], ends: tuple[int, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"from_{foot}", tuple(map(float, starts))),
        Axis(f"to_{foot}", tuple(map(float, ends))),
        Axis("volume_L", (4.0, 4.5, 5.0, 5.5, 6.0, 6.5)),
        Axis("as_surface_air", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="volume-to-vent",
    edition=1,
    title="Air that must leave full lungs on the way up",
    topic="lungs",
    level=3,
    axes={
        "us": _axes("ft", (40, 50, 60, 70, 80, 90, 99, 100, 110, 120, 132), (10, 15, 20, 25, 30)),
        "metric": _axes("m", (12, 15, 18, 20, 22, 25, 28, 30, 35, 38, 40), (3, 4, 5, 6, 8)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"from_ft": 66.0, "to_ft": 33.0, "volume_L": 4.0, "as_surface_air": 0.0, "scene": 0.0},
            2.0,
            "an algebra textbook: 4 quarts at 66 ft need 6 at 33 ft, so 2 must leave",
        ),
        WorkedExample(
            "us",
            {"from_ft": 132.0, "to_ft": 0.0, "volume_L": 5.0, "as_surface_air": 1.0, "scene": 0.0},
            20.0,
            "5 L at 5 atm absolute are 25 L at the surface, of which 5 may stay; common practice, no source",
        ),
    ),
)
