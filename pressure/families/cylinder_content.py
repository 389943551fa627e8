"""A cylinder's gauge is read; how much free air is in it?"""

from __future__ import annotations

from pressure.cylinders import (
    AIR_SENTENCE,
    PRESSURE_UNITS,
    REAL_FROM,
    SURFACES,
    VOLUME_UNITS,
    cylinder_words,
    real_free_air,
)
from pressure.formula import Symbol, Term, equation, given, result
from pressure.laws.supply import free_gas
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
from pressure.units import rounded, shown, unit_text

_SCENES = (
    "The dive store logs {cylinder} rated for {rated}; the gauge shows {reading}.",
    "Beside the air lock stands {cylinder} rated for {rated}. The gauge shows {reading}.",
    "The standby diver is to have {cylinder} rated for {rated}. The gauge shows {reading}.",
)
_SETS = (
    "The dive store logs a set of {cylinder} rated for {rated}; the gauge shows {reading}.",
    "The bank on the work barge has {cylinder} rated for {rated}. Their gauge shows {reading}.",
    "The bell carries {cylinder} rated for {rated}. Their gauge shows {reading}.",
)
_QUESTIONS = (
    "How much free air can be let out at the surface until the gauge stands at nought, in {unit}?",
    "How much free air is inside in all, with what stays when the gauge stands at nought, in {unit}?",
)
# Up to here the last atmosphere is more than two rounding allowances; a full cylinder's is lost in them,
# and the trade reckons both ways: then both are accepted.
_LAST_ATMOSPHERE_TELLS = {"us": 1400.0, "metric": 95.0}


def pose(system: System, facts: Facts) -> Posed:
    unit, volume_unit = PRESSURE_UNITS[system], VOLUME_UNITS[system]
    room, count = facts[f"room_{volume_unit}"], facts["count"]
    reading, rated = facts[f"reading_{unit}"], facts[f"rated_{unit}"]
    scene = (_SCENES if count == 1 else _SETS)[int(facts["scene"])].format(
        cylinder=cylinder_words(system, room, count),
        rated=shown(rated, unit, "gauge", given=True),
        reading=shown(reading, unit, "gauge", given=True),
    )
    question = _QUESTIONS[int(facts["is_all"])].format(unit=unit_text(volume_unit))
    many = (Given("N", "cylinders", Quantity(count, "")),) if count > 1 else ()
    return Posed(
        situation=f"{scene} {question}",
        convention=f"{AIR_SENTENCE[system]}, and air as an ideal gas at one temperature.",
        givens=(
            Given("V", "room inside a cylinder", Quantity(room, volume_unit)),
            *many,
            Given("P_g", "gauge pressure", Quantity(reading, unit, "gauge")),
            Given("P_r", "rated pressure", Quantity(rated, unit, "gauge")),
        ),
        asked=Asked("V_f", "free air", "volume", volume_unit),
        accepted=_accepted(system, room * count, reading, bool(facts["is_all"])),
        missteps=_missteps(system, facts),
        sense="Every atmosphere on the gauge is the room inside once more, as free air.",
    )


def _accepted(system: System, room: float, reading: float, is_all: bool) -> tuple[float, ...]:
    surfaces = SURFACES[system]
    by_gauge = tuple([free_gas(room, reading, air) for air in surfaces])
    in_all = tuple([free_gas(room, reading + air, air) for air in surfaces])
    if reading <= _LAST_ATMOSPHERE_TELLS[system]:
        return in_all if is_all else by_gauge
    return (*in_all, *by_gauge) if is_all else (*by_gauge, *in_all)


def _missteps(system: System, facts: Facts) -> tuple[Misstep, ...]:
    unit, count = PRESSURE_UNITS[system], facts["count"]
    room, reading = facts[f"room_{VOLUME_UNITS[system]}"] * count, facts[f"reading_{unit}"]
    surfaces = SURFACES[system]
    missteps: tuple[Misstep, ...] = (
        slip(
            "full-cylinder",
            "{typed} is what a full cylinder holds. The gauge does not show its rated pressure: take what it "
            "shows.",
            *_full(surfaces, room, facts[f"rated_{unit}"]),
        ),
        slip(
            "inverted-ratio",
            "{typed} is less than the room inside. Air under pressure takes more room outside: multiply by "
            "the atmospheres.",
            *[room * air / reading for air in surfaces],
        ),
        _unit_slip(system, room, reading),
    )
    if count > 1:
        one = f"{{typed}} is in one cylinder. There are {count:g}: multiply by that."
        by_gauge = [room * reading / air for air in surfaces]
        missteps += (
            slip("one-cylinder", one, *[(free + room * facts["is_all"]) / count for free in by_gauge]),
        )
    if reading > _LAST_ATMOSPHERE_TELLS[system]:
        return missteps
    return (*missteps, _last_atmosphere(surfaces, room, reading, bool(facts["is_all"])))


def _full(surfaces: tuple[float, ...], room: float, rated: float) -> tuple[float, ...]:
    return tuple([room * rated / air for air in surfaces])


