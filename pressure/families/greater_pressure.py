"""An air space, open or shut, on the way down or up: where is the pressure greater, and by how much?"""

from __future__ import annotations

from functools import cache

from pressure.airspaces import board, telling
from pressure.airspaces.harmless import ALL
from pressure.airspaces.injuries import CAUTION
from pressure.airspaces.misreadings import right, wrong
from pressure.airspaces.model import Side, filled_at, outcome
from pressure.airspaces.telling import Case
from pressure.laws.differences import across
from pressure.problem import Facts, Family, Option, PosedChoice, Problem, Step, System, WorkedExample
from pressure.units import shown

_NOTHING_GIVES = "Reckon as though nothing gave way."


def _case(system: System, facts: Facts) -> Case:
    return telling.case(system, ALL[int(facts["case"])], int(facts["trip"]))


def pose(system: System, facts: Facts) -> PosedChoice:
    of = _case(system, facts)
    foot = of.named.depth_unit
    return PosedChoice(
        situation=f"{telling.scene(int(facts['scene']), of.trip, foot)} {of.circumstance.told}",
        convention=f"{telling.chest_sentence(of) or of.named.sentence} {_NOTHING_GIVES}",
        givens=telling.givens(of.trip, foot),
        question=f"Where is the pressure greater at the end: in {of.circumstance.space.text}, or round it?"
        if of.circumstance.place != "lungs"
        else "Where is the pressure greater at the end: in the lungs, or round them?",
        options=_options(of),
        sense=telling.sense(of),
        caution=CAUTION,
    )


@cache
def _options(of: Case) -> tuple[Option, ...]:
    side, difference, _ = outcome(of.circumstance, of.trip, of.named)
    return (_unequal if side else _equal)(of, difference, side)


def _unequal(of: Case, difference: float, side: Side | None) -> tuple[Option, ...]:
    down = side == "outside"
    space = of.circumstance.space
    return (
        right(_says(of, side, difference), f"{board.why_open_or_shut(of)} {_why_so_much(of)}"),
        wrong(
            "wrong-direction",
            _says(of, "inside" if down else "outside", difference),
            f"The pressure round {space.text} {'is the greater' if down else 'has fallen'}, and the air in "
            "there could not follow.",
        ),
        wrong(
            "equal-because-breathing",
            _says(of, None, 0.0),
            board.no_supply_helps(of),
        ),
        wrong(
            "absolute-for-difference",
            _says(of, side, _highest(of)),
            "That is an absolute pressure. The other side presses back: take its pressure off.",
        ),
    )


def _why_so_much(of: Case) -> str:
    if telling.chest_sentence(of):
        return "From a quarter of the breath on, only the water's pressure grows."
    return "The water between the two depths makes the difference."


def _equal(of: Case, _difference: float, _side: Side | None) -> tuple[Option, ...]:
    deeper, shallower = max(of.trip), min(of.trip) if of.trip.start != of.trip.end else 0.0
    down = of.trip.end >= of.trip.start
    as_if_shut = across(of.named.gradient, deeper, shallower)
    sides: tuple[Side, Side] = ("outside", "inside") if down else ("inside", "outside")
    blamed, swapped = sides
    return (
        right(_says(of, None, 0.0), _why_equal(of)),
        wrong(
            "blames-depth-alone",
            _says(of, blamed, as_if_shut),
            "So much water lies between the depths, but a difference arises only where a space is shut and "
            "cannot yield.",
        ),
        wrong(
            "ways-swapped",
            _says(of, swapped, as_if_shut),
            f"Even a shut space would have the greater pressure {'round' if down else 'in'} it here, and "
            "this one follows the water.",
        ),
        wrong(
            "absolute-for-difference",
            _says(of, blamed, _highest(of)),
            "That is an absolute pressure. It stands on both sides here, and no difference is left.",
        ),
    )


def _why_equal(of: Case) -> str:
    if telling.chest_sentence(of):
        return "The lungs yield: their air takes less room below and has the water's pressure all the way."
    return board.why_open_or_shut(of)


def _highest(of: Case) -> float:
    """The absolute pressure at the deeper end."""
    return of.named.absolute(max(*of.trip, filled_at(of.circumstance, of.trip)))


def _says(of: Case, side: Side | None, difference: float) -> str:
    text = of.circumstance.space.text
    if side is None:
        return f"Neither: it is the same in {text} as outside"
    amount = shown(difference, of.named.pressure_unit)
    return f"Round {text}, by about {amount}" if side == "outside" else f"In {text}, by about {amount}"


def solve(problem: Problem) -> tuple[Step, ...]:
    of = _case(problem.system, problem.facts)
    return *board.reasoning(of, sized=True), board.direction(of)


def _example(system: System, name: str, trip: int, source: str) -> WorkedExample:
    at = next(n for n, each in enumerate(ALL) if each.name == name)
    return WorkedExample(system, {"case": float(at), "trip": float(trip), "scene": 0.0}, "right", source)


FAMILY = Family(
    slug="greater-pressure",
    edition=1,
    title="Which side has the greater pressure",
    topic="mechanism",
    axes={"us": telling.axes(len(ALL)), "metric": telling.axes(len(ALL))},
    pose=pose,
    solve=solve,
    examples=(
        _example(
            "us",
            "ear-plugs",
            0,
            "after Edmonds et al., attribution inferred: from 1 to 2 ATA the pressure round it is greater",
        ),
        _example(
            "metric", "lungs-supplied", 0, "supplied air has the water's pressure; common practice, no source"
        ),
    ),
)
