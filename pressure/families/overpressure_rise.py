"""Full lungs are held shut; what rise makes the over-pressure that is said to tear them?"""

from __future__ import annotations

from pressure.cautions import STANDARD
from pressure.constants import GRAVITY, SEA_DENSITY, SEA_FT_PER_ATM, SEA_M_PER_BAR
from pressure.formula import Symbol, Term, equation, given, result
from pressure.laws.differences import allowed_in, height_for
from pressure.laws.lungs import TEARS_CM_WATER
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
from pressure.units import FACTORS, rounded, shown, unit_text
from pressure.waters import ALLOWED, Convention

_SCENES = (
    "A diver at {depth} of sea water holds a full breath and rises. One account has lungs tear when the "
    "pressure in them is {difference} above the water's.",
    "A full breath taken at {depth} of sea water is held on the way up. Take it that lungs tear at an "
    "over-pressure of {difference}.",
    "At {depth} of sea water a diver fills the lungs and shuts the throat. A text puts the tearing of lungs "
    "at an over-pressure of {difference}.",
)
# The unit that the over-pressure is given in, and the decimals that keep the numbers apart.
_UNITS: dict[System, tuple[tuple[str, int], ...]] = {
    "us": (("cmH2O", 0), ("mmHg", 0), ("psi", 2)),
    "metric": (("cmH2O", 0), ("mmHg", 0), ("kPa", 1)),
    "si": (("kPa", 2),),
}
_MERCURY_PER_WATER = FACTORS["mmHg"] / FACTORS["cmH2O"]
_CAUTION = (
    "Not a margin to use: lungs have torn on less than this, and never holding the breath is the only rule. "
    f"{STANDARD}"
)


def _over(system: System, facts: Facts) -> tuple[float, str]:
    """The over-pressure as the prompt gives it, with its unit."""
    unit, decimals = _UNITS[system][int(facts["given_in"])]
    return round(facts["overpressure_cmH2O"] * FACTORS["cmH2O"] / FACTORS[unit], decimals), unit


def pose(system: System, facts: Facts) -> Posed:
    difference, unit = _over(system, facts)
    conventions = allowed_in(system, "sea", unit)
    named = conventions[0]
    foot = named.depth_unit
    depth = facts[f"depth_{foot}"]
    scene = _SCENES[int(facts["scene"])].format(
        depth=shown(depth, foot, given=True), difference=shown(difference, unit, given=True)
    )
    return Posed(
        situation=f"{scene} The chest stretches no further. What rise makes that over-pressure, in {foot}?",
        convention=named.sentence,
        givens=(
            Given("D", "depth of the breath", Quantity(depth, foot)),
            Given("Δp", "over-pressure in the lungs", Quantity(difference, unit, "difference")),
        ),
        asked=Asked("Δh", "rise that makes the over-pressure", "length", foot),
        accepted=tuple([height_for(difference, c.gradient) for c in conventions]),
        missteps=_missteps(system, depth, difference, conventions),
        sense="A metre of sea water, 3 to 4 ft, is about a tenth of an atmosphere, whatever depth it lies "
        "at.",
        caution=_CAUTION,
    )


