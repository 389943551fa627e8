"""What would have prevented an injury: a measure opens certain causes, or changes the trip.

Sources: US Navy Diving Manual, Revision 4 Change A, p. 19-9 (no diving with congestion; mask by the nose);
a web copy of Edmonds et al., Diving and Subaquatic Medicine, attribution inferred (plugs, hoods, goggles,
non-return valve); the rest: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from pressure.airspaces.circumstances import OPEN, Circumstance
from pressure.airspaces.trips import Trip


@dataclass(frozen=True, slots=True)
class Measure:
    """``mends`` are the causes it does away with, or might; ``share`` is what is left of the trip.

    ``why`` says what it does; where it is a belief that helps in no way, ``misreading`` names that.
    """

    name: str
    text: str
    mends: frozenset[str]
    why: str
    misreading: str = "other-space"
    share: float = 1.0


def _opens(name: str, text: str, why: str, *causes: str) -> Measure:
    return Measure(name, text, frozenset(causes), why)


# The first that names a cause is the one that a prompt takes as right; the others might help, which keeps
# them from standing there as wrong.
OPENING: tuple[Measure, ...] = (
    _opens(
        "chest",
        "Staying out of the water until the chest is well and a doctor agrees",
        "It lets every part of the lungs empty freely.",
        "mucus",
    ),
    _opens(
        "well",
        "Staying out of the water until nose and ears are clear without any medicine",
        "It keeps the openings of ears and sinuses from swelling shut.",
        "congestion",
        "spray",
        "mucus",
    ),
    _opens(
        "clear-ears",
        "Clearing the ears early and often on the way down",
        "It lets air into the middle ears, where the tubes can open.",
        "uncleared",
        "congestion",
    ),
    _opens(
        "no-plugs",
        "Leaving the ear plugs ashore",
        "It leaves the ear canals open, so that water fills them.",
        "plugs",
    ),
    _opens(
        "wet-hood",
        "Letting water in under the hood",
        "It fills the ear canals with water in place of shut-in air.",
        "hood",
    ),
    _opens(
        "dentist",
        "Having every hollow tooth filled before diving",
        "It leaves no air inside a tooth.",
        "hollow tooth",
    ),
    _opens(
        "nose-breath",
        "Breathing out a little through the nose into the mask on the way down",
        "It lets air into a mask that takes in the nose.",
        "nose",
    ),
    _opens(
        "nose-mask",
        "Wearing a mask that takes in the nose, and breathing out into it",
        "It gives the pocket before the eyes a way for air.",
        "goggles",
        "nose",
    ),
    _opens(
        "suit-gas",
        "Connecting the dry suit and letting in gas on the way down",
        "It makes up the gas of the suit as the water presses it together.",
        "suit gas",
    ),
    _opens(
        "no-fold",
        "Smoothing out the dry suit under its straps before the dive",
        "It leaves no pocket of the suit cut off from the rest.",
        "fold",
    ),
    _opens(
        "turn-back",
        "Turning back long before the lungs are down to a quarter of the breath",
        "It keeps to depths where the chest can follow the shrinking lungs.",
        "too deep",
    ),
    _opens(
        "lowering",
        "Being lowered on a stage, no faster than the supply can follow",
        "It lets the pressure in the helmet keep up with the water.",
        "fall",
        "uncleared",
    ),
    _opens(
        "valve-test",
        "Fitting a sound non-return valve and testing it before the dive",
        "It keeps the air where it is when a hose bursts.",
        "valve",
    ),
    _opens(
        "surgeon",
        "Having the growth in the nose removed before diving",
        "It leaves the passage from the sinus free both ways.",
        "polyp",
    ),
    _opens(
        "breathe",
        "Never holding the breath, with air going in and out or streaming out all the way up",
        "It keeps the airway open, so that the growing air can leave.",
        "held breath",
    ),
)
"""Measures that open a space."""

BELIEFS: tuple[Measure, ...] = (
    Measure(
        "steady-breathing",
        "Breathing steadily from a working set throughout",
        frozenset({"held breath", "too deep", "valve", "fall"}),
        "Supplied air keeps the lungs at the water's pressure, but reaches no space whose opening is shut.",
        "equal-because-breathing",
    ),
    Measure(
        "half-as-far",
        "Keeping to half the depth, or to half the change of depth",
        frozenset({"too deep"}),
        "It makes the difference smaller, but a shut space is hurt within a few feet of water.",
        "blames-depth-alone",
        0.5,
    ),
    Measure(
        "slower",
        "Moving at half the speed",
        # Where a way is narrow rather than shut, time might help: those causes are left out of doubt.
        frozenset({"fall", "hollow tooth", "spray", "polyp", "mucus", "uncleared"}),
        "Speed counts only at an opening. Where the space is shut, a slow change makes the same difference.",
        "blames-speed-alone",
    ),
    Measure(
        "fuller-breath",
        "Setting out with the lungs as full as they go",
        frozenset({"too deep"}),
        "More air in the lungs opens no way into or out of the space, and full lungs have no room to grow.",
        "fuller-breath",
    ),
)
"""Measures that sound helpful and mostly are not."""

MEASURES: Mapping[str, Measure] = MappingProxyType({each.name: each for each in (*OPENING, *BELIEFS)})
"""Every measure by name."""


def right_measure(circumstance: Circumstance) -> Measure:
    """The first measure that opens what is shut. Raises StopIteration where nothing harmful is shut."""
    return next(each for each in OPENING if circumstance.cause in each.mends)


def taken(measure: Measure, circumstance: Circumstance, trip: Trip) -> tuple[Circumstance, Trip]:
    """What the circumstance and the trip would have been with the measure."""
    if circumstance.cause in measure.mends:
        return replace(circumstance, shuts=OPEN), trip
    if trip.start == trip.end:
        return circumstance, Trip(trip.start * measure.share, trip.end * measure.share)
    return circumstance, Trip(trip.start, trip.start + (trip.end - trip.start) * measure.share)
