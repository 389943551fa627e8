"""Vessels joined by one liquid, wide and narrow: where is the pressure greater, and what lifts what?"""

from __future__ import annotations

from pressure.constants import FRESH_WEIGHT, SURFACE_BAR
from pressure.formula import Symbol, computed, equation, given, result
from pressure.laws.columns import SQUARE_INCHES, force_passed_on, pressure_of
from pressure.problem import (
    Axis,
    Facts,
    Family,
    Given,
    Option,
    PosedChoice,
    Problem,
    Quantity,
    Step,
    System,
    WorkedExample,
)
from pressure.units import shown
from pressure.waters import FRESH_10_2_M

_JOINED = (
    "Two open shafts are sunk in the quay and joined at the foot by a pipe with its valve open. Seen from "
    "above, the one is {small} and the other {large}. Fresh water at rest stands {height} high in the first.",
    "A standpipe of {small} is joined to the foot of an open ballast tank of {large}. Fresh water at rest "
    "stands {height} high in the pipe.",
    "A narrow shaft of {small} and a flooded dry dock of {large} are joined below. The fresh water is at "
    "rest and stands {height} above the floor of both, as a mark in the shaft shows.",
)
_JACKS = (
    "A jack for setting gate panels has a small piston of {small} and a large one of {large} at the same "
    "level. The pump handle pushes the small one with {push}.",
    "Two cylinders full of oil are joined by a hose and lie level. A piston of {small} is pushed with "
    "{push}; the other piston is {large}.",
    "A hand press in the workshop pushes oil with a piston of {small} and {push}. The ram, at the same "
    "level, is {large}.",
)
_UNITS = {"us": ("ft", "in2", "ft2", "lb", "psi"), "metric": ("m", "cm2", "m2", "kN", "bar")}
_BAR_PER_KN_CM2 = 100.0
"""One kilonewton on a square centimetre is 100 bar."""
_TAKE = {
    "us": ("Take fresh water as 62.4 lb/ft³.", "Leave out friction and the weight of pistons and oil."),
    "metric": (
        "Take 10.2 m of fresh water per bar.",
        "Leave out friction and the weight of pistons and oil.",
    ),
}


def pose(system: System, facts: Facts) -> PosedChoice:
    return (_pose_jack if facts["is_jack"] else _pose_joined)(system, facts)


def _areas(facts: Facts) -> tuple[float, float]:
    return facts["area"], facts["area"] * facts["times"]


def _foot_pressure(system: System, height: float) -> float:
    """Gauge pressure at the foot of fresh water, psi under feet or bar under metres."""
    if system == "us":
        return height * FRESH_WEIGHT.value / SQUARE_INCHES
    return FRESH_10_2_M.gauge(height) * SURFACE_BAR.value


def _pose_joined(system: System, facts: Facts) -> PosedChoice:
    foot, _, face, _, unit = _UNITS[system]
    small, large = _areas(facts)
    height = facts["size"]
    return PosedChoice(
        situation=_JOINED[int(facts["scene"])].format(
            small=shown(small, face, given=True),
            large=shown(large, face, given=True),
            height=shown(height, foot, given=True),
        ),
        convention=_TAKE[system][0],
        givens=(
            Given("A₁", "area of the narrow one", Quantity(small, face)),
            Given("A₂", "area of the wide one", Quantity(large, face)),
            Given("h", "height of the water", Quantity(height, foot)),
        ),
        question="What is so at the foot of the two?",
        options=_joined_options(_foot_pressure(system, height), facts["times"], unit),
        sense="Water at rest finds one level; were the pressure unequal at the foot, it would flow.",
    )


def _joined_options(pressure: float, times: float, unit: str) -> tuple[Option, ...]:
    told, less, more, half = (
        shown(each, unit, "gauge") for each in (pressure, pressure / times, pressure * times, pressure / 2)
    )
    return (
        Option(
            "level-equal",
            f"The pressure is the same under both, {told}.",
            "At one level of a liquid at rest the pressure is everywhere the same; height makes it, not "
            "width.",
        ),
        Option(
            "wider-gives-more",
            f"It is {told} under the narrow one and {more} under the wide one, which holds more water.",
            "The wide one holds more water, but on as much more floor: each unit of area carries the same.",
            "wider was thought to press harder",
        ),
        Option(
            "narrower-gives-more",
            f"It is {told} under the narrow one and {less} under the wide one, where the water spreads out.",
            "The wide one has more floor, but more water on it too: each unit of area carries the same.",
            "narrower was thought to press harder",
        ),
        Option(
            "pressure-shared",
            f"The two share the pressure: {half} under each.",
            "Joining two vessels shares nothing out: each has the full height of water above its foot.",
            "the pressure was thought to be shared out",
        ),
    )


def _push(system: System, facts: Facts) -> float:
    """The force on the small piston, lb or kN."""
    return round(facts["size"] * (10 if system == "us" else 0.1), 6)


def _pose_jack(system: System, facts: Facts) -> PosedChoice:
    _, face, _, weight, _ = _UNITS[system]
    small, large = _areas(facts)
    push = _push(system, facts)
    return PosedChoice(
        situation=_JACKS[int(facts["scene"])].format(
            small=shown(small, face, given=True),
            large=shown(large, face, given=True),
            push=shown(push, weight, given=True),
        ),
        convention=_TAKE[system][1],
        givens=(
            Given("A₁", "area of the small piston", Quantity(small, face)),
            Given("A₂", "area of the large piston", Quantity(large, face)),
            Given("F₁", "force on the small piston", Quantity(push, weight)),
        ),
        question="What is so at the large piston?",
        options=_jack_options(system, push, small, large),
        sense="Nothing is won for nothing: the large piston moves as much less as it pushes more.",
    )


