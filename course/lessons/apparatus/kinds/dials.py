"""A gauge and an absolute dial let down side by side, and what the gauge leaves out, in three waters."""

from __future__ import annotations

from dataclasses import replace

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
from pressure.figures.dials import Dial, dial
from pressure.figures.drawing import text
from pressure.laws.altitude import barometer
from pressure.problem import System
from pressure.units import shown
from pressure.waters import ALLOWED, LAKE, LAKE_SENTENCE, Convention

_SCALES: dict[System, tuple[float, float, int]] = {"us": (90.0, 15.0, 3), "metric": (6.0, 1.0, 4)}
_LAKE: dict[System, int] = {"us": 5000, "metric": 2000}
"""How high the mountain lake lies above the sea."""
_DEEPEST = 5  # columns of one atmosphere
_WATERS = {"sea": "the sea", "fresh": "a lake near sea level", "lake": "a mountain lake"}

_FOOT, _TALL = 184.0, 156.0
"""The foot of the two bars, and how high six atmospheres of the sea stand on it."""


def build(system: System) -> Bench:
    """The depth goes from the surface to five atmospheres of sea water, whatever the water."""
    sea, switch = ALLOWED[system, "sea"][0], _switch(system)
    stops = tuple([Stop(round(n * sea.column), f"{n * sea.column:.0f}") for n in range(_DEEPEST + 1)])
    slider = Slider("Depth", "depth", sea.depth_unit, stops[-1].at, stops)
    dials = _dial(sea, system, "gauge"), _dial(sea, system, "absolute")
    return Bench(
        title="A gauge and an absolute dial",
        note=f"{sea.sentence} {LAKE_SENTENCE[system]} The gauge was set to nought in the air of the place. "
        "Over the mountain lake stands the standard atmosphere; the weather moves it.",
        slider=slider,
        switches=(switch,),
        guess=_guess(stops[3], sea.depth_unit, switch),
        pictures=(*[_face(each) for each in dials], _bars()),
        words="At {depth} in {water} the gauge reads {gauge}, the water alone. The absolute pressure is "
        "{absolute}. The gauge leaves out the air above the water, {air}, which is {left_out} of the whole.",
        readings=(
            ("Depth", "{depth}"),
            ("Gauge", "{gauge}"),
            ("Absolute", "{absolute}"),
            ("What the gauge leaves out", "{air}"),
            ("Of the whole", "{left_out}"),
        ),
        table=(
            ("Depth", "{depth}"),
            ("Gauge", "{gauge}"),
            ("Left out", "{air}"),
            ("Absolute", "{absolute}"),
            ("Of the whole", "{left_out}"),
        ),
        rows=tuple([_row(system, place, dials) for place in places(slider, (switch,))]),
    )


def _switch(system: System) -> Switch:
    height = shown(_LAKE[system], LAKE[system][0].depth_unit, given=True)
    lake = f"fresh, a mountain lake at {height}"
    return Switch("water", "Water", (("sea", "sea"), ("fresh", "fresh, near sea level"), ("lake", lake)))


def _guess(deep: Stop, unit: str, switch: Switch) -> Guess:
    return Guess(
        question="Two dials go down side by side, one gauge, one absolute. At the surface their needles "
        f"stand one atmosphere apart. How far apart are they at {deep.text} {unit}?",
        options=(
            ("same", "just as far"),
            ("more", "four times as far"),
            ("less", "a quarter as far"),
            ("none", "they have met"),
        ),
        right="same",
        because="The water moves both needles alike. The gauge leaves out the air above the water, at every "
        "depth the same amount; only its part of the whole grows small.",
        place=Place(deep.at, (switch.options[0][0],)),
    )


def _over(system: System, water: str) -> Convention:
    """The water with the air that stands over it. One gradient serves both lakes."""
    if water == "sea":
        return ALLOWED[system, "sea"][0]
    lake, near = LAKE[system][0], ALLOWED[system, "fresh"][0]
    thin = barometer(_LAKE[system], lake.depth_unit, lake.pressure_unit)
    return replace(lake, surface=thin if water == "lake" else near.surface)


