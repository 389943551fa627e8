"""The weight of the air against a column of water that balances it, at the sea and on a mountain."""

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
from pressure.figures.drawing import text
from pressure.laws.altitude import standard_pressure
from pressure.laws.columns import height_held
from pressure.problem import System
from pressure.units import FACTORS, shown
from pressure.waters import ALLOWED, Convention

_HUNDREDS: dict[System, tuple[int, int]] = {"us": (100, 20), "metric": (30, 5)}
"""The highest place and the gap between stops, in hundreds of feet or metres."""
_WATER = Switch("water", "Water in the tube", (("sea", "sea water"), ("fresh", "fresh water")))

_DISH = 250.0
"""Where the water in the dish stands."""
_LONGEST, _ARROW = 178.0, 40.0
"""As drawn: the longest column, and the arrow of the air at the sea."""
_SEA, _PEAK = (14.0, 250.0), (94.0, 90.0)


def build(system: System) -> Bench:
    """The place goes from the sea up to ten thousand feet or three thousand metres."""
    top, gap = _HUNDREDS[system]
    foot = ALLOWED[system, "sea"][0].depth_unit
    hundreds = "hundred feet" if foot == "ft" else "hundred metres"
    stops = tuple([Stop(at, str(at)) for at in range(0, top + 1, gap)])
    slider = Slider(f"Height in hundreds of {foot}", "altitude", hundreds, top, stops)
    return Bench(
        title="The air against a column of water",
        note=_note(system),
        slider=slider,
        switches=(_WATER,),
        guess=_guess(system, top),
        pictures=(_picture(),),
        words="At {altitude} above the sea the air presses with {air}, {ratio} of what it does at the sea. "
        "A column of {water} {column} high presses as hard and balances it.",
        readings=(
            ("Height of the place", "{altitude}"),
            ("The air presses with", "{air}"),
            ("Part of sea level", "{ratio}"),
            ("Column that balances it", "{column}"),
        ),
        table=(
            ("Height above the sea", "{altitude}"),
            ("Air", "{air}"),
            ("Part of sea level", "{ratio}"),
            ("Column", "{column}"),
        ),
        rows=tuple([_row(system, place) for place in places(slider, (_WATER,))]),
    )


def _note(system: System) -> str:
    sea, fresh = [shown(each.column, each.depth_unit, given=True) for each in _waters(system)]
    named = ALLOWED[system, "sea"][0]
    surface = shown(named.surface, named.pressure_unit, given=True)
    return (
        f"{sea} of sea water and {fresh} of fresh press with {surface}. The air is the standard atmosphere; "
        "the weather moves it. The tube is empty above its water. Arrows are as long as the pressure is high."
    )


def _guess(system: System, top: int) -> Guess:
    place = shown(100 * top, ALLOWED[system, "sea"][0].depth_unit, given=True)
    return Guess(
        question=f"The tube and its dish are carried up a mountain, to {place}. What becomes of the column?",
        options=(
            ("longer", "it grows longer"),
            ("same", "it stays as it was"),
            ("shorter", "it loses about a third"),
            ("gone", "it loses nearly all"),
        ),
        right="shorter",
        because="Only the air on the dish holds the water up. There is less air above the mountain, so it "
        "holds up less water; but more than two thirds of the air still lie above this place.",
        place=Place(top, ("sea",)),
    )


