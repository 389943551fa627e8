"""How the answers of a class fall out: right, each slip by its label, other answers, no answer. Pure."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

OTHER, NONE = "Another answer", "No answer"
_WIDE = 200


@dataclass(frozen=True, slots=True)
class Group:
    """Answers that belong together. ``width`` is the length of the bar, out of 200 for the whole class."""

    kind: Literal["right", "slip", "wrong", "none"]
    words: str
    count: int
    width: int


@dataclass(frozen=True, slots=True)
class Spread:
    """Every group, and ``size``: how many were asked."""

    groups: tuple[Group, ...]
    size: int


def spread(answers: Iterable[tuple[str, str, int]], members: int, right: str) -> Spread:
    """Group (verdict, label of the slip, how many); ``right`` is the right answer in words.

    The right ones come first, then the slips, the most frequent before the others, then what shows no known
    slip, then who did not answer. Someone who joined after the problem was put up counts as asked.
    """
    slips: Counter[str] = Counter()
    plain: Counter[str] = Counter()
    for verdict, label, count in answers:
        if verdict == "slip" and label:
            slips[label] += count
        else:
            plain["right" if verdict == "right" else "wrong"] += count
    answered = slips.total() + plain.total()
    size = max(members, answered)
    rows: list[tuple[Literal["right", "slip", "wrong", "none"], str, int]] = [
        ("right", f"Right: {right}", plain["right"]),
        *[
            ("slip", label, count)
            for label, count in sorted(slips.items(), key=lambda one: (-one[1], one[0]))
        ],
        ("wrong", OTHER, plain["wrong"]),
        ("none", NONE, size - answered),
    ]
    groups = [Group(kind, words, count, _bar(count, size)) for kind, words, count in rows]
    return Spread(tuple([one for one in groups if one.count or one.kind == "right"]), size)


def _bar(count: int, size: int) -> int:
    return round(_WIDE * count / size) if size else 0
