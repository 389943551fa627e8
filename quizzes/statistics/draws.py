"""Whether some draws of a family are harder than others. Pure.

Each person meets numbers of their own, so draws are judged in classes that are alike: the system of units, a
band of depth, the number of conversions.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import exp, lgamma, log
from random import Random

from quizzes.statistics.distributions import chi_square_tail
from quizzes.statistics.tallies import Split

FEW_EXPECTED = 5
"""Below so many right or wrong answers expected in a class chi-square is only rough (W. G. Cochran,
Biometrics 10 (1954) 417), and the chance is found by drawing."""

WORTH_ASKING = 200
"""Below so many answers the test misses most: in simulation it found a spread of 0.5 / 0.75 / 1.0 on the
log-odds in 31 / 61 / 87 % of cases with 200 answers in 20 classes, in 61 / 90 / 99 % with 400."""

_DRAWS, _ENOUGH = 999, 30


@dataclass(frozen=True, slots=True)
class Unevenness:
    """Pearson's chi-square over classes of draws. ``chance`` is that of so much from equally hard ones."""

    classes: int
    answers: int
    statistic: float
    freedom: int
    chance: float
    is_drawn: bool

    @property
    def dispersion(self) -> float:
        """The statistic per degree of freedom: 1 on average where all draws are equally hard."""
        return self.statistic / self.freedom

    @property
    def is_worth_asking(self) -> bool:
        return self.answers >= WORTH_ASKING


def unevenness(draws: Mapping[str, Split]) -> Unevenness | None:
    """Σ (k - np)² / (np(1 - p)) over the classes, with its chance; None where there is nothing to compare.

    The chance comes from the chi-square distribution where every class leads one to expect five right and
    five wrong, and else from a parametric bootstrap: sets of answers drawn with the common share from a fixed
    seed (B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap (1993), chapter 16), at most 999 and
    no more once 30 were as uneven (J. Besag and P. Clifford, Biometrika 78 (1991) 301).
    """
    kept = [split for split in draws.values() if split.answers]
    sizes, rights = [split.answers for split in kept], [split.right for split in kept]
    answers, right = sum(sizes), sum(rights)
    if len(kept) < 2 or right in (0, answers):
        return None
    statistic, freedom = _pearson(rights, sizes), len(kept) - 1
    is_drawn = min(sizes) * min(right, answers - right) < FEW_EXPECTED * answers
    if is_drawn:
        chance = _by_drawing(sizes, right / answers, statistic)
    else:
        chance = chi_square_tail(statistic, freedom)
    return Unevenness(len(kept), answers, statistic, freedom, chance, is_drawn)


def _pearson(rights: Sequence[int], sizes: Sequence[int]) -> float:
    share = sum(rights) / sum(sizes)
    if share in (0, 1):
        return 0.0
    return sum((k - n * share) ** 2 / n for k, n in zip(rights, sizes, strict=True)) / (share * (1 - share))


def _by_drawing(sizes: Sequence[int], share: float, statistic: float) -> float:
    rng = Random(1)  # noqa: S311 (a simulation, the same at every look)
    built = {size: _ladder(size, share) for size in set(sizes)}
    ladders = [built[size] for size in sizes]
    reached = 0
    for drawn in range(1, _DRAWS + 1):
        rights = [bisect_left(ladder, rng.random() * ladder[-1]) for ladder in ladders]
        reached += _pearson(rights, sizes) >= statistic - 1e-9
        if reached == _ENOUGH:
            return reached / drawn
    return (reached + 1) / (_DRAWS + 1)


def _ladder(size: int, share: float) -> tuple[float, ...]:
    """The binomial distribution, summed up."""
    up, down, ways = log(share), log(1 - share), lgamma(size + 1)
    return tuple(
        accumulate(
            exp(ways - lgamma(k + 1) - lgamma(size - k + 1) + k * up + (size - k) * down)
            for k in range(size + 1)
        )
    )
