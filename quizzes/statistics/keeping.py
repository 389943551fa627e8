"""Counts as they are kept: plain JSON that grows by one block at a time. Pure.

The same sums as ``tallies.tally`` makes of single answers, in a form that a database can hold.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from quizzes.statistics.drift import Drift, watch
from quizzes.statistics.tallies import Response, Split, Tally

LONGEST = 1800
"""Seconds beyond half an hour count as that: somebody was called away."""

Pair = list[int]
"""Right and wrong answers, as JSON has them."""


@dataclass(slots=True)
class Counts:
    """The counts of one item. ``rests`` goes by "questions/right among the others"; see ``Tally``.

    ``before`` are the first answers in practice of the same people, right and wrong.
    """

    rests: dict[str, Pair] = field(default_factory=dict)
    chosen: dict[str, int] = field(default_factory=dict)
    labels: dict[str, str] = field(default_factory=dict)
    seconds: dict[str, int] = field(default_factory=dict)
    draws: dict[str, Pair] = field(default_factory=dict)
    before: Pair = field(default_factory=lambda: [0, 0])
    drift: Drift = field(default_factory=Drift)

    def tally(self) -> Tally:
        return tally_of(self.rests, self.chosen, self.seconds, self.draws)


def tally_of(
    rests: Mapping[str, Pair],
    chosen: Mapping[str, int],
    seconds: Mapping[str, int] | None = None,
    draws: Mapping[str, Pair] | None = None,
) -> Tally:
    """The tally of kept counts; what is left out counts as not asked for."""
    return Tally(
        {_place(key): Split(*pair) for key, pair in rests.items()},
        chosen,
        {int(key): count for key, count in (seconds or {}).items()},
        {key: Split(*pair) for key, pair in (draws or {}).items()},
    )


def _place(key: str) -> tuple[int, int]:
    size, _, rest = key.partition("/")
    return int(size), int(rest)


class Answer(NamedTuple):
    """One answer of a first block. ``question`` is empty in a family that has none.

    ``before`` is whether the same person's first answer in practice was right; None without one.
    """

    family: str
    question: str
    right: bool
    chosen: str
    label: str
    seconds: int | None
    draw: str
    before: bool | None = None

    @property
    def items(self) -> tuple[str, ...]:
        """The items that it is an answer to: the family, and the one question of it."""
        return (self.family, f"{self.family}/{self.question}") if self.question else (self.family,)


def responses(person: int, block: int, answers: Iterable[Answer], *, questions: bool) -> Iterator[Response]:
    """The block in the form that ``tallies.tally`` counts: by family, or by single question."""
    for one in answers:
        item = one.items[-1] if questions else one.family
        seconds = None if one.seconds is None else float(one.seconds)
        yield Response(person, block, item, one.right, one.chosen, seconds, one.draw)


def items_of(block: Sequence[Answer]) -> dict[str, str]:
    """Every item of the block with its family."""
    return {item: one.family for one in block for item in one.items}


def add_block(kept: Mapping[str, Counts], block: Sequence[Answer], known: frozenset[str]) -> None:
    """Count a finished block in. ``kept`` has a row for each of its items; what is ``known`` of the person
    already, from an earlier block, is left out.
    """
    rights = sum(one.right for one in block)
    for one in block:
        rest = f"{len(block)}/{rights - one.right}"
        for item in one.items:
            if item not in known:
                _add(kept[item], one, rest, is_family=item == one.family)


def _add(counts: Counts, one: Answer, rest: str, *, is_family: bool) -> None:
    counts.rests.setdefault(rest, [0, 0])[not one.right] += 1
    counts.draws.setdefault(one.draw, [0, 0])[not one.right] += 1
    if not one.right:
        counts.chosen[one.chosen] = counts.chosen.get(one.chosen, 0) + 1
        if one.label:
            counts.labels[one.chosen] = one.label
    if one.seconds is not None:
        counts.seconds[str(one.seconds)] = counts.seconds.get(str(one.seconds), 0) + 1
    if is_family and one.before is not None:
        counts.before[not one.before] += 1
    counts.drift = watch([one.right], counts.drift)


def draw_class(shown: Mapping[str, Any]) -> str:
    """The class of draws that a problem belongs to, from the form in which it is kept.

    A question of a lesson by its id; else the system of units with the band of the first depth, an
    atmosphere of sea water wide; else with the scene. Facts named after anything else are left aside.
    """
    facts, system = shown.get("facts") or {}, str(shown.get("system", ""))
    if shown.get("item"):
        return str(shown["item"])
    for name, value in facts.items():
        unit = name.rpartition("_")[2]
        if unit in _BANDS and "depth" in name:
            low = int(value // _BANDS[unit]) * _BANDS[unit]
            return f"{system}, {low} to {low + _BANDS[unit]} {unit}"
    return f"{system}, scene {facts['scene']:g}" if "scene" in facts else system


_BANDS = {"ft": 33, "m": 10}
