"""A trace of a bad gas is measured in parts per million; what does depth make of it?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.dalton import share, surface_equivalent
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
from pressure.waters import ALLOWED

# The first of each pair goes from the supply to the surface equivalent, the second back.
_SCENES = (
    (
        "A diver under {depth} of sea water is sent air with {trace} of {gas}. How much of it in surface air "
        "would press as much, in ppm?",
        "Divers are to breathe no more {gas} than presses like {trace} in surface air. What is the most that "
        "air sent down to {depth} of sea water may hold, in ppm?",
    ),
    (
        "A cylinder is found to hold {trace} of {gas} and is breathed under {depth} of sea water. What is "
        "the surface equivalent of that, in ppm?",
        "The manual allows a surface equivalent of {trace} of {gas}. What may a cylinder hold of it at most "
        "that is breathed under {depth} of sea water, in ppm?",
    ),
)
_TRACES = (2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 400.0, 500.0, 600.0, 800.0, 1000.0)
_CARBON_DIOXIDE_FROM = 100.0  # ppm; smaller traces of the list are of carbon monoxide
# The atmosphere drowns the difference between the waters in shallower places.
_WATERS_DIFFER_FROM = {"us": 40.0, "metric": 20.0}
_CAUTIONS = {
    "carbon monoxide": "Carbon monoxide has no smell and gives little warning, and depth multiplies it.",
    "carbon dioxide": "Carbon dioxide drives the breathing and clouds the mind, and depth multiplies it.",
}
_TESTED = "Breathing air is tested before it is used, and whoever feels unwell on it says so at once."


def _gas(trace: float) -> str:
    return "carbon dioxide" if trace >= _CARBON_DIOXIDE_FROM else "carbon monoxide"


def pose(system: System, facts: Facts) -> Posed:
    conventions = ALLOWED[system, "sea"]
    named, is_back = conventions[0], bool(facts["is_back"])
    depth, trace = facts[f"depth_{named.depth_unit}"], facts["trace_ppm"]
    multiples = [each.atmospheres(depth) for each in conventions]
    missteps = (_back_slips if is_back else _missteps)(trace, multiples)
    turned = share if is_back else surface_equivalent
    if depth >= _WATERS_DIFFER_FROM[system]:
        fresh = [each.atmospheres(depth) for each in ALLOWED[system, "fresh"]]
        missteps += (other_water("sea", *[turned(trace, n) for n in fresh]),)
    scene = _SCENES[int(facts["scene"])][int(is_back)]
    return Posed(
        situation=scene.format(
            depth=shown(depth, named.depth_unit, given=True),
            trace=shown(trace, "ppm", given=True),
            gas=_gas(trace),
        ),
        convention=named.sentence,
        givens=(
            Given(*_names(is_back)[0], Quantity(trace, "ppm")),
            Given("D", "depth", Quantity(depth, named.depth_unit)),
        ),
        asked=Asked(*_names(is_back)[1], "share", "ppm"),
        accepted=tuple([turned(trace, n) for n in multiples]),
        missteps=missteps,
        sense="At depth a trace presses more than at the surface: the deeper it is breathed, the cleaner the "
        "supply must be.",
        caution=f"{_CAUTIONS[_gas(trace)]} {_TESTED} {STANDARD}",
    )


def _names(is_back: bool) -> tuple[tuple[str, str], tuple[str, str]]:
    """Symbol and meaning of what is given and of what is asked."""
    supply, surface = ("F", "share in the supply"), ("F_s", "surface equivalent")
    return (surface, supply) if is_back else (supply, surface)


def _missteps(trace: float, multiples: list[float]) -> tuple[Misstep, ...]:
    return (
        slip(
            "atmosphere-left-out",
            "The gauge pressure leaves the atmosphere out. Multiply by the absolute pressure.",
            *[trace * (n - 1) for n in multiples],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice. Add it once to the water's pressure.",
            *[trace * (n + 1) for n in multiples],
        ),
        slip(
            "inverted-ratio",
            "{typed} is less than is in the supply. Depth makes it worse: multiply, do not divide.",
            *[trace / n for n in multiples],
        ),
        slip(
            "share-doubled",
            "The trace does not double with every atmosphere: it grows by itself once for each. Multiply by "
            "the absolute pressure in atmospheres.",
            *[trace * 2 ** (n - 1) for n in multiples],
        ),
    )


def _back_slips(trace: float, multiples: list[float]) -> tuple[Misstep, ...]:
    return (
        slip(
            "atmosphere-left-out",
            "The gauge pressure leaves the atmosphere out. Divide by the absolute pressure.",
            *[trace / (n - 1) for n in multiples],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice. Add it once to the water's pressure.",
            *[trace / (n + 1) for n in multiples],
        ),
        slip(
            "inverted-ratio",
            "{typed} in the supply would be far too much: depth makes it worse. Divide, do not multiply.",
            *[trace * n for n in multiples],
        ),
        slip(
            "share-halved",
            "The share that may be there does not halve with every atmosphere. Divide by the absolute "
            "pressure in atmospheres.",
            *[trace / 2 ** (n - 1) for n in multiples],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, is_back = ALLOWED[problem.system, "sea"][0], problem.facts["is_back"]
    depth, trace = problem.facts[f"depth_{named.depth_unit}"], problem.facts["trace_ppm"]
    ratio, there, surface = Symbol("n"), Symbol("F"), Symbol("F", "s", "at the surface")
    known, multiple = given(trace, "ppm"), computed(named.atmospheres(depth), figures=4)
    found = there if is_back else surface
    return (
        atmospheres_step(
            "How many times the surface pressure is the absolute pressure at depth?", ratio, depth, named
        ),
        Step(
            "Dalton's law: at so many times the pressure, the same share presses so many times more. The "
            "body answers to that.",
            equation(surface, there * ratio),
            equation(found, known / multiple if is_back else known * multiple),
            result(found, problem.answer.value, "ppm"),
        ),
    )


def _axes(name: str, depths: range) -> tuple[Axis, ...]:
    return (
        Axis(name, tuple(map(float, depths))),
        Axis("trace_ppm", _TRACES),
        Axis("is_back", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="contaminant-at-depth",
    edition=1,
    title="A trace of a bad gas at depth",
    topic="mixtures",
    level=2,
    axes={"us": _axes("depth_ft", range(40, 171, 2)), "metric": _axes("depth_m", range(12, 53))},
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"depth_ft": 132.0, "trace_ppm": 10.0, "is_back": 0.0, "scene": 0.0},
            50.0,
            "10 ppm at 5 ata is 50 ppm at the surface; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"depth_m": 40.0, "trace_ppm": 10.0, "is_back": 1.0, "scene": 0.0},
            2.0,
            "10 ppm of surface equivalent at 5 bar; common practice, no source",
        ),
    ),
)
