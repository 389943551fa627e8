"""Which family comes next: shuffled blocks, each kind once a block. Pure.

Blocks matter: ten easy questions first would raise the share of wrong passes from 2 % to 35 %.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from random import Random


def family_at(seed: int | str, families: Sequence[str], place: int) -> str:
    """The family asked at ``place`` (0, 1, 2 …) of a sitting; the same for ever for the same seed."""
    block, within = divmod(place, len(families))
    return shuffled(Random(f"{seed}/{block}"), families)[within]  # noqa: S311 (a deal, not a secret)


def planned(seed: int, paper: Mapping[str, Sequence[str]], place: int) -> str:
    """The family at ``place`` of a paper (competency → families).

    Over one competency each block holds each family once. Over several each block holds one problem of each
    competency, and within a competency its families take turns from block to block.
    """
    if len(paper) == 1:
        return family_at(seed, next(iter(paper.values())), place)
    competency = family_at(seed, list(paper), place)
    return family_at(f"{seed}/{competency}", paper[competency], place // len(paper))


def shuffled(rng: Random, items: Sequence[str]) -> list[str]:
    """Fisher–Yates on ``random()`` alone, the one sequence that Python promises to keep."""
    deck = list(items)
    for last in range(len(deck) - 1, 0, -1):
        pick = int(rng.random() * (last + 1))
        deck[last], deck[pick] = deck[pick], deck[last]
    return deck
