"""A gas is measured as a share of the air at depth; what share at the surface would press as much?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.dalton import surface_equivalent
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
from pressure.units import shown
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "The air in a chamber at {depth} of sea water holds {share} carbon dioxide.",
    "A diver's hat under {depth} of sea water holds {share} carbon dioxide between two breaths.",
    "A sample drawn from an open bell under {depth} of sea water shows {share} carbon dioxide.",
)
# The atmosphere drowns the difference between the waters in shallower places.
_WATERS_DIFFER_FROM = {"us": 40.0, "metric": 20.0}
_CAUTION = (
    "The body answers to the partial pressure, not to the per cent on the analyser: a share that is harmless "
    f"at the surface can overcome a diver at depth. {STANDARD}"
)


def pose(system: System, facts: Facts) -> Posed:
    conventions = ALLOWED[system, "sea"]
    named = conventions[0]
    depth, percent = facts[f"depth_{named.depth_unit}"], facts["share_percent"]
    scene = _SCENES[int(facts["scene"])].format(
        depth=shown(depth, named.depth_unit, given=True), share=shown(percent, "%", given=True)
    )
    missteps = _missteps(percent, depth, conventions)
    if depth >= _WATERS_DIFFER_FROM[system]:
        fresh = [each.atmospheres(depth) for each in ALLOWED[system, "fresh"]]
        missteps += (other_water("sea", *[surface_equivalent(percent, n) for n in fresh]),)
    return Posed(
        situation=f"{scene} What is its surface equivalent, in %?",
        convention=named.sentence,
        givens=(
            Given("F", "share at depth", Quantity(percent, "%")),
            Given("D", "depth", Quantity(depth, named.depth_unit)),
        ),
        asked=Asked("F_s", "surface equivalent", "share", "%"),
        accepted=tuple([surface_equivalent(percent, each.atmospheres(depth)) for each in conventions]),
        missteps=missteps,
        sense="Deeper, the same share presses more, so the surface equivalent is more than the share.",
        caution=_CAUTION,
    )


def _missteps(percent: float, depth: float, conventions: tuple[Convention, ...]) -> tuple[Misstep, ...]:
    multiples = [each.atmospheres(depth) for each in conventions]
    return (
        slip(
            "atmosphere-left-out",
            "The gauge pressure leaves the atmosphere out. Multiply by the absolute pressure.",
            *[percent * (n - 1) for n in multiples],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice. Add it once to the water's pressure.",
            *[percent * (n + 1) for n in multiples],
        ),
        slip(
            "inverted-ratio",
            "{typed} is less than was measured. At depth the share presses more: multiply, do not divide.",
            *[percent / n for n in multiples],
        ),
        slip(
            "partial-for-equivalent",
            "That number is the partial pressure in atmospheres. Over the one atmosphere of the surface, as "
            "per cent, it is a hundred times as much.",
            *[percent / 100 * n for n in multiples],
        ),
        slip(
            "depth-for-pressure",
            "You multiplied by the depth. Multiply by the absolute pressure in atmospheres.",
            percent * depth,
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, "sea"][0]
    depth, percent = problem.facts[f"depth_{named.depth_unit}"], problem.facts["share_percent"]
    ratio, there, surface = Symbol("n"), Symbol("F"), Symbol("F", "s", "at the surface")
    return (
        atmospheres_step(
            "How many times the surface pressure is the absolute pressure at depth?", ratio, depth, named
        ),
        Step(
            "Dalton's law: the same share of so many times the pressure presses so many times more. The "
            "surface equivalent is the share that would press as much in surface air.",
            equation(surface, there * ratio),
            equation(surface, given(percent, "%") * computed(named.atmospheres(depth), figures=4)),
            result(surface, problem.answer.value, "%"),
        ),
    )


def _axes(name: str, depths: range) -> tuple[Axis, ...]:
    shares = (0.05, 0.08, 0.1, 0.12, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.8)
    return (
        Axis(name, tuple(map(float, depths))),
        Axis("share_percent", shares),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="surface-equivalent",
    edition=1,
    title="Surface equivalent of a gas at depth",
    topic="mixtures",
    axes={"us": _axes("depth_ft", range(20, 171, 2)), "metric": _axes("depth_m", range(6, 53))},
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"depth_ft": 132.0, "share_percent": 1.0, "scene": 0.0},
            5.0,
            "US Navy Diving Manual, ch. 2, surface equivalent value, recalled: 1 % at 5 ata",
        ),
        WorkedExample(
            "metric",
            {"depth_m": 30.0, "share_percent": 0.5, "scene": 0.0},
            2.0,
            "0.5 % at 4 bar; common practice, no source",
        ),
    ),
)
