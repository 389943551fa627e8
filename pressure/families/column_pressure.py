"""A column of some liquid stands in a pipe or a form; what pressure does it put on its foot?"""

from __future__ import annotations

from pressure.constants import GRAVITY, SEA_DENSITY, SEA_WEIGHT, SURFACE_BAR, SURFACE_PSI
from pressure.formula import Symbol, Term, equation, given, result
from pressure.laws.columns import SQUARE_INCHES
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
from pressure.units import shown

_SCENES = (
    "A trench for a quay wall, {area} in plan, stands {height} full of a mix of {density}.",
    "A shaft with a foot of {area} is filled {height} high with a liquid of {density}.",
    "A tank on the work barge, {area} at its foot, holds {height} of a liquid of {density}.",
    "A form of {area} in plan is filled {height} high with a wet mix of {density}.",
)
_LENGTHS = {"us": "ft", "metric": "m", "si": "m"}
_AREAS = {"us": "ft2", "metric": "m2", "si": "m2"}
_DENSITIES = {"us": "lb/ft3", "metric": "kg/m3", "si": "kg/m3"}
_UNITS = {"us": "psi", "metric": "bar", "si": "kPa"}
_PASCALS = {"metric": 1e5, "si": 1000.0}
_ROUND_GRAVITY = 9.81
_CONVENTIONS = {
    "us": "One square foot is 144 in². The tops are open to the air.",
    "metric": "Take gravity as 9.81 m/s². The tops are open to the air; 1 bar is 100,000 Pa.",
    "si": "Take gravity as 9.81 m/s². The tops are open to the air; 1 kPa is 1000 Pa.",
}


def pose(system: System, facts: Facts) -> Posed:
    foot, unit = _LENGTHS[system], _UNITS[system]
    height, area = facts[f"height_{foot}"], facts[f"area_{_AREAS[system]}"]
    density = facts["density_lb_ft3" if system == "us" else "density_kg_m3"]
    accepted = _pressures(system, height, density)
    scene = _SCENES[int(facts["scene"])].format(
        density=shown(density, _DENSITIES[system], given=True),
        height=shown(height, foot, given=True),
        area=shown(area, _AREAS[system], given=True),
    )
    return Posed(
        situation=f"{scene} What is the gauge pressure at the foot, in {unit}?",
        convention=_CONVENTIONS[system],
        givens=(
            Given("h", "height of the column", Quantity(height, foot)),
            Given("A", "area of its foot", Quantity(area, _AREAS[system])),
            Given("ρ", "density of the liquid", Quantity(density, _DENSITIES[system])),
        ),
        asked=Asked("P_g", "gauge pressure at the foot", "pressure", unit, "gauge"),
        accepted=accepted,
        missteps=(
            slip(
                "area-counted",
                "{typed} has the area in it. Twice the area carries twice the weight, so the pressure is the "
                "same: height and density alone count.",
                *[each * area for each in accepted],
            ),
            slip(
                "water-for-liquid",
                "{typed} is the pressure of as much sea water. Use the density of this liquid.",
                *_water(system, height),
            ),
            *(_us_slips(height, density) if system == "us" else _metric_slips(system, height, density)),
        ),
        sense="Twice as high or twice as dense is twice the pressure; wider changes nothing.",
    )


def _pressures(system: System, height: float, density: float) -> tuple[float, ...]:
    if system == "us":
        return (height * density / SQUARE_INCHES,)
    return tuple([height * density * g / _PASCALS[system] for g in (_ROUND_GRAVITY, GRAVITY.value)])


def _water(system: System, height: float) -> tuple[float, ...]:
    return _pressures(system, height, SEA_WEIGHT.value if system == "us" else SEA_DENSITY.value)


def _us_slips(height: float, density: float) -> tuple[Misstep, ...]:
    on_a_foot = height * density
    return (
        slip(
            "area-unit",
            "{typed} is what stands on a square foot. A square inch carries 1/144 of it.",
            on_a_foot,
        ),
        slip(
            "side-for-area",
            "12 in make a foot, but 144 in² make a square foot: divide by 144.",
            on_a_foot / 12,
        ),
        slip(
            "atmosphere-added",
            "{typed} is the absolute pressure. A gauge leaves the atmosphere out.",
            on_a_foot / SQUARE_INCHES + SURFACE_PSI.value,
        ),
    )


