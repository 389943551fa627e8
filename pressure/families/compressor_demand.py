"""Several divers at one depth: how much free air must the compressor give?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.cylinders import FLOW_UNITS
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.supply import demand
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
from pressure.steps import atmospheres_step
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "The compressor on the work barge feeds {count} at {depth} of sea water; each takes {rate} at the "
    "pressure "
    "there.",
    "A gang of {count} is to work at {depth} of sea water on one compressor. Each helmet takes {rate}, "
    "measured "
    "at depth.",
    "Plan the air for {count} at {depth} of sea water: each needs {rate} as it is breathed at depth.",
)
_CAUTION = (
    "A standby diver, wear, heat and height take their share of a compressor; the employer's manual says how "
    "much more it must give. " + STANDARD
)


def pose(system: System, facts: Facts) -> Posed:
    conventions, flow = ALLOWED[system, "sea"], FLOW_UNITS[system]
    foot = conventions[0].depth_unit
    divers, rate, depth = facts["divers"], facts["rate"], facts[f"depth_{foot}"]
    scene = _SCENES[int(facts["scene"])].format(
        count=f"{divers:g} divers", rate=shown(rate, flow, given=True), depth=shown(depth, foot, given=True)
    )
    return Posed(
        situation=f"{scene} How much free air must it give, in {unit_text(flow)}?",
        convention=conventions[0].sentence,
        givens=(
            Given("N", "divers", Quantity(divers, "")),
            Given("C", "use of one diver at depth", Quantity(rate, flow)),
            Given("D", "depth", Quantity(depth, foot)),
        ),
        asked=Asked("Q", "free air needed", "flow", flow),
        accepted=tuple([demand(divers, rate, c.atmospheres(depth)) for c in conventions]),
        missteps=_missteps(divers, rate, depth, conventions),
        sense="A compressor takes in thin air: for one volume at depth it must swallow several at the "
        "surface.",
        caution=_CAUTION,
    )


def _missteps(
    divers: float, rate: float, depth: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    ratios, whole = [c.atmospheres(depth) for c in conventions], divers * rate
    return (
        slip(
            "volume-at-depth",
            "{typed} is what they take as measured at depth. The compressor takes in surface air: multiply "
            "by the "
            "absolute pressure in atmospheres.",
            whole,
        ),
        slip(
            "one-diver",
            f"{{typed}} feeds one diver. There are {divers:g}.",
            *[rate * ratio for ratio in ratios],
        ),
        slip(
            "gauge-ratio",
            "{typed} counts the water alone. The air at the surface presses too: add one atmosphere.",
            *[whole * (ratio - 1) for ratio in ratios],
        ),
        slip(
            "atmosphere-twice",
            "The atmosphere was counted twice. Add it once to the water's.",
            *[whole * (ratio + 1) for ratio in ratios],
        ),
        slip(
            "inverted-ratio",
            "{typed} is less than they breathe at depth. Free air takes more room: multiply by the "
            "atmospheres.",
            *[whole / ratio for ratio in ratios],
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named, facts = ALLOWED[problem.system, "sea"][0], problem.facts
    flow, depth = problem.asked.unit, facts[f"depth_{named.depth_unit}"]
    ratio, free = Symbol("n"), Symbol("Q")
    atmospheres = named.atmospheres(depth)
    return (
        atmospheres_step("Absolute pressure at depth, in atmospheres.", ratio, depth, named),
        Step(
            "Every volume breathed at depth is so many volumes of surface air, for every diver.",
            equation(free, Symbol("N") * (Symbol("C") * ratio)),
            equation(
                free, given(facts["divers"]) * (given(facts["rate"], flow) * computed(atmospheres, figures=4))
            ),
            result(free, problem.answer.value, flow),
        ),
    )


def _axes(rates: tuple[float, ...], foot: str, depths: range) -> tuple[Axis, ...]:
    return (
        Axis("divers", (2.0, 3.0, 4.0)),
        Axis("rate", rates),
        Axis(f"depth_{foot}", tuple(map(float, depths))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


FAMILY = Family(
    slug="compressor-demand",
    edition=1,
    title="Free air for several divers",
    topic="supply",
    level=2,
    axes={
        "us": _axes((1.0, 1.2, 1.4, 1.5, 1.8, 2.0, 2.5, 4.5), "ft", range(40, 166, 5)),
        "metric": _axes((30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 75.0, 125.0), "m", range(12, 51, 2)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {"divers": 1.0, "rate": 1.4, "depth_ft": 70.0, "scene": 0.0},
            4.370,
            "one diver at 70 ft; arithmetic from the US Navy Diving Manual's 7-4.1, Revision 4, Change A",
        ),
        WorkedExample(
            "us",
            {"divers": 2.0, "rate": 1.4, "depth_ft": 132.0, "scene": 0.0},
            14.0,
            "5 ata at 132 fsw, US Navy Diving Manual, ch. 12; two divers at 1.4 ft³/min",
        ),
        WorkedExample(
            "metric",
            {"divers": 3.0, "rate": 40.0, "depth_m": 30.0, "scene": 0.0},
            480.0,
            "three divers at 4 bar; common practice, no source",
        ),
    ),
)