def _dial(water: Convention, system: System, name: str) -> Dial:
    top, step, fine = _SCALES[system]
    title = f"{name.capitalize()} pressure"
    drawn = dial(name, title, unit=water.pressure_unit, top=top, step=step, fine=fine)
    return replace(drawn, band="{band}") if name == "absolute" else drawn


def _band(system: System, water: Convention) -> str:
    """The stretch of the absolute dial that the air takes up."""
    top, step, fine = _SCALES[system]
    return dial("", "", unit="", top=top, step=step, fine=fine, atmosphere=water.surface, band=True).band


def _row(system: System, place: Place, dials: tuple[Dial, Dial]) -> Row:
    (name,), depth = place.set_to, place.at
    water, sea = _over(system, name), ALLOWED[system, "sea"][0]
    gauge, absolute = water.gauge(depth), water.absolute(depth)
    unit, scale = water.pressure_unit, _TALL / sea.absolute(_DEEPEST * sea.column)
    return {
        "depth": shown(depth, water.depth_unit, given=True),
        "water": _WATERS[name],
        "gauge": shown(gauge, unit),
        "absolute": shown(absolute, unit),
        "air": shown(water.surface, unit),
        "left_out": shown(100 * water.surface / absolute, "%"),
        "gauge_turn": f"{dials[0].turn(gauge):.1f}",
        "absolute_turn": f"{dials[1].turn(absolute):.1f}",
        "band": _band(system, water),
        "water_high": f"{scale * gauge:.1f}",
        "water_top": f"{_FOOT - scale * gauge:.1f}",
        "air_high": f"{scale * water.surface:.1f}",
        "air_top": f"{_FOOT - scale * absolute:.1f}",
        "air_middle": f"{_FOOT - scale * (gauge + water.surface / 2):.1f}",
        "gauge_label": f"{_FOOT - scale * gauge - 8:.1f}",
        "absolute_label": f"{_FOOT - scale * absolute - 8:.1f}",
    }


def _face(face: Dial) -> Picture:
    note = "band: the air left out" if face.band else "nought in the air"
    title = f"{face.title} dial, from 0 to {face.top:g} {face.unit}; {note}"
    heading = text(92, 198, face.title) + text(92, 217, note, muted=True)
    words = f"The needle stands at {{{face.name}}}."
    return Picture(title, 184, 228, parts.dial(face, f"{face.name}_turn") + heading, words)


def _bars() -> Picture:
    water = (
        '<rect class="fig-water" x="{x}" y="{{water_top}}" width="60" height="{{water_high}}"/>'
        '<path class="fig-deep" d="M{x} {foot:g}V{{water_top}}h60V{foot:g}" stroke-width="1.5"/>'
    )
    drawing = (
        f"{water.format(x=10, foot=_FOOT)}{water.format(x=102, foot=_FOOT)}"
        '<rect class="fig-face" x="102" y="{air_top}" width="60" height="{air_high}" stroke-width="2"/>'
        f'<path class="fig-line" d="M10 {_FOOT:g}h60M102 {_FOOT:g}h60" stroke-width="2"/>'
        f"{_label(40, 'gauge_label', '{gauge}')}{_label(132, 'absolute_label', '{absolute}')}"
        '<text x="132" y="{air_middle}" font-size="14" text-anchor="middle" '
        'dominant-baseline="central">air</text>'
        f"{text(40, 198, 'Gauge')}{text(132, 198, 'Absolute')}"
        f"{text(40, 217, 'water', muted=True)}"
        f"{text(132, 217, 'water and air', muted=True)}"
    )
    words = "Two bars. The gauge counts the water, {gauge}; absolute counts the air as well, {absolute}."
    return Picture("What each of the two pressures counts", 184, 228, drawing, words)


def _label(x: float, height: str, form: str) -> str:
    """Words over ``x`` at a height that moves."""
    return f'<text x="{x:g}" y="{{{height}}}" font-size="14" text-anchor="middle" text="{form}"></text>'


APPARATUS = Apparatus("dials", build)
