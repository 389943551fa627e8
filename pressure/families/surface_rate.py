"""A cylinder's gauge fell during a job at depth; what does the diver use at the surface?"""

from __future__ import annotations

from typing import NamedTuple

from pressure.cautions import STANDARD
from pressure.cylinders import FLOW_UNITS, PRESSURE_UNITS, VOLUME_UNITS, cylinder_words
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.supply import free_gas, rate_at_surface
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
    "A diver scraped a hull for {time} at {depth} of sea water on {cylinder} and saw the gauge fall from "
    "{start} to {end}.",
    "In a trial of {time} at {depth} of sea water a diver breathed from {cylinder}; the gauge fell from "
    "{start} to {end}.",
    "The log of a survey at {depth} of sea water reads: {cylinder}; from {start} to {end} in {time}.",
)
_CAUTION = "A rate from one easy dive is no rate for hard or cold work: plan with the higher one. " + STANDARD


class _Job(NamedTuple):
    """The numbers of one problem, pressures and depth in the system's units."""

    room: float
    start: float
    fall: float
    depth: float
    minutes: float


def _job(system: System, facts: Facts) -> _Job:
    unit = PRESSURE_UNITS[system]
    depth = facts[f"depth_{ALLOWED[system, 'sea'][0].depth_unit}"]
    return _Job(
        facts[f"room_{VOLUME_UNITS[system]}"],
        facts[f"start_{unit}"],
        facts[f"fall_{unit}"],
        depth,
        facts["time_min"],
    )


def pose(system: System, facts: Facts) -> Posed:
    conventions, job = ALLOWED[system, "sea"], _job(system, facts)
    unit, flow, foot = PRESSURE_UNITS[system], FLOW_UNITS[system], conventions[0].depth_unit
    scene = _SCENES[int(facts["scene"])].format(
        cylinder=cylinder_words(system, job.room, 1),
        start=shown(job.start, unit, "gauge", given=True),
        end=shown(job.start - job.fall, unit, "gauge", given=True),
        time=shown(job.minutes, "min", given=True),
        depth=shown(job.depth, foot, given=True),
    )
    return Posed(
        situation=f"{scene} What is the diver's use at the surface, in {unit_text(flow)}?",
        convention=f"{conventions[0].sentence} Take air as an ideal gas at one temperature.",
        givens=(
            Given("V", "room inside the cylinder", Quantity(job.room, VOLUME_UNITS[system])),
            Given("P₁", "gauge at the start", Quantity(job.start, unit, "gauge")),
            Given("P₂", "gauge at the end", Quantity(job.start - job.fall, unit, "gauge")),
            Given("D", "depth", Quantity(job.depth, foot)),
            Given("t", "time at depth", Quantity(job.minutes, "min")),
        ),
        asked=Asked("C₀", "use at the surface", "flow", flow),
        accepted=tuple(
            [
                rate_at_surface(
                    free_gas(job.room, job.fall, c.surface), job.minutes, c.atmospheres(job.depth)
                )
                for c in conventions
            ]
        ),
        missteps=_missteps(system, job, conventions),
        sense="At the surface a diver uses less than at depth: about as much a minute as a bucket or two "
        "holds.",
        caution=_CAUTION,
    )


