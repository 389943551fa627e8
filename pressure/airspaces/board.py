"""The steps of a scenario's solution: is the space closed, which way does the difference run, what gives."""

from __future__ import annotations

from pressure.airspaces.injuries import INJURIES, NONE
from pressure.airspaces.model import LUNG_SHARE, filled_at, giving_way, outcome, way_needed
from pressure.airspaces.spaces import STIFF
from pressure.airspaces.telling import Case, chest_sentence
from pressure.formula import Symbol, computed, equation, given, result
from pressure.problem import Step
from pressure.walls import difference_step

_STIFFNESS = (
    "The stiff chest is only arithmetic: on deep breath-hold dives blood shifts into the chest, and trained "
    "divers go further. It is no depth to try."
)


def reasoning(of: Case, *, sized: bool) -> tuple[Step, ...]:
    """From the opening to the difference; with its size if ``sized``, or where the size decides."""
    opening = Step(why_open_or_shut(of))
    if outcome(of.circumstance, of.trip, of.named).side is None:
        return opening, _no_difference(of)
    if sized or chest_sentence(of):
        return opening, *_difference(of)
    return (opening,)


def why_open_or_shut(of: Case) -> str:
    """Whether gas can go the way it needs."""
    space, way = of.circumstance.space, way_needed(of.circumstance, of.trip)
    if chest_sentence(of):
        return (
            "On one breath the airway is shut, but lungs yield: their air takes less room, down to a limit."
        )
    if way is None:
        return f"Nothing changes round {space.text}: the diver stays, and the air in it stays too."
    if way in of.circumstance.shuts:
        return f"{_need(of)} It cannot: {space.opening} is {shut(of)}."
    if space.name == "outer-ear":
        return f"{_need(of)} There is none to move: water has filled the canal and passes the pressure on."
    return f"{_need(of)} It can: {space.opening} is open."


def no_supply_helps(of: Case) -> str:
    """What is wrong with taking a closed space for one that supplied air reaches."""
    space = of.circumstance.space
    return f"No supply, whatever its pressure, helps {space.text} where {space.opening} is {shut(of)}."


def shut(of: Case) -> str:
    """The word for what has happened to an opening."""
    return "cut off" if of.circumstance.cause in ("fall", "valve") else "shut"


def _need(of: Case) -> str:
    """Which way gas must go for the pressures to stay the same, and why."""
    text, way = of.circumstance.space.text, way_needed(of.circumstance, of.trip)
    if of.trip.start == of.trip.end:
        return f"Round {text} the water presses harder than the air at the open hose, so more gas must go in."
    if way == "in":
        return f"Round {text} the water presses harder and harder, so gas must go in."
    return f"Round {text} the water presses less and less, so gas must go out."


def _no_difference(of: Case) -> Step:
    if of.circumstance.filled == "surface":
        return Step(
            "The air shrinks below and has its old room again at the surface, never less than the limit and "
            "never more than a full breath: its pressure is the water's all the way."
        )
    return Step("So the pressure is the same on both sides, and no difference arises at any depth.")


def _difference(of: Case) -> tuple[Step, ...]:
    space, named = of.circumstance.space, of.named
    if space.yields != STIFF and outcome(of.circumstance, of.trip, named).side == "outside":
        return _stiff_chest(of)
    filled = filled_at(of.circumstance, of.trip)
    deeper, shallower = max(filled, of.trip.end), min(filled, of.trip.end)
    return (
        difference_step(
            f"With nothing giving way, the air in {space.text} keeps the pressure it had, and the difference "
            "is the water between the two depths. The atmosphere is in both and drops out.",
            deeper,
            shallower,
            named,
        ),
    )


def _stiff_chest(of: Case) -> tuple[Step, ...]:
    named, unit = of.named, of.named.pressure_unit
    inside, outside, air = (
        Symbol("P", "in", "inside"),
        Symbol("P", "abs", "absolute"),
        Symbol("P", "atm", "atmosphere"),
    )
    highest, deep = named.surface / LUNG_SHARE, named.absolute(of.trip.end)
    difference = Symbol("Δp")
    return (
        Step(
            "A full breath from the surface shrinks to a quarter and no further: by Boyle's law its pressure "
            "reaches four times the surface's.",
            equation(inside, air / given(LUNG_SHARE)),
            equation(inside, given(named.surface, unit) / given(LUNG_SHARE)),
            result(inside, highest, unit, "absolute", figures=4),
        ),
        Step(
            "The water presses harder than that.",
            equation(difference, outside - inside),
            equation(difference, computed(deep, unit, figures=4) - computed(highest, unit, figures=4)),
            result(difference, deep - highest, unit),
        ),
        Step(_STIFFNESS),
    )


def direction(of: Case) -> Step:
    """Which side presses, and what gives."""
    side = outcome(of.circumstance, of.trip, of.named).side
    space = of.circumstance.space
    giving = giving_way(of.circumstance, of.trip, of.named)
    if giving is None:
        return Step(f"Nothing pushes on the wall of {space.text}, so nothing gives.")
    where = f"round {space.text}" if side == "outside" else f"in {space.text}"
    return Step(f"The pressure is greater {where}. {giving.does} {giving.harm}")


def aftermath(of: Case) -> tuple[Step, ...]:
    """The injury by name, its signs, and the first response with its source; nothing for no injury."""
    name = of.escape or outcome(of.circumstance, of.trip, of.named).injury
    if name == NONE:
        return ()
    injury = INJURIES[name]
    return (
        Step(f"{injury.title}. Cause: {lowered(injury.cause)}"),
        Step(f"Signs: {lowered(injury.signs)}"),
        Step(f"Prevention: {lowered(injury.prevention)}"),
        Step(f"First response, in general terms: {lowered(injury.response)} Source: {injury.source}."),
    )


def lowered(sentence: str) -> str:
    return sentence[0].lower() + sentence[1:]
