"""An air space was shut and a diver was hurt: what would have prevented it?"""

from __future__ import annotations

from functools import cache
from itertools import islice

from pressure.airspaces import board, telling
from pressure.airspaces.harmful import HARMFUL
from pressure.airspaces.injuries import CAUTION, NONE
from pressure.airspaces.measures import BELIEFS, OPENING, Measure, right_measure, taken
from pressure.airspaces.misreadings import right, wrong
from pressure.airspaces.model import outcome
from pressure.airspaces.telling import Case
from pressure.problem import Facts, Family, Option, PosedChoice, Problem, Step, System, WorkedExample

_ASHORE = ("well", "chest")


def _case(system: System, facts: Facts) -> Case:
    return telling.case(system, HARMFUL[int(facts["case"])], int(facts["trip"]))


def pose(system: System, facts: Facts) -> PosedChoice:
    of, trip = _case(system, facts), int(facts["trip"])
    foot = of.named.depth_unit
    return PosedChoice(
        situation=f"{telling.scene(int(facts['scene']), of.trip, foot)} {of.circumstance.told} "
        "The diver is hurt by a difference in pressure.",
        convention=telling.chest_sentence(of),
        givens=telling.givens(of.trip, foot),
        question="Which of these would have prevented it?",
        options=_options(of, trip),
        sense="Only what opens the closed space, or keeps it from being there at all, prevents the harm.",
        caution=CAUTION,
    )


@cache
def _options(of: Case, turn: int) -> tuple[Option, ...]:
    """The measure that helps, two beliefs that do not, one for another space; ``turn`` varies them."""
    helps = right_measure(of.circumstance)
    beliefs = islice(_turned([each for each in BELIEFS if _fails(each, of)], turn), 2)
    elsewhere = islice(_turned([each for each in OPENING if _is_for_another_space(each, of)], 5 * turn), 2)
    rest = [*beliefs, *elsewhere][:3]
    return right(helps.text, helps.why), *(_wrong(each, of) for each in rest)


def _turned(measures: list[Measure], turn: int) -> list[Measure]:
    at = turn % len(measures) if measures else 0
    return measures[at:] + measures[:at]


def _fails(measure: Measure, of: Case) -> bool:
    """Whether the model has the diver hurt all the same."""
    return outcome(*taken(measure, of.circumstance, of.trip), of.named).injury != NONE


def _is_for_another_space(measure: Measure, of: Case) -> bool:
    """Whether it opens only spaces other than the one that was shut, on such a trip, and so fails.

    Staying ashore is left out: it would spare anybody anything.
    """
    meant = [each for each in HARMFUL if each.cause in measure.mends]
    places, trips = {each.place for each in meant}, {each.trips for each in meant}
    like = of.circumstance.trips if of.circumstance.trips == "up" else "down"
    fits = of.circumstance.place not in places and like in trips and measure.name not in _ASHORE
    return fits and _fails(measure, of)


def _wrong(measure: Measure, of: Case) -> Option:
    if measure.misreading != "other-space":
        return wrong(measure.misreading, measure.text, measure.why)
    why = f"{measure.why} Shut here was another space: {of.circumstance.space.text}."
    return wrong("other-space", measure.text, why, told_apart=measure.name)


def solve(problem: Problem) -> tuple[Step, ...]:
    of = _case(problem.system, problem.facts)
    helps = right_measure(of.circumstance)
    return (
        *board.reasoning(of, sized=False),
        board.direction(of),
        Step(f"What prevents it: {board.lowered(helps.text)}. {helps.why}"),
        *board.aftermath(of),
    )


def _example(name: str, source: str) -> WorkedExample:
    at = next(n for n, each in enumerate(HARMFUL) if each.name == name)
    return WorkedExample("us", {"case": float(at), "trip": 0.0, "scene": 0.0}, "right", source)


FAMILY = Family(
    slug="what-prevents",
    edition=1,
    title="What would have prevented it",
    topic="mechanism",
    level=2,
    axes={"us": telling.axes(len(HARMFUL)), "metric": telling.axes(len(HARMFUL))},
    pose=pose,
    solve=solve,
    examples=(
        _example(
            "sinus-cold", "US Navy Diving Manual, Revision 4 Change A, §19-4.1.3: no diving with congestion"
        ),
        _example(
            "mask-forgotten", "US Navy Diving Manual, Revision 4 Change A, p. 19-9: by nasal exhalation"
        ),
    ),
)
