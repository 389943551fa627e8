"""Cylinders, a depth and a diver's use: how long do they last down to the reserve?"""

from __future__ import annotations

from typing import NamedTuple

from pressure.cautions import STANDARD
from pressure.cylinders import (
    FLOW_UNITS,
    PRESSURE_UNITS,
    REAL_FROM,
    VOLUME_UNITS,
    cylinder_words,
    real_free_air,
)
from pressure.formula import Symbol, Term, computed, equation, given, result
from pressure.laws.supply import endurance, free_gas, used_at_depth
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
from pressure.units import rounded, shown
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A diver takes {cylinder} at {start} to {depth} of sea water and uses {rate} at the surface.",
    "For a search at {depth} of sea water a diver has {cylinder} at {start}; the use at the surface is "
    "{rate}.",
    "The supply of a job at {depth} of sea water is {cylinder} at {start}, for a diver who uses {rate} at "
    "the "
    "surface.",
)
_CAUTION = (
    "The way down and up, hard work and cold take their share before this time is over: turn back early. "
    + STANDARD
)


class _Supply(NamedTuple):
    """The numbers of one problem, pressures and depth in the system's units."""

    room: float
    cylinders: float
    start: float
    reserve: float
    rate: float
    depth: float

    def lasts(self, convention: Convention) -> float:
        usable = free_gas(self.room * self.cylinders, self.start - self.reserve, convention.surface)
        return endurance(usable, used_at_depth(self.rate, convention.atmospheres(self.depth)))


def _supply(system: System, facts: Facts) -> _Supply:
    unit, foot = PRESSURE_UNITS[system], ALLOWED[system, "sea"][0].depth_unit
    return _Supply(
        facts[f"room_{VOLUME_UNITS[system]}"],
        facts["count"],
        facts[f"start_{unit}"],
        facts[f"reserve_{unit}"],
        facts["rate"],
        facts[f"depth_{foot}"],
    )


def pose(system: System, facts: Facts) -> Posed:
    conventions, supply = ALLOWED[system, "sea"], _supply(system, facts)
    unit, flow, foot = PRESSURE_UNITS[system], FLOW_UNITS[system], conventions[0].depth_unit
    scene = _SCENES[int(facts["scene"])].format(
        cylinder=cylinder_words(system, supply.room, supply.cylinders),
        start=shown(supply.start, unit, "gauge", given=True),
        depth=shown(supply.depth, foot, given=True),
        rate=shown(supply.rate, flow, given=True),
    )
    kept = shown(supply.reserve, unit, "gauge", given=True)
    many = (Given("N", "cylinders", Quantity(supply.cylinders, "")),) if supply.cylinders > 1 else ()
    return Posed(
        situation=f"{scene} A reserve of {kept} is kept. How long does the rest last at depth, in min?",
        convention=f"{conventions[0].sentence} Take air as an ideal gas at one temperature.",
        givens=(
            Given("V", "room inside a cylinder", Quantity(supply.room, VOLUME_UNITS[system])),
            *many,
            Given("P₁", "gauge at the start", Quantity(supply.start, unit, "gauge")),
            Given("P_r", "reserve", Quantity(supply.reserve, unit, "gauge")),
            Given("C₀", "use at the surface", Quantity(supply.rate, flow)),
            Given("D", "depth", Quantity(supply.depth, foot)),
        ),
        asked=Asked("t", "time at depth", "time", "min"),
        accepted=tuple([supply.lasts(each) for each in conventions]),
        missteps=_missteps(system, supply, conventions),
        sense="At twice the absolute pressure the same air lasts half as long. In practice round it down.",
        caution=_CAUTION,
    )


