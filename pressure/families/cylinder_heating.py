"""A full cylinder gets warm; what does its gauge show?"""

from __future__ import annotations

from math import log

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
from pressure.slips import Misstep, slip
from pressure.temperatures import SCALES
from pressure.units import shown

_SCENES = (
    "A cylinder charged to {pressure} at {cool} is left in the sun on deck and warms to {warm}.",
    "A cylinder shows {pressure} in the dive store at {cool}. In a closed van it warms to {warm}.",
    "A bank stands at {pressure} at {cool} in the morning. Beside the engine house it warms to {warm}.",
    "A cylinder with {pressure} at {cool} lies near a fire and is at {warm} when it is found.",
)
_CAUTION = (
    "Never charge beyond the rated pressure, keep cylinders out of sun and fire, and do not move one that "
    "has "
    "been hot before a competent person has looked at it. " + STANDARD
)
# Psi to a degree: a rule of the trade, common practice, no source.
_RULE = 5.0
_RULE_TELLS = 0.013


def _read(system: System, facts: Facts) -> tuple[float, float, float]:
    """Gauge, temperature before and temperature after."""
    return facts[f"pressure_{PRESSURE_UNITS[system]}"], facts["cool"], facts["warm"]


def pose(system: System, facts: Facts) -> Posed:
    unit, degrees = PRESSURE_UNITS[system], SCALES[system].unit
    gauge, cool, warm = _read(system, facts)
    answers = vessels.gauges_after(system, gauge, cool, warm)
    scene = _SCENES[int(facts["scene"])].format(
        pressure=shown(gauge, unit, "gauge", given=True),
        cool=shown(cool, degrees, given=True),
        warm=shown(warm, degrees, given=True),
    )
    return Posed(
        situation=f"{scene} Nothing leaks. What does the gauge show then, in {unit}?",
        convention=vessels.convention(system),
        givens=(
            Given("P_g1", "gauge at first", Quantity(gauge, unit, "gauge")),
            Given("t₁", "temperature at first", Quantity(cool, degrees)),
            Given("t₂", "temperature at the end", Quantity(warm, degrees)),
        ),
        asked=Asked("P_g2", "gauge pressure when warm", "pressure", unit, "gauge"),
        accepted=answers,
        missteps=(
            *vessels.missteps(system, gauge, cool, warm),
            vessels.change_alone(gauge, answers),
            *(_rule_slip(gauge, warm - cool, answers) if system == "us" else ()),
        ),
        sense="Warmer means more pressure, but from one fine day to a hot one only by some per cent.",
        caution=_CAUTION,
    )


def _rule_slip(gauge: float, rise: float, answers: tuple[float, ...]) -> tuple[Misstep, ...]:
    """Where the rule gives what the law gives, it is no slip."""
    ruled = gauge + _RULE * rise
    if min([abs(log(ruled / answer)) for answer in answers]) < _RULE_TELLS:
        return ()
    mend = (
        "5 psi for each degree is a rule of thumb, near the truth at one filling pressure only. Take the "
        "ratio of "
        "the absolute temperatures."
    )
    return (slip("rule-of-thumb", mend, ruled),)


def solve(problem: Problem) -> tuple[Step, ...]:
    return vessels.steps(problem.system, *_read(problem.system, problem.facts))


def _axes(unit: str, pressures: range, cool: tuple[float, ...], warm: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(f"pressure_{unit}", tuple(map(float, pressures))),
        Axis("cool", cool),
        Axis("warm", warm),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="cylinder-heating",
    edition=1,
    title="A full cylinder that gets warm",
    topic="temperature",
    level=2,
    axes={
        "us": _axes(
            "psi", range(2000, 3501, 100), (55.0, 60.0, 65.0, 70.0, 75.0), (110.0, 120.0, 130.0, 140.0, 155.0)
        ),
        "metric": _axes(
            "bar", range(150, 256, 5), (8.0, 12.0, 15.0, 18.0, 20.0), (45.0, 50.0, 55.0, 60.0, 65.0)
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"pressure_psi": 3000.0, "cool": 72.0, "warm": 170.0, "scene": 0.0},
            3555.33,
            "US Navy Diving Manual, 2-11.2, sample problem 2, from memory: 3000 psig at 72 °F, 3555.33 at "
            "170 °F",
            within=0.0002,
        ),
        WorkedExample(
            "metric",
            {"pressure_bar": 200.0, "cool": 20.0, "warm": 60.0, "scene": 0.0},
            227.4,
            "200 bar gauge, 20 to 60 °C; arithmetic from OpenStax College Physics 2e, §13.3",
        ),
        WorkedExample(
            "metric",
            {"pressure_bar": 6.0, "cool": 18.0, "warm": 35.0, "scene": 0.0},
            6.409,
            "OpenStax College Physics 2e, §13.3: 7.00e5 Pa absolute at 18.0 °C are 7.41e5 at 35.0 °C",
            within=0.001,
        ),
    ),
)
