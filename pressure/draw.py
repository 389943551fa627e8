"""Seeded draws: the same family, seed and system give the same problem on every machine.

A family spans a grid of numbers. The grid is walked in a fixed shuffled order that leaves out the places
unfit to be asked, and the seed says how far along the walk to go: successive seeds lie far apart and all
differ until every fit place has been visited.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import pairwise
from math import exp, gcd, prod
from random import Random
from types import MappingProxyType
from zlib import crc32

from pressure import catalogue
from pressure.errors import BadSeed, BrokenFamily, UnknownSystem
from pressure.problem import (
    AnyKey,
    AnyPosed,
    Axis,
    Cell,
    ChoiceKey,
    Family,
    Key,
    Option,
    OrderKey,
    Posed,
    PosedChoice,
    PosedOrder,
    PosedTable,
    Problem,
    Prompt,
    Slip,
    System,
    TableKey,
)

DELTA = 0.005
"""The rounding allowance, on the natural logarithm: three significant figures are asked for."""

_WIDER = exp(DELTA)
_APART = exp(2 * DELTA)
LARGEST_SEED = 2**63 - 1
_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?")


def draw(family: str | Family, seed: int, system: System) -> Problem:
    """The problem of that seed, in US customary ("us") or metric ("metric") units.

    Raises UnknownFamily, UnknownSystem or BadSeed, each with a sentence that says what there is.
    """
    if isinstance(family, str):
        family = catalogue.family(family)
    way = walk(family, system)
    number = way[sound(seed) % len(way)]
    facts = facts_at(family.axes[system], number)
    posed = family.pose(system, facts)
    return Problem(
        family=family.slug,
        edition=family.edition,
        seed=seed,
        system=system,
        number=number,
        facts=MappingProxyType(facts),
        situation=posed.situation,
        convention=posed.convention,
        givens=posed.givens,
        key=key_of(posed, seed),
        sense=posed.sense,
        caution=posed.caution,
        figure=posed.figure,
        item=posed.item,
    )


def sound(seed: object) -> int:
    """The seed itself. Raises BadSeed unless it is a whole number that a database can keep."""
    if type(seed) is not int or not 0 <= seed <= LARGEST_SEED:
        raise BadSeed(f"A seed is a whole number from 0 to {LARGEST_SEED}, not {seed!r}.")
    return seed


@cache
def walk(family: Family, system: System) -> Sequence[int]:
    """The places of the grid that are fit to be asked, in walking order. Found once, then kept.

    Raises UnknownSystem, or BrokenFamily when no place is fit.
    """
    axes = _axes(family, system)
    size = prod(len(axis.values) for axis in axes)
    stride, start = _stride(axes, size), crc32(f"{family.slug} {system}".encode()) % size
    places = ((start + step * stride) % size for step in range(size))
    fit = tuple(n for n in places if next(flaws(family.pose(system, facts_at(axes, n))), None) is None)
    if not fit:
        raise BrokenFamily(f"{family.slug} has no problem in {system!r} that is fit to be asked.")
    return fit


def _axes(family: Family, system: str) -> tuple[Axis, ...]:
    for known, axes in family.axes.items():
        if known == system:
            return axes
    raise UnknownSystem(f"{family.slug} is not set in {system!r}. It is set in: {', '.join(family.axes)}.")


def _stride(axes: Sequence[Axis], size: int) -> int:
    """A step prime to the grid, near its golden section, so that steps land far from earlier ones."""
    wanted = round(size * 0.618_033_988_75)
    return next(
        step
        for away in range(size + 1)
        for step in (wanted + away, wanted - away)
        if gcd(step, size) == 1 and _turns(axes, step)
    )


def _turns(axes: Sequence[Axis], step: int) -> bool:
    """Whether one step moves every axis well along, not only the slowest."""
    turn = 1
    for axis in reversed(axes):
        turn *= len(axis.values)
        if len(axis.values) > 1 and not 0.15 < step % turn / turn < 0.85:
            return False
    return True


def facts_at(axes: Sequence[Axis], number: int) -> dict[str, float]:
    """The numbers at one place of the grid; the last axis turns fastest."""
    facts: dict[str, float] = {}
    for axis in reversed(axes):
        number, at = divmod(number, len(axis.values))
        facts[axis.name] = axis.values[at]
    return facts


def key_of(posed: AnyPosed, seed: int = 0) -> AnyKey:
    """What marking needs: number bands widened by the allowance, options shuffled by the seed."""
    if isinstance(posed, Posed):
        return _number_key(posed)
    if isinstance(posed, PosedTable):
        return TableKey(tuple([_number_key(cell) for cell in posed.cells]))
    if isinstance(posed, PosedChoice):
        return ChoiceKey(posed.question, shuffled(posed.options, seed), posed.options[0].name)
    items = shuffled(posed.items, seed)
    if items == posed.items:  # an order that stands there already would answer itself
        items = (*items[1:], items[0])
    return OrderKey(posed.question, items, tuple([item.name for item in posed.items]))


def _number_key(cell: Posed | Cell) -> Key:
    low, high = band(cell.accepted)
    slips = tuple([Slip(name, label, mend, *band(values)) for name, label, mend, values in cell.missteps])
    return Key(cell.asked, cell.accepted[0], low, high, slips)


def shuffled(options: tuple[Option, ...], seed: int) -> tuple[Option, ...]:
    """Fisher–Yates on ``random()`` alone, the one sequence that Python promises to keep."""
    rng, deck = Random(seed), list(options)  # noqa: S311 (a deal, not a secret)
    for last in range(len(deck) - 1, 0, -1):
        pick = int(rng.random() * (last + 1))
        deck[last], deck[pick] = deck[pick], deck[last]
    return tuple(deck)


def band(values: Sequence[float]) -> tuple[float, float]:
    """From the lowest to the highest of ``values``, each pushed outwards by the allowance."""
    low, high = min(values), max(values)
    return (low / _WIDER if low > 0 else low * _WIDER), (high * _WIDER if high > 0 else high / _WIDER)


def apart(one: tuple[float, float], other: tuple[float, float]) -> bool:
    """Whether two ranges, not yet widened, lie more than two allowances from each other."""
    lower, upper = (one, other) if one[1] < other[0] else (other, one)
    top = lower[1]
    return (top * _APART if top > 0 else top / _APART) < upper[0]


def flaws(posed: AnyPosed) -> Iterator[str]:
    """Why these facts are unfit to be asked, a sentence each; nothing when they are fit."""
    if isinstance(posed, PosedChoice):
        yield from _flaws_of_options(posed.options, fewest=3)
    elif isinstance(posed, PosedOrder):
        yield from _flaws_of_options(posed.items, fewest=3)
    else:
        for cell in posed.cells if isinstance(posed, PosedTable) else (posed,):
            yield from _flaws_of_number(cell)
            yield from _coincidences(cell, posed)


def _flaws_of_options(options: Sequence[Option], fewest: int) -> Iterator[str]:
    if len(options) < fewest:
        yield f"There are only {len(options)} to choose from or to order."
    for part in ("name", "text"):
        if len({getattr(option, part) for option in options}) < len(options):
            yield f"Two options share a {part}."
    if not all(option.why for option in options):
        yield "An option has no explanation."


def _flaws_of_number(cell: Posed | Cell) -> Iterator[str]:
    """The separation condition.

    Every slip, under every convention, lies more than two allowances from the accepted answers, and the
    slips lie as far from each other.
    """
    answers = (min(cell.accepted), max(cell.accepted))
    if answers[0] <= 0:
        yield f"The answer {cell.accepted[0]:g} is not above zero."
    ranges = sorted((min(values), max(values), name) for name, _, _, values in cell.missteps)
    for lowest, highest, name in ranges:
        if not apart((lowest, highest), answers):
            yield f"The slip {name!r} cannot be told from the answer."
    for (low_1, high_1, name_1), (low_2, high_2, name_2) in pairwise(ranges):
        if not apart((low_1, high_1), (low_2, high_2)):
            yield f"The slips {name_1!r} and {name_2!r} cannot be told apart."


def _coincidences(cell: Posed | Cell, posed: Prompt) -> Iterator[str]:
    """Where the prompt already holds the answer."""
    low, high = band(cell.accepted)
    for given in posed.givens:
        if low <= given.quantity.value <= high:
            yield f"The answer coincides with the given {given.meaning}."
    if any(low <= float(number) <= high for number in _NUMBER.findall(posed.convention)):
        yield "The answer coincides with a number of the convention."
