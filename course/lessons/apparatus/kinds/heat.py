"""The same air warmed and cooled: shut in a cylinder, and in a bag that is free to grow."""

from __future__ import annotations

from math import sqrt

from course.lessons.apparatus import parts
from course.lessons.apparatus.contract import Apparatus, Bench, Guess, Picture, Place, Row, Slider, Stop
from pressure.constants import CELSIUS_ZERO_EXACT, FAHRENHEIT_ZERO_EXACT
from pressure.cylinders import PRESSURE_UNITS, SURFACES
from pressure.figures.dials import Dial, dial
from pressure.figures.drawing import text
from pressure.laws import real_gas
from pressure.laws.charles import absolute_temperature, gauge_warmed, volume_warmed
from pressure.problem import System
from pressure.temperatures import SCALES
from pressure.units import FACTORS, rounded, shown

_FILLED: dict[System, tuple[float, float]] = {"us": (3000.0, 60.0), "metric": (200.0, 15.0)}
"""What the gauge showed when it was filled, and the temperature then."""
_RANGE: dict[System, tuple[int, int]] = {"us": (32, 160), "metric": (0, 64)}
"""From freezing to what a closed van in the sun can reach."""
_FACES: dict[System, tuple[float, float, int]] = {"us": (4000.0, 1000.0, 5), "metric": (300.0, 50.0, 5)}
_RADIUS = 46.0


def build(system: System) -> Bench:
    """The temperature goes from freezing to what a closed van in the sun can reach."""
    low, high = _RANGE[system]
    unit, scale = PRESSURE_UNITS[system], SCALES[system]
    gap = (high - low) // 4
    stops = tuple([Stop(gap * n, f"{low + gap * n}") for n in range(5)])
    slider = Slider("Temperature", "temperature", "degrees", high - low, stops)
    full, filled_at = _FILLED[system]
    top, step, fine = _FACES[system]
    face = dial("gauge", "Cylinder", unit=unit, top=top, step=step, fine=fine)
    return Bench(
        title="Warm air, shut in and free",
        note=f"Filled to {shown(full, unit, given=True)} at {shown(filled_at, scale.unit, given=True)}. The "
        "dial follows the gas law; real air at such pressure changes more, as the reading says. Cylinders "
        "are kept out of the sun and never filled beyond their rated pressure.",
        slider=slider,
        guess=_guess(system, filled_at),
        pictures=(_face(face), _bag()),
        words="At {temperature} the gauge of the shut cylinder shows {gauge} by the gas law, about {real} "
        "with real air. The same warmth makes air that is free to grow {size} times its first volume.",
        readings=(
            ("Temperature", "{temperature}"),
            ("Absolute temperature", "{absolute}"),
            ("Gauge, by the gas law", "{gauge}"),
            ("Gauge, real air", "about {real}"),
            ("Free air grows to", "{size} × its volume"),
        ),
        table=(
            ("Temperature", "{temperature}"),
            ("Gauge, by the gas law", "{gauge}"),
            ("Gauge, real air", "{real}"),
            ("Free air, times its volume", "{size}"),
        ),
        rows=tuple([_row(system, degrees, face) for degrees in range(low, high + 1)]),
    )


def _guess(system: System, filled_at: float) -> Guess:
    unit = SCALES[system].unit
    twice = shown(2 * filled_at, unit, given=True)
    return Guess(
        question=f"The cylinder was filled at {shown(filled_at, unit, given=True)} and lies in the sun until "
        f"it is at {twice}, twice as many degrees. What becomes of the pressure in it?",
        options=(
            ("double", "it doubles"),
            ("half-more", "it grows by half"),
            ("tenth", "it grows by a tenth or so"),
            ("same", "it stays: no air has gone in"),
        ),
        right="tenth",
        because="Degrees are counted from an arbitrary nought. Counted from where all warmth ends, the "
        "temperature has grown by a small part only, and the absolute pressure by the same part.",
        place=Place(round(2 * filled_at) - _RANGE[system][0]),
    )


def gauge_at(system: System, degrees: float) -> tuple[float, float]:
    """What the gauge shows by the ideal gas law, and with real air, in the system's unit."""
    full, filled_at = _FILLED[system]
    surface, scale, unit = SURFACES[system][0], SCALES[system], PRESSURE_UNITS[system]
    before, after = scale.absolute(filled_at), scale.absolute(degrees)
    to_bar = FACTORS[unit] / FACTORS["bar"]
    ends = _kelvin(system, filled_at), _kelvin(system, degrees)
    real = real_gas.pressure_warmed((full + surface) * to_bar, *ends)
    return gauge_warmed(full, surface, before, after), real / to_bar - surface


def _kelvin(system: System, degrees: float) -> float:
    if system == "us":
        return absolute_temperature(degrees, FAHRENHEIT_ZERO_EXACT.value) / 1.8
    return absolute_temperature(degrees, CELSIUS_ZERO_EXACT.value)


def _row(system: System, degrees: int, face: Dial) -> Row:
    scale, unit = SCALES[system], PRESSURE_UNITS[system]
    ideal, real = gauge_at(system, degrees)
    absolute = scale.absolute(degrees)
    size = volume_warmed(1.0, scale.absolute(_FILLED[system][1]), absolute)
    return {
        "temperature": shown(degrees, scale.unit, given=True),
        "absolute": f"{absolute:.0f} {scale.absolute_unit}",
        "gauge": shown(ideal, unit),
        "real": shown(real, unit),
        "size": rounded(size),
        "turn": f"{face.turn(ideal):.1f}",
        "radius": f"{_RADIUS * sqrt(size):.1f}",
    }


def _face(face: Dial) -> Picture:
    heading = text(92, 198, "Gauge of the shut cylinder")
    title = f"Gauge of the shut cylinder, from 0 to {face.top:g} {face.unit}"
    return Picture(title, 184, 212, parts.dial(face, "turn") + heading, "The needle stands at {gauge}.")


def _bag() -> Picture:
    drawing = (
        '<circle class="fig-face" cx="92" cy="92" r="{radius}" stroke-width="2"/>'
        f'<circle class="fig-line" cx="92" cy="92" r="{_RADIUS:g}" stroke-width="1" stroke-dasharray="4 3"/>'
        f"{text(92, 198, 'A bag of air, free to grow')}"
        f"{parts.told(92, 92, '{size} ×', anchor='middle', bold=True)}"
    )
    said = "The bag is {size} times as large as when it was filled; dashes show how large that was."
    return Picture("A bag of air that is free to grow", 184, 212, drawing, said)


APPARATUS = Apparatus("heat", build)
