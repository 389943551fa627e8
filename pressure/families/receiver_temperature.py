"""A closed vessel at low pressure changes its temperature; there the atmosphere counts for much.

In a full cylinder the atmosphere is lost in the rounding; here whoever leaves it out is found.
"""

from __future__ import annotations

from pressure import vessels
from pressure.cautions import STANDARD
from pressure.cylinders import PRESSURE_UNITS, SURFACES
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
    "The receiver of a hand pump stands at {pressure} by gauge at {first}. Its valves are shut and it "
    "{turns} to "
    "{last}.",
    "A lamp housing is filled with dry air to {pressure} by gauge at {first} and sealed. It {turns} to "
    "{last}.",
    "A tyre of the quay crane shows {pressure} by gauge at {first}. It {turns} to {last} and keeps its size.",
    "A rigid buoy is tested with air of {pressure} by gauge at {first}. Before it is opened it {turns} to "
    "{last}.",
)
_CAUTION = "Let a vessel that has become hot cool down before its valve is opened. " + STANDARD


def _read(system: System, facts: Facts) -> tuple[float, float, float]:
    """Gauge, temperature before and temperature after."""
    gauge = facts[f"pressure_{PRESSURE_UNITS[system]}"]
    if facts["is_cooled"]:
        return gauge, facts["warm"], facts["cool"]
    return gauge, facts["cool"], facts["warm"]


def pose(system: System, facts: Facts) -> Posed:
    unit, degrees = PRESSURE_UNITS[system], SCALES[system].unit
    gauge, first, last = _read(system, facts)
    answers = vessels.gauges_after(system, gauge, first, last)
    scene = _SCENES[int(facts["scene"])].format(
        pressure=shown(gauge, unit, given=True),
        first=shown(first, degrees, given=True),
        last=shown(last, degrees, given=True),
        turns="cools" if facts["is_cooled"] else "warms",
    )
    return Posed(
        situation=f"{scene} What does its gauge show then, in {unit}?",
        convention=vessels.convention(system),
        givens=(
            Given("P_g1", "gauge at first", Quantity(gauge, unit)),
            Given("t₁", "temperature at first", Quantity(first, degrees)),
            Given("t₂", "temperature at the end", Quantity(last, degrees)),
        ),
        asked=Asked("P_g2", "gauge pressure at the end", "pressure", unit, "gauge"),
        accepted=answers,
        missteps=(
            *_ratio_slips(system, gauge, first, last),
            *_atmosphere_slips(system, gauge, first, last, answers),
            vessels.change_alone(gauge, answers),
        ),
        sense="The absolute pressure moves by some per cent; the gauge, which shows only a part of it, by "
        "more.",
        caution=_CAUTION,
    )


def _ratio_slips(system: System, gauge: float, first: float, last: float) -> tuple[Misstep, ...]:
    """Without the other scale's number, which leads near the ratio of gauges and is caught elsewhere."""
    return tuple([each for each in vessels.missteps(system, gauge, first, last) if each[0] != "other-scale"])


def _atmosphere_slips(
    system: System, gauge: float, first: float, last: float, answers: tuple[float, ...]
) -> tuple[Misstep, ...]:
    return (
        slip(
            "gauge-ratio",
            "A gauge pressure does not go with the absolute temperature: at nought by gauge there is air "
            "in it "
            "too. Add the atmosphere first.",
            *[gauge * after / before for before, after in SCALES[system].ends(first, last)],
        ),
        slip(
            "atmosphere-kept",
            "{typed} is the absolute pressure. Asked is what the gauge shows: take the atmosphere off again.",
            *[answer + air for answer in answers for air in SURFACES[system]],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    return vessels.steps(problem.system, *_read(problem.system, problem.facts))


def _axes(
    unit: str, pressures: tuple[float, ...], cool: tuple[float, ...], warm: tuple[float, ...]
) -> tuple[Axis, ...]:
    return (
        Axis(f"pressure_{unit}", pressures),
        Axis("cool", cool),
        Axis("warm", warm),
        Axis("is_cooled", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="receiver-temperature",
    edition=1,
    title="A vessel at low pressure warmed or cooled",
    topic="temperature",
    level=2,
    axes={
        "us": _axes(
            "psi",
            (18.0, 20.0, 25.0, 28.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0),
            (25.0, 35.0, 40.0, 45.0, 50.0),
            (110.0, 115.0, 120.0, 130.0, 145.0),
        ),
        "metric": _axes(
            "bar",
            (1.2, 1.4, 1.5, 1.8, 2.0, 2.2, 2.5, 2.8, 3.0, 3.5),
            (2.0, 4.0, 5.0, 8.0, 10.0),
            (45.0, 50.0, 55.0, 60.0, 65.0),
        ),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "metric",
            {"pressure_bar": 2.5, "cool": -40.0, "warm": 35.0, "is_cooled": 1.0, "scene": 2.0},
            1.62 * 1.01325,
            "OpenStax College Physics 2e, §13.3: 2.50e5 Pa gauge at 35.0 °C, 1.62 atm gauge at −40.0 °C",
        ),
        WorkedExample(
            "metric",
            {"pressure_bar": 2.6, "cool": 24.0, "warm": 50.0, "is_cooled": 0.0, "scene": 0.0},
            2.915,
            "OpenStax Chemistry 2e, §9.2: 360 kPa absolute at 24 °C, 390 kPa at 50 °C (two figures)",
        ),
        WorkedExample(
            "us",
            {"pressure_psi": 34.0, "cool": 40.0, "warm": 120.0, "is_cooled": 0.0, "scene": 2.0},
            41.79,
            "34 psi gauge, 40 to 120 °F; arithmetic from OpenStax College Physics 2e, §13.3",
        ),
    ),
)
