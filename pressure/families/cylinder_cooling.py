"""A cylinder is warm from charging; what does its gauge show when it has cooled, or how far must it be "
"charged?"""

from __future__ import annotations

from pressure import vessels
from pressure.cautions import STANDARD
from pressure.cylinders import PRESSURE_UNITS
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
from pressure.temperatures import SCALES
from pressure.units import shown

_COOLED = (
    "A cylinder is charged fast to {pressure} and comes off the compressor at {warm}. In the store it "
    "cools to "
    "{cool}.",
    "After charging a cylinder shows {pressure} at {warm}. The diver takes it into water of {cool}.",
    "A bank is charged to {pressure}; its air is at {warm} by then. Overnight it cools to {cool}.",
)
_CHARGED = (
    "A cylinder is to hold {pressure} once it has cooled to {cool} in the store. It comes off the "
    "compressor at "
    "{warm}.",
    "In water of {cool} a cylinder must show {pressure}. While it is charged it warms to {warm}.",
    "A bank must stand at {pressure} in the morning, at {cool}. Its air is at {warm} when charging ends.",
)
_QUESTIONS = (
    "Nothing leaks. What does the gauge show when it is cool, in {unit}?",
    "What must the gauge show at the end of charging, in {unit}?",
)
_CAUTION = (
    "A hot charge must not pass the rated pressure: charge slowly, let it cool, and top it up. " + STANDARD
)


def _read(system: System, facts: Facts) -> tuple[float, float, float]:
    """Gauge, temperature where it is known and temperature where it is asked for."""
    gauge = facts[f"pressure_{PRESSURE_UNITS[system]}"]
    if facts["is_charged"]:
        return gauge, facts["cool"], facts["warm"]
    return gauge, facts["warm"], facts["cool"]


def pose(system: System, facts: Facts) -> Posed:
    unit, degrees = PRESSURE_UNITS[system], SCALES[system].unit
    gauge, before, after = _read(system, facts)
    answers = vessels.gauges_after(system, gauge, before, after)
    scene = (_CHARGED if facts["is_charged"] else _COOLED)[int(facts["scene"])].format(
        pressure=shown(gauge, unit, "gauge", given=True),
        warm=shown(facts["warm"], degrees, given=True),
        cool=shown(facts["cool"], degrees, given=True),
    )
    return Posed(
        situation=f"{scene} {_QUESTIONS[int(facts['is_charged'])].format(unit=unit)}",
        convention=vessels.convention(system),
        givens=(
            Given("P_g1", "gauge that is known", Quantity(gauge, unit, "gauge")),
            Given("t₁", "temperature there", Quantity(before, degrees)),
            Given("t₂", "temperature where it is asked for", Quantity(after, degrees)),
        ),
        asked=Asked("P_g2", "gauge pressure", "pressure", unit, "gauge"),
        accepted=answers,
        missteps=(
            *vessels.missteps(system, gauge, before, after),
            vessels.change_alone(gauge, answers),
        ),
        sense="Cool air presses less, so the gauge stands lower when the cylinder has cooled than when it "
        "was warm.",
        caution=_CAUTION,
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    return vessels.steps(problem.system, *_read(problem.system, problem.facts))


def _axes(unit: str, pressures: range, warm: tuple[float, ...], cool: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"pressure_{unit}", tuple(map(float, pressures))),
        Axis("warm", warm),
        Axis("cool", cool),
        Axis("is_charged", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_COOLED))))),
    )


FAMILY = Family(
    slug="cylinder-cooling",
    edition=1,
    title="A cylinder that cools after charging",
    topic="temperature",
    level=3,
    axes={
        "us": _axes(
            "psi", range(2000, 3301, 100), (100.0, 110.0, 120.0, 130.0, 140.0), (45.0, 50.0, 55.0, 65.0, 70.0)
        ),
        "metric": _axes(
            "bar", range(150, 251, 10), (40.0, 45.0, 50.0, 55.0, 60.0), (6.0, 10.0, 12.0, 15.0, 20.0)
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "metric",
            {"pressure_bar": 230.0, "warm": 40.0, "cool": 10.0, "is_charged": 0.0, "scene": 0.0},
            207.9,
            "230 bar gauge, 40 to 10 °C; arithmetic from OpenStax College Physics 2e, §13.3",
        ),
        WorkedExample(
            "metric",
            {"pressure_bar": 139.0, "warm": 25.0, "cool": -78.5, "is_charged": 0.0, "scene": 0.0},
            90.4,
            "OpenStax College Physics 2e, §13.3: 1.40e7 Pa absolute at 25.0 °C are 9.14e6 at −78.5 °C",
        ),
        WorkedExample(
            "us",
            {"pressure_psi": 3000.0, "warm": 170.0, "cool": 72.0, "is_charged": 1.0, "scene": 0.0},
            3555.33,
            "US Navy Diving Manual, 2-11.2, sample problem 2, from memory: 3555.33 psig at 170 °F, 3000 at "
            "72 °F",
            within=0.0002,
        ),
    ),
)
