"""A diver's use at the surface is known; how much free air does a job at depth take?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.cylinders import FLOW_UNITS, VOLUME_UNITS
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.supply import used_at_depth
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
    "A diver who uses {rate} at the surface inspects a sheet pile for {time} at {depth} of sea water.",
    "A welder's helper uses {rate} at the surface and is to stay {time} at {depth} of sea water.",
    "A job on the lock sill, {depth} down in sea water, takes {time}. The diver uses {rate} at the surface.",
    "A diver slings anodes for {time} at {depth} of sea water. The use at the surface is {rate}.",
)
_CAUTION = (
    "Cold, work and fright can double a diver's use; the way up and a reserve come on top of it. " + STANDARD
)


def pose(system: System, facts: Facts) -> Posed:
    conventions, unit, flow = ALLOWED[system, "sea"], VOLUME_UNITS[system], FLOW_UNITS[system]
    foot = conventions[0].depth_unit
    rate, depth, minutes = facts["rate"], facts[f"depth_{foot}"], facts["time_min"]
    scene = _SCENES[int(facts["scene"])].format(
        rate=shown(rate, flow, given=True),
        time=shown(minutes, "min", given=True),
        depth=shown(depth, foot, given=True),
    )
    return Posed(
        situation=f"{scene} How much free air does that take at depth, in {unit_text(unit)}?",
        convention=conventions[0].sentence,
        givens=(
            Given("C₀", "use at the surface", Quantity(rate, flow)),
            Given("D", "depth", Quantity(depth, foot)),
            Given("t", "time at depth", Quantity(minutes, "min")),
        ),
        asked=Asked("V", "free air used", "volume", unit),
        accepted=tuple([minutes * used_at_depth(rate, c.atmospheres(depth)) for c in conventions]),
        missteps=_missteps(rate, depth, minutes, conventions),
        sense="Deeper, every breath holds more free air, so the use is more than at the surface.",
        caution=_CAUTION,
    )


def _missteps(
    rate: float, depth: float, minutes: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    ratios = [c.atmospheres(depth) for c in conventions]
    return (
        slip(
            "surface-rate",
            "{typed} would be used at the surface. At depth every breath is as much denser as the absolute "
            "pressure is higher: multiply by it in atmospheres.",
            rate * minutes,
        ),
        slip(
            "gauge-ratio",
            "{typed} counts the water alone. The air at the surface presses too: add one atmosphere.",
            *[rate * minutes * (ratio - 1) for ratio in ratios],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice. Add it once to the water's.",
            *[rate * minutes * (ratio + 1) for ratio in ratios],
        ),
        slip(
            "inverted-ratio",
            "{typed} is less than the use at the surface. Deeper takes more: multiply by the atmospheres.",
            *[rate * minutes / ratio for ratio in ratios],
        ),
        slip(
            "time-left-out",
            "{typed} is used in one minute at depth. Multiply by the minutes.",
            *[rate * ratio for ratio in ratios],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, system, facts = ALLOWED[problem.system, "sea"][0], problem.system, problem.facts
    unit, flow = VOLUME_UNITS[system], FLOW_UNITS[system]
    depth, rate, minutes = facts[f"depth_{named.depth_unit}"], facts["rate"], facts["time_min"]
    ratio, deep, shallow = Symbol("n"), Symbol("C"), Symbol("C", "0")
    used, atmospheres = Symbol("V"), named.atmospheres(depth)
    there = used_at_depth(rate, atmospheres)
    return (
        atmospheres_step("Absolute pressure at depth, in atmospheres.", ratio, depth, named),
        Step(
            "A breath has the same room at every depth; so many times the pressure is so many times the free "
            "air.",
            equation(deep, shallow * ratio),
            equation(deep, given(rate, flow) * computed(atmospheres, figures=4)),
            result(deep, there, flow, figures=4),
        ),
        Step(
            "So much every minute.",
            equation(used, deep * Symbol("t")),
            equation(used, computed(there, flow, figures=4) * given(minutes, "min")),
            result(used, problem.answer.value, unit),
        ),
    )


def _axes(rates: tuple[float, ...], foot: str, depths: range, times: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis("rate", rates),
        Axis(f"depth_{foot}", tuple(map(float, depths))),
        Axis("time_min", times),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


_TIMES = (8.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0)

FAMILY = Family(
    slug="use-at-depth",
    edition=1,
    title="Air a job at depth takes",
    topic="supply",
    axes={
        "us": _axes((0.6, 0.7, 0.75, 0.8, 0.9, 1.0, 1.2, 1.4), "ft", range(40, 166, 5), _TIMES),
        "metric": _axes((15.0, 18.0, 20.0, 22.0, 24.0, 30.0, 35.0, 40.0), "m", range(12, 51, 2), _TIMES),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"rate": 1.4, "depth_ft": 190.0, "time_min": 3.0, "scene": 0.0},
            28.38,
            "US Navy Diving Manual, Revision 4, Change A: emergency gas on the bottom at 190 fsw, 28.38 scf",
        ),
        WorkedExample(
            "us",
            {"rate": 1.4, "depth_ft": 70.0, "time_min": 1.0, "scene": 0.0},
            4.370,
            "70 ft at 1.4 ft³/min; arithmetic from the US Navy Diving Manual's 7-4.1, Revision 4, Change A",
        ),
        WorkedExample(
            "metric",
            {"rate": 20.0, "depth_m": 30.0, "time_min": 10.0, "scene": 0.0},
            800.0,
            "four times the surface's use at 30 m; common practice, no source",
        ),
    ),
)
