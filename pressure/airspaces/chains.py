"""The events from a shut opening to an injury: each needs the one before it, so they have one order."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from pressure.airspaces.circumstances import Circumstance
from pressure.airspaces.model import giving_way, outcome
from pressure.airspaces.spaces import STIFF, Giving
from pressure.airspaces.trips import Trip
from pressure.waters import Convention


class Event(NamedTuple):
    """What happens, and why it comes where it comes. ``after`` names the event that it needs, if any."""

    name: str
    text: str
    why: str
    after: str = ""


_ESCAPES: dict[str, tuple[tuple[str, str, str], ...]] = {
    "pneumothorax": (
        ("beside-lung", "Air gets between the lung and the chest wall.", "It takes a tear to let it out."),
        (
            "lung-falls",
            "The lung on that side falls together: pain on one side and short breath.",
            "Air beside the lung lets it shrink.",
        ),
    ),
    "mediastinal-emphysema": (
        (
            "behind-breastbone",
            "Air runs along the airways to the space behind the breastbone.",
            "It takes a tear to let it out.",
        ),
        (
            "dull-ache",
            "A dull ache behind the breastbone grows with a deep breath or swallowing.",
            "The gathered air presses on what lies there.",
        ),
    ),
    "subcutaneous-emphysema": (
        (
            "behind-breastbone",
            "Air runs along the airways to the space behind the breastbone.",
            "It takes a tear to let it out.",
        ),
        (
            "up-to-neck",
            "Air rises from behind the breastbone to under the skin of the neck.",
            "The way to the neck leads from there.",
        ),
        (
            "neck-swells",
            "The neck swells, the voice changes and the skin crackles.",
            "These are the signs of air under that skin.",
        ),
    ),
    "gas-embolism": (
        ("into-vessels", "Air enters torn vessels of the lung.", "It takes a tear to let it in."),
        (
            "through-heart",
            "Bubbles pass through the left side of the heart into the arteries.",
            "Blood from the lungs goes there next.",
        ),
        (
            "brain-blocked",
            "Bubbles block arteries of the brain: signs like a stroke, or collapse.",
            "The arteries carry them there.",
        ),
    ),
}
_BURST = (
    ("hose-bursts", "The hose bursts at the surface.", "All else follows from it."),
    (
        "air-runs-up",
        "Air runs back up the hose past the valve that should hold it.",
        "Where the hose has burst there is only the surface pressure.",
    ),
    (
        "falls-below",
        "The pressure in {space} falls below the water's.",
        "The air that ran up the hose held it up.",
    ),
)


def chain(circumstance: Circumstance, trip: Trip, named: Convention, escape: str = "") -> tuple[Event, ...]:
    """The events in their order. ``escape`` says where the gas of a torn lung goes.

    Raises ValueError for a circumstance that harms nobody.
    """
    giving = giving_way(circumstance, trip, named)
    if giving is None:
        raise ValueError(f"Nothing comes of {circumstance.name}, so there are no events to put in order.")
    return _linked((*_beginning(circumstance, trip, named), *_end(giving, escape)))


def _linked(events: tuple[tuple[str, str, str], ...]) -> tuple[Event, ...]:
    names = ["", *(name for name, _, _ in events)]
    return tuple(Event(*event, after) for event, after in zip(events, names, strict=False))


def _beginning(circumstance: Circumstance, trip: Trip, named: Convention) -> Iterator[tuple[str, str, str]]:
    space = circumstance.space.text
    if trip.start == trip.end:
        yield from ((name, text.format(space=space), why) for name, text, why in _BURST)
        return
    down = outcome(circumstance, trip, named).side == "outside"
    yield _setting_out(circumstance, down)
    yield (
        "presses",
        f"The water presses {'harder' if down else 'less'}, and with it the blood and tissue of the body.",
        f"Pressure changes only once the diver is on the way {'down' if down else 'up'}.",
    )
    if circumstance.space.yields != STIFF:
        yield from _lungs_follow(down)
        return
    left = "lower" if down else "higher"
    yield (
        "left-behind",
        f"The air shut into {space} is left at the {left} pressure.",
        "It is the pressure round it that changed; the shut-in air could not follow.",
    )


def _setting_out(circumstance: Circumstance, down: bool) -> tuple[str, str, str]:
    space, way = circumstance.space, "down" if down else "up"
    if space.yields != STIFF and down:
        text = "The diver fills the lungs at the surface and sets out down."
    else:
        state = "cut off" if circumstance.cause == "fall" else "shut"
        text = f"The diver sets out on the way {way} with {space.opening} {state}."
    return "sets-out", text, "With nothing shut, or nobody moving, nothing would follow."


def _lungs_follow(down: bool) -> Iterator[tuple[str, str, str]]:
    if down:
        yield "follows", "The lungs shrink and the chest follows.", "A held breath yields at first."
        yield (
            "left-behind",
            "The chest can follow no further, and the air in the lungs stays below the pressure round it.",
            "A difference comes only when the yielding ends.",
        )
    else:
        yield (
            "follows",
            "The shut-in air grows until the lungs and the chest round it stretch no further.",
            "Less pressure, more room.",
        )
        yield (
            "left-behind",
            "With no room left to grow, the air rises above the pressure round the lungs.",
            "A difference comes only when the yielding ends.",
        )


def _end(giving: Giving, escape: str) -> Iterator[tuple[str, str, str]]:
    yield "gives", giving.does, "It takes a difference in pressure to move soft tissue."
    yield "harm", giving.harm, "Tissue breaks after it has been strained."
    if escape:
        yield from _ESCAPES[escape]
