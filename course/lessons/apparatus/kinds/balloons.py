"""Two balloons filled at depth and brought up: one tied shut, one left open; free to stretch, or in a net."""

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
from pressure.laws.boyle import volume_after
from pressure.laws.differences import across
from pressure.problem import System
from pressure.units import rounded, shown
from pressure.waters import ALLOWED, Convention

STRETCHES_TO = 2.0
"""How many times its first size this rubber takes before it bursts."""
NET_HOLDS = 1.0
"""The over-pressure that this net bears, in atmospheres of the convention."""
_WALL = Switch("wall", "The wall", (("loose", "free to stretch"), ("net", "held by a net")))
_BOTTOM = 3.0  # atmospheres absolute
_RADIUS, _LONGEST = 34.0, 34.0


@dataclass(frozen=True, slots=True)
class Shut:
    """The balloon tied shut: its size as a multiple of the first, and what stands across its wall."""

    size: float
    over: float
    has_burst: bool


def at(water: Convention, place: Place, bottom: float) -> Shut:
    """Rubber that stretches is taken to press on its air not at all; a net is taken not to give at all."""
    depth = bottom - place.at
    free = volume_after(1.0, water.absolute(bottom), water.absolute(depth))
    if place.set_to == ("loose",):
        return Shut(min(free, STRETCHES_TO), 0.0, free >= STRETCHES_TO - 1e-9)
    over = across(water.gradient, bottom, depth)
    return Shut(1.0, over, over >= NET_HOLDS * water.surface - 1e-9)


def build(system: System) -> Bench:
    """The way goes from two atmospheres of sea water up to the surface."""
    water = ALLOWED[system, "sea"][0]
    bottom = round((_BOTTOM - 1) * water.column)
    stops = tuple([Stop(round(bottom * n / 4), f"{bottom * n / 4:g}") for n in range(5)])
    slider = Slider("Way up", "way", water.depth_unit, bottom, stops)
    return Bench(
        title="Two balloons on the way up",
        note=f"{water.sentence} Both are filled at {shown(bottom, water.depth_unit, given=True)}. This "
        "rubber bursts at twice its first size; this net gives at one atmosphere. Lungs bear far less.",
        slider=slider,
        guess=_guess(water, bottom),
        switches=(_WALL,),
        pictures=(_picture(),),
        words="{words}",
        readings=(
            ("Depth", "{depth}"),
            ("Shut balloon", "{size}"),
            ("Across its wall", "{over}"),
            ("Left the open one", "{left}"),
        ),
        table=(
            ("Way up", "{way}"),
            ("Depth", "{depth}"),
            ("Shut balloon", "{size}"),
            ("Across its wall", "{over}"),
            ("Left the open one", "{left}"),
        ),
        rows=tuple([_row(water, place, bottom) for place in places(slider, (_WALL,))]),
    )


def _guess(water: Convention, bottom: int) -> Guess:
    foot = water.depth_unit
    return Guess(
        question=f"The rubber stretches to twice its size. Filled at {shown(bottom, foot, given=True)} and "
        "tied shut, where does it burst?",
        options=(
            ("half", "half way up"),
            ("later", "past half way, at three quarters"),
            ("surface", "only at the surface"),
            ("never", "nowhere, if it rises slowly"),
        ),
        right="later",
        because="Its air has doubled when the absolute pressure is half of what it was: 3 atmospheres are "
        "down to 1.5 at a quarter of the depth. The open one has let its surplus out and is as it was.",
        place=Place(round(bottom * 3 / 4) + (1 if bottom * 3 % 4 == 2 else 0), ("loose",)),
    )


