"""Shares and differences of shares with the interval that goes with them. Pure."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import ceil, log, sqrt

from quizzes.statistics.distributions import CONFIDENCE, Z, f_quantile


@dataclass(frozen=True, slots=True)
class Estimate:
    """A figure, its interval of 95 %, and how many answers or people it rests on."""

    value: float
    low: float
    high: float
    of: int


@dataclass(frozen=True, slots=True)
class Share:
    """``hits`` of ``of``, with the interval of E. B. Wilson, JASA 22 (1927) 209, by the score.

    ``weight`` is the number of independent answers that the interval rests on, where that is not ``of``.
    Raises ValueError unless 0 <= hits <= of and there is at least one: a share of nothing is not nought.
    """

    hits: int
    of: int
    weight: float | None = None

    def __post_init__(self) -> None:
        if self.of < 1 or not 0 <= self.hits <= self.of:
            raise ValueError(f"{self.hits} of {self.of} is not a share.")

    @property
    def value(self) -> float:
        return self.hits / self.of

    @property
    def low(self) -> float:
        return wilson(self.value, self.weight or self.of)[0]

    @property
    def high(self) -> float:
        return wilson(self.value, self.weight or self.of)[1]


def wilson(share: float, of: float) -> tuple[float, float]:
    """(p + z²/2n ± z √(p(1-p)/n + z²/4n²)) / (1 + z²/n)."""
    square = Z * Z / of
    middle, reach = share + square / 2, sqrt(square * share * (1 - share) + square * square / 4)
    low, high = (middle - reach) / (1 + square), (middle + reach) / (1 + square)
    return (0.0 if share == 0 else low), (1.0 if share == 1 else high)


def difference(one: Share, other: Share) -> Estimate:
    """``one`` less ``other``, of different answers, by R. G. Newcombe, Statistics in Medicine 17 (1998) 873.

    His method 10, from the two Wilson intervals. Where the same people stand on both sides the interval is
    wider than it need be. ``of`` is the smaller side.
    """
    gap = one.value - other.value
    down = sqrt((one.value - one.low) ** 2 + (other.high - other.value) ** 2)
    up = sqrt((one.high - one.value) ** 2 + (other.value - other.low) ** 2)
    return Estimate(gap, gap - down, gap + up, min(one.of, other.of))


def clustered(people: Sequence[tuple[int, int]]) -> Share:
    """The share of answers, of people who each gave several: (hits, answers) for every one of them.

    Answers of one person resemble each other, so the interval rests on as many independent answers as would
    vary as much: p(1-p)/v, with v the variance of a ratio over whole people (W. G. Cochran, Sampling
    Techniques, 3rd ed. 1977, 3.12), reduced for few people by (z/t)² and put into Wilson's formula
    (E. L. Korn and B. I. Graubard, Survey Methodology 24 (1998) 193). Never more than there are answers;
    where the people do not differ at all, as many as there are people. People without an answer are left out.
    """
    kept = [(hits, of) for hits, of in people if of]
    hits, of, count = sum(hit for hit, _ in kept), sum(of for _, of in kept), len(kept)
    share = Share(hits, of)
    spread = sum((hit - share.value * each) ** 2 for hit, each in kept)
    if count < 2 or hits in (0, of):
        return Share(hits, of, weight=float(count))
    if spread < 1e-9:
        return share
    variance = count / (count - 1) * spread / of**2
    independent = _few(count) * share.value * (1 - share.value) / variance
    return Share(hits, of, weight=min(float(of), independent))


@lru_cache(maxsize=1024)
def _few(people: int) -> float:
    """(z/t)²: what a variance known from so few people takes from the weight; t² is F(1, people - 1)."""
    return Z * Z / f_quantile(CONFIDENCE, 1, people - 1)


def answers_to_see(share: float) -> int:
    """How many wrong answers show a slip that lies behind this share of them at least once, with 95 %.

    ln 0.05 / ln(1 - q), rounded up; the rule of three, n = 3/q, is its limit for rare ones.
    """
    return ceil(log(1 - CONFIDENCE) / log(1 - share))