def _jack_options(system: System, push: float, small: float, large: float) -> tuple[Option, ...]:
    _, _, _, weight, unit = _UNITS[system]
    times, scale = large / small, 1.0 if system == "us" else _BAR_PER_KN_CM2
    pressure = pressure_of(push, small) * scale
    told, less, more = (shown(each, unit) for each in (pressure, pressure / times, pressure * times))
    return (
        Option(
            "level-equal",
            f"The pressure is {told}, as under the small one; it lifts "
            f"{shown(force_passed_on(push, small, large), weight)}.",
            "A closed liquid passes pressure on unchanged; on a larger area it makes a larger force.",
        ),
        Option(
            "same-force",
            f"The force is the same, {shown(push, weight, given=True)}; the pressure is only {less}.",
            "It is the pressure that is passed on, not the force. On a larger area it makes a larger force.",
            "the force was thought to be passed on unchanged",
        ),
        Option(
            "wider-gives-more",
            f"The pressure is {more} there, greater as the area is.",
            "The oil is joined and at one level, so its pressure is one. The force grows, not the pressure.",
            "wider was thought to press harder",
        ),
        Option(
            "inverted-ratio",
            f"The pressure is {told}, but it lifts only {shown(push / times, weight)}.",
            "The ratio of the areas is upside down: pressure times the larger area is the larger force.",
            "the ratio was upside down",
        ),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    return (_solve_jack if problem.facts["is_jack"] else _solve_joined)(problem)


def _solve_joined(problem: Problem) -> tuple[Step, ...]:
    foot, _, _, _, unit = _UNITS[problem.system]
    height, reading = problem.facts["size"], Symbol("P", "g", "gauge")
    pressure = _foot_pressure(problem.system, height)
    if problem.system == "us":
        relation = Symbol("w") * Symbol("h") / given(SQUARE_INCHES, "in²/ft²")
        numbers = given(FRESH_WEIGHT.value, "lb/ft3") * given(height, foot) / given(SQUARE_INCHES, "in²/ft²")
    else:
        relation = Symbol("h") / Symbol("h", "bar", "of one bar")
        numbers = given(height, foot) / given(FRESH_10_2_M.column, "m/bar")
    return (
        Step(
            "The water is joined and at rest. If it pressed harder at one end of the pipe it would flow, "
            "so at one level the pressure is one."
        ),
        Step(
            "Height and weight of the water make the pressure; the area is not in it.",
            equation(reading, relation),
            equation(reading, numbers),
            result(reading, pressure, unit, "gauge"),
        ),
    )


def _solve_jack(problem: Problem) -> tuple[Step, ...]:
    _, face, _, weight, unit = _UNITS[problem.system]
    small, large = _areas(problem.facts)
    push = _push(problem.system, problem.facts)
    to_unit = 1.0 if problem.system == "us" else _BAR_PER_KN_CM2
    pressure = pressure_of(push, small)
    oil, load = Symbol("P"), Symbol("F", "2")
    quotient = given(push, weight) / given(small, face)
    shown_pressure = computed(pressure * to_unit, unit, figures=4) * given(large, face)
    if problem.system == "metric":
        quotient = quotient * given(_BAR_PER_KN_CM2, "bar·cm²/kN")  # type: ignore[assignment]
        shown_pressure = shown_pressure / given(_BAR_PER_KN_CM2, "bar·cm²/kN")  # type: ignore[assignment]
    return (
        Step(
            "The small piston makes the pressure: force over area.",
            equation(oil, Symbol("F", "1") / Symbol("A", "1")),
            equation(oil, quotient),
            result(oil, pressure * to_unit, unit, figures=4),
        ),
        Step(
            "The oil passes it on unchanged at one level. On the large piston it makes a force as much "
            "larger as the area.",
            equation(load, oil * Symbol("A", "2")),
            equation(load, shown_pressure),
            result(load, force_passed_on(push, small, large), weight),
        ),
    )


def _axes(sizes: tuple[float, ...], areas: tuple[float, ...]) -> tuple[Axis, ...]:
    return (
        Axis("size", sizes),
        Axis("area", areas),
        Axis("times", (3.0, 4.0, 5.0, 8.0, 12.0)),
        Axis("is_jack", (0.0, 1.0)),
        Axis("scene", tuple(map(float, range(len(_JACKS))))),
    )


FAMILY = Family(
    slug="level-surfaces",
    edition=1,
    title="At one level, one pressure",
    topic="column of water",
    axes={
        "us": _axes(tuple(map(float, range(4, 25))), (1.0, 1.5, 2.0, 2.5, 4.0)),
        "metric": _axes(tuple(map(float, range(2, 14))), (1.0, 1.5, 2.0, 2.5, 4.0)),
    },
    pose=pose,
    solve=solve,
    examples=(
        WorkedExample(
            "metric",
            {"size": 5.0, "area": 0.19635, "times": 25.0, "is_jack": 1.0, "scene": 1.0},
            "level-equal",
            "OpenStax College Physics 2e, §11.5: 500 N on a cylinder of 0.500 cm makes 1.25e4 N on 2.50 cm",
        ),
        WorkedExample(
            "us",
            {"size": 10.0, "area": 2.0, "times": 4.0, "is_jack": 0.0, "scene": 0.0},
            "level-equal",
            "a liquid at rest presses equally at one level; common practice, no source",
        ),
    ),
)
