"""Water on one side of a face, air on the other; what force presses on it?"""

from __future__ import annotations

from typing import NamedTuple

from pressure.cautions import STANDARD
from pressure.formula import Symbol, Term, computed, equation, given, result
from pressure.laws.columns import SQUARE_INCHES, force
from pressure.problem import (
    Asked,
    Axis,
    Facts,
    Family,
    Given,
    Line,
    Posed,
    Problem,
    Quantity,
    Step,
    System,
    WorkedExample,
)
from pressure.slips import Misstep, slip
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED, Convention, Water

_SMALL = (
    "A view port of {area} in the side of a closed bell has its middle under {depth} of {water} water. The "
    "air inside is at {inside}.",
    "The cover of a cable hole, {area} in the wall of a pump chamber, has its middle under {depth} of "
    "{water} water. The air behind it is at {inside}.",
)
_LARGE = (
    "A hatch of {area} in the side of a sunken caisson has its middle under {depth} of {water} water. The "
    "air inside is at {inside}.",
    "A panel of {area} in the gate of a dry lock has its middle under {depth} of {water} water. The air "
    "behind it is kept at {inside}.",
)
_CAUTION = (
    "Such a force pins and kills: nobody comes near an opening before the pressures on both sides of it are "
    f"equal and the gate is locked. {STANDARD}"
)


class _Measures(NamedTuple):
    """The units of one kind of problem. ``scale`` makes pressure times area the answer in ``unit``.

    ``missed`` is the factor that is wrong when units of area are mixed up, ``mend`` what mends that.
    """

    face: str
    unit: str
    scale: float
    missed: float
    mend: str


_INCHES = (
    "{typed} mixes square inches and square feet. A pressure in psi acts on square inches: 144 to a ft²."
)
_METRES = "{typed} mixes square centimetres and square metres. 10,000 cm² make 1 m²."
_MEASURES: dict[tuple[System, float], _Measures] = {
    ("us", 0.0): _Measures("in2", "lb", 1.0, 1 / SQUARE_INCHES, _INCHES),
    ("us", 1.0): _Measures("ft2", "lb", SQUARE_INCHES, 1 / SQUARE_INCHES, _INCHES),
    ("metric", 1.0): _Measures("m2", "kN", 100.0, 1e-4, _METRES),
    ("si", 1.0): _Measures("m2", "kN", 1.0, 1e-4, _METRES),
}
_TAKE = {
    "us": "{sentence}",
    "metric": "{sentence} 1 bar is 100 kN on a square metre.",
    "si": "{sentence} Take gravity as 9.80665 m/s².",
}


def _waters(facts: Facts) -> tuple[Water, Water]:
    """The water of the problem, and the other one."""
    return ("fresh", "sea") if facts["is_fresh"] else ("sea", "fresh")


def pose(system: System, facts: Facts) -> Posed:
    water, other = _waters(facts)
    conventions = ALLOWED[system, water]
    named, measures = conventions[0], _MEASURES[system, facts["is_large"]]
    depth, inside = facts[f"depth_{named.depth_unit}"], facts[f"inside_{named.pressure_unit}"]
    area = facts["area"]
    deep = shown(depth, named.depth_unit, given=True)
    wide, air = (
        shown(area, measures.face, given=True),
        shown(inside, named.pressure_unit, "gauge", given=True),
    )
    scene = (_LARGE if facts["is_large"] else _SMALL)[int(facts["scene"])]
    net = [each.gauge(depth) - inside for each in conventions]
    face = area * measures.scale
    return Posed(
        situation=f"{scene.format(area=wide, depth=deep, water=water, inside=air)} With what force is it "
        f"pressed inwards, in {measures.unit}?",
        convention=_TAKE[system].format(sentence=named.sentence),
        givens=(
            Given("A", "area of the face", Quantity(area, measures.face)),
            Given("D", "depth of its middle", Quantity(depth, named.depth_unit)),
            Given("P_in", "pressure inside", Quantity(inside, named.pressure_unit, "gauge")),
        ),
        asked=Asked("F", "force on the face", "weight", measures.unit),
        accepted=tuple([force(each, face) for each in net]),
        missteps=(
            *_side_slips(depth, inside, face, conventions),
            *_area_slips(net, area, measures),
            _water_slip(water, *[(each.gauge(depth) - inside) * face for each in ALLOWED[system, other]]),
        ),
        sense="The atmosphere presses on both sides and cancels; only the difference pushes. Twice the area "
        "is twice the force.",
        caution=_CAUTION,
    )


def _side_slips(
    depth: float, inside: float, face: float, conventions: tuple[Convention, ...]
) -> tuple[Misstep, ...]:
    return (
        slip(
            "absolute-for-difference",
            "{typed} counts the atmosphere outside but not inside. It presses on both sides and cancels: "
            "take both as gauge pressures.",
            *[force(each.absolute(depth) - inside, face) for each in conventions],
        ),
        slip(
            "inside-left-out",
            "{typed} is the force of the water alone. The air inside pushes back: take it off first.",
            *[force(each.gauge(depth), face) for each in conventions],
        ),
        slip(
            "sides-added",
            "{typed} adds the two pressures. They push against each other: take one from the other.",
            *[force(each.gauge(depth) + inside, face) for each in conventions],
        ),
    )


