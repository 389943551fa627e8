"""From a shut opening to an injury: put the events in order."""

from __future__ import annotations

from functools import cache

from pressure.airspaces import board, telling
from pressure.airspaces.chains import chain
from pressure.airspaces.harmful import HARMFUL
from pressure.airspaces.injuries import CAUTION
from pressure.airspaces.model import outcome
from pressure.airspaces.telling import Case
from pressure.problem import Facts, Family, Option, PosedOrder, Problem, Step, System

_CASES = tuple((each, escape) for each in HARMFUL for escape in telling.escapes_of(each))


def _case(system: System, facts: Facts) -> Case:
    circumstance, escape = _CASES[int(facts["case"])]
    return telling.case(system, circumstance, int(facts["trip"]), escape)


def pose(system: System, facts: Facts) -> PosedOrder:
    of = _case(system, facts)
    foot = of.named.depth_unit
    end = telling.title(of.escape or outcome(of.circumstance, of.trip, of.named).injury)
    return PosedOrder(
        situation=f"{telling.scene(int(facts['scene']), of.trip, foot)} {of.circumstance.told} "
        f"It ends in this: {board.lowered(end)}.",
        convention="",
        givens=telling.givens(of.trip, foot),
        question="Put the events in order, from the first to the last.",
        items=_items(of),
        sense="A shut opening alone hurts nobody: first the pressure changes, then a difference stands, then "
        "something gives.",
        caution=CAUTION,
    )


@cache
def _items(of: Case) -> tuple[Option, ...]:
    return tuple(Option(each.name, each.text, each.why) for each in chain(*of))


def solve(problem: Problem) -> tuple[Step, ...]:
    of = _case(problem.system, problem.facts)
    events = chain(*of)
    return (
        *(Step(f"{place}. {each.text} {each.why}") for place, each in enumerate(events, start=1)),
        *board.aftermath(of),
    )


FAMILY = Family(
    slug="chain-of-events",
    edition=1,
    title="The chain of events in an injury",
    topic="mechanism",
    level=3,
    axes={"us": telling.axes(len(_CASES)), "metric": telling.axes(len(_CASES))},
    pose=pose,
    solve=solve,
    examples=(),
)