def _row(system: System, place: Place) -> Row:
    water = next(each for each in _waters(system) if each.water in place.set_to)
    altitude, share = 100 * place.at, place.at / _HUNDREDS[system][0]
    column, sea_column = _column(water, altitude), _column(water, 0)
    pascals = standard_pressure(altitude * FACTORS[water.depth_unit])
    ratio, scale = pascals / FACTORS["atm"], _LONGEST / max(_column(each, 0) for each in _waters(system))
    return {
        "altitude": shown(altitude, water.depth_unit, given=True),
        "air": shown(pascals / FACTORS[water.pressure_unit], water.pressure_unit),
        "ratio": shown(ratio, ""),
        "water": f"{water.water} water",
        "column": shown(column, water.depth_unit),
        "level": f"{_DISH - scale * column:.1f}",
        "high": f"{scale * column:.1f}",
        "middle": f"{_DISH - scale * column / 2:.1f}",
        "sea_level": f"{_DISH - scale * sea_column:.1f}",
        "push": f"{_ARROW * ratio:.1f}",
        "place_x": f"{_SEA[0] + (_PEAK[0] - _SEA[0]) * share:.1f}",
        "place_y": f"{_SEA[1] + (_PEAK[1] - _SEA[1]) * share:.1f}",
    }


def _waters(system: System) -> tuple[Convention, Convention]:
    return ALLOWED[system, "sea"][0], ALLOWED[system, "fresh"][0]


def _column(water: Convention, altitude: float) -> float:
    """The height of water that the air holds up there, in the convention's unit of length."""
    pascals = standard_pressure(altitude * FACTORS[water.depth_unit])
    return height_held(pascals / FACTORS[water.pressure_unit], water.gradient)


def _picture() -> Picture:
    words = (
        "On the left a mountain, the place marked at {altitude}. On the right a tube, closed and empty at "
        "the top, stands in a dish of {water}; the water in it reaches {column} above the dish. The air "
        "presses on the dish as hard as the column: {air}."
    )
    drawing = f'<g transform="translate(0 -36)">{_mountain()}{_tube()}{_arrows()}</g>'
    title = "A tube of water balanced by the air, and the place where it stands"
    return Picture(title, 320, 268, drawing, words)


def _mountain() -> str:
    return (
        '<path class="fig-face" d="M14 250L94 90L126 250Z" stroke-width="1.5"/>'
        '<path class="fig-deep" d="M0 250H14" stroke-width="3"/>'
        '<g transform="translate({place_x} {place_y})"><path class="fig-line" d="M0 0V-26" stroke-width="2"/>'
        '<path class="fig-solid" d="M0 -26l16 6l-16 6z"/><circle class="fig-solid" r="5"/></g>'
        f"{parts.told(66, 272, '{altitude}', anchor='middle', bold=True)}"
        f"{text(66, 290, 'above the sea', size=12, muted=True)}"
    )


def _tube() -> str:
    return (
        '<rect class="fig-water" x="140" y="250" width="172" height="30"/>'
        '<rect class="fig-water" x="210" y="{level}" width="32" height="{high}"/>'
        '<path class="fig-deep" d="M140 250H210M242 250H312M210 {level}h32" stroke-width="1.5"/>'
        '<path class="fig-line" d="M140 238V281H312V238M210 268V46H242V268" stroke-width="3"/>'
        '<path class="fig-line" d="M192 {level}h12M198 {level}V250" stroke-width="1.5"/>'
        '<path class="fig-deep" d="M236 {sea_level}h14" stroke-width="1.5" stroke-dasharray="4 3"/>'
        f"{_beside('sea_level', 'at the sea')}"
        '<text x="194" y="{middle}" font-size="15" font-weight="700" text-anchor="end" '
        'dominant-baseline="central" text="{column}"></text>'
        f"{text(250, 52, 'empty', anchor='start', size=12, muted=True)}"
        f"{parts.told(226, 293, '{water}', anchor='middle')}"
    )


def _beside(column: str, words: str) -> str:
    """Words to the right of the tube at a height that follows the switch."""
    return (
        f'<text class="fig-text-muted" x="254" y="{{{column}}}" font-size="12" '
        f'dominant-baseline="central">{words}</text>'
    )


def _arrows() -> str:
    pushes = "".join(parts.push(x, 249, "push", turn=90) for x in (165, 226, 282))
    return f"{pushes}{text(282, 170, 'air')}{parts.told(282, 188, '{air}', anchor='middle')}"


APPARATUS = Apparatus("column", build)
