"""The chest on the way down and on the way up: breathing from a supply, or holding the breath."""

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
from pressure.laws.boyle import pressure_after, volume_after
from pressure.laws.lungs import TEARS_CM_WATER, residual_depth
from pressure.problem import System
from pressure.units import FACTORS, shown
from pressure.waters import ALLOWED, Convention

FULL_L, RESIDUAL_L = 6.0, 1.5
"""Lungs of about the size in OpenStax, Anatomy and Physiology, §22.3; the residual volume as a quarter."""
_WAY = Switch("way", "Going", (("down", "down from the surface"), ("up", "up from the bottom")))
_BREATH = Switch("breath", "The breath", (("held", "held"), ("free", "breathing from the supply")))
_LONGEST, _SHORTEST, _BAR = 46.0, 4.0, 260.0
_MIDDLE, _HALF = 160.0, 76.0
_MOST_CM = 150.0
"""Where the bar of over-pressure ends, in cmH2O."""


@dataclass(frozen=True, slots=True)
class Chest:
    """The lungs in one place: their air in litres (``volume``), and the pressures inside and outside.

    ``over`` is what the air inside presses more than the water, below nought where it presses less;
    ``free`` what the air would take if nothing stopped it. Pressures in the convention's unit.
    """

    depth: float
    volume: float
    free: float
    inside: float
    outside: float

    @property
    def over(self) -> float:
        return self.inside - self.outside


def at(water: Convention, place: Place, bottom: float) -> Chest:
    """The chest gives way freely from full down to the residual volume, and no further either way."""
    way, breath = place.set_to
    depth = bottom - place.at if way == "up" else float(place.at)
    outside = water.absolute(depth)
    if breath == "free":
        return Chest(depth, FULL_L, FULL_L, outside, outside)
    taken_at = water.absolute(bottom) if way == "up" else water.surface
    free = volume_after(FULL_L, taken_at, outside)
    kept = min(max(free, RESIDUAL_L), FULL_L)
    return Chest(depth, kept, free, pressure_after(taken_at, FULL_L, kept), outside)


def build(system: System) -> Bench:
    """The way goes from nought to four atmospheres of sea water, down or up."""
    water = ALLOWED[system, "sea"][0]
    stops = tuple([Stop(round(n * water.column), f"{n * water.column:.0f}") for n in range(5)])
    slider = Slider("Way gone", "way", water.depth_unit, stops[-1].at, stops)
    return Bench(
        title="The chest, holding and breathing",
        note=f"{water.sentence} Lungs of {FULL_L:g} L that cannot go below {RESIDUAL_L:g} L or above full: "
        "a simplified chest. Real lungs have torn on less than the range shown, and it is no margin to use.",
        slider=slider,
        guess=_guess(water, stops),
        switches=(_WAY, _BREATH),
        pictures=(_picture(water, stops[-1].at),),
        words="{words}",
        readings=(
            ("Depth", "{depth}"),
            ("Air in the lungs", "{volume}"),
            ("Water outside", "{outside}"),
            ("Air inside", "{inside}"),
            ("Difference", "{difference}"),
        ),
        table=(
            ("Way", "{way}"),
            ("Depth", "{depth}"),
            ("Air", "{volume}"),
            ("Outside", "{outside}"),
            ("Inside", "{inside}"),
            ("What comes of it", "{outcome}"),
        ),
        rows=tuple([_row(water, place, stops[-1].at) for place in places(slider, (_WAY, _BREATH))]),
    )


def _guess(water: Convention, stops: tuple[Stop, ...]) -> Guess:
    foot = water.depth_unit
    rise = {"ft": 4, "m": 1}[foot]
    return Guess(
        question=f"A diver at {stops[-1].text} {foot} fills the lungs from the set, holds the breath and "
        "rises. How far up can it begin to tear them?",
        options=(
            ("little", f"after about {shown(rise, foot, given=True)}"),
            ("ten", f"after about {shown({'ft': 33, 'm': 10}[foot], foot, given=True)}"),
            ("half", f"after half the way, {shown(stops[2].at, foot, given=True)}"),
            ("never", "not at all, if the rise is slow enough"),
        ),
        right="little",
        because="Full lungs cannot grow. Every bit of the rise is left across their wall as a difference, "
        "and the little that can tear them is there within a metre or so.",
        place=Place(rise, ("up", "held")),
    )


def _row(water: Convention, place: Place, bottom: int) -> Row:
    now, unit = at(water, place, bottom), water.pressure_unit
    over_cm = now.over * FACTORS[unit] / FACTORS["cmH2O"]
    scale = sqrt(now.volume / FULL_L)
    outcome = _outcome(place, now, over_cm)
    row = {
        "way": shown(place.at, water.depth_unit, given=True),
        "depth": shown(now.depth, water.depth_unit, given=True),
        "volume": shown(now.volume, "L"),
        "inside": shown(now.inside, unit),
        "outside": shown(now.outside, unit),
        "difference": _difference(now, unit),
        "outcome": outcome,
        "lungs": f"{scale:.3f}",
        "out_arrow": _arrow(water, now.outside),
        "in_arrow": _arrow(water, now.inside),
        "left": f"{_MIDDLE - _HALF * scale:.1f}",
        "right": f"{_MIDDLE + _HALF * scale:.1f}",
        "bar": f"{min(max(over_cm, 0.0), _MOST_CM) / _MOST_CM * _BAR:.1f}",
        "harm": "none" if outcome in _SOUND else "inline",
    }
    return row | {"words": _words(place, now, row)}


