"""A mixture going down: its shares stay, what each gas presses grows, and a trace with it."""

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
)
from pressure.figures.drawing import text
from pressure.laws.dalton import partial_pressure, surface_equivalent
from pressure.problem import System
from pressure.units import FACTORS, shown
from pressure.waters import ALLOWED, Convention

OXYGEN, TRACE_PPM = 0.21, 1000.0
"""The share of oxygen in air (OpenStax, Chemistry 2e, §9.3: 21 %), and a trace of carbon dioxide."""
_TALL = 26.0  # of one atmosphere, as drawn


def build(system: System) -> Bench:
    """The depth goes from the surface to five atmospheres of sea water."""
    water = ALLOWED[system, "sea"][0]
    stops = tuple([Stop(round(n * water.column), f"{n * water.column:.0f}") for n in range(6)])
    slider = Slider("Depth of sea water", "depth", water.depth_unit, stops[-1].at, stops)
    return Bench(
        title="Air with a trace of carbon dioxide, going down",
        note=f"{water.sentence} Air of {shown(21, '%', given=True)} oxygen, the rest called nitrogen, with "
        f"{shown(TRACE_PPM, 'ppm', given=True)} of carbon dioxide in it. The trace is drawn a hundred times "
        "as tall as it is.",
        slider=slider,
        guess=_guess(water, stops),
        pictures=(_picture(),),
        words="At {depth} all gases together press with {total}. Oxygen is {oxygen_share} of it as ever and "
        "presses with {oxygen}; nitrogen presses with {nitrogen}. The trace of {trace} presses like {like} "
        "in surface air.",
        readings=(
            ("Depth", "{depth}"),
            ("All together", "{total}"),
            ("Oxygen", "{oxygen}"),
            ("Nitrogen", "{nitrogen}"),
            ("The trace acts like", "{like}"),
        ),
        table=(
            ("Depth", "{depth}"),
            ("All together", "{total}"),
            ("Oxygen", "{oxygen}"),
            ("Nitrogen", "{nitrogen}"),
            ("Trace, as at the surface", "{like}"),
        ),
        rows=tuple([_row(water, depth) for depth in range(slider.top + 1)]),
    )


def _guess(water: Convention, stops: tuple[Stop, ...]) -> Guess:
    deep, trace = stops[4], shown(TRACE_PPM, "ppm", given=True)
    return Guess(
        question=f"A gauge of the supply says {trace} of carbon dioxide. The same air is breathed at "
        f"{deep.text} {water.depth_unit}. What does that trace press like, in surface air?",
        options=(
            ("same", f"like {trace}: the share has not changed"),
            ("four", f"like {shown(4 * TRACE_PPM, 'ppm')}"),
            ("five", f"like {shown(5 * TRACE_PPM, 'ppm')}"),
            ("less", f"like {shown(TRACE_PPM / 5, 'ppm')}: it is pressed together"),
        ),
        right="five",
        because="The share stays, but it is a share of five atmospheres there: four of water and one of "
        "air. Every gas in the mixture presses five times as much, the bad one with the good ones.",
        place=Place(deep.at),
    )


def _row(water: Convention, depth: int) -> Row:
    total = water.atmospheres(depth)
    oxygen = partial_pressure(OXYGEN, total)
    trace = partial_pressure(TRACE_PPM * FACTORS["ppm"], total)
    nitrogen = total - oxygen - trace
    return {
        "depth": shown(depth, water.depth_unit, given=True),
        "total": shown(total, "atm", "absolute"),
        "oxygen_share": shown(100 * OXYGEN, "%", given=True),
        "oxygen": shown(oxygen, "atm", "absolute"),
        "nitrogen": shown(nitrogen, "atm", "absolute"),
        "trace": shown(TRACE_PPM, "ppm", given=True),
        "like": shown(surface_equivalent(TRACE_PPM, total), "ppm"),
        "oxygen_tall": f"{_TALL * oxygen:.1f}",
        "oxygen_top": f"{_TALL * -oxygen:.1f}",
        "nitrogen_tall": f"{_TALL * nitrogen:.1f}",
        "nitrogen_top": f"{_TALL * -(oxygen + nitrogen):.1f}",
        "trace_tall": f"{_TALL * 100 * trace:.1f}",
        "trace_top": f"{_TALL * -100 * trace:.1f}",
    }


def _picture() -> Picture:
    marks = "".join(
        f'<path class="fig-line" d="M24 {-_TALL * n:g}H300" stroke-width="0.6" stroke-dasharray="3 3"/>'
        + text(18, -_TALL * n, str(n), anchor="end", size=12, muted=True)
        for n in range(1, 7)
    )
    drawing = (
        f'<g transform="translate(0 176)">{marks}'
        '<rect class="fig-water" x="54" y="{nitrogen_top}" width="64" height="{nitrogen_tall}"/>'
        '<rect class="fig-solid" x="54" y="{oxygen_top}" width="64" height="{oxygen_tall}"/>'
        '<rect class="fig-harm" x="206" y="{trace_top}" width="40" height="{trace_tall}"/>'
        '<path class="fig-line" d="M24 0H300" stroke-width="1.5"/></g>'
        f"{text(132, 20, 'in atmospheres', anchor='start', size=12, muted=True)}"
        f"{parts.told(24, 194, 'nitrogen {nitrogen}, above', size=12)}"
        f"{parts.told(24, 210, 'oxygen {oxygen}, below', size=12)}"
        f"{text(226, 194, 'the trace, × 100', size=12)}"
        f"{parts.told(226, 210, 'as {like}', anchor='middle', size=12)}"
    )
    said = "Oxygen {oxygen}, nitrogen {nitrogen}, all together {total}; the trace like {like} at the surface."
    return Picture("What each gas of the mixture presses, in atmospheres", 320, 220, drawing, said)


APPARATUS = Apparatus("mixture", build)
