"""The density of air at the surface is known; what is it at depth?"""

from __future__ import annotations

from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.boyle import density_after
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
from pressure.slips import Misstep, other_water, slip
from pressure.steps import atmospheres_step
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "Air has a density of {thin} on the quay. A diver breathes it under {depth} of sea water.",
    "The hose of a surface supply takes in air of {thin} and brings it to a diver under {depth} of sea "
    "water.",
    "An open bell takes air of {thin} from the surface and keeps it under {depth} of sea water.",
)
_UNITS = {"us": "lb/ft3", "metric": "g/L", "si": "kg/m3"}
# The waters change a density by more than the rounding allowance only in deeper places.
_WATERS_DIFFER_FROM = {"us": 40.0, "metric": 20.0, "si": 20.0}


def pose(system: System, facts: Facts) -> Posed:
    conventions, unit = ALLOWED[system, "sea"], _UNITS[system]
    named = conventions[0]
    depth, thin = facts[f"depth_{named.depth_unit}"], facts["density"]
    scene = _SCENES[int(facts["scene"])].format(
        thin=shown(thin, unit, given=True), depth=shown(depth, named.depth_unit, given=True)
    )
    missteps = _missteps(depth, thin, conventions)
    if depth >= _WATERS_DIFFER_FROM[system]:
        waters = ALLOWED[system, "fresh"]
        missteps += (other_water("sea", *[thin * each.atmospheres(depth) for each in waters]),)
    return Posed(
        situation=f"{scene} The temperature stays the same. What is the density there, in {unit_text(unit)}?",
        convention=named.sentence,
        givens=(
            Given("ρ₁", "density at the surface", Quantity(thin, unit)),
            Given("D", "depth", Quantity(depth, named.depth_unit)),
        ),
        asked=Asked("ρ₂", "density at depth", "density", unit),
        accepted=tuple([density_after(thin, each.surface, each.absolute(depth)) for each in conventions]),
        missteps=missteps,
        sense="Deeper means more gas in the same room: the air is thicker than at the surface and takes more "
        "work to breathe.",
    )


def _missteps(depth: float, thin: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    """Each works on the gauge pressure in atmospheres, under every convention."""
    gauges = [each.gauge(depth) / each.surface for each in conventions]
    return (
        slip(
            "gauge-ratio",
            "A gauge pressure leaves the atmosphere out. Density follows the absolute pressure: add one "
            "atmosphere.",
            *[thin * each for each in gauges],
        ),
        slip(
            "inverted-ratio",
            "{typed} is thinner than at the surface. Deeper means thicker: turn the ratio over.",
            *[thin / (1 + each) for each in gauges],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice. Add it once to the water's pressure.",
            *[thin * (2 + each) for each in gauges],
        ),
        slip(
            "doubled-each-time",
            "Density doubles over the first atmosphere of water; the second makes it three times, not four. "
            "Multiply by the absolute pressure in atmospheres.",
            *[thin * 2**each for each in gauges],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], problem.asked.unit
    depth = problem.facts[f"depth_{named.depth_unit}"]
    ratio, thin, thick = Symbol("n"), Symbol("ρ", "1"), Symbol("ρ", "2")
    return (
        atmospheres_step(
            "How many times the surface pressure is the absolute pressure at depth? One atmosphere of sea "
            f"water is {named.column:.4g} {named.depth_unit}.",
            ratio,
            depth,
            named,
        ),
        Step(
            "Boyle's law: so many times the absolute pressure, so many times less room for the same gas, so "
            "many times the density.",
            equation(thick, thin * ratio),
            equation(
                thick, given(problem.facts["density"], unit) * computed(named.atmospheres(depth), figures=4)
            ),
            result(thick, problem.answer.value, unit),
        ),
    )


def _axes(name: str, depths: range, densities: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(name, tuple(map(float, depths))),
        Axis("density", densities),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="density-at-depth",
    edition=1,
    title="Density of air at depth",
    topic="Boyle",
    axes={
        "us": _axes("depth_ft", range(40, 191, 3), (0.074, 0.075, 0.076, 0.078, 0.08)),
        "metric": _axes("depth_m", range(12, 61), (1.18, 1.2, 1.22, 1.25, 1.29)),
        "si": _axes("depth_m", range(12, 61), (1.18, 1.2, 1.22, 1.25, 1.29)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"depth_ft": 33.0, "density": 0.075, "scene": 0.0},
            0.15,
            "twice the pressure, twice the density: OpenStax College Physics 2e, §13.3, turned round",
        ),
        WorkedExample(
            "us",
            {"depth_ft": 132.0, "density": 1 / 12, "scene": 0.0},
            5 / 12,
            "air about 1/12 lb/ft³, L. Martin, Scuba Diving Explained (1997); 5 ata at 132 fsw, US Navy "
            "Diving Manual, ch. 12",
        ),
        WorkedExample(
            "metric",
            {"depth_m": 60.0, "density": 1.2, "scene": 1.0},
            8.4,
            "1.20 g/L at 1 atm, OpenStax College Physics 2e, §13.3; 7 atm at 60 m, Scott et al. (2021)",
        ),
        WorkedExample(
            "si",
            {"depth_m": 30.0, "density": 1.2, "scene": 2.0},
            1.2 * 3.9819,
            "TEOS-10 (gsw 3.6.23), sea water of SP 35 at 10 °C, latitude 45: 3.9819 atm at 30 m",
        ),
    ),
)
