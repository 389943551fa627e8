"""A diver, an air space open or shut, a way down or up: which injury comes of it?

After a lung has torn, signs are told as well, and asked is where its gas has gone.
"""

from __future__ import annotations

from functools import cache

from pressure.airspaces import board, telling
from pressure.airspaces.harmful import HARMFUL
from pressure.airspaces.harmless import ALL
from pressure.airspaces.injuries import CAUTION, ESCAPES, INJURIES, NONE
from pressure.airspaces.misreadings import right, wrong
from pressure.airspaces.model import outcome
from pressure.airspaces.telling import Case
from pressure.problem import Facts, Family, Option, PosedChoice, Problem, Step, System, WorkedExample

_TORN = tuple(each for each in HARMFUL if each.cause == "held breath")
_CASES = (*((each, "") for each in ALL), *((each, escape) for each in _TORN for escape in ESCAPES))
# A neighbour that the prompt has open: its injury on the way down, and on the way up.
_NEIGHBOURS = {
    "middle-ear": ("outer-ear-squeeze", "sinus-reverse"),
    "outer-ear": ("middle-ear-squeeze", "middle-ear-reverse"),
    "sinus": ("middle-ear-squeeze", "middle-ear-reverse"),
    "tooth": ("sinus-squeeze", "sinus-reverse"),
    "mask": ("tooth-squeeze", "sinus-reverse"),
    "suit": ("face-squeeze", "sinus-reverse"),
    "lungs": ("middle-ear-squeeze", "middle-ear-reverse"),
    "lung-part": ("middle-ear-squeeze", "middle-ear-reverse"),
    "helmet": ("tooth-squeeze", "sinus-reverse"),
}
_OPEN_ELSEWHERE = "That space is open by the prompt, so its gas follows the pressure round it."
_DEPTH_ALONE = (
    "Depth alone hurts no air space: one that is open, or that yields, stays at the water's pressure."
)
_SURFACE_BREATH = (
    "A breath from the surface shrinks below and only comes back to its old volume on the way up. It is air "
    "breathed in at depth that has too little room."
)


def _case(system: System, facts: Facts) -> Case:
    circumstance, escape = _CASES[int(facts["case"])]
    return telling.case(system, circumstance, int(facts["trip"]), escape)


def pose(system: System, facts: Facts) -> PosedChoice:
    of = _case(system, facts)
    foot = of.named.depth_unit
    told = of.circumstance.told
    if of.escape:
        rest = f"A lung tears. Soon after: {board.lowered(INJURIES[of.escape].signs)}"
        question = "By these signs, where has gas from the lung gone?"
    else:
        rest, question = telling.REST, "Which injury from pressure is to be expected?"
    return PosedChoice(
        situation=f"{telling.scene(int(facts['scene']), of.trip, foot)} {told} {rest}",
        convention=telling.chest_sentence(of),
        givens=telling.givens(of.trip, foot),
        question=question,
        options=_escapes(of.escape) if of.escape else _injuries(of),
        sense=telling.sense(of),
        caution=CAUTION,
    )


@cache
def _escapes(escape: str) -> tuple[Option, ...]:
    """Where the gas went, and the three other places with the signs that would tell of them."""
    found = INJURIES[escape]
    return (
        right(found.title, f"Its signs: {board.lowered(found.signs)}"),
        *(
            wrong(
                f"read-as-{other}",
                INJURIES[other].title,
                f"That would show otherwise: {board.lowered(INJURIES[other].signs)}",
            )
            for other in ESCAPES
            if other != escape
        ),
    )


@cache
def _injuries(of: Case) -> tuple[Option, ...]:
    injury = outcome(of.circumstance, of.trip, of.named).injury
    others = _when_unhurt(of) if injury == NONE else _when_hurt(of)
    return right(telling.title(injury), _why_right(of, injury)), *others


def _why_right(of: Case, injury: str) -> str:
    if injury == NONE:
        return (
            board.why_open_or_shut(of)
            if not of.circumstance.shuts
            else "The air is shut in, but keeps the pressure round it."
        )
    return f"{board.why_open_or_shut(of)} {INJURIES[injury].cause}"


def _neighbour(of: Case, *, down: bool) -> Option:
    below, above = _NEIGHBOURS[of.circumstance.place]
    return wrong("other-space", telling.title(below if down else above), _OPEN_ELSEWHERE)


def _when_hurt(of: Case) -> tuple[Option, ...]:
    space = of.circumstance.space
    down = outcome(of.circumstance, of.trip, of.named).side == "outside"
    other_way = space.blown if down else space.pressed
    swapped = "wrong-direction" if other_way else "ways-swapped"
    return (
        wrong(
            swapped, telling.title(other_way.injury if other_way else "lung-overexpansion"), _other_way(down)
        ),
        wrong(
            "equal-because-breathing",
            telling.title(NONE),
            board.no_supply_helps(of),
        ),
        _neighbour(of, down=down),
    )


def _other_way(down: bool) -> str:
    """Why an injury of the other direction cannot be."""
    if down:
        return (
            "The water's pressure is the greater here. That injury needs the greater pressure in the space."
        )
    return "The pressure round the diver falls here. That injury needs the greater pressure round the space."


def _when_unhurt(of: Case) -> tuple[Option, ...]:
    space, down = of.circumstance.space, of.trip.end >= of.trip.start
    own = space.pressed if down else space.blown
    other = space.blown if down else space.pressed
    if of.circumstance.name == "lungs-return":
        blamed = wrong("surface-breath-for-compressed", telling.title("lung-overexpansion"), _SURFACE_BREATH)
    else:
        blamed = wrong(
            "blames-depth-alone", telling.title(own.injury if own else "lung-overexpansion"), _DEPTH_ALONE
        )
    return (
        blamed,
        wrong(
            "ways-swapped", telling.title(other.injury if other else "lung-overexpansion"), _other_way(down)
        ),
        _neighbour(of, down=down),
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    of = _case(problem.system, problem.facts)
    return *board.reasoning(of, sized=False), board.direction(of), *board.aftermath(of)


def _example(name: str, source: str, escape: str = "") -> WorkedExample:
    at = next(n for n, (each, gone) in enumerate(_CASES) if (each.name, gone) == (name, escape))
    return WorkedExample("us", {"case": float(at), "trip": 0.0, "scene": 0.0}, "right", source)


FAMILY = Family(
    slug="name-the-injury",
    edition=1,
    title="Which injury comes of it",
    topic="mechanism",
    axes={"us": telling.axes(len(_CASES)), "metric": telling.axes(len(_CASES))},
    pose=pose,
    solve=solve,
    examples=(
        _example(
            "ear-plugs", "after Edmonds et al., attribution inferred: squeeze of the outer ear by plugs"
        ),
        _example("lungs-held", "MSD Manual, Barotrauma (2023): a breath held on the way up tears the lung"),
        _example(
            "lungs-held",
            "US Navy Diving Manual, Revision 4 Change A, §19-3.1.1: swollen neck, changed voice",
            "subcutaneous-emphysema",
        ),
    ),
)
