"""Air spaces in section, shared by several apparatus: their sea, and what the model says of them.

A section shows one wall that gives, and what presses on it from the left and from the right (``walls``).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from course.lessons.apparatus.contract import Bench, Guess, Picture, Row, Slider, Stop, Switch, places
from course.lessons.apparatus.walls import HIGH, WIDE, arrows, banner, bent, bulging
from pressure.airspaces.circumstances import Circumstance
from pressure.airspaces.harmful import HARMFUL
from pressure.airspaces.harmless import HARMLESS
from pressure.airspaces.injuries import INJURIES, NONE
from pressure.airspaces.model import Outcome, Side, outcome, pressure_inside
from pressure.airspaces.spaces import Giving
from pressure.airspaces.trips import Trip
from pressure.problem import System
from pressure.units import FACTORS, shown
from pressure.waters import ALLOWED, Convention

_CIRCUMSTANCES: Mapping[str, Circumstance] = MappingProxyType(
    {each.name: each for each in (*HARMFUL, *HARMLESS)}
)
_NOTHING = 1e-6


@dataclass(frozen=True, slots=True)
class Sea:
    """The sea of a section: ``top`` steps deep, ``finer`` of them to a unit, a stop every ``gap`` steps.

    ``later`` is a depth on the way down where a space may be cleared, in steps. The range ends a little
    beyond 500 mmHg, the most that texts give for an eardrum.
    """

    water: Convention
    top: int
    finer: int
    gap: int
    later: int

    def depth(self, at: int) -> float:
        return at / self.finer

    def said(self, at: int) -> str:
        return shown(self.depth(at), self.water.depth_unit, given=True) if at else "the surface"

    def slider(self) -> Slider:
        stops = tuple(
            [Stop(at, f"{self.depth(at):g}") for at in range(0, self.top + 1, self.gap)],
        )
        return Slider("Depth of sea water", "depth", self.water.depth_unit, self.top, stops)

    def mercury(self, pressure: float) -> float:
        """A pressure in the unit of the water, in mmHg."""
        return pressure * FACTORS[self.water.pressure_unit] / FACTORS["mmHg"]

    def reached(self, mercury: float) -> int:
        """The first step from where the space was shut at which so many mmHg lie across its wall."""
        return next(at for at in range(self.top + 1) if self._across(at) >= mercury - _NOTHING)

    def _across(self, at: int) -> float:
        return self.mercury(self.water.gauge(self.depth(at)))


_SEAS: Mapping[System, Sea] = MappingProxyType(
    {
        "us": Sea(ALLOWED["us", "sea"][0], top=24, finer=1, gap=4, later=8),
        "metric": Sea(ALLOWED["metric", "sea"][0], top=70, finer=10, gap=10, later=20),
    }
)


def sea(system: System) -> Sea:
    return _SEAS[system]


@dataclass(frozen=True, slots=True)
class Setting:
    """An option of the switch: a circumstance of the model, and the step where it last let gas through."""

    name: str
    text: str
    circumstance: str
    since: int = 0

    @property
    def told(self) -> Circumstance:
        return _CIRCUMSTANCES[self.circumstance]

    @property
    def is_shut(self) -> bool:
        return bool(self.told.shuts)


def shut_since(water: Sea, text: str, circumstance: str) -> tuple[Setting, ...]:
    """Two settings: shut at the surface, and shut at the depth where it was cleared on the way down."""
    return (
        Setting("surface", f"{text} since the surface", circumstance),
        Setting("later", f"{text} since {water.said(water.later)}", circumstance, water.later),
    )


@dataclass(frozen=True, slots=True)
class Rung:
    """What is said from so many mmHg of difference on: short in the picture, and a sentence in the words."""

    mercury: float
    banner: str
    sentence: str


def can_follow(giving: Giving, difference: str) -> str:
    """What a difference may end in, said as what can be and not as what will be."""
    return f"What can follow, {difference}: {giving.harm[0].lower()}{giving.harm[1:]}"


def unmeasured(short: str, giving: Giving) -> tuple[Rung, ...]:
    """The one rung of a wall for which no source read gives a figure."""
    harm = can_follow(giving, "from a difference that no source read here gives")
    return (Rung(0, short, f"{giving.does} {harm}"),)


def _no_shapes(setting: Setting, bulge: float) -> Row:
    return {}


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """An apparatus of one air space.

    The wall stands at ``wall_at`` in the ``drawing``; ``shapes`` are columns of its own, by setting and bulge
    (to the right is positive). ``words`` say what presses on either side; the difference and what it does
    follow. ``rest`` is the banner where there is none. ``inner`` and ``outer`` say where the two sides are.
    ``low_left``: the air space lies left of the wall.
    """

    title: str
    note: str
    what: str
    label: str
    settings: tuple[Setting, ...]
    guess: Guess
    words: str
    rest: str
    ladders: Mapping[Side, tuple[Rung, ...]]
    wall_at: float
    drawing: str
    inner: str
    outer: str = "outside"
    low_left: bool = False
    shapes: Callable[[Setting, float], Row] = _no_shapes


def bench(system: System, section: Section) -> Bench:
    """The apparatus: a row for every depth under every setting."""
    water = sea(system)
    slider = water.slider()
    switch = Switch("way", section.label, tuple([(each.name, each.text) for each in section.settings]))
    by_name = {each.name: each for each in section.settings}
    words = f"{section.words}: {{net}}. {{said}}"
    pairs = (
        ("Depth", "{depth}"),
        (section.outer.capitalize(), "{outside} absolute"),
        (section.inner.capitalize(), "{inside} absolute"),
        ("Difference", "{across}"),
    )
    return Bench(
        title=section.title,
        note=f"{water.water.sentence} {section.note} Arrows are as long as the absolute pressures, to one "
        "scale; the thick end is what one side presses more. The bulge is drawn larger than life.",
        slider=slider,
        guess=section.guess,
        pictures=(Picture(section.what, WIDE, HIGH, section.drawing + banner(), words),),
        words=words,
        readings=pairs,
        table=(*pairs, ("What gives", "{banner}")),
        rows=tuple(
            [_row(water, section, by_name[place.set_to[0]], place.at) for place in places(slider, (switch,))]
        ),
        switches=(switch,),
    )


def _row(water: Sea, section: Section, setting: Setting, at: int) -> Row:
    trip = Trip(water.depth(setting.since), water.depth(at))
    found = outcome(setting.told, trip, water.water)
    outside, inside = water.water.absolute(trip.end), pressure_inside(setting.told, trip, water.water)
    left, right = (inside, outside) if section.low_left else (outside, inside)
    bulge = bulging(left - right, water.water.gauge(water.depth(water.top)))
    unit = water.water.pressure_unit
    return {
        "depth": shown(trip.end, water.water.depth_unit, given=True),
        "outside": shown(outside, unit),
        "inside": shown(inside, unit),
        "set": setting.text,
        "gives": "none" if found.injury == NONE else "inline",
        "passage": "shut" if setting.is_shut else "open",
        "shut": "inline" if setting.is_shut else "none",
        "clear": "none" if setting.is_shut else "inline",
        **arrows(left, right, water.water.surface),
        **bent(section.wall_at, bulge),
        **_told(water, section, found),
        **section.shapes(setting, bulge),
    }


def _told(water: Sea, section: Section, found: Outcome) -> dict[str, str]:
    """What the difference is and what it does, in words."""
    if found.side is None:
        same = "the same on both sides"
        return {"across": "none", "net": same, "banner": section.rest, "said": f"{section.rest}."}
    mercury = water.mercury(found.difference)
    across = f"{shown(found.difference, water.water.pressure_unit)} ({shown(mercury, 'mmHg')})"
    rung = [each for each in section.ladders[found.side] if mercury >= each.mercury - _NOTHING][-1]
    name = "" if found.injury == NONE else f" {INJURIES[found.injury].title}."
    return {
        "across": across,
        "net": f"{across} more {section.outer if found.side == 'outside' else section.inner}",
        "banner": rung.banner,
        "said": f"{rung.sentence}{name}",
    }