def _unit_slip(system: System, room: float, reading: float) -> Misstep:
    if system == "us":
        mend = "A psi is not an atmosphere: 14.7 psi fill the room inside once. Divide the gauge by 14.7."
        return slip("psi-not-converted", mend, room * reading)
    mend = "14.7 is the atmosphere in psi. In bar it is 1: the gauge counts it already."
    return slip("psi-for-bar", mend, room * reading / 14.7)


def _last_atmosphere(surfaces: tuple[float, ...], room: float, reading: float, is_all: bool) -> Misstep:
    if is_all:
        mend = (
            "{typed} is what comes out until the gauge stands at nought. The cylinder is then full of air at "
            "one atmosphere: add that."
        )
        return slip("atmosphere-left-out", mend, *[room * reading / air for air in surfaces])
    mend = (
        "{typed} counts what stays inside when the gauge stands at nought. It cannot be let out: take the "
        "gauge as it stands."
    )
    return slip("atmosphere-added", mend, *[room * (reading + air) / air for air in surfaces])


def solve(problem: Problem) -> tuple[Step, ...]:
    system, facts = problem.system, problem.facts
    unit, volume_unit, air = PRESSURE_UNITS[system], VOLUME_UNITS[system], SURFACES[system][0]
    room, reading, count = facts[f"room_{volume_unit}"], facts[f"reading_{unit}"], facts["count"]
    free, inside, many = Symbol("V", "free"), Symbol("V", "inside"), Symbol("N")
    gauge, surface = Symbol("P", "g", "gauge"), Symbol("P", "atm", "atmosphere")
    pressure: Term = gauge
    numbers: Term = given(reading, unit)
    why = (
        "Until the gauge stands at nought, only what is above the atmosphere comes out: the gauge counts it."
    )
    if facts["is_all"]:
        pressure, numbers = gauge + surface, given(reading, unit) + given(air, unit)
        why = "All the air inside is counted by the absolute pressure: the gauge and the atmosphere."
    relation, put_in = inside * (pressure / surface), given(room, volume_unit) * (numbers / given(air, unit))
    if count > 1:
        relation, put_in = many * relation, given(count) * put_in
    return (
        Step(
            f"{why} Each atmosphere is the room inside once more.",
            equation(free, relation),
            equation(free, put_in),
            result(free, problem.answer.value, volume_unit),
        ),
        *_remark(system, room * count, reading),
    )


def _remark(system: System, room: float, reading: float) -> tuple[Step, ...]:
    """What real air does in a full cylinder."""
    if reading < REAL_FROM[system]:
        return ()
    unit, ideal = unit_text(VOLUME_UNITS[system]), free_gas(room, reading, SURFACES[system][0])
    real = real_free_air(system, room, reading)
    return (
        Step(
            f"Air at such a pressure is not ideal. At 20 °C real air gives about {rounded(real)} {unit} "
            f"until the gauge stands at nought, {rounded(100 * (1 - real / ideal), 2)} per cent less "
            "(B. I. Lee and M. G. Kesler, 1975)."
        ),
    )


def _axes(
    system: System, rooms: tuple[float, ...], rated: tuple[float, ...], readings: tuple[float, ...]
) -> tuple[Axis, ...]:
    unit = PRESSURE_UNITS[system]
    return (
        Axis(f"room_{VOLUME_UNITS[system]}", rooms),
        Axis(f"rated_{unit}", rated),
        Axis(f"reading_{unit}", readings),
        Axis("count", (1.0, 2.0, 4.0)),
        Axis("is_all", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


_METRIC_READINGS = tuple(map(float, (*range(20, 96, 5), *range(150, 226, 5))))
_US_READINGS = tuple(map(float, (*range(300, 1401, 100), *range(2200, 2901, 100), 2950)))

FAMILY = Family(
    slug="cylinder-content",
    edition=1,
    title="Free air in a cylinder",
    topic="supply",
    axes={
        "us": _axes("us", (0.281, 0.399, 0.445, 0.526, 1.54), (3000.0, 3500.0), _US_READINGS),
        "metric": _axes("metric", (7.0, 10.0, 12.0, 15.0, 18.0, 50.0), (232.0, 300.0), _METRIC_READINGS),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"room_ft3": 0.399, "rated_psi": 3000.0, "reading_psi": 3000.0, "count": 1.0, "is_all": 0.0}
            | {"scene": 0.0},
            81.43,
            "0.399 ft³ at 3000 psi gauge; arithmetic from the formula of the US Navy Diving Manual, 7-4.1",
        ),
        WorkedExample(
            "us",
            {"room_ft3": 0.399, "rated_psi": 3000.0, "reading_psi": 2750.0, "count": 1.0, "is_all": 0.0}
            | {"scene": 0.0},
            74.64,
            "the usable air of a fall from 3000 to 250 psi; arithmetic from the same formula",
        ),
        WorkedExample(
            "metric",
            {"room_L": 12.0, "rated_bar": 232.0, "reading_bar": 200.0, "count": 1.0, "is_all": 0.0}
            | {"scene": 0.0},
            2400.0,
            "12 L at 200 bar gauge hold 2400 L; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"room_L": 10.0, "rated_bar": 232.0, "reading_bar": 200.0, "count": 1.0, "is_all": 0.0}
            | {"scene": 0.0},
            2000.0,
            "10 L at 200 bar gauge hold 2000 L; common practice, no source",
        ),
    ),
)
