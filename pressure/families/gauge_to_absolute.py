"""A gauge is read; what is the absolute pressure?"""

from __future__ import annotations

from pressure.constants import ATMOSPHERE, SURFACE_BAR, SURFACE_PSI
from pressure.formula import Symbol, equation, given, result
from pressure.laws.hydrostatics import absolute
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
from pressure.units import FACTORS, shown

_SCENES = (
    "The pneumo gauge on the quay-wall panel shows {reading}.",
    "The dial on the air lock of a caisson shows {reading}.",
    "The gauge on the hose to a lift bag shows {reading}.",
    "A diver's depth line at the lock gate shows {reading}.",
    "The dial outside the chamber on the work barge shows {reading}.",
)
_SURFACES = {
    # The trade's 14.7 psi is named; the standard atmosphere, 14.696 psi, is accepted.
    "us": (SURFACE_PSI.value, ATMOSPHERE.value / FACTORS["psi"]),
    "metric": (SURFACE_BAR.value,),
}
_UNITS = {"us": "psi", "metric": "bar"}


def pose(system: System, facts: Facts) -> Posed:
    unit = _UNITS[system]
    reading = facts[f"reading_{unit}"]
    surfaces = _SURFACES[system]
    told = shown(reading, unit, "gauge", given=True)
    scene = _SCENES[int(facts["scene"])].format(reading=told)
    return Posed(
        situation=f"{scene} What is the absolute pressure, in {unit}?",
        convention=f"Take the atmosphere as {surfaces[0]:g} {unit}.",
        givens=(Given("P_g", "gauge pressure", Quantity(reading, unit, "gauge")),),
        asked=Asked("P_abs", "absolute pressure", "pressure", unit, "absolute"),
        accepted=tuple([absolute(reading, surface) for surface in surfaces]),
        missteps=_missteps(system, reading, surfaces),
        sense="Absolute counts the atmosphere as well, so it is always more than the gauge shows.",
    )


def _missteps(system: System, reading: float, surfaces: tuple[float, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "atmosphere-left-out",
            "{typed} is what the gauge shows. A gauge reads nought at the surface, where the atmosphere "
            "already presses: add it.",
            reading,
        ),
        slip(
            "atmosphere-subtracted",
            "{typed} is less than the gauge shows. The atmosphere presses on top of the water: add it, do "
            "not take it off.",
            *[reading - surface for surface in surfaces],
        ),
        slip(
            "atmosphere-twice",
            "{typed} has the atmosphere in it twice. Add it once.",
            *[reading + 2 * surface for surface in surfaces],
        ),
        *(_bar_slips if system == "metric" else _psi_slips)(reading),
    )


def _bar_slips(reading: float) -> tuple[Misstep, ...]:
    return (
        slip(
            "depth-for-atmosphere",
            "10 m is the depth of water that weighs as much as the atmosphere. Its pressure is 1 bar: "
            "add that.",
            reading + 10,
        ),
        slip("psi-for-bar", "14.7 is the atmosphere in psi. In bar it is 1: add that.", reading + 14.7),
    )


def _psi_slips(reading: float) -> tuple[Misstep, ...]:
    return (
        slip(
            "one-for-psi",
            "One atmosphere is 14.7 psi, not 1 psi. Add 14.7 to a reading in psi.",
            reading + 1,
        ),
        slip(
            "depth-for-atmosphere",
            "33 ft is the depth of sea water that weighs as much as the atmosphere. Its pressure is 14.7 "
            "psi: add that.",
            reading + 33,
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    unit = problem.asked.unit
    reading, surface = problem.facts[f"reading_{unit}"], _SURFACES[problem.system][0]
    total, gauge, air = (
        Symbol("P", "abs", "absolute"),
        Symbol("P", "g", "gauge"),
        Symbol("P", "atm", "atmosphere"),
    )
    return (
        Step(
            "The gauge leaves the atmosphere out; absolute pressure counts it.",
            equation(total, gauge + air),
            equation(total, given(reading, unit) + given(surface, unit)),
            result(total, problem.answer.value, unit, "absolute"),
        ),
    )


def _axes(name: str, first: int, last: int, per: int) -> tuple[Axis, ...]:
    readings = tuple(n / per for n in range(first, last + 1))
    return Axis(name, readings), Axis("scene", tuple(map(float, range(len(_SCENES)))))


FAMILY = Family(
    slug="gauge-to-absolute",
    edition=1,
    title="From gauge to absolute pressure",
    topic="gauge and absolute",
    axes={"us": _axes("reading_psi", 8, 176, 2), "metric": _axes("reading_bar", 6, 120, 20)},
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"reading_psi": 34.0, "scene": 0.0},
            48.7,
            "OpenStax College Physics 2e, §11.6: 34 psi gauge is 48.7 psi absolute",
        ),
        WorkedExample(
            "us",
            {"reading_psi": 14.7, "scene": 0.0},
            29.4,
            "33 ft of sea water: 14.7 psi gauge, 29.4 psi absolute; common practice, no source",
        ),
        WorkedExample(
            "metric", {"reading_bar": 3.0, "scene": 0.0}, 4.0, "30 m of sea water; common practice, no source"
        ),
    ),
)
