"""The open-bottomed box let down into the sea, with a gauge and an absolute dial beside it."""

from __future__ import annotations

from course.lessons.apparatus import parts
from course.lessons.apparatus.contract import Apparatus, Bench, Guess, Picture, Place, Row, Slider, Stop
from course.lessons.sea import read, words
from pressure.figures import box
from pressure.figures.dials import Dial, dial
from pressure.figures.drawing import text
from pressure.problem import System
from pressure.waters import ALLOWED, Convention

_SCALES: dict[System, tuple[float, float, int]] = {"us": (90.0, 15.0, 3), "metric": (6.0, 1.0, 4)}


def build(system: System) -> Bench:
    """The depth goes from the surface to five atmospheres of sea water."""
    water = ALLOWED[system, "sea"][0]
    gauge, absolute = _dial(water, system, "gauge"), _dial(water, system, "absolute")
    stops = tuple([Stop(round(n * water.column), f"{n * water.column:.0f}") for n in range(box.DEEPEST + 1)])
    slider = Slider("Depth of sea water", "depth", water.depth_unit, stops[-1].at, stops)
    return Bench(
        title="The box, the gauge and the depth",
        note=f"{water.sentence} The box is drawn larger than the depth scale.",
        slider=slider,
        guess=_guess(stops, water.depth_unit),
        pictures=(
            _face(gauge, "dots: whole atmospheres"),
            _face(absolute, "band: the atmosphere"),
            _box(stops, water),
        ),
        words="At {depth} the gauge reads {gauge} and the absolute pressure is {absolute}, or {ata}. "
        "The air in the box takes {volume}: {part} of its volume at the surface.",
        readings=(
            ("Depth", "{depth}"),
            ("Gauge", "{gauge}"),
            ("Absolute", "{absolute}"),
            ("In atmospheres", "{ata}"),
            ("Air in the box", "{volume}"),
        ),
        table=(
            ("Depth", "{depth}"),
            ("Gauge", "{gauge}"),
            ("Absolute", "{absolute}"),
            ("Atmospheres", "{ata}"),
            ("Air", "{volume}"),
            ("Part left", "{part}"),
        ),
        rows=tuple([_row(system, depth, gauge, absolute) for depth in range(slider.top + 1)]),
    )


def _guess(stops: tuple[Stop, ...], unit: str) -> Guess:
    deep = stops[2]
    return Guess(
        question=f"The open box is full of air at the surface. How much is left at {deep.text} {unit}?",
        options=(("half", "one half"), ("third", "one third"), ("quarter", "one quarter"), ("none", "none")),
        right="third",
        because="Two atmospheres of water and the one of the air make three, so a third is left.",
        place=Place(deep.at),
    )


def _dial(water: Convention, system: System, name: str) -> Dial:
    top, step, fine = _SCALES[system]
    return dial(
        name,
        f"{name.capitalize()} pressure",
        unit=water.pressure_unit,
        top=top,
        step=step,
        fine=fine,
        atmosphere=water.surface,
        band=name == "absolute",
    )


def _row(system: System, depth: int, gauge: Dial, absolute: Dial) -> Row:
    reading = read(system, depth)
    hanging = box.hang(reading.atmospheres - 1, reading.part)
    return words(system, reading) | {
        "gauge_turn": f"{gauge.turn(reading.gauge):.1f}",
        "absolute_turn": f"{absolute.turn(reading.absolute):.1f}",
        "top": f"{hanging.top:.1f}",
        "level": f"{hanging.level:.1f}",
        "air": f"{hanging.air:.1f}",
    }


def _face(face: Dial, note: str) -> Picture:
    title = f"{face.title} dial, from 0 to {face.top:g} {face.unit}; {note}"
    heading = text(92, 198, face.title) + text(92, 216, note, size=12, muted=True)
    words = f"The needle stands at {{{face.name}}}."
    return Picture(title, 184, 226, parts.dial(face, f"{face.name}_turn") + heading, words)


def _box(stops: tuple[Stop, ...], water: Convention) -> Picture:
    scale = "".join(
        f'<path class="fig-line" d="M34 {y:g}h8" stroke-width="1"/>'
        + (text(30, y, stop.text, anchor="end", size=13) if stop.at else "")
        for stop, y in ((stop, box.SURFACE + n * box.ATMOSPHERE) for n, stop in enumerate(stops))
    )
    drawing = (
        f'<rect class="fig-water" y="{box.SURFACE:g}" width="200" height="{box.FLOOR - box.SURFACE:g}"/>'
        f'<path class="fig-deep" d="M0 {box.SURFACE:g}H200" stroke-width="1.5"/>{scale}'
        f'<path class="fig-line" d="M42 {box.SURFACE:g}V{box.FLOOR:g}" stroke-width="1"/>'
        f"{text(42, box.SURFACE - 7, f'0 {water.depth_unit}', anchor='end', size=13)}"
        '<line class="fig-line" x1="122" y1="0" x2="122" y2="{top}" stroke-width="1.5"/>'
        '<g transform="translate(72 {top})"><rect class="fig-air" width="100" height="{air}"/>'
        f'<path class="fig-line" d="M0 {box.HEIGHT:g}V0H100V{box.HEIGHT:g}" stroke-width="3"/></g>'
        '<g transform="translate(0 {level})">'
        '<path class="fig-deep" d="M50 0H172" stroke-width="1.5" stroke-dasharray="4 3"/>'
        '<path class="fig-solid" d="M43 0l9 -5v10Z"/></g>'
    )
    said = "The water in it stands at {depth}. Its air takes {volume}: {part} of its volume at the surface."
    return Picture("A box of air, open below, hanging in the sea", 200, round(box.FLOOR), drawing, said)


APPARATUS = Apparatus("box", build)
