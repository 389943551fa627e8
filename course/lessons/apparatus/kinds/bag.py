"""A soft bag let down into the sea, sealed or kept full, and what each stretch of water does to it."""

from __future__ import annotations

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
from course.lessons.sea import BOXES, read, words
from pressure.figures.drawing import text
from pressure.laws.supply import free_gas
from pressure.problem import System
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED

_STRETCHES = 5
_HOW = Switch("air", "The bag", (("sealed", "sealed"), ("full", "kept full through a hose")))
_HEADINGS = {"sealed": "Room lost", "full": "Air put in"}

_SURFACE, _STRETCH, _BAG, _BARS, _FILL = 52.0, 44.0, 98.0, 196.0, 56.0
"""As drawn: where the water begins, the depth of a stretch, the middle of the bag, where the bars begin, and
how long a bar is for one fill of the bag."""
_SACK = "M0 -36C-6 -30 -31 -18 -31 7C-31 25 -16 32 0 32C16 32 31 25 31 7C31 -18 6 -30 0 -36Z"
_SACK_TOP = 36.0


def build(system: System) -> Bench:
    """The depth goes from the surface to five atmospheres of sea water."""
    water = ALLOWED[system, "sea"][0]
    stops = tuple([Stop(round(n * water.column), f"{n * water.column:.0f}") for n in range(_STRETCHES + 1)])
    slider = Slider("Depth of sea water", "depth", water.depth_unit, stops[-1].at, stops)
    stretch = shown(water.column, water.depth_unit, given=True)
    room = shown(BOXES[system][0], BOXES[system][1], given=True)
    return Bench(
        title="A soft bag, sealed or kept full",
        note=f"{water.sentence} The bag has room for {room} and no stretch of its own; air keeps its "
        "temperature. Air put in is counted as it measures at the surface. The bag is drawn larger than the "
        f"depth scale. Each bar stands for {stretch} of the way.",
        slider=slider,
        switches=(_HOW,),
        guess=_guess(stretch, stops[-1]),
        pictures=(_picture(stops, water.depth_unit),),
        words="At {depth}, under {ata}, the bag takes {volume}. {story}",
        readings=(
            ("Depth", "{depth}"),
            ("Absolute", "{ata}"),
            ("Volume of the bag", "{volume}"),
            ("Surface air put in", "{put_in}"),
            ("Surface air it holds", "{held}"),
        ),
        table=(
            ("Depth", "{depth}"),
            ("Absolute", "{ata}"),
            ("Volume", "{volume}"),
            ("Surface air put in", "{put_in}"),
            ("Surface air it holds", "{held}"),
        ),
        rows=tuple([_row(system, place) for place in places(slider, (_HOW,))]),
    )


def _guess(stretch: str, deepest: Stop) -> Guess:
    return Guess(
        question=f"The bag is kept full all the way down. Which stretch of {stretch} takes the most surface "
        "air?",
        options=(
            ("first", "the first"),
            ("last", "the last"),
            ("alike", "all take the same"),
        ),
        right="alike",
        because="Each stretch adds one atmosphere, and each atmosphere takes one more fill. Now seal the "
        "bag: in the first stretch, where the pressure doubles, it loses more room than in all the others.",
        place=Place(deepest.at, ("full",)),
    )


def _row(system: System, place: Place) -> Row:
    (how,), reading = place.set_to, read(system, place.at)
    room, unit = BOXES[system]
    put_in = _put_in(system, place.at) if how == "full" else 0.0
    part = 1.0 if how == "full" else reading.part
    y, size = _SURFACE + _STRETCH * (reading.atmospheres - 1), sqrt(part)
    changes = _changes(system, how, place.at)
    return {
        "depth": words(system, reading)["depth"],
        "ata": words(system, reading)["ata"],
        "volume": shown(room * part, unit),
        "put_in": shown(put_in, unit),
        "held": shown(room + put_in, unit),
        "story": _story(how, words(system, reading)["part"], shown(put_in, unit)),
        "heading": _HEADINGS[how],
        "y": f"{y:.1f}",
        "size": f"{size:.3f}",
        "neck": f"{y - _SACK_TOP * size:.1f}",
        "hose": "inline" if how == "full" else "none",
        "bars": "".join(
            f"M{_BARS:g} {_middle(n):g}h{_FILL * change / room:.1f}" for n, change in changes.items()
        ),
        **{f"change_{n}": shown(changes[n], unit) if n in changes else "" for n in range(_STRETCHES)},
    }


