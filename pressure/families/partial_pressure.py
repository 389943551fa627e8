"""A diver breathes a mixture at depth; what is the partial pressure of one of its gases?"""

from __future__ import annotations

from pressure.cautions import BEFORE_DECOMPRESSION, STANDARD
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.dalton import partial_pressure
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
from pressure.units import Mark, shown, unit_text
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A diver on the quay wall breathes {mix} under {depth} of sea water.",
    "An open bell under {depth} of sea water is kept filled with {mix}.",
    "A tender in the chamber breathes {mix} at a depth of {depth} of sea water.",
)
_UNITS = {"us": "atm", "metric": "bar", "si": "kPa"}
_AIR = 21.0  # per cent of oxygen, as the US Navy Diving Manual counts (§2-12)
# The atmosphere drowns the difference between the waters in shallower places.
_WATERS_DIFFER_FROM = {"us": 30.0, "metric": 15.0, "si": 12.0}


def _total(system: System, convention: Convention, depth: float) -> float:
    """Absolute pressure in the asked unit: in ata the surface counts one, whatever its psi."""
    return convention.atmospheres(depth) if system == "us" else convention.absolute(depth)


def _percents(facts: Facts) -> tuple[float, float]:
    """The asked gas's share and the other's, in per cent."""
    oxygen = facts["oxygen_percent"]
    return (100 - oxygen, oxygen) if facts["is_nitrogen"] else (oxygen, 100 - oxygen)


def pose(system: System, facts: Facts) -> Posed:
    conventions, unit = ALLOWED[system, "sea"], _UNITS[system]
    named = conventions[0]
    depth, oxygen = facts[f"depth_{named.depth_unit}"], facts["oxygen_percent"]
    gas = "nitrogen" if facts["is_nitrogen"] else "oxygen"
    parts = f"{shown(oxygen, '%', given=True)} oxygen and {shown(100 - oxygen, '%', given=True)} nitrogen"
    scene = _SCENES[int(facts["scene"])].format(
        mix=f"air, {parts}" if oxygen == _AIR else f"a mix of {parts}",
        depth=shown(depth, named.depth_unit, given=True),
    )
    return Posed(
        situation=f"{scene} What is the partial pressure of the {gas}, in {unit_text(unit, _mark(system))}?",
        convention=named.sentence,
        givens=(
            Given("F_O2", "share of oxygen", Quantity(oxygen, "%")),
            Given("F_N2", "share of nitrogen", Quantity(100 - oxygen, "%")),
            Given("D", "depth", Quantity(depth, named.depth_unit)),
        ),
        asked=Asked("p", f"partial pressure of the {gas}", "pressure", unit, "absolute"),
        accepted=tuple(
            [partial_pressure(_percents(facts)[0] / 100, _total(system, c, depth)) for c in conventions]
        ),
        missteps=_missteps(system, facts, depth, conventions),
        sense="One gas presses less than the whole mixture, and the parts add up to the absolute pressure.",
        caution=f"{BEFORE_DECOMPRESSION} {STANDARD}",
    )


def _mark(system: System) -> Mark | None:
    return "absolute" if system == "us" else None