def _arrow(water: Convention, pressure: float) -> str:
    return f"{_SHORTEST + _LONGEST * pressure / water.absolute(4 * water.column):.1f}"


def _difference(now: Chest, unit: str) -> str:
    if abs(now.over) < 1e-6:
        return "none"
    return f"{shown(abs(now.over), unit)} {'outwards' if now.over > 0 else 'inwards'}"


_BREATHES, _GIVES = "inside and outside are equal", "the chest gives way"
_SOUND = (_BREATHES, _GIVES)


def _outcome(place: Place, now: Chest, over_cm: float) -> str:
    if place.set_to[1] == "free" or not place.at:
        return _BREATHES
    if now.over < -1e-6:
        return "pressed beyond what the chest can follow: squeeze"
    if over_cm >= TEARS_CM_WATER[1]:
        return "beyond all of the range that tears lungs"
    if over_cm >= TEARS_CM_WATER[0]:
        return "in the range that tears lungs"
    return "the wall is stretched" if now.over > 1e-6 else _GIVES


def _words(place: Place, now: Chest, row: Row) -> str:
    where = f"At {row['depth']} the water presses with {row['outside']}."
    if place.set_to[1] == "free":
        return f"{where} The supplied air presses as much, and a full breath is {row['volume']} as ever."
    held = f"The held breath takes {row['volume']} and presses with {row['inside']}"
    if abs(now.over) < 1e-6:
        return f"{where} {held}: no difference, {row['outcome']}."
    free = f"; left free it would take {shown(now.free, 'L')}."
    return f"{where} {held}{free} Across the wall stand {row['difference']}: {row['outcome']}."


def _picture(water: Convention, bottom: int) -> Picture:
    low, high = (edge / _MOST_CM * _BAR for edge in TEARS_CM_WATER)
    lung = "M-6 -44C-30 -40 -52 0 -50 40C-48 52 -20 46 -8 38Z"
    drawing = (
        '<rect class="fig-water" width="320" height="196"/>'
        '<path class="fig-line" d="M154 8v34M166 8v34" stroke-width="1.5"/>'
        f'<g transform="translate(160 100)"><g transform="scale({{lungs}})">'
        '<path class="fig-flesh" d="M-70 -62C-84 -20 -84 40 -66 72H66C84 40 84 -20 70 -62Z"/>'
        f'<path class="fig-air" stroke="currentColor" stroke-width="1.5" d="{lung}"/>'
        f'<path class="fig-air" stroke="currentColor" stroke-width="1.5" transform="scale(-1 1)" d="{lung}"/>'
        f"</g></g>{_arrows()}"
        f"{text(8, 128, 'water', anchor='start', size=13)}{parts.told(8, 146, '{outside}', size=13)}"
        f"{text(312, 128, 'air inside', anchor='end', size=13)}"
        f"{parts.told(312, 146, '{inside}', anchor='end', size=13)}"
        f"{parts.told(160, 186, '{volume}', anchor='middle', bold=True)}"
        f'<g transform="translate(30 238)"><rect class="fig-harm" x="{low:.1f}" y="-12" '
        f'width="{high - low:.1f}" height="24" stroke-width="1"/>'
        f'<path class="fig-line" d="M0 -12v24M0 0H{_BAR:g}" stroke-width="1"/>'
        '<rect class="fig-solid" y="-5" height="10" width="{bar}"/></g>'
        f"{text(30, 214, 'over the water’s pressure', anchor='start', size=13)}"
        f"{text(30 + low, 264, 'said to tear lungs', anchor='start', size=13)}"
        f"{parts.shown('harm', parts.told(160, 286, '{outcome}', anchor='middle', size=13, bold=True))}"
    )
    said = "Lungs with {volume} of air; inside {inside}, outside {outside}: {outcome}."
    return Picture("The lungs in the chest, with the water outside", 320, 300, drawing, said)


def _arrows() -> str:
    """The water from both sides on the walls of the chest, the air inside on the same walls."""
    water, air = parts.push(-4, 0, "out_arrow"), parts.push(-4, 0, "in_arrow")
    left = f'{water}<g transform="translate(0 -14) scale(-1 1)">{air}</g>'
    return (
        f'<g transform="translate({{left}} 100)">{left}</g>'
        f'<g transform="translate({{right}} 100)"><g transform="scale(-1 1)">{water}</g>'
        f'<g transform="translate(0 14)">{air}</g></g>'
    )


def classical_limit(water: Convention) -> float:
    """The depth at which the held breath is down to the residual volume, by the arithmetic alone."""
    return residual_depth(FULL_L, RESIDUAL_L, water.column)


APPARATUS = Apparatus("chest", build)