def _story(how: str, part: str, put_in: str) -> str:
    if how == "full":
        return f"It is kept full: {put_in} of surface air was put in on the way down."
    return f"It is sealed, and nothing was put in: {part} of its volume at the surface is left."


def _put_in(system: System, depth: float) -> float:
    """Surface air put in on the way to a depth to keep the bag full."""
    reading, room = read(system, depth), BOXES[system][0]
    return free_gas(room, reading.gauge, ALLOWED[system, "sea"][0].surface)


def _changes(system: System, how: str, depth: int) -> dict[int, float]:
    """For each stretch entered so far the room lost in it, or the surface air put in."""
    column = ALLOWED[system, "sea"][0].column
    entered = [n for n in range(_STRETCHES) if n * column < depth]
    return {n: _change(system, how, n * column, min(depth, (n + 1) * column)) for n in entered}


def _change(system: System, how: str, shallow: float, deep: float) -> float:
    if how == "full":
        return _put_in(system, deep) - _put_in(system, shallow)
    return read(system, shallow).volume - read(system, deep).volume


def _middle(stretch: int) -> float:
    return _SURFACE + _STRETCH * (stretch + 0.5)


def _picture(stops: tuple[Stop, ...], depth_unit: str) -> Picture:
    floor = _SURFACE + _STRETCHES * _STRETCH + 40
    drawing = (
        f'<rect class="fig-water" y="{_SURFACE:g}" width="160" height="{floor - _SURFACE:g}"/>'
        f'<path class="fig-deep" d="M0 {_SURFACE:g}H160" stroke-width="1.5"/>{_scale(stops, depth_unit)}'
        f'<path class="fig-line" d="M{_BAG:g} 0V{{neck}}" stroke-width="1.5"/>'
        + parts.shown("hose", f'<path class="fig-deep" d="M{_BAG + 5:g} 0V{{y}}" stroke-width="5"/>')
        + f'<g transform="translate({_BAG:g} {{y}}) scale({{size}})"><path class="fig-face" d="{_SACK}" '
        f'stroke-width="2.5" vector-effect="non-scaling-stroke"/></g>{_bars()}'
    )
    said = (
        "A bag hangs at {depth} in the sea and takes {volume}. {story} Bars show {heading} in each stretch."
    )
    return Picture("A soft bag in the sea, and what each stretch changes", 320, round(floor), drawing, said)


def _scale(stops: tuple[Stop, ...], depth_unit: str) -> str:
    marks = [(stop, _SURFACE + n * _STRETCH) for n, stop in enumerate(stops)]
    lines = "".join(f'<path class="fig-line" d="M34 {y:g}h8" stroke-width="1"/>' for _, y in marks)
    numbers = "".join(text(30, y, stop.text, anchor="end", size=13) for stop, y in marks if stop.at)
    foot = _SURFACE + _STRETCHES * _STRETCH
    return (
        f'{lines}{numbers}<path class="fig-line" d="M42 {_SURFACE:g}V{foot:g}" stroke-width="1"/>'
        f"{text(42, _SURFACE - 9, f'0 {unit_text(depth_unit)}', anchor='end', size=13)}"
    )


def _bars() -> str:
    foot = _SURFACE + _STRETCHES * _STRETCH
    lines = "".join(f"M{_BARS - 26:g} {_SURFACE + n * _STRETCH:g}H312" for n in range(_STRETCHES + 1))
    changes = "".join(
        parts.told(_BARS + _FILL + 5, _middle(n), f"{{change_{n}}}", size=12) for n in range(_STRETCHES)
    )
    return (
        f'<path class="fig-line" d="{lines}" stroke-width="0.75" stroke-dasharray="2 4"/>'
        f'<path class="fig-line" d="M{_BARS:g} {_SURFACE:g}V{foot:g}" stroke-width="1.5"/>'
        f'<path class="fig-deep" d="{{bars}}" stroke-width="18"/>{changes}'
        f"{parts.told(_BARS, 16, '{heading}', bold=True)}"
        f"{text(_BARS, 34, 'in each stretch', anchor='start', size=12, muted=True)}"
    )


APPARATUS = Apparatus("bag", build)
