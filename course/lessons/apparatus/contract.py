"""What an apparatus is: a slider, at most two switches, pictures that follow them, and words that say it.

All it can show is a table of rows, one for every position of its controls, computed once by ``pressure``. The
page without script is one row of that table; the page's script only looks rows up in it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from itertools import product
from math import prod

from pressure.problem import System

Row = Mapping[str, str]
"""What stands where in one position, by name: numbers with their units, and lengths of the drawing."""


@dataclass(frozen=True, slots=True)
class Stop:
    """A position of the slider that has a link of its own."""

    at: int
    text: str


@dataclass(frozen=True, slots=True)
class Slider:
    """A slider from nought to ``top`` in whole steps of ``unit``; ``column`` says where it stands.

    The stops lie evenly, the first at nought and the last at ``top``.
    """

    label: str
    column: str
    unit: str
    top: int
    stops: tuple[Stop, ...]


@dataclass(frozen=True, slots=True)
class Switch:
    """A switch: its name in the address, its label, and its options as (name, text), the first one set."""

    name: str
    label: str
    options: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Place:
    """Where the controls stand: the slider's position and, in the order of the switches, their options."""

    at: int = 0
    set_to: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Guess:
    """What the reader is asked before anything moves: options as (name, text), three or four of them.

    ``because`` says what is so and why; the apparatus goes to ``place`` to show it.
    """

    question: str
    options: tuple[tuple[str, str], ...]
    right: str
    because: str
    place: Place


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing: what it is, how wide and high, its parts (see ``moving``), and a form of words for it."""

    title: str
    wide: int
    high: int
    parts: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """One apparatus in one system of units.

    ``rows`` has a row for every position of the slider under every setting of the switches, the slider
    turning fastest. ``words`` is the form that says all of a row; ``readings`` and ``table`` are pairs of
    a heading and a form, for the panel beside the pictures and for the table of stops.
    """

    title: str
    note: str
    slider: Slider
    guess: Guess
    pictures: tuple[Picture, ...]
    words: str
    readings: tuple[tuple[str, str], ...]
    table: tuple[tuple[str, str], ...]
    rows: tuple[Row, ...]
    switches: tuple[Switch, ...] = ()

    @property
    def start(self) -> Place:
        return Place(0, tuple([switch.options[0][0] for switch in self.switches]))

    def number(self, place: Place) -> int:
        """Which row belongs to a place. Raises ValueError for a place that the controls do not have."""
        number = 0
        for switch, name in zip(self.switches, place.set_to, strict=True):
            number = number * len(switch.options) + [option for option, _ in switch.options].index(name)
        if not 0 <= place.at <= self.slider.top:
            raise ValueError(f"The slider ends at {self.slider.top}, before {place.at}.")
        return number * (self.slider.top + 1) + place.at

    def at(self, place: Place) -> Row:
        return self.rows[self.number(place)]


@dataclass(frozen=True, slots=True)
class Apparatus:
    """One apparatus by its name in lessons and addresses."""

    name: str
    build: Callable[[System], Bench]


def places(slider: Slider, switches: tuple[Switch, ...] = ()) -> Iterator[Place]:
    """Every place of the controls, in the order of a bench's rows."""
    for setting in product(*[[name for name, _ in switch.options] for switch in switches]):
        for at in range(slider.top + 1):
            yield Place(at, setting)


def count(slider: Slider, switches: tuple[Switch, ...]) -> int:
    return (slider.top + 1) * prod(len(switch.options) for switch in switches)
