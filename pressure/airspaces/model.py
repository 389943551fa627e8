"""What comes of a circumstance on a trip: the difference, its direction, its size, who gives way, the injury.

The one rule: gas in a space takes the pressure round it wherever the way that it needs is open. Where that
way is shut, a stiff space keeps the pressure at which it was filled, and a yielding one takes the pressure
round it by Boyle's law from its full volume down to the share it yields to, and no further.

Left out: speed (but for a supply that cannot follow), the bulge of walls that give, body temperature, and
the blood that shifts into the chest on deep breath-hold dives; because of that shift the limit of the lungs
is only arithmetic (``pressure/laws/lungs.py``).
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Literal, NamedTuple

from pressure.airspaces.circumstances import Circumstance, Way
from pressure.airspaces.injuries import NONE
from pressure.airspaces.spaces import STIFF, Giving
from pressure.airspaces.trips import Trip
from pressure.laws.boyle import pressure_after
from pressure.units import FACTORS
from pressure.waters import Convention

Side = Literal["outside", "inside"]

LUNG_SHARE = 0.25
"""The share of a full breath to which lungs shrink freely, as prompts have it: between the published ones."""

_NOTHING = 1e-9


class Outcome(NamedTuple):
    """Where the pressure is greater (None where it is the same), by how much, and the injury.

    ``difference`` is in the pressure unit of the convention, with nothing giving way.
    """

    side: Side | None
    difference: float
    injury: str


class Onset(NamedTuple):
    """How far a trip goes, at the least and at the most, before harm begins; in its depth unit."""

    soonest: float
    latest: float


def filled_at(circumstance: Circumstance, trip: Trip) -> float:
    """The depth at which the gas in the space last had the pressure round it."""
    return 0.0 if circumstance.filled == "surface" else trip.start


def way_needed(circumstance: Circumstance, trip: Trip) -> Way | None:
    """Which way gas must go for the pressures to stay the same; None where nothing changes."""
    filled = filled_at(circumstance, trip)
    if trip.end == filled:
        return None
    return "in" if trip.end > filled else "out"


def pressure_inside(
    circumstance: Circumstance, trip: Trip, named: Convention, share: float = LUNG_SHARE
) -> float:
    """Absolute pressure in the space at the end of the trip. ``share``: to which a yielding one shrinks."""
    outside = named.absolute(trip.end)
    if way_needed(circumstance, trip) not in circumstance.shuts:
        return outside
    full = named.absolute(filled_at(circumstance, trip))
    smallest = 1.0 if circumstance.space.yields == STIFF else share
    return min(max(outside, full), pressure_after(full, 1.0, smallest))


@cache
def outcome(circumstance: Circumstance, trip: Trip, named: Convention, share: float = LUNG_SHARE) -> Outcome:
    """What comes of it. ``trip`` is in the depth unit of ``named``."""
    difference = named.absolute(trip.end) - pressure_inside(circumstance, trip, named, share)
    if abs(difference) < _NOTHING:
        return Outcome(None, 0.0, NONE)
    side: Side = "outside" if difference > 0 else "inside"
    giving = _giving(circumstance, side)
    harms = giving and abs(difference) > _in_unit(giving.begins[0], named)
    return Outcome(side, abs(difference), giving.injury if giving and harms else NONE)


def giving_way(circumstance: Circumstance, trip: Trip, named: Convention) -> Giving | None:
    """What gives, or None where no difference arises."""
    side = outcome(circumstance, trip, named).side
    return _giving(circumstance, side) if side else None


def _giving(circumstance: Circumstance, side: Side) -> Giving | None:
    return circumstance.space.pressed if side == "outside" else circumstance.space.blown


def _in_unit(mercury: float, named: Convention) -> float:
    """So many mmHg in the pressure unit of the convention."""
    return mercury * FACTORS["mmHg"] / FACTORS[named.pressure_unit]


def onset(circumstance: Circumstance, trip: Trip, named: Convention) -> Onset | None:
    """How far the trip goes before harm begins, over all that is published; None where none comes of it."""
    giving = giving_way(circumstance, trip, named)
    if giving is None or outcome(circumstance, trip, named).injury == NONE:
        return None
    least, most = (_in_unit(each, named) / named.gradient for each in giving.begins)
    full = named.absolute(filled_at(circumstance, trip))
    yields = circumstance.space.yields if giving is circumstance.space.pressed else STIFF
    free = [(pressure_after(full, 1.0, share) - full) / named.gradient for share in yields]
    return Onset(min(free) + least, max(free) + most)


def first_to_give(
    circumstances: Iterable[Circumstance], trip: Trip, named: Convention
) -> Circumstance | None:
    """The one in which harm begins first, or None where no space is harmed.

    Raises ValueError where the published ranges overlap, so that nobody could say.
    """
    begun = [(found, each) for each in circumstances if (found := onset(each, trip, named))]
    if not begun:
        return None
    first, owner = min(begun, key=lambda pair: pair[0].latest)
    if any(other.soonest <= first.latest for other, each in begun if each is not owner):
        raise ValueError("Harm could begin in either space first: the published ranges overlap.")
    return owner