def _missteps(
    system: System, depth: float, difference: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    unit = conventions[0].pressure_unit
    missteps = (
        slip(
            "atmosphere-added",
            "{typed} has the atmosphere added to the over-pressure. It presses inside and outside alike: "
            "leave it out of a difference.",
            *[height_for(difference + c.surface, c.gradient) for c in conventions],
        ),
        slip(
            "depth-pressure-for-atmosphere",
            "The whole pressure at depth was counted for one atmosphere. A foot or a metre of water makes "
            "the same difference at every depth.",
            *[(depth + c.column) * difference / c.surface for c in conventions],
        ),
        _length_slip(system, difference, conventions),
        other_water("sea", *[height_for(difference, c.gradient) for c in allowed_in(system, "fresh", unit)]),
    )
    return missteps if unit not in _MIXED else (*missteps, _mixed_slip(unit, difference, conventions))


def _length_slip(system: System, difference: float, conventions: tuple[Convention, ...]) -> Misstep:
    foot, strange = ("ft", SEA_M_PER_BAR) if system == "us" else ("m", SEA_FT_PER_ATM)
    return slip(
        "other-length-unit",
        f"{strange.value:g} belongs to the other unit of length. In {foot} it takes "
        f"{conventions[0].column:.3g} of sea water to weigh as much as the atmosphere.",
        *[strange.value * difference / c.surface for c in conventions],
    )


_MIXED = {"cmH2O": _MERCURY_PER_WATER, "mmHg": 1 / _MERCURY_PER_WATER}


def _mixed_slip(unit: str, difference: float, conventions: tuple[Convention, ...]) -> Misstep:
    wrong = "mmHg" if unit == "cmH2O" else "cmH2O"
    return slip(
        "mercury-for-water",
        f"The over-pressure is given in {unit_text(unit)}; it was used as {unit_text(wrong)}. A centimetre "
        "of water is about three quarters of a millimetre of mercury.",
        *[height_for(difference * _MIXED[unit], c.gradient) for c in conventions],
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    difference, unit = _over(problem.system, problem.facts)
    named = allowed_in(problem.system, "sea", unit)[0]
    rise, over, foot = Symbol("Δh"), Symbol("Δp"), named.depth_unit
    why = (
        "The lungs keep the pressure of the depth where they were shut; the water's pressure falls with the "
        "rise. The atmosphere presses on both and drops out, and so does the depth."
    )
    if problem.system == "si":
        relation: Term = over / (Symbol("ρ") * Symbol("g"))
        weight = given(SEA_DENSITY.value, "kg/m3") * given(GRAVITY.value, "m/s²")
        substitution: Term = given(1000, "Pa/kPa") * given(difference, unit) / weight
    else:
        air, column = Symbol("P", "atm", "atmosphere"), Symbol("h", "atm", "of one atmosphere")
        relation = column * (over / air)
        substitution = given(named.column, foot) * (given(difference, unit) / given(named.surface, unit))
    return (
        Step(
            why,
            equation(rise, relation),
            equation(rise, substitution),
            result(rise, problem.answer.value, foot),
        ),
        Step(
            f"Published figures run from about {TEARS_CM_WATER[0]:g} to {TEARS_CM_WATER[1]:g} "
            f"{unit_text('cmH2O')}, here {_shortest_to_longest(problem.system)} {foot}; the texts say "
            "roughly 1 m, 3 to 4 ft. That is shallower than a swimming bath."
        ),
    )


def _shortest_to_longest(system: System) -> str:
    """The rises at both ends of the published range, to two figures."""
    gradient = ALLOWED[system, "sea"][0].gradient * FACTORS[ALLOWED[system, "sea"][0].pressure_unit]
    rises = [height_for(each * FACTORS["cmH2O"], gradient) for each in TEARS_CM_WATER]
    return " to ".join(rounded(each, 2) for each in rises)


def _axes(system: System, foot: str, depths: tuple[int, ...]) -> tuple[Axis, ...]:
    lowest, highest = map(int, TEARS_CM_WATER)
    return (
        Axis("overpressure_cmH2O", tuple(map(float, range(lowest, highest + 1, 2)))),
        Axis("given_in", tuple(map(float, range(len(_UNITS[system]))))),
        Axis(f"depth_{foot}", tuple(map(float, depths))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


def _example(
    system: System, pressure: float, given_in: float, answer: float, why: str, within: float
) -> WorkedExample:
    depth = "depth_ft" if system == "us" else "depth_m"
    facts = {"overpressure_cmH2O": pressure, "given_in": given_in, depth: 20.0, "scene": 0.0}
    return WorkedExample(system, facts, answer, why, within)


FAMILY = Family(
    slug="overpressure-rise",
    edition=1,
    title="The rise that tears a full lung",
    topic="lungs",
    level=2,
    axes={
        "us": _axes("us", "ft", (12, 15, 18, 20, 25, 30, 40, 50, 60)),
        "metric": _axes("metric", "m", (4, 5, 6, 8, 10, 12, 15, 20)),
        "si": _axes("si", "m", (4, 5, 6, 8, 10, 12, 15, 20)),
    },
    pose=pose,
    solve=solve,
    examples=(
        _example("us", 108.8, 1.0, 3.47, "80 mmHg is 3.47 fsw; text beside a demonstration, 2008", 0.005),
        _example("us", 125.1, 1.0, 4.0, "92 mmHg is 4 fsw; bench model in the same text", 0.005),
        _example("metric", 90.0, 0.0, 0.883, "90 cmH2O of an IAFF page is 0.883 msw by arithmetic", 0.005),
        _example("us", 110.0, 0.0, 3.5, "MSD Manual and texts: 3 to 4 ft, with 110 cmH2O recalled", 0.15),
        _example("metric", 100.0, 0.0, 1.0, "MSD Manual: about 1 m, with 95 to 110 cmH2O recalled", 0.1),
    ),
)