def _missteps(
    system: System, facts: Facts, depth: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    fraction = _percents(facts)[0] / 100
    totals = [_total(system, each, depth) for each in conventions]
    surfaces = [_total(system, each, 0.0) for each in conventions]
    missteps = (*_share_slips(facts, totals), *_atmosphere_slips(fraction, totals, surfaces))
    if facts["oxygen_percent"] != _AIR:
        missteps += (_air_slip(facts, totals),)
    if depth >= _WATERS_DIFFER_FROM[system]:
        fresh = [_total(system, each, depth) for each in ALLOWED[system, "fresh"]]
        missteps += (other_water("sea", *[fraction * total for total in fresh]),)
    return missteps


def _share_slips(facts: Facts, totals: list[float]) -> tuple[Misstep, ...]:
    percent, other = _percents(facts)
    return (
        slip(
            "percent-for-fraction",
            f"{{typed}} is a hundred times too much: {percent:g} per cent is the fraction {percent / 100:g}.",
            *[percent * total for total in totals],
        ),
        slip(
            "other-gas",
            f"That is the other gas. The share asked for is {percent:g} %.",
            *[other / 100 * total for total in totals],
        ),
        slip(
            "whole-for-partial",
            "{typed} is the pressure of the whole mixture. Multiply it by the share of the one gas.",
            *totals,
        ),
    )


def _atmosphere_slips(fraction: float, totals: list[float], surfaces: list[float]) -> tuple[Misstep, ...]:
    pairs = list(zip(totals, surfaces, strict=True))
    missteps = (
        slip(
            "atmosphere-left-out",
            "A gauge pressure leaves the atmosphere out, and the diver breathes that too. Take the share of "
            "the absolute pressure.",
            *[fraction * (total - air) for total, air in pairs],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice. Add it once to the water's pressure.",
            *[fraction * (total + air) for total, air in pairs],
        ),
    )
    if abs(totals[0] / surfaces[0] - 2) < 0.03:  # there the water alone presses like the air at the surface
        return missteps
    shallow = slip(
        "surface-pressure",
        "{typed} is the partial pressure at the surface. At depth the whole mixture presses more, and each "
        "part with it.",
        *[fraction * air for air in surfaces],
    )
    return (*missteps, shallow)


def _air_slip(facts: Facts, totals: list[float]) -> Misstep:
    share = 100 - _AIR if facts["is_nitrogen"] else _AIR
    return slip(
        "air-for-mix",
        f"{share:g} % is the share in air. This is another mix: take its own share.",
        *[share / 100 * total for total in totals],
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, unit = ALLOWED[problem.system, "sea"][0], problem.asked.unit
    depth, percent = problem.facts[f"depth_{named.depth_unit}"], _percents(problem.facts)[0]
    total = _total(problem.system, named, depth)
    name, sign = ("nitrogen", "N₂") if problem.facts["is_nitrogen"] else ("oxygen", "O₂")
    part, share, whole = Symbol("p", sign, name), Symbol("F", sign, name), Symbol("P", "abs", "absolute")
    return (
        *_whole_steps(problem.system, named, depth, total),
        Step(
            "Dalton's law: each gas has its share of the absolute pressure. Per cent means hundredths.",
            equation(part, share * whole),
            equation(part, (given(percent) / given(100)) * computed(total, unit, "absolute", figures=4)),
            result(part, problem.answer.value, unit, "absolute"),
        ),
    )


def _whole_steps(system: System, named: Convention, depth: float, total: float) -> tuple[Step, ...]:
    if system == "us":
        why = "The absolute pressure in ata: one for the air, and one more for each column of water."
        return (atmospheres_step(why, Symbol("P", "abs", "absolute"), depth, named),)
    whole, water, air = (
        Symbol("P", "abs", "absolute"),
        Symbol("P", "g", "gauge"),
        Symbol("P", "atm", "atmosphere"),
    )
    unit = named.pressure_unit
    return (
        Step(
            "The absolute pressure: the water and the atmosphere on it.",
            equation(whole, water + air),
            equation(whole, computed(named.gauge(depth), unit, figures=4) + given(named.surface, unit)),
            result(whole, total, unit, "absolute", figures=4),
        ),
    )


def _axes(name: str, depths: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis(name, depths),
        Axis("oxygen_percent", (_AIR, 28.0, 30.0, 32.0, 34.0, 36.0, 38.0, 40.0)),
        Axis("is_nitrogen", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


_METRES = tuple(n / 2 for n in range(12, 61))

FAMILY = Family(
    slug="partial-pressure",
    edition=1,
    title="Partial pressure at depth",
    topic="mixtures",
    axes={
        "us": _axes("depth_ft", tuple(map(float, range(20, 100)))),
        "metric": _axes("depth_m", _METRES),
        "si": _axes("depth_m", _METRES),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"depth_ft": 726.0, "oxygen_percent": 4.3, "is_nitrogen": 0.0, "scene": 0.0},
            0.99,
            "US Navy Diving Manual, ch. 12 (12-5): 4.3 % oxygen at 726 fsw; inputs read, answer recalled",
        ),
        WorkedExample(
            "us",
            {"depth_ft": 132.0, "oxygen_percent": 21.0, "is_nitrogen": 1.0, "scene": 0.0},
            3.95,
            "air at 5 ata, four fifths of it nitrogen; common practice, no source",
        ),
        WorkedExample(
            "metric",
            {"depth_m": 30.0, "oxygen_percent": 21.0, "is_nitrogen": 0.0, "scene": 0.0},
            0.84,
            "air at 4 bar; common practice, no source",
        ),
    ),
)