def _row(water: Convention, place: Place, bottom: int) -> Row:
    now, depth, unit = at(water, place, bottom), bottom - place.at, water.pressure_unit
    left = volume_after(1.0, water.absolute(bottom), water.absolute(depth)) - 1.0
    row = {
        "way": shown(place.at, water.depth_unit, given=True),
        "depth": shown(depth, water.depth_unit, given=True),
        "size": "burst" if now.has_burst else f"{rounded(now.size)} × its size",
        "over": "nothing left to hold" if now.has_burst else shown(now.over, unit) if now.over else "none",
        "left": f"{rounded(left)} × its size" if place.at else "nothing",
        "radius": f"{_RADIUS * sqrt(now.size):.1f}",
        "whole": "none" if now.has_burst else "inline",
        "burst": "inline" if now.has_burst else "none",
        "net": "inline" if place.set_to == ("net",) else "none",
        "push": f"{_LONGEST * now.over / water.surface:.1f}",
        "pushes": "inline" if now.over and not now.has_burst else "none",
        "bubbles": "inline" if place.at else "none",
    }
    return row | {"words": _words(now, place, row)}


def _words(now: Shut, place: Place, row: Row) -> str:
    start = f"At {row['depth']} the "
    opened = f"The open one has its first size still, and has let out {row['left']}."
    if not place.at:
        return f"At {row['depth']} both balloons have just been filled and are alike."
    if now.has_burst:
        what = "net has given way" if place.set_to == ("net",) else "rubber has taken all it can"
        return f"{start}{what} and the shut balloon has burst. {opened}"
    if now.over:
        return f"{start}shut balloon is held to its first size, {row['over']} across its wall. {opened}"
    return f"{start}shut balloon is {row['size']}, nothing across its wall to speak of. {opened}"


def _picture() -> Picture:
    arrows = "".join(
        f'<g transform="rotate({turn}) translate({_RADIUS + 4:g} 0)">'
        '<path class="fig-line" d="M0 0h{push}" stroke-width="2"/><g transform="translate({push} 0)">'
        '<path class="fig-tip" d="M8 0l-9 -5v10z"/></g></g>'
        for turn in (-30, 30, 150, 210)
    )
    net = "".join(
        f'<path class="fig-line" d="M-34 {y}H34M{y} -34V34" stroke-width="0.8"/>' for y in (-20, 0, 20)
    )
    shut = parts.shown(
        "whole",
        '<circle class="fig-face" r="{radius}" stroke-width="2"/><path class="fig-line" d="M-4 52l4 -4l4 4" '
        f'stroke-width="2"/>{parts.shown("net", net)}{parts.shown("pushes", arrows)}',
    )
    shreds = '<path class="fig-harm" d="M-30 -6l14 -10l6 14zM10 12l18 -2l-8 14zM2 -26l12 6l-14 8z"/>'
    burst = parts.shown("burst", shreds + text(0, 44, "burst", size=14))
    bubbles = "".join(f'<circle class="fig-face" cx="{x}" cy="{y}" r="{r}"/>' for x, y, r in _BUBBLES)
    mouth = '<path class="fig-air" d="M-6 30h12v10h-12z"/><path class="fig-line" d="M-6 33v10M6 33v10"/>'
    opened = f'<circle class="fig-face" r="{_RADIUS:g}" stroke-width="2"/>{mouth}'
    drawing = (
        '<rect class="fig-water" width="320" height="150"/>'
        f'<g transform="translate(90 76)">{shut}{burst}</g><g transform="translate(236 76)">{opened}'
        f"{parts.shown('bubbles', bubbles)}</g>"
        f"{text(90, 166, 'tied shut')}{text(236, 166, 'left open')}"
        f"{parts.told(90, 186, '{size}', anchor='middle', size=13)}"
        f"{text(236, 186, '1 × its size', size=13)}"
    )
    said = "The shut balloon: {size}; across its wall: {over}. The open one keeps its first size."
    return Picture("Two balloons in the water, one tied shut and one open", 320, 198, drawing, said)


_BUBBLES = ((2, 54, 4), (14, 48, 3), (24, 34, 4), (38, 14, 5), (42, -12, 6))

APPARATUS = Apparatus("balloons", build)