def _missteps(system: System, job: _Job, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    below = [
        (free_gas(job.room, job.fall, c.surface) / job.minutes, c.atmospheres(job.depth)) for c in conventions
    ]
    missteps = (
        slip(
            "rate-at-depth",
            "{typed} is what was used at depth. At the surface a breath is thinner: divide by the absolute "
            "pressure in atmospheres.",
            *[used for used, _ in below],
        ),
        slip(
            "gauge-ratio",
            "The water alone was divided by. The air at the surface presses too: add one atmosphere.",
            *[used / (ratio - 1) for used, ratio in below],
        ),
        slip(
            "inverted-ratio",
            "{typed} is more than at depth. The surface takes less: divide by the atmospheres.",
            *[used * ratio for used, ratio in below],
        ),
        slip(
            "time-left-out",
            "{typed} is for the whole job. Asked is what one minute takes: divide by the minutes.",
            *[used / ratio * job.minutes for used, ratio in below],
        ),
        slip(
            "reading-for-fall",
            "The first reading is what was there, not what was used. Take the fall of the gauge.",
            *[used / ratio * job.start / job.fall for used, ratio in below],
        ),
    )
    if system == "metric":
        return missteps
    mend = "A psi is not an atmosphere: divide the fall by 14.7 to have it in atmospheres."
    psi = slip("psi-not-converted", mend, *[job.room * job.fall / job.minutes / ratio for _, ratio in below])
    return (*missteps, psi)


def solve(problem: Problem) -> tuple[Step, ...]:
    system, named = problem.system, ALLOWED[problem.system, "sea"][0]
    unit, volume_unit, flow = PRESSURE_UNITS[system], VOLUME_UNITS[system], FLOW_UNITS[system]
    job = _job(system, problem.facts)
    used, inside, air = Symbol("V", "used"), Symbol("V", "inside"), Symbol("P", "atm", "atmosphere")
    start, end = Symbol("P", "1"), Symbol("P", "2")
    ratio, rate = Symbol("n"), Symbol("C", "0")
    gone, atmospheres = free_gas(job.room, job.fall, named.surface), named.atmospheres(job.depth)
    return (
        Step(
            "The fall of the gauge tells the free air used; the atmosphere drops out of the difference.",
            equation(used, inside * ((start - end) / air)),
            equation(
                used,
                given(job.room, volume_unit)
                * ((given(job.start, unit) - given(job.start - job.fall, unit)) / given(named.surface, unit)),
            ),
            result(used, gone, volume_unit, figures=4),
        ),
        atmospheres_step("Absolute pressure at depth, in atmospheres.", ratio, job.depth, named),
        Step(
            "Per minute, and at the surface so many times less.",
            equation(rate, used / (Symbol("t") * ratio)),
            equation(
                rate,
                computed(gone, volume_unit, figures=4)
                / (given(job.minutes, "min") * computed(atmospheres, figures=4)),
            ),
            result(rate, problem.answer.value, flow),
        ),
    )


def _axes(
    system: System,
    rooms: tuple[float, ...],
    starts: tuple[float, ...],
    falls: tuple[float, ...],
    depths: range,
    times: tuple[float, ...],
) -> tuple[Axis, ...]:
    unit = PRESSURE_UNITS[system]
    return (
        Axis(f"room_{VOLUME_UNITS[system]}", rooms),
        Axis(f"start_{unit}", starts),
        Axis(f"fall_{unit}", falls),
        Axis(f"depth_{ALLOWED[system, 'sea'][0].depth_unit}", tuple(map(float, depths))),
        Axis("time_min", times),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="surface-rate",
    edition=1,
    title="From a fall of the gauge to the use at the surface",
    topic="supply",
    level=2,
    axes={
        "us": _axes(
            "us",
            (0.399, 0.445, 0.526),
            (2400.0, 2700.0, 2850.0),
            (1200.0, 1300.0, 1500.0, 1700.0),
            range(45, 106, 10),
            (14.0, 16.0, 18.0, 20.0),
        ),
        "metric": _axes(
            "metric",
            (10.0, 12.0, 15.0),
            (190.0, 200.0, 210.0),
            (85.0, 95.0, 110.0, 125.0),
            range(14, 33, 3),
            (14.0, 16.0, 18.0, 20.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"room_ft3": 0.399, "start_psi": 3000.0, "fall_psi": 2750.0, "depth_ft": 70.0}
            | {"time_min": 17.08, "scene": 0.0},
            1.4,
            "3000 to 250 psi at 70 ft, backwards; arithmetic from the US Navy Diving Manual's 7-4.1",
        ),
        WorkedExample(
            "metric",
            {"room_L": 12.0, "start_bar": 200.0, "fall_bar": 100.0, "depth_m": 20.0}
            | {"time_min": 20.0, "scene": 0.0},
            20.0,
            "1200 L in 20 min at 3 bar; common practice, no source",
        ),
    ),
)
