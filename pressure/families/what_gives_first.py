"""Several air spaces: which is hurt first, if any? Or one that is shut: what in it gives way first?"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from pressure.airspaces import board, telling
from pressure.airspaces.circumstances import Circumstance
from pressure.airspaces.harmful import HARMFUL
from pressure.airspaces.harmless import ALL
from pressure.airspaces.injuries import CAUTION
from pressure.airspaces.misreadings import right, wrong
from pressure.airspaces.model import first_to_give, giving_way, outcome
from pressure.airspaces.spaces import SPACES, Giving
from pressure.airspaces.telling import Case
from pressure.problem import Facts, Family, Option, PosedChoice, Problem, Step, System, WorkedExample

# Three spaces on one trip, which is that of the first; none contradicts another.
_GROUPS = (
    "ear-cold mask-cleared lungs-supplied",
    "ear-cold suit-fed canals-wet",
    "ear-uncleared sinus-healthy mask-cleared",
    "ear-uncleared suit-fed lungs-supplied",
    "ear-plugs sinus-healthy mask-cleared",
    "ear-plugs lungs-supplied suit-fed",
    "ear-hood sinus-healthy lungs-supplied",
    "ear-hood mask-cleared suit-fed",
    "sinus-cold mask-cleared lungs-supplied",
    "sinus-cold canals-wet suit-fed",
    "tooth-hollow-down ear-cleared sinus-healthy",
    "tooth-hollow-down mask-cleared lungs-supplied",
    "mask-forgotten ear-cleared lungs-supplied",
    "mask-forgotten sinus-healthy suit-fed",
    "goggles ear-cleared lungs-supplied",
    "goggles sinus-healthy canals-wet",
    "suit-unconnected ear-cleared mask-cleared",
    "suit-unconnected sinus-healthy lungs-supplied",
    "suit-fold ear-cleared lungs-supplied",
    "suit-fold sinus-healthy mask-cleared",
    "ear-spray mask-spills lungs-breathing",
    "ear-spray suit-vents lungs-streaming",
    "sinus-spray ear-opens lungs-breathing",
    "sinus-polyp ear-opens mask-spills",
    "sinus-polyp suit-vents lungs-breathing",
    "tooth-hollow-up ear-opens sinus-opens",
    "tooth-hollow-up mask-spills lungs-streaming",
    "lungs-held ear-opens sinus-opens",
    "lungs-held mask-spills suit-vents",
    "lungs-panic sinus-opens mask-spills",
    "lungs-shared ear-opens mask-spills",
    "lungs-mucus ear-opens sinus-opens",
    "lungs-deep ear-uncleared sinus-healthy",
    "lungs-deep goggles ear-cleared",
    "lungs-deep tooth-hollow-down sinus-healthy",
    "lungs-deep suit-fold ear-cleared",
    "lungs-deep ear-plugs sinus-healthy",
    "lungs-deep ear-cleared sinus-healthy",
    "lungs-short ear-uncleared sinus-healthy",
    "lungs-short goggles ear-cleared",
    "lungs-short ear-cleared sinus-healthy",
    "lungs-return sinus-polyp ear-opens",
    "lungs-return ear-opens sinus-opens",
    "ear-cleared sinus-healthy mask-cleared",
    "lungs-supplied suit-fed ear-cleared",
    "canals-wet sinus-healthy lungs-supplied",
    "ear-opens sinus-opens lungs-breathing",
    "lungs-streaming mask-spills ear-opens",
    "suit-vents sinus-opens lungs-streaming",
)
_BY_NAME = {each.name: each for each in ALL}
_CASES: tuple[tuple[Circumstance, ...], ...] = (
    *(tuple(_BY_NAME[name] for name in group.split()) for group in _GROUPS),
    *((each,) for each in HARMFUL),
)


class _Told(NamedTuple):
    """The spaces in a case, with the trip and convention that they share."""

    together: tuple[Case, ...]

    @property
    def first(self) -> Case:
        """The case whose trip counts."""
        return self.together[0]


@cache
def _told(system: System, case: int, trip: int) -> _Told:
    first, *others = _CASES[case]
    lead = telling.case(system, first, trip)
    return _Told((lead, *(lead._replace(circumstance=each) for each in others)))


def _read(system: System, facts: Facts) -> _Told:
    return _told(system, int(facts["case"]), int(facts["trip"]))


def pose(system: System, facts: Facts) -> PosedChoice:
    told, scene = _read(system, facts), int(facts["scene"])
    of, alone = told.first, len(told.together) == 1
    foot = of.named.depth_unit
    turn = scene % len(told.together)
    spaces = " ".join([each.circumstance.told for each in told.together[turn:] + told.together[:turn]])
    question = "What gives way first?" if alone else "Which of these is hurt first, if any?"
    return PosedChoice(
        situation=f"{telling.scene(scene, of.trip, foot)} {spaces} {telling.REST}",
        convention=telling.chest_sentence(of),
        givens=telling.givens(of.trip, foot),
        question=question,
        options=_tissues(of) if alone else _spaces(told),
        sense="A stiff space that is shut is hurt within the first few feet; an open one never, a yielding "
        "one late.",
        caution=CAUTION,
    )


@cache
def _spaces(told: _Told) -> tuple[Option, ...]:
    of = told.first
    hurt = first_to_give([each.circumstance for each in told.together], of.trip, of.named)
    found = [each for each in told.together if each.circumstance is hurt]
    others = [_not_first(each) for each in told.together if each.circumstance is not hurt]
    if found:
        return _hurt_first(told, found[0]), *others, _none_hurt(found[0])
    return right("None of them", "Each is open, or yields, so its air keeps the pressure round it."), *others


def _hurt_first(told: _Told, found: Case) -> Option:
    also = [each for each in told.together if each is not found and _is_hurt(each)]
    why = board.why_open_or_shut(found)
    if also:
        why += (
            f" Its wall is stiff; {also[0].circumstance.space.text} yield at first and are hurt much deeper."
        )
    return right(_capital(found.circumstance.space.text), why)


def _is_hurt(of: Case) -> bool:
    return outcome(of.circumstance, of.trip, of.named).side is not None


def _not_first(of: Case) -> Option:
    space = of.circumstance.space
    if not of.circumstance.shuts:
        why = board.why_open_or_shut(of)
        return wrong("other-space", _capital(space.text), why, told_apart=space.name)
    why = (
        "Lungs on one breath yield: they shrink and take the water's pressure, down to about a quarter of it."
    )
    if of.trip.end < of.trip.start:
        why = "Lungs on one breath from the surface only come back to the room they had."
    return wrong("yielding-taken-for-stiff", _capital(space.text), why)


def _none_hurt(found: Case) -> Option:
    return wrong("closed-taken-for-open", "None of them", board.why_open_or_shut(found))


@cache
def _tissues(of: Case) -> tuple[Option, ...]:
    giving = giving_way(of.circumstance, of.trip, of.named)
    if giving is None:
        raise ValueError(f"Nothing gives way in {of.circumstance.name}.")
    space = of.circumstance.space
    return (
        right(_capital(giving.tissue), f"{giving.does} Soft tissue moves before anything stiff breaks."),
        wrong(
            "stiff-wall-gives",
            _capital(space.stiff),
            "That is stiff and bears far more. The soft part of the wall has moved long before.",
        ),
        _other_tissue(of, giving),
        wrong(
            "equal-because-breathing",
            "Nothing, for the pressures stay the same",
            board.no_supply_helps(of),
        ),
    )


def _other_tissue(of: Case, giving: Giving) -> Option:
    """What gives in the same space the other way; in a space with one way, what gives in a neighbour."""
    space = of.circumstance.space
    other = space.blown if giving is space.pressed else space.pressed
    if other:
        need = "in the space" if giving is space.pressed else "round the space"
        why = f"That needs the greater pressure {need}, and it runs the other way here."
        return wrong("wrong-direction", _capital(other.tissue), why)
    neighbour = SPACES["sinus" if space.name == "outer-ear" else "tooth"]
    why = f"That would be {neighbour.text}, which is open here."
    return wrong("other-space", _capital(neighbour.pressed.tissue), why)


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def solve(problem: Problem) -> tuple[Step, ...]:
    told = _read(problem.system, problem.facts)
    of = told.first
    openings = tuple(Step(board.why_open_or_shut(each)) for each in told.together)
    hurt = first_to_give([each.circumstance for each in told.together], of.trip, of.named)
    if hurt is None:
        return *openings, Step(
            "Nothing is shut that cannot yield, so no difference arises and nothing gives."
        )
    found = of._replace(circumstance=hurt)
    late = Step("A yielding wall gives no difference until it can yield no more; a stiff one from the start.")
    yields = any(telling.chest_sentence(each) for each in told.together)
    return *openings, *((late,) if yields else ()), board.direction(found), *board.aftermath(found)


def _example(case: tuple[str, ...], source: str) -> WorkedExample:
    at = next(n for n, each in enumerate(_CASES) if tuple(one.name for one in each) == case)
    return WorkedExample("us", {"case": float(at), "trip": 0.0, "scene": 0.0}, "right", source)


FAMILY = Family(
    slug="what-gives-first",
    edition=1,
    title="What is hurt first",
    topic="mechanism",
    level=2,
    axes={"us": telling.axes(len(_CASES)), "metric": telling.axes(len(_CASES))},
    pose=pose,
    solve=solve,
    examples=(
        _example(
            ("goggles", "ear-cleared", "lungs-supplied"),
            "after Edmonds et al., attribution inferred: goggles have no way to be equalised",
        ),
        _example(
            ("lungs-deep", "ear-uncleared", "sinus-healthy"),
            "a clinical summary page: pain in the ear within the first 15 ft; lungs from 28 m, arithmetic",
        ),
    ),
)
