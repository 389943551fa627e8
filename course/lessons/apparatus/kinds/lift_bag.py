"""A lift bag that has just lifted its load: what becomes of its lift on the way up, little filled or full."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from course.lessons.apparatus import parts
from course.lessons.apparatus.contract import (
    Apparatus,
    Bench,
    Guess,
    Picture,
    Place,
    Row,
    Slider,
    Stop,
    Switch,
    places,
)
from pressure.figures.drawing import text
from pressure.laws.archimedes import displaced_weight
from pressure.laws.boyle import volume_after
from pressure.problem import System
from pressure.units import shown
from pressure.waters import ALLOWED, HEAVINESS

AIR: dict[System, float] = {"us": 4.0, "metric": 100.0}
"""The air that just carries the load, at the bottom."""
ROOMS = {"large": 4.0, "close": 1.25}
"""The room of the bag as a multiple of that air."""
_BAG = Switch("bag", "The bag", (("large", "large, a quarter filled"), ("close", "small, nearly full")))
_BOTTOM = 4.0  # atmospheres absolute
_ROOM, _LONGEST = 88.0, 24.0


@dataclass(frozen=True, slots=True)
class Lift:
    """The bag in one place: its air, the lift of that air, the load, and the air it has spilled."""

    air: float
    lift: float
    load: float
    spilled: float

    @property
    def surplus(self) -> float:
        return self.lift - self.load


def at(system: System, place: Place, bottom: float) -> Lift:
    """Air in the volume unit of the system, at the pressure there; lift and load in its weight unit."""
    water, weigh = ALLOWED[system, "sea"][0], HEAVINESS[system, "sea"]
    start, room = AIR[system], AIR[system] * ROOMS[place.set_to[0]]
    free = volume_after(start, water.absolute(bottom), water.absolute(bottom - place.at))
    air = min(free, room)
    load = displaced_weight(start, weigh.value)
    return Lift(air, displaced_weight(air, weigh.value), load, free - air)


def build(system: System) -> Bench:
    """The way goes from three atmospheres of sea water up to the surface."""
    water, weigh = ALLOWED[system, "sea"][0], HEAVINESS[system, "sea"]
    column = (_BOTTOM - 1) * water.column
    stops = tuple([Stop(round(column * n / 3), f"{column * n / 3:.0f}") for n in range(4)])
    slider = Slider("Way up", "way", water.depth_unit, stops[-1].at, stops)
    return Bench(
        title="A lift bag on its way up",
        note=f"{weigh.sentence} {water.sentence} The bag is open below, so what does not fit spills. Nobody "
        "stands under a load or beside a bag that rises, and nobody holds on to it.",
        slider=slider,
        guess=_guess(system, stops),
        switches=(_BAG,),
        pictures=(_picture(),),
        words="{words}",
        readings=(
            ("Depth", "{depth}"),
            ("Air in the bag", "{air}"),
            ("Lift", "{lift}"),
            ("Beyond the load", "{surplus}"),
            ("Spilled, as it measures here", "{spilled}"),
        ),
        table=(
            ("Way up", "{way}"),
            ("Depth", "{depth}"),
            ("Air", "{air}"),
            ("Lift", "{lift}"),
            ("Beyond the load", "{surplus}"),
        ),
        rows=tuple([_row(system, place, stops[-1].at) for place in places(slider, (_BAG,))]),
    )


def _guess(system: System, stops: tuple[Stop, ...]) -> Guess:
    foot = ALLOWED[system, "sea"][0].depth_unit
    return Guess(
        question=f"At {stops[-1].text} {foot} the air in a large bag just carries its load. It leaves the "
        "bottom and nobody vents it. What is its lift at the surface?",
        options=(
            ("same", "the same: the same air is in it"),
            ("twice", "twice as much"),
            ("four", "four times as much"),
            ("less", "less: there is less water above it"),
        ),
        right="four",
        because="Lift is the weight of the water that the air pushes aside, and the air grows to four times "
        "its volume. It lifts more the higher it comes, so it comes faster: it runs away.",
        place=Place(stops[-1].at, ("large",)),
    )


def _row(system: System, place: Place, bottom: int) -> Row:
    water, weigh = ALLOWED[system, "sea"][0], HEAVINESS[system, "sea"]
    now = at(system, place, bottom)
    room = AIR[system] * ROOMS[place.set_to[0]]
    row = {
        "way": shown(place.at, water.depth_unit, given=True),
        "depth": shown(bottom - place.at, water.depth_unit, given=True),
        "air": shown(now.air, weigh.volume_unit),
        "lift": shown(now.lift, weigh.weight_unit),
        "load": shown(now.load, weigh.weight_unit),
        "surplus": shown(now.surplus, weigh.weight_unit) if now.surplus > 1e-9 else "nothing",
        "spilled": shown(now.spilled, weigh.volume_unit) if now.spilled > 1e-9 else "nothing",
        "bag": f"{sqrt(room / AIR[system] / ROOMS['large']):.3f}",
        "water": f"{_ROOM * now.air / room - 28:.1f}",
        "deep": f"{_ROOM * (1 - now.air / room):.1f}",
        "up": f"{_LONGEST * now.lift / now.load:.1f}",
        "down": f"{_LONGEST:.1f}",
        "spills": "inline" if now.spilled > 1e-9 else "none",
    }
    return row | {"words": _words(now, place, row)}


def _words(now: Lift, place: Place, row: Row) -> str:
    start = f"At {row['depth']} the air in the bag takes {row['air']} and lifts {row['lift']}"
    if not place.at:
        return f"{start}, just as much as the load weighs."
    spilled = f" It spills: {row['spilled']} has gone." if now.spilled > 1e-9 else ""
    return f"{start}, {row['surplus']} more than the load.{spilled}"


def _picture() -> Picture:
    """The bag is a box with a round top, its mouth at y = 60; the drawing grows with its room."""
    outline = "M-40 60V0C-40 -37 40 -37 40 0V60"
    bag = (
        '<g transform="translate(110 104) scale({bag})"><g transform="translate(0 -60)">'
        f'<path class="fig-face" d="{outline}Z" stroke-width="1"/>'
        '<rect class="fig-water" x="-39" y="{water}" width="78" height="{deep}"/>'
        f'<path class="fig-line" d="{outline}" stroke-width="1.5"/></g></g>'
    )
    bubbles = "".join(f'<circle class="fig-face" cx="{x}" cy="{y}" r="{r}"/>' for x, y, r in _BUBBLES)
    drawing = (
        f'<rect class="fig-water" width="320" height="230"/>{bag}{parts.shown("spills", bubbles)}'
        '<path class="fig-line" d="M96 104L108 150M124 104L112 150" stroke-width="1"/>'
        '<rect class="fig-solid" x="82" y="150" width="56" height="30"/>'
        f'<g transform="translate(232 128)">{parts.rise("up")}</g>'
        f'<g transform="translate(232 150)">{parts.rise("down", down=True)}</g>'
        f"{text(248, 60, 'lift', anchor='start', size=13)}{parts.told(248, 78, '{lift}', size=14, bold=True)}"
        f"{text(248, 158, 'load', anchor='start', size=13)}{parts.told(248, 176, '{load}', size=14)}"
        f"{parts.told(110, 206, 'air {air}', anchor='middle', size=13)}"
    )
    said = "The bag holds {air} of air, lifts {lift} and carries {load}; spilled: {spilled}."
    return Picture("A lift bag, open below, with its load", 320, 230, drawing, said)


_BUBBLES = ((164, 96, 3), (172, 82, 4), (168, 62, 5), (176, 40, 6))

APPARATUS = Apparatus("lift-bag", build)
