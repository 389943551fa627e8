"""The counts that every statistic of a question is computed from. Pure.

A database fills a ``Tally`` by sums over the first blocks; ``tally`` does the same from single answers, for
small numbers and to prove that kept counts agree.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple


class Response(NamedTuple):
    """One answer of a first block that was finished.

    ``block`` is the sitting. ``item`` is the family, or one question of it. ``chosen`` names the slip or the
    option of a wrong answer, empty for one that nothing explains. ``draw`` names a class of draws that are
    alike, such as a system of units and a band of depth.
    """

    person: int
    block: int
    item: str
    right: bool
    chosen: str = ""
    seconds: float | None = None
    draw: str = ""


class Split(NamedTuple):
    """Right and wrong answers."""

    right: int
    wrong: int

    @property
    def answers(self) -> int:
        return self.right + self.wrong


@dataclass(frozen=True, slots=True)
class Tally:
    """The answers to one item, each person's first, counted four ways.

    ``rests``: (questions in the block, right among its other questions) → answers.
    ``chosen``: slip or wrong option → wrong answers; "" are those that nothing explains.
    ``seconds``: time taken, in whole seconds → answers. ``draws``: class of draws → answers.
    """

    rests: Mapping[tuple[int, int], Split]
    chosen: Mapping[str, int] = field(default_factory=dict)
    seconds: Mapping[int, int] = field(default_factory=dict)
    draws: Mapping[str, Split] = field(default_factory=dict)

    @property
    def split(self) -> Split:
        return Split(
            sum(one.right for one in self.rests.values()), sum(one.wrong for one in self.rests.values())
        )


def tally(responses: Sequence[Response]) -> dict[str, Tally]:
    """The tally of every item. ``responses`` are whole blocks in the order answered.

    A person's later answers to an item are left out, though they count among "the others" of their block:
    answers of one person are not independent, and the intervals suppose that they are.
    """
    sizes = Counter(one.block for one in responses)
    totals = Counter(one.block for one in responses if one.right)
    first = {(one.person, one.item): one for one in reversed(responses)}.values()
    groups = Counter(
        (item, sizes[block], totals[block] - right, right, chosen, draw)
        for _, block, item, right, chosen, _, draw in first
    )
    parts: dict[str, _Parts] = defaultdict(_Parts)
    for (item, size, rest, right, chosen, draw), count in groups.items():
        parts[item].add((size, rest), right, chosen, draw, count)
    times = Counter((item, round(took)) for _, _, item, _, _, took, _ in first if took is not None)
    for (item, seconds), count in times.items():
        parts[item].seconds[seconds] = count
    return {item: part.tally() for item, part in parts.items()}


class _Parts:
    """A tally in the making."""

    def __init__(self) -> None:
        self.rests: dict[tuple[int, int], list[int]] = defaultdict(lambda: [0, 0])
        self.draws: dict[str, list[int]] = defaultdict(lambda: [0, 0])
        self.chosen: dict[str, int] = defaultdict(int)
        self.seconds: dict[int, int] = {}

    def add(self, rest: tuple[int, int], right: bool, chosen: str, draw: str, count: int) -> None:
        self.rests[rest][not right] += count
        self.draws[draw][not right] += count
        if not right:
            self.chosen[chosen] += count

    def tally(self) -> Tally:
        return Tally(
            {key: Split(*pair) for key, pair in self.rests.items()},
            dict(self.chosen),
            self.seconds,
            {key: Split(*pair) for key, pair in self.draws.items()},
        )
