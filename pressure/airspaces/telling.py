"""The words of a prompt: where the diver is, the way taken, what is open and shut."""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from pressure.airspaces.circumstances import Circumstance
from pressure.airspaces.injuries import ESCAPES, INJURIES
from pressure.airspaces.model import outcome
from pressure.airspaces.trips import EACH, TRIPS, Trip
from pressure.problem import Axis, Given, Quantity, System
from pressure.units import shown
from pressure.waters import ALLOWED, Convention

SCENES = (
    "At the sill of the harbour lock a diver {moves}.",
    "On a survey of the quay wall a diver {moves}.",
    "At the outfall of the works a diver {moves}.",
    "On a job at the moorings a diver {moves}.",
)
REST = "Take every other air space as open."
STIFF_CHEST = (
    "Take the lungs as shrinking freely down to a quarter of a full breath, and the chest as stiff below "
    "that."
)


class Case(NamedTuple):
    """One circumstance on one trip, under the first convention of the system, and where gas escapes to."""

    circumstance: Circumstance
    trip: Trip
    named: Convention
    escape: str = ""


def named_in(system: System) -> Convention:
    return ALLOWED[system, "sea"][0]


@cache
def case(system: System, circumstance: Circumstance, trip: int, escape: str = "") -> Case:
    """The case with that one of the trips which the circumstance goes with."""
    return Case(circumstance, TRIPS[system][circumstance.trips][trip], named_in(system), escape)


def axes(cases: int) -> tuple[Axis, ...]:
    """The grid that the scenario families share: which case, which trip, which scene."""
    sizes = {"case": cases, "trip": EACH, "scene": len(SCENES)}
    return tuple(Axis(name, tuple(map(float, range(size)))) for name, size in sizes.items())


@cache
def scene(number: int, trip: Trip, foot: str) -> str:
    """The sentence that sets the scene, with both depths as given."""
    return SCENES[number].format(moves=_moves(trip, foot))


def _moves(trip: Trip, foot: str) -> str:
    start, end = (shown(depth, foot, given=True) if depth else "the surface" for depth in trip)
    if trip.start == trip.end:
        return f"works at {end} in the sea"
    way = "goes down" if trip.end > trip.start else "comes up"
    return f"{way} in the sea from {start} to {end}"


@cache
def givens(trip: Trip, foot: str) -> tuple[Given, ...]:
    """The depths that the scene states, the surface left out."""
    if trip.start == trip.end:
        return (Given("D", "depth", Quantity(trip.end, foot)),)
    ends = (("D₁", "depth it starts from", trip.start), ("D₂", "depth it ends at", trip.end))
    return tuple(Given(symbol, meaning, Quantity(depth, foot)) for symbol, meaning, depth in ends if depth)


def chest_sentence(of: Case) -> str:
    """What a prompt assumes about a breath from the surface, whose size decides; nothing for other cases."""
    if of.circumstance.filled == "surface" and of.circumstance.place == "lungs":
        return f"{of.named.sentence} {STIFF_CHEST}"
    return ""


def sense(of: Case) -> str:
    """One sentence that would catch a wrong answer."""
    if outcome(of.circumstance, of.trip, of.named).side is None:
        return "Where gas can follow the water's pressure, or the wall can, no difference arises."
    return (
        "Only a closed space is hurt: on the way down the pressure is greater round it, on the way up in it."
        if of.trip.start != of.trip.end
        else "Air open to the surface has only the surface's pressure, however deep the diver is."
    )


def tears(circumstance: Circumstance, trip: Trip, named: Convention) -> bool:
    """Whether a lung tears, so that its gas may go by any of the ways of escape."""
    return outcome(circumstance, trip, named).injury == "lung-overexpansion"


def escapes_of(circumstance: Circumstance) -> tuple[str, ...]:
    """Where the gas may go: one nothing for what tears no lung."""
    return ESCAPES if tears(*case("us", circumstance, 0)[:3]) else ("",)


def title(injury: str) -> str:
    return INJURIES[injury].title
