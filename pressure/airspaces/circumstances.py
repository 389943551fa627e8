"""What opens or closes an air space on a dive, as it is told in a prompt and as the model reckons with it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pressure.airspaces.spaces import SPACES, Space
from pressure.airspaces.trips import TripKind

Way = Literal["in", "out"]

IN: frozenset[Way] = frozenset({"in"})
OUT: frozenset[Way] = frozenset({"out"})
BOTH: frozenset[Way] = frozenset({"in", "out"})
OPEN: frozenset[Way] = frozenset()


@dataclass(frozen=True, slots=True)
class Circumstance:
    """One space on one kind of trip: which ways are shut, by what cause, and where its gas was let in.

    ``told`` says it in the prompt. ``filled`` is where the gas in the space last had the pressure round it:
    where the trip starts, or the surface. ``cause`` is empty where nothing harmful is shut.
    """

    name: str
    place: str
    trips: TripKind
    shuts: frozenset[Way]
    cause: str
    told: str
    filled: Literal["start", "surface"] = "start"

    @property
    def space(self) -> Space:
        return SPACES[self.place]