def _area_slips(net: list[float], area: float, measures: _Measures) -> tuple[Misstep, ...]:
    mixed = slip(
        "area-unit", measures.mend, *[each * area * measures.scale * measures.missed for each in net]
    )
    left_out = slip(
        "area-left-out",
        f"{{typed}} is the force on 1 {unit_text(measures.face)}. Multiply it by the area.",
        *[each * measures.scale for each in net],
    )
    return mixed, left_out


def _water_slip(water: Water, *values: float) -> Misstep:
    if water == "sea":
        return slip("fresh-for-salt", "Sea water is the heavier: you used fresh water.", *values)
    return slip("salt-for-fresh", "Fresh water is the lighter: you used sea water.", *values)


def solve(problem: Problem) -> tuple[Step, ...]:
    named = ALLOWED[problem.system, _waters(problem.facts)[0]][0]
    unit, foot = named.pressure_unit, named.depth_unit
    depth, inside = problem.facts[f"depth_{foot}"], problem.facts[f"inside_{unit}"]
    outer, inner, net = Symbol("P", "w", "of the water"), Symbol("P", "in", "inside"), Symbol("Δp")
    water = named.gauge(depth)
    return (
        Step(
            "The water's own pressure at the middle of the face, as a gauge would show it.",
            *_water_lines(problem, named, depth, outer),
            result(outer, water, unit, "gauge", figures=4),
        ),
        Step(
            "The atmosphere presses on both sides and cancels. What is left is the difference.",
            equation(net, outer - inner),
            equation(net, computed(water, unit, figures=4) - given(inside, unit)),
            result(net, water - inside, unit, figures=4),
        ),
        _force_step(problem, net, water - inside, unit),
    )


def _water_lines(problem: Problem, named: Convention, depth: float, outer: Symbol) -> tuple[Line, Line]:
    foot, unit = named.depth_unit, named.pressure_unit
    if problem.system == "si":
        heavy = computed(named.gradient, "kPa/m", figures=4)
        return equation(outer, Symbol("ρ") * Symbol("g") * Symbol("D")), equation(
            outer, heavy * given(depth, foot)
        )
    ratio = given(depth, foot) / given(named.column, foot)
    relation = equation(outer, Symbol("P", "atm", "atmosphere") * (Symbol("D") / Symbol("h", "atm")))
    return relation, equation(outer, given(named.surface, unit) * ratio)


def _force_step(problem: Problem, net: Symbol, difference: float, unit: str) -> Step:
    measures = _MEASURES[problem.system, problem.facts["is_large"]]
    push = Symbol("F")
    numbers: Term = computed(difference, unit, figures=4) * given(problem.facts["area"], measures.face)
    if measures.face == "ft2":
        numbers = numbers * given(SQUARE_INCHES, "in²/ft²")
    elif problem.system == "metric":
        numbers = numbers * given(measures.scale, f"kN/{unit_text(measures.face)}/bar")
    return Step(
        "Force is pressure times area, in units that fit.",
        equation(push, net * Symbol("A")),
        equation(push, numbers),
        result(push, problem.answer.value, measures.unit),
    )


def _axes(
    length: str,
    depths: range,
    inside: tuple[str, tuple[float, ...]],
    areas: tuple[float, ...],
    sizes: tuple[float, ...],
) -> tuple[Axis, ...]:
    return (
        Axis(f"depth_{length}", tuple(map(float, depths))),
        Axis(f"inside_{inside[0]}", inside[1]),
        Axis("area", areas),
        Axis("is_large", sizes),
        Axis("is_fresh", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_SMALL))))),
    )


FAMILY = Family(
    slug="face-force",
    edition=1,
    title="Force on a hatch, a gate panel, a view port",
    topic="column of water",
    level=2,
    axes={
        "us": _axes(
            "ft", range(20, 101, 4), ("psi", (1.5, 2.0, 3.0, 4.0)), (6.0, 8.0, 10.0, 14.0), (0.0, 1.0)
        ),
        "metric": _axes("m", range(6, 31), ("bar", (0.1, 0.15, 0.2, 0.3)), (0.8, 1.2, 1.5, 2.0), (1.0,)),
        "si": _axes("m", range(6, 31), ("kPa", (10.0, 15.0, 20.0, 30.0)), (0.8, 1.2, 1.5, 2.0), (1.0,)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "us",
            {
                "depth_ft": 33.0,
                "inside_psi": 0.0,
                "area": 1.0,
                "is_large": 0.0,
                "is_fresh": 0.0,
                "scene": 0.0,
            },
            14.7,
            "33 ft of sea water press with 14.7 lb on a square inch; common practice, no source",
        ),
        WorkedExample(
            "si",
            {"depth_m": 40.0, "inside_kPa": 0.0, "area": 4e4, "is_large": 1.0, "is_fresh": 1.0, "scene": 1.0},
            1.57e7,
            "OpenStax College Physics 2e, §11.4: 40.0 m of fresh water on 4.00e4 m², 1.57e10 N",
        ),
    ),
)