def _missteps(system: System, supply: _Supply, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    lasting = [(supply.lasts(each), each.atmospheres(supply.depth)) for each in conventions]
    missteps: tuple[Misstep, ...] = (
        slip(
            "reserve-forgotten",
            "{typed} uses up the reserve as well. Take it off the gauge first: it is not planned for use.",
            *[time * supply.start / (supply.start - supply.reserve) for time, _ in lasting],
        ),
        slip(
            "surface-rate",
            "{typed} is how long it lasts at the surface. At depth every breath takes as much more as the "
            "absolute "
            "pressure is higher: divide by it in atmospheres.",
            *[time * ratio for time, ratio in lasting],
        ),
        slip(
            "gauge-ratio",
            "{typed} counts the water alone. The air at the surface presses too: add one atmosphere.",
            *[time * ratio / (ratio - 1) for time, ratio in lasting],
        ),
        slip(
            "inverted-ratio",
            "{typed} is longer than at the surface. Deeper is shorter: divide by the atmospheres.",
            *[time * ratio * ratio for time, ratio in lasting],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice. Add it once to the water's.",
            *[time * ratio / (ratio + 1) for time, ratio in lasting],
        ),
    )
    if supply.cylinders > 1:
        mend = f"{{typed}} is how long one cylinder lasts. There are {supply.cylinders:g}."
        missteps = (*missteps, slip("one-cylinder", mend, *[time / supply.cylinders for time, _ in lasting]))
    if system == "us":
        mend = "A psi is not an atmosphere: divide the pressure by 14.7 to have it in atmospheres."
        psi = [time * each.surface for (time, _), each in zip(lasting, conventions, strict=True)]
        missteps = (*missteps, slip("psi-not-converted", mend, *psi))
    return missteps


def solve(problem: Problem) -> tuple[Step, ...]:
    system, named = problem.system, ALLOWED[problem.system, "sea"][0]
    supply, flow, unit = _supply(system, problem.facts), FLOW_UNITS[system], VOLUME_UNITS[system]
    ratio, time, use, usable = Symbol("n"), Symbol("t"), Symbol("C"), Symbol("V", "usable")
    atmospheres = named.atmospheres(supply.depth)
    there = used_at_depth(supply.rate, atmospheres)
    free = free_gas(supply.room * supply.cylinders, supply.start - supply.reserve, named.surface)
    return (
        _usable_step(system, supply, usable, free),
        atmospheres_step("Absolute pressure at depth, in atmospheres.", ratio, supply.depth, named),
        Step(
            "So many times the use at the surface is the use at depth, in free air.",
            equation(use, Symbol("C", "0") * ratio),
            equation(use, given(supply.rate, flow) * computed(atmospheres, figures=4)),
            result(use, there, flow, figures=4),
        ),
        Step(
            "What there is, over what a minute takes.",
            equation(time, usable / use),
            equation(time, computed(free, unit, figures=4) / computed(there, flow, figures=4)),
            result(time, problem.answer.value, "min"),
        ),
        *_remark(system, supply, there),
    )


def _usable_step(system: System, supply: _Supply, usable: Symbol, free: float) -> Step:
    unit, volume_unit = PRESSURE_UNITS[system], VOLUME_UNITS[system]
    air = Symbol("P", "atm", "atmosphere")
    above = (given(supply.start, unit) - given(supply.reserve, unit)) / given(
        ALLOWED[system, "sea"][0].surface, unit
    )
    relation: Term = Symbol("V") * ((Symbol("P", "1") - Symbol("P", "r", "reserve")) / air)
    numbers: Term = given(supply.room, volume_unit) * above
    if supply.cylinders > 1:
        relation, numbers = Symbol("N") * relation, given(supply.cylinders) * numbers
    return Step(
        "Only the pressure above the reserve may be used; each atmosphere of it is the room inside once "
        "more.",
        equation(usable, relation),
        equation(usable, numbers),
        result(usable, free, volume_unit, figures=4),
    )


def _remark(system: System, supply: _Supply, there: float) -> tuple[Step, ...]:
    """What real air does in a full cylinder."""
    if supply.start < REAL_FROM[system]:
        return ()
    room = supply.room * supply.cylinders
    real = real_free_air(system, room, supply.start) - real_free_air(system, room, supply.reserve)
    return (
        Step(
            f"Air at such a pressure is not ideal. With real air of 20 °C it lasts about "
            f"{rounded(endurance(real, there))} min (B. I. Lee and M. G. Kesler, 1975)."
        ),
    )


def _axes(
    system: System,
    rooms: tuple[float, ...],
    starts: tuple[float, ...],
    reserves: tuple[float, ...],
    rates: tuple[float, ...],
    depths: range,
) -> tuple[Axis, ...]:
    unit = PRESSURE_UNITS[system]
    return (
        Axis(f"room_{VOLUME_UNITS[system]}", rooms),
        Axis("count", (1.0, 2.0)),
        Axis(f"start_{unit}", starts),
        Axis(f"reserve_{unit}", reserves),
        Axis("rate", rates),
        Axis(f"depth_{ALLOWED[system, 'sea'][0].depth_unit}", tuple(map(float, depths))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


def _example(
    system: System, facts: tuple[float, float, float, float, float, float], answer: float, source: str
) -> WorkedExample:
    names = [axis.name for axis in _AXES[system]]
    return WorkedExample(system, dict(zip(names, (*facts, 0.0), strict=True)), answer, source)


_AXES: dict[System, tuple[Axis, ...]] = {
    "us": _axes(
        "us",
        (0.399, 0.445, 0.526),
        (2250.0, 2700.0, 3000.0),
        (400.0, 500.0, 600.0),
        (0.8, 1.0, 1.2),
        range(40, 131, 10),
    ),
    "metric": _axes(
        "metric",
        (10.0, 12.0, 15.0),
        (180.0, 200.0, 230.0),
        (40.0, 50.0, 60.0),
        (20.0, 25.0, 35.0),
        range(12, 40, 3),
    ),
}

FAMILY = Family(
    slug="cylinder-endurance",
    edition=1,
    title="How long a cylinder lasts at depth",
    topic="supply",
    level=3,
    axes=_AXES,
    pose=pose,
    solve=solve,
    examples=(
        _example(
            "us",
            (0.399, 1.0, 3000.0, 250.0, 1.4, 70.0),
            17.08,
            "arithmetic from the formulas of the US Navy Diving Manual, 7-4.1, Revision 4, Change A",
        ),
        _example(
            "metric",
            (12.0, 1.0, 200.0, 50.0, 20.0, 20.0),
            30.0,
            "1800 L at 60 L/min; common practice, no source",
        ),
    ),
)
