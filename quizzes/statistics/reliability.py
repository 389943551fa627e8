"""How far the score of one first block can be trusted: alpha, its interval, the error of a score. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import sqrt

from quizzes.statistics.distributions import CONFIDENCE, f_quantile
from quizzes.statistics.shares import Estimate
from quizzes.statistics.tallies import Split, Tally


@dataclass(frozen=True, slots=True)
class Reliability:
    """``without`` is alpha when the item is left out (None for a block of two); ``error`` is in questions."""

    alpha: Estimate
    error: float
    without: Mapping[str, float | None]

    @property
    def weakening(self) -> list[str]:
        """The items whose removal would raise alpha."""
        return [
            item for item, alpha in self.without.items() if alpha is not None and alpha > self.alpha.value
        ]


def reliability(block: Mapping[str, Tally]) -> Reliability | None:
    """Cronbach's alpha of the items of one block, which for right and wrong is KR-20.

    k/(k-1) (1 - Σ s²(item) / s²(total)): G. F. Kuder and M. W. Richardson, Psychometrika 2 (1937) 151;
    L. J. Cronbach, Psychometrika 16 (1951) 297. Interval: L. S. Feldt, Psychometrika 30 (1965) 357. Standard
    error of a score: s(total) √(1 - alpha). Only blocks of just these items count. None for fewer than two
    items or people, for items that not the same number answered, or where every total is the same.
    """
    size = len(block)
    rests = {item: _of_size(tally, size) for item, tally in block.items()}
    counts = {sum(split.answers for split in one.values()) for one in rests.values()}
    if size < 2 or len(counts) != 1 or (people := counts.pop()) < 2:
        return None
    any_item = next(iter(rests.values()))
    total = _variance(
        pair for rest, split in any_item.items() for pair in ((rest + 1, split.right), (rest, split.wrong))
    )
    parts = {
        item: _variance((hit, n) for one in splits.values() for hit, n in ((1, one.right), (0, one.wrong)))
        for item, splits in rests.items()
    }
    if not total:
        return None
    alpha = _alpha(size, sum(parts.values()), total)
    without = {
        item: _without(size, sum(parts.values()) - parts[item], splits) for item, splits in rests.items()
    }
    return Reliability(
        _feldt(alpha, people, size), sqrt(total * people / (people - 1) * (1 - alpha)), without
    )


def _of_size(tally: Tally, size: int) -> dict[int, Split]:
    return {rest: split for (questions, rest), split in tally.rests.items() if questions == size}


def _alpha(size: int, parts: float, total: float) -> float:
    return size / (size - 1) * (1 - parts / total)


def _without(size: int, parts: float, rests: Mapping[int, Split]) -> float | None:
    total = _variance((rest, split.answers) for rest, split in rests.items())
    return _alpha(size - 1, parts, total) if size > 2 and total else None


def _variance(counted: Iterable[tuple[int, int]]) -> float:
    """The variance of counted values, over all of them."""
    pairs = list(counted)
    n, total = sum(count for _, count in pairs), sum(value * count for value, count in pairs)
    return (n * sum(value * value * count for value, count in pairs) - total * total) / n**2


def _feldt(alpha: float, people: int, size: int) -> Estimate:
    upper, lower, side = people - 1, (people - 1) * (size - 1), (1 - CONFIDENCE) / 2
    low = 1 - (1 - alpha) * f_quantile(1 - side, upper, lower)
    high = 1 - (1 - alpha) * f_quantile(side, upper, lower)
    return Estimate(alpha, low, high, people)
