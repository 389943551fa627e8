"""A cylinder and a diver's use: how many minutes it lasts at each depth, at rest and at hard work."""

from __future__ import annotations

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
from pressure.cylinders import FLOW_UNITS, PRESSURE_UNITS, VOLUME_UNITS
from pressure.figures.drawing import text
from pressure.laws.supply import endurance, free_gas, used_at_depth
from pressure.problem import System
from pressure.units import shown
from pressure.waters import ALLOWED, Convention

CYLINDERS: dict[System, tuple[float, float, float]] = {
    "us": (0.4, 3000.0, 500.0),
    "metric": (12.0, 200.0, 50.0),
}
"""Floodable volume, the gauge when full, and the reserve that is left in it."""
RATES: dict[System, dict[str, float]] = {
    "us": {"light": 0.75, "hard": 1.5},
    "metric": {"light": 20.0, "hard": 40.0},
}
"""Free air a minute at the surface; a demonstration, not anybody's plan."""
_WORK = Switch("work", "The work", (("light", "light"), ("hard", "hard")))
_BAR, _BREATH = 240.0, 30.0


def build(system: System) -> Bench:
    """The depth goes from the surface to five atmospheres of sea water."""
    water = ALLOWED[system, "sea"][0]
    stops = tuple([Stop(round(n * water.column), f"{n * water.column:.0f}") for n in range(6)])
    slider = Slider("Depth of sea water", "depth", water.depth_unit, stops[-1].at, stops)
    room, full, reserve = CYLINDERS[system]
    unit, volume = PRESSURE_UNITS[system], VOLUME_UNITS[system]
    return Bench(
        title="The cylinder and the depth",
        note=f"{water.sentence} A cylinder of {shown(room, volume, given=True)} at "
        f"{shown(full, unit, given=True)}, breathed down to {shown(reserve, unit, given=True)}; air taken as "
        "an ideal gas; no time for the way down or up. Not a dive plan.",
        slider=slider,
        guess=_guess(water, stops),
        switches=(_WORK,),
        pictures=(_picture(),),
        words="At {depth} the pressure is {ata}, so a diver who takes {rate} at the surface takes {use} of "
        "free air. Down to the reserve it lasts {minutes}; at the surface it would last {longest}.",
        readings=(
            ("Depth", "{depth}"),
            ("Absolute", "{ata}"),
            ("Use, as free air", "{use}"),
            ("Lasts", "{minutes}"),
        ),
        table=(("Depth", "{depth}"), ("Absolute", "{ata}"), ("Use", "{use}"), ("Lasts", "{minutes}")),
        rows=tuple([_row(system, water, place) for place in places(slider, (_WORK,))]),
    )


def _guess(water: Convention, stops: tuple[Stop, ...]) -> Guess:
    shallow, deep = stops[1], stops[3]
    foot = water.depth_unit
    return Guess(
        question=f"At {shallow.text} {foot} the cylinder lasts half as long as at the surface. And at "
        f"{deep.text} {foot}, three times as deep?",
        options=(
            ("sixth", "a sixth as long"),
            ("quarter", "a quarter as long"),
            ("third", "a third as long"),
            ("half", "half as long; a breath is a breath"),
        ),
        right="quarter",
        because="Each breath is as large as ever but holds as many times the air as there are atmospheres: "
        "four there, three of water and one of air. Four times the use, a quarter of the time.",
        place=Place(deep.at, ("light",)),
    )


def lasts(system: System, water: Convention, place: Place) -> float:
    """Minutes down to the reserve."""
    room, full, reserve = CYLINDERS[system]
    rate = RATES[system][place.set_to[0]]
    usable = free_gas(room, full - reserve, water.surface)
    return endurance(usable, used_at_depth(rate, water.atmospheres(place.at)))


def _row(system: System, water: Convention, place: Place) -> Row:
    rate, ata = RATES[system][place.set_to[0]], water.atmospheres(place.at)
    minutes, longest = lasts(system, water, place), lasts(system, water, Place(0, place.set_to))
    most = lasts(system, water, Place(0, ("light",)))
    heavy = rate / RATES[system]["light"]
    return {
        "depth": shown(place.at, water.depth_unit, given=True),
        "ata": shown(ata, "atm", "absolute"),
        "rate": shown(rate, FLOW_UNITS[system], given=True),
        "use": shown(used_at_depth(rate, ata), FLOW_UNITS[system]),
        "minutes": shown(minutes, "min"),
        "longest": shown(longest, "min"),
        "time": f"{_BAR * minutes / most:.1f}",
        "breath": f"{_BREATH * ata:.1f}",
        "tall": f"{12 * heavy:.1f}",
    }


def _picture() -> Picture:
    marks = "".join(
        f'<path class="fig-line" d="M{60 + _BREATH * n:g} 46v56" stroke-width="1" stroke-dasharray="3 3"/>'
        + text(60 + _BREATH * n, 38, str(n), size=12, muted=True)
        for n in range(1, 7)
    )
    drawing = (
        f"{text(8, 16, 'free air a minute, times the surface use', anchor='start', size=13)}"
        f'<path class="fig-line" d="M60 46v56" stroke-width="1.5"/>{marks}'
        '<g transform="translate(60 74)"><rect class="fig-solid" y="-12" width="{breath}" height="12"/>'
        '<rect class="fig-solid" width="{breath}" height="{tall}"/></g>'
        f"{parts.told(60, 118, '{use}', size=14, bold=True)}"
        f"{text(8, 150, 'time down to the reserve', anchor='start', size=13)}"
        f'<rect class="fig-face" x="60" y="166" width="{_BAR:g}" height="22" stroke-width="1.5"/>'
        '<rect class="fig-solid" x="60" y="166" width="{time}" height="22"/>'
        f"{parts.told(60, 204, '{minutes}', size=14, bold=True)}"
    )
    said = "The bar of use is {use} long, the bar of time {minutes}."
    return Picture("What a diver uses in a minute, and how long the cylinder lasts", 320, 218, drawing, said)


APPARATUS = Apparatus("cylinder", build)
