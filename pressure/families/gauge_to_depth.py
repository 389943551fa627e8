"""A gauge is read under water; how deep is it?"""

from __future__ import annotations

from pressure.constants import SEA_FT_PER_ATM, SEA_M_PER_BAR
from pressure.formula import given
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
from pressure.slips import Misstep, by_density, other_water, slip
from pressure.steps import depth_step
from pressure.units import shown
from pressure.waters import ALLOWED, Convention, water_and_other

_SCENES = (
    "The pneumo gauge shows {reading} for a diver in {water} water. How deep is the diver, in {foot}?",
    "A gauge let down in {water} water beside the lock gate shows {reading}. How deep is it, in {foot}?",
    "A logger sunk in {water} water beside a pile recorded {reading}. How deep did it lie, in {foot}?",
)


def pose(system: System, facts: Facts) -> Posed:
    water, other = water_and_other(facts["is_fresh"])
    conventions = ALLOWED[system, water]
    named = conventions[0]
    unit, foot = named.pressure_unit, named.depth_unit
    reading = facts[f"reading_{unit}"]
    told = shown(reading, unit, "gauge", given=True)
    return Posed(
        situation=_SCENES[int(facts["scene"])].format(reading=told, water=water, foot=foot),
        convention=named.sentence,
        givens=(Given("P_g", "gauge pressure", Quantity(reading, unit, "gauge")),),
        asked=Asked("D", "depth", "length", foot),
        accepted=tuple([reading / each.gradient for each in conventions]),
        missteps=(
            *_atmosphere_slips(reading, conventions),
            *_SLIPS[system](reading, named),
            other_water(water, *[reading / each.gradient for each in ALLOWED[system, other]]),
        ),
        sense="A gauge at nought is at the surface, and twice the reading is twice the depth.",
    )


def _atmosphere_slips(reading: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "atmosphere-added",
            "{typed} has the atmosphere counted as water. A gauge leaves it out: use the reading as it "
            "stands.",
            *[(reading + each.surface) / each.gradient for each in conventions],
        ),
        slip(
            "atmosphere-subtracted",
            "{typed} has the atmosphere taken off. A gauge has left it out already: take nothing off.",
            *[(reading - each.surface) / each.gradient for each in conventions],
        ),
    )


def _feet_slips(reading: float, named: Convention) -> tuple[Misstep, ...]:
    atmospheres = reading / named.surface
    return (
        slip(
            "pressure-for-depth",
            f"A pound per square inch is more than a foot of water: {named.column:g} ft weigh 14.7 psi.",
            reading,
        ),
        slip(
            "atmospheres-for-depth",
            f"{{typed}} is the reading in atmospheres. Each of them is {named.column:g} ft of this water.",
            atmospheres,
        ),
        slip(
            "inverted-ratio",
            f"The ratio is upside down: {named.column:g} ft for each 14.7 psi, so there are more feet than "
            "psi.",
            reading * named.gradient,
        ),
        slip(
            "other-length-unit",
            f"10 is for metres. In feet it takes {named.column:g} ft of this water to weigh 14.7 psi.",
            atmospheres * SEA_M_PER_BAR.value,
        ),
    )


def _metre_slips(reading: float, named: Convention) -> tuple[Misstep, ...]:
    return (
        slip(
            "pressure-for-depth",
            f"A bar is more than a metre of water: it takes {named.column:g} m.",
            reading,
        ),
        slip(
            "decimal-point",
            f"The point slipped one place. Multiply the reading by {named.column:g}, once.",
            reading * named.column * 10,
        ),
        slip(
            "inverted-ratio",
            f"The ratio is upside down. Multiply the reading by {named.column:g}; do not divide.",
            reading / named.column,
        ),
        slip(
            "other-length-unit",
            f"33 is for feet. In metres it takes {named.column:g} m of this water to weigh 1 bar.",
            reading * SEA_FT_PER_ATM.value,
        ),
    )


def _density_slips(reading: float, named: Convention) -> tuple[Misstep, ...]:
    return by_density(reading / named.gradient)


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, water_and_other(problem.facts["is_fresh"])[0]][0]
    reading = problem.facts[f"reading_{named.pressure_unit}"]
    return (depth_step(given(reading, named.pressure_unit), reading, named),)


_SLIPS = {"us": _feet_slips, "metric": _metre_slips, "si": _density_slips}


def _axes(name: str, first: int, last: int, per: float) -> tuple[Axis, ...]:
    readings = tuple(n / per for n in range(first, last + 1))
    scenes = tuple(map(float, range(len(_SCENES))))
    return Axis(name, readings), Axis("scene", scenes), Axis("is_fresh", (0.0, 1.0))


FAMILY = Family(
    slug="gauge-to-depth",
    edition=1,
    title="From gauge pressure to depth",
    topic="depth",
    axes={
        "us": _axes("reading_psi", 10, 170, 2),
        "metric": _axes("reading_bar", 6, 120, 20),
        "si": _axes("reading_kPa", 10, 120, 0.2),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"reading_psi": 24.6, "scene": 0.0, "is_fresh": 1.0},
            57.0,
            "57 ft of fresh water is 24.6 psi gauge; teaching sheet, undated (low authority)",
        ),
        WorkedExample(
            "us",
            {"reading_psi": 14.7, "scene": 1.0, "is_fresh": 0.0},
            33.0,
            "a column of sea water 33 ft high on a square inch weighs 14.7 lb; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"reading_bar": 6.0, "scene": 0.0, "is_fresh": 0.0},
            60.0,
            "Scott et al., J Appl Physiol 130:1490 (2021): 60 m of sea is 7 atmospheres absolute",
        ),
        WorkedExample(
            "si",
            {"reading_kPa": 392.0, "scene": 1.0, "is_fresh": 1.0},
            40.0,
            "OpenStax College Physics 2e, §11.4: 392 kPa under 40.0 m of fresh water",
        ),
        WorkedExample(
            "si",
            {"reading_kPa": 101.325, "scene": 1.0, "is_fresh": 1.0},
            10.3,
            "OpenStax Chemistry 2e, §9.1: one atmosphere of fresh water",
        ),
    ),
)