def _metric_slips(system: System, height: float, density: float) -> tuple[Misstep, ...]:
    pascals, named = _PASCALS[system], _pressures(system, height, density)
    air = SURFACE_BAR.value * 1e5 / pascals
    return (
        slip(
            "gravity-left-out",
            "{typed} has no gravity in it. Height times density is a mass on each square metre; gravity "
            "makes it a weight.",
            height * density / pascals,
        ),
        slip(
            "decimal-point",
            f"The point slipped one place. Divide the pascals by {pascals:,.0f}.",
            *[each * 10 for each in named],
        ),
        slip(
            "atmosphere-added",
            "{typed} is the absolute pressure. A gauge leaves the atmosphere out.",
            *[each + more for each in named for more in (air, air * 1.01325)],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    system, facts = problem.system, problem.facts
    foot, unit = _LENGTHS[system], problem.asked.unit
    height = given(facts[f"height_{foot}"], foot)
    density = given(facts["density_lb_ft3" if system == "us" else "density_kg_m3"], _DENSITIES[system])
    reading, deep, heavy = Symbol("P", "g", "gauge"), Symbol("h"), Symbol("ρ")
    why = "Pressure is weight over area. Height and density give the weight on each unit of area; how wide "
    why += "the column is does not matter."
    if system == "us":
        relation: Term = heavy * deep
        numbers: Term = density * height / given(SQUARE_INCHES, "in²/ft²")
    else:
        relation = heavy * Symbol("g") * deep
        divisor = given(_PASCALS[system], f"Pa/{unit}")
        numbers = density * given(_ROUND_GRAVITY, "m/s²") * height / divisor
    return (
        Step(
            why,
            equation(reading, relation),
            equation(reading, numbers),
            result(reading, problem.answer.value, unit, "gauge"),
        ),
    )


def _axes(
    names: tuple[str, str, str], heights: range, areas: tuple[float, ...], densities: range
) -> tuple[Axis, ...]:
    height, area, density = names
    return (
        Axis(height, tuple(map(float, heights))),
        Axis(density, tuple(map(float, densities))),
        Axis(area, areas),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


_METRIC = _axes(
    ("height_m", "area_m2", "density_kg_m3"), range(3, 25), (1.5, 2.0, 3.0, 4.0, 6.0), range(1050, 2450, 50)
)

FAMILY = Family(
    slug="column-pressure",
    edition=1,
    title="Pressure under a column of any liquid",
    topic="column of water",
    axes={
        "us": _axes(
            ("height_ft", "area_ft2", "density_lb_ft3"),
            range(8, 70, 3),
            (2.0, 3.0, 4.0, 6.0, 9.0),
            range(66, 150, 4),
        ),
        "metric": _METRIC,
        "si": _METRIC,
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"height_ft": 33.0, "density_lb_ft3": 64.0, "area_ft2": 1.0, "scene": 1.0},
            14.7,
            "33 ft of sea water press with 14.7 psi; common practice, no source",
        ),
        WorkedExample(
            "si",
            {"height_m": 40.0, "density_kg_m3": 1000.0, "area_m2": 4.00e4, "scene": 2.0},
            392.0,
            "OpenStax College Physics 2e, §11.4: 40.0 m of fresh water, 392 kPa",
        ),
        WorkedExample(
            "si",
            {"height_m": 1.4, "density_kg_m3": 1050.0, "area_m2": 2.0, "scene": 1.0},
            14.41,
            "OpenStax College Physics 2e, §11.9: 1.4 m of 1050 kg/m³, 1.4e4 Pa to two figures",
        ),
        WorkedExample(
            "metric",
            {"height_m": 0.76, "density_kg_m3": 13_600.0, "area_m2": 2.0, "scene": 1.0},
            1.013,
            "OpenStax College Physics 2e, §11.4: mercury 0.760 m high balances 1.00 atm",
        ),
    ),
)
