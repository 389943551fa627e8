"""Two pumps under one load, one of air and one of water, and a small ball in them with the pressure on it."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin

from course.lessons.apparatus import parts
from course.lessons.apparatus.contract import Apparatus, Bench, Guess, Picture, Place, Row, Slider, Stop
from pressure.figures.drawing import text
from pressure.laws.boyle import volume_after
from pressure.laws.columns import pressure_of
from pressure.laws.stiffness import share_lost
from pressure.problem import System
from pressure.units import FACTORS, shown
from pressure.waters import ALLOWED

_FLOOR, _ROOM = 262.0, 90.0
"""The foot of the pumps, and the height of what they hold before the load."""
_AIR, _WATER, _BALL = 52.0, 138.0, (252.0, 152.0)
_LENS, _BALL_SIZE = 64.0, 17.0
_ARROW, _WEIGHT = 6.0, 0.62  # drawing units to an atmosphere; to a hundredth of the greatest load
_SIDES = range(0, 360, 45)


@dataclass(frozen=True, slots=True)
class _Pump:
    """The pumps in one system of units: what each is loaded with, and on how large a piston."""

    load_unit: str
    area: float
    area_unit: str
    area_words: str
    pressure_unit: str
    gap: int

    @property
    def top(self) -> int:
        return 5 * self.gap

    def added(self, load: float) -> float:
        """What the load adds to the pressure, in Pa."""
        weight = load * FACTORS[self.load_unit] / FACTORS["N"]
        return pressure_of(weight, self.area * FACTORS[self.area_unit])


_PUMPS: dict[System, _Pump] = {
    "us": _Pump("lb", 1.0, "in2", "one square inch", "psi", 15),
    "metric": _Pump("kg", 10.0, "cm2", "ten square centimetres", "bar", 10),
}


def build(system: System) -> Bench:
    """The load goes from nothing to about five atmospheres."""
    pump = _PUMPS[system]
    stops = tuple([Stop(at, str(at)) for at in range(0, pump.top + 1, pump.gap)])
    slider = Slider("Load on each piston", "load", pump.load_unit, pump.top, stops)
    return Bench(
        title="Air and water under the same load",
        note=f"Each piston measures {pump.area_words}; its own weight and its friction are left out, and the "
        "air keeps its temperature. The ball is solid and hardly gives. Its arrows are as long as the "
        "absolute pressure is high.",
        slider=slider,
        guess=_guess(pump),
        pictures=(_picture(),),
        words="Under {load} on each piston the absolute pressure is {absolute} in both pumps. The air has "
        "given {air_lost} of its volume, the water {water_lost}. The same pressure presses on the ball from "
        "every side.",
        readings=(
            ("Load on each", "{load}"),
            ("Absolute pressure in both", "{absolute}"),
            ("The air has given", "{air_lost}"),
            ("The water has given", "{water_lost}"),
        ),
        table=(
            ("Load", "{load}"),
            ("Absolute", "{absolute}"),
            ("Air has given", "{air_lost}"),
            ("Water has given", "{water_lost}"),
        ),
        rows=tuple([_row(pump, system, load) for load in range(pump.top + 1)]),
    )


def _guess(pump: _Pump) -> Guess:
    first = shown(pump.gap, pump.load_unit, given=True)
    return Guess(
        question=f"A load of {first} takes about half of the air's volume. Lay on {first} more. How much of "
        "the first volume is left?",
        options=(
            ("none", "nothing"),
            ("quarter", "about a quarter"),
            ("third", "about a third"),
            ("half", "still a half"),
        ),
        right="third",
        because="The air already pressed with one atmosphere. Each of the two loads adds about one more, "
        "which makes three, and leaves about a third. The water loses about one part in ten thousand.",
        place=Place(2 * pump.gap),
    )


def _row(pump: _Pump, system: System, load: int) -> Row:
    surface, unit = ALLOWED[system, "sea"][0].surface, pump.pressure_unit
    added = pump.added(load)
    absolute = surface + added / FACTORS[unit]
    air, water = volume_after(1.0, surface, absolute), 1.0 - share_lost(added)
    return {
        "load": shown(load, pump.load_unit, given=True),
        "absolute": shown(absolute, unit),
        "air_lost": shown(100 * (1 - air), "%"),
        "water_lost": shown(100 * share_lost(added), "%"),
        "air_less": f"−{shown(100 * (1 - air), '%')}" if load else "all there",
        "water_less": f"−{shown(100 * share_lost(added), '%')}" if load else "all there",
        "air_top": f"{_FLOOR - _ROOM * air:.1f}",
        "air_high": f"{_ROOM * air:.1f}",
        "water_top": f"{_FLOOR - _ROOM * water:.1f}",
        "water_high": f"{_ROOM * water:.1f}",
        "weight": f"{_WEIGHT * 100 * load / pump.top:.1f}",
        "weight_top": f"{-_ROOM - 10 - _WEIGHT * 100 * load / pump.top:.1f}",
        "push": f"{_ARROW * absolute / surface:.1f}",
    }


def _picture() -> Picture:
    drawing = (
        _pump(_AIR, "Air", "air", "fig-air") + _pump(_WATER, "Water", "water", "fig-water") + _close_up()
    )
    words = (
        "Two pumps under {load} each. The piston over the air has gone in by {air_lost} of the way, the one "
        "over the water by {water_lost}. Close up, eight arrows of one length press on a ball: {absolute}."
    )
    return Picture("Two loaded pumps and a small ball in either, close up", 320, 300, drawing, words)


def _pump(x: float, name: str, column: str, kind: str) -> str:
    left, top = x - 31, _FLOOR - _ROOM
    return (
        f'<rect class="{kind}" x="{left:g}" y="{{{column}_top}}" width="62" height="{{{column}_high}}"/>'
        f'<path class="fig-deep" d="M{left:g} {top:g}h62" stroke-width="1.5" stroke-dasharray="4 3"/>'
        f'<path class="fig-line" d="M{left:g} {top - 12:g}V{_FLOOR:g}h62V{top - 12:g}" stroke-width="3"/>'
        f'<circle class="fig-face" cx="{x:g}" cy="{_FLOOR - 8:g}" r="5" stroke-width="1.5"/>'
        f'<g transform="translate({x:g} {{{column}_top}})">'
        '<rect class="fig-face" x="-29" y="-8" width="58" height="8" stroke-width="2"/>'
        f'<path class="fig-line" d="M0 -8V{-_ROOM - 8:g}M-24 {-_ROOM - 9:g}h48" stroke-width="3"/>'
        '<rect class="fig-solid" x="-18" y="{weight_top}" width="36" height="{weight}"/></g>'
        f"{text(x, _FLOOR + 16, name)}"
        f"{parts.told(x, _FLOOR + 32, f'{{{column}_less}}', anchor='middle')}"
    )


def _close_up() -> str:
    x, y = _BALL
    arrows = "".join(
        parts.push(
            round(x - _BALL_SIZE * cos(radians(turn)), 1),
            round(y - _BALL_SIZE * sin(radians(turn)), 1),
            "push",
            turn=turn,
        )
        for turn in _SIDES
    )
    return (
        f'<circle class="fig-face" cx="{x:g}" cy="{y:g}" r="{_LENS:g}" stroke-width="1.5"/>'
        f'<circle class="fig-face" cx="{x:g}" cy="{y:g}" r="{_BALL_SIZE:g}" stroke-width="2"/>{arrows}'
        f"{text(x, y - _LENS - 28, 'The ball, close up')}"
        f"{text(x, y - _LENS - 12, 'alike in both pumps', size=12, muted=True)}"
        f"{parts.told(x, y + _LENS + 16, '{absolute}', anchor='middle')}"
        f"{text(x, y + _LENS + 32, 'from every side', size=12, muted=True)}"
    )


APPARATUS = Apparatus("press", build)
