"""A full breath shrinks until only the residual volume is left; at what depth?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.constants import SEA_FT_PER_ATM, SEA_M_PER_BAR
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.lungs import residual_depth
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
from pressure.units import shown
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A breath-hold diver's lungs hold {total} when full, and {residual} stay after the hardest breath out.",
    "The unit's physician measures a diver's total lung capacity as {total} and the residual volume as "
    "{residual}.",
    "A swimmer's chest holds {total} after a full breath and cannot be pressed below {residual}, the "
    "residual volume.",
)
_CAUTION = (
    f"No depth to dive to: the chest can be hurt before it and a faint can come at any depth. {STANDARD}"
)


def pose(system: System, facts: Facts) -> Posed:
    conventions = ALLOWED[system, "sea"]
    foot = conventions[0].depth_unit
    total, residual = facts["total_L"], facts["residual_L"]
    scene = _SCENES[int(facts["scene"])].format(
        total=shown(total, "L", given=True), residual=shown(residual, "L", given=True)
    )
    return Posed(
        situation=f"{scene} By Boyle's law alone, at what depth of sea water would a full breath held from "
        f"the surface shrink to the residual volume, in {foot}?",
        convention=conventions[0].sentence,
        givens=(
            Given("V_full", "volume of the full lungs", Quantity(total, "L")),
            Given("V_res", "residual volume", Quantity(residual, "L")),
        ),
        asked=Asked("D", "depth at which the residual volume is reached", "length", foot),
        accepted=tuple([residual_depth(total, residual, c.column) for c in conventions]),
        missteps=_missteps(system, total, residual, conventions),
        sense="Down to half the full volume takes one atmosphere of water; down to a quarter, three.",
        caution=_CAUTION,
    )


def _missteps(
    system: System, total: float, residual: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    named, columns = conventions[0], [c.column for c in conventions]
    ratio, foot = total / residual, named.depth_unit
    strange = SEA_M_PER_BAR.value if system == "us" else SEA_FT_PER_ATM.value
    return (
        slip(
            "atmosphere-kept",
            "The ratio of the volumes is the absolute pressure in atmospheres, and the air makes the first "
            "of them. Take one off before you turn it into depth.",
            *[column * ratio for column in columns],
        ),
        slip(
            "inverted-ratio",
            "The ratio is upside down: the pressure grows as many times as the breath shrinks. Divide the "
            "full volume by the residual volume.",
            *[column / ratio for column in columns],
        ),
        slip(
            "fixed-share",
            "The breath does not lose the same for every atmosphere: half goes in the first, less in each "
            "after it. Take the ratio of the volumes.",
            *[2 * column * (1 - 1 / ratio) for column in columns],
        ),
        slip(
            "atmospheres-for-depth",
            f"{{typed}} counts the atmospheres of water. Each of them is {named.column:g} {foot} of sea.",
            ratio - 1,
        ),
        slip(
            "other-length-unit",
            f"{strange:g} belongs to the other unit of length. In {foot} it takes {named.column:g} of sea "
            "water to weigh as much as the atmosphere.",
            strange * (ratio - 1),
        ),
        other_water("sea", *[(ratio - 1) * c.column for c in ALLOWED[system, "fresh"]]),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, "sea"][0]
    total, residual = problem.facts["total_L"], problem.facts["residual_L"]
    ratio, deep, column = Symbol("n"), Symbol("D"), Symbol("h", "atm", "of one atmosphere")
    full, left = Symbol("V", "full"), Symbol("V", "res", "residual")
    return (
        Step(
            "Boyle's law: the breath shrinks as many times as the absolute pressure grows.",
            equation(ratio, full / left),
            equation(ratio, given(total, "L") / given(residual, "L")),
            result(ratio, total / residual, "", figures=4),
        ),
        Step(
            f"One of these atmospheres is the air's; each of the others is {named.column:g} "
            f"{named.depth_unit} of sea water.",
            equation(deep, column * (ratio - given(1))),
            equation(
                deep,
                given(named.column, named.depth_unit) * (computed(total / residual, figures=4) - given(1)),
            ),
            result(deep, problem.answer.value, named.depth_unit),
        ),
        Step(
            "This is only arithmetic for a rigid chest: trained breath-hold divers pass it, because blood "
            "shifts into the chest and takes up room."
        ),
    )


_AXES = (
    Axis("total_L", tuple(n / 10 for n in range(42, 71))),
    Axis("residual_L", tuple(n / 20 for n in range(20, 35))),
    Axis("scene", tuple(map(float, range(len(_SCENES))))),
)


def _example(system: System, total: float, residual: float, answer: float, why: str) -> WorkedExample:
    return WorkedExample(
        system, {"total_L": total, "residual_L": residual, "scene": 0.0}, answer, why, within=0.02
    )


_BOOK = "capacity of OpenStax Anatomy and Physiology 2e, §22.3, residual volume recalled; depth by arithmetic"

FAMILY = Family(
    slug="residual-volume-depth",
    edition=1,
    title="Where a full breath reaches the residual volume",
    topic="lungs",
    level=2,
    axes={"us": _AXES, "metric": _AXES},
    pose=pose,
    solve=solve,
    examples=(
        _example("us", 6.0, 1.2, 132.0, _BOOK),
        _example("metric", 6.0, 1.2, 40.0, _BOOK),
        _example("metric", 4.2, 1.1, 28.0, _BOOK),
        _example("metric", 6.0, 1.5, 30.0, "a hyperbaric clinic's page: a quarter is left at about 30 m"),
        _example("us", 6.0, 1.5, 99.0, "the same quarter in feet, by arithmetic"),
    ),
)
