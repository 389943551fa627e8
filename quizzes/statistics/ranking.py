"""The slips that a group of people makes most: what to teach again tomorrow. Pure."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from quizzes.statistics.shares import Share, clustered


@dataclass(frozen=True, slots=True)
class Ranked:
    """A slip, by the share of people who made it and the share of answers that it spoiled."""

    name: str
    people: Share
    answers: Share


def ranked(slips: Mapping[str, Sequence[tuple[int, int]]]) -> list[Ranked]:
    """The slips that were made, the commonest first.

    ``slips`` gives for each the people who could have made it, as (times made, answers given where it was
    possible). The order goes by the lower limit of the share of people, then of answers, so that one person
    of one does not stand before ten of twelve.
    """
    rows = []
    for name, people in slips.items():
        met = [pair for pair in people if pair[1]]
        makers = sum(made > 0 for made, _ in met)
        if makers:
            rows.append(Ranked(name, Share(makers, len(met)), clustered(met)))
    return sorted(rows, key=lambda row: (-row.people.low, -row.answers.low, row.name))
