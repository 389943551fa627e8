"""An absolute pressure is known; what does a gauge show?"""

from __future__ import annotations

from pressure.constants import ATMOSPHERE, SURFACE_BAR, SURFACE_PSI
from pressure.formula import Symbol, equation, given, result
from pressure.laws.hydrostatics import gauge
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
    "A logger at the foot of the lock gate recorded {total}. What is the gauge pressure there, in {unit}?",
    "The air in a caisson stands at {total}. What does the dial on its air lock show, in {unit}?",
    "A sampling bottle was closed in water at {total}. What is the gauge pressure there, in {unit}?",
    "The log of the chamber on the work barge gives {total}. What does its dial show, in {unit}?",
    "The air in a lift bag stands at {total}. What does a gauge on its hose show, in {unit}?",
)
_SURFACES = {
    # The trade's 14.7 psi is named; the standard atmosphere, 14.696 psi, is accepted.
    "us": (SURFACE_PSI.value, ATMOSPHERE.value / FACTORS["psi"]),
    "metric": (SURFACE_BAR.value,),
}
_UNITS = {"us": "psi", "metric": "bar"}


def pose(system: System, facts: Facts) -> Posed:
    unit = _UNITS[system]
    total = facts[f"absolute_{unit}"]
    surfaces = _SURFACES[system]
    told = shown(total, unit, "absolute", given=True)
    return Posed(
        situation=_SCENES[int(facts["scene"])].format(total=told, unit=unit),
        convention=f"Take the atmosphere as {surfaces[0]:g} {unit}.",
        givens=(Given("P_abs", "absolute pressure", Quantity(total, unit, "absolute")),),
        asked=Asked("P_g", "gauge pressure", "pressure", unit, "gauge"),
        accepted=tuple([gauge(total, surface) for surface in surfaces]),
        missteps=_missteps(system, total, surfaces),
        sense="A gauge leaves the atmosphere out, so it always shows less than the absolute pressure.",
    )


def _missteps(system: System, total: float, surfaces: tuple[float, ...]) -> tuple[Misstep, ...]:
    return (
        slip(
            "atmosphere-kept",
            "{typed} is the absolute pressure. A gauge is at nought in air: take the atmosphere off.",
            total,
        ),
        slip(
            "atmosphere-added",
            "{typed} is more than the absolute one. Absolute counts the atmosphere already: subtract it.",
            *[total + surface for surface in surfaces],
        ),
        slip(
            "atmosphere-twice",
            "{typed} has the atmosphere taken off twice. Take it off once.",
            *[total - 2 * surface for surface in surfaces],
        ),
        *(_bar_slips if system == "metric" else _psi_slips)(total),
    )


def _bar_slips(total: float) -> tuple[Misstep, ...]:
    return (
        slip(
            "depth-for-atmosphere",
            "10 m is the depth of water that weighs as much as the atmosphere. Its pressure is 1 bar: "
            "take that off.",
            total - 10,
        ),
        slip("psi-for-bar", "14.7 is the atmosphere in psi. In bar it is 1: take that off.", total - 14.7),
    )


def _psi_slips(total: float) -> tuple[Misstep, ...]:
    return (
        slip(
            "one-for-psi",
            "One atmosphere is 14.7 psi, not 1 psi. Take 14.7 from a pressure in psi.",
            total - 1,
        ),
        slip(
            "depth-for-atmosphere",
            "33 ft is the depth of sea water that weighs as much as the atmosphere. Its pressure is 14.7 "
            "psi: take that off.",
            total - 33,
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    unit = problem.asked.unit
    total, surface = problem.facts[f"absolute_{unit}"], _SURFACES[problem.system][0]
    reading, whole, air = (
        Symbol("P", "g", "gauge"),
        Symbol("P", "abs", "absolute"),
        Symbol("P", "atm", "atmosphere"),
    )
    return (
        Step(
            "Absolute pressure counts the atmosphere; a gauge leaves it out.",
            equation(reading, whole - air),
            equation(reading, given(total, unit) - given(surface, unit)),
            result(reading, problem.answer.value, unit, "gauge"),
        ),
    )


def _axes(name: str, first: int, last: int, per: int) -> tuple[Axis, ...]:
    totals = tuple(n / per for n in range(first, last + 1))
    return Axis(name, totals), Axis("scene", tuple(map(float, range(len(_SCENES)))))


FAMILY = Family(
    slug="absolute-to-gauge",
    edition=1,
    title="From absolute to gauge pressure",
    topic="gauge and absolute",
    level=2,
    axes={"us": _axes("absolute_psi", 40, 190, 2), "metric": _axes("absolute_bar", 26, 140, 20)},
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"absolute_psi": 39.3, "scene": 0.0},
            24.6,
            "39.3 psi absolute under 57 ft of fresh water is 24.6 psi gauge; teaching sheet, undated",
        ),
        WorkedExample(
            "us",
            {"absolute_psi": 44.1, "scene": 1.0},
            29.4,
            "66 ft of sea water: 44.1 psi absolute, 29.4 psi gauge; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"absolute_bar": 7.0, "scene": 0.0},
            6.0,
            "60 m of sea water; common practice, no source",
        ),
    ),
)
