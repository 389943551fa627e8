"""The distributions behind the intervals and tests, from the standard library alone. Pure.

Formulas: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), chapters 6 and 26.
"""

from __future__ import annotations

from math import erfc, exp, inf, lgamma, log, log1p, pi, sqrt
from statistics import NormalDist

CONFIDENCE = 0.95
Z = NormalDist().inv_cdf((1 + CONFIDENCE) / 2)
"""How many standard errors an interval reaches to either side: 1.96."""

_TINY = 1e-300
_STEPS = 1000


def chi_square_tail(statistic: float, freedom: int) -> float:
    """The chance that chi-square with whole ``freedom`` is at least ``statistic``.

    Finite sums (Abramowitz and Stegun 26.4.4 and 26.4.5): every term is positive, so that small chances are
    exact. Raises ValueError below one degree of freedom.
    """
    if freedom < 1:
        raise ValueError("Chi-square has at least one degree of freedom.")
    if statistic <= 0:
        return 1.0
    if statistic == inf:
        return 0.0
    half = statistic / 2
    if freedom % 2:
        tail, log_term = erfc(sqrt(half)), log(half) / 2 - half - log(pi) / 2 + log(2)
        first = 3
    else:
        tail, log_term = exp(-half), log(half) - half
        first = 4
    for degree in range(first, freedom + 1, 2):
        tail += exp(log_term)
        log_term += log(half) - log(degree / 2)
    return min(1.0, tail)


def beta_share(share: float, a: float, b: float) -> float:
    """The incomplete beta function ratio I of ``share`` (0 to 1), by its continued fraction (26.5.8)."""
    if share <= 0 or share >= 1:
        return min(max(share, 0.0), 1.0)
    if share > (a + 1) / (a + b + 2):  # beyond it the fraction converges for the other tail
        return 1 - beta_share(1 - share, b, a)
    front = lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(share) + b * log1p(-share)
    return exp(front) / (a * _fraction(share, a, b))


def _fraction(share: float, a: float, b: float) -> float:
    """1 + d1/(1 + d2/(1 + ...)), evaluated forwards by the recurrence of its convergents' ratios (Lentz)."""
    value = numerator = 1.0
    denominator = 0.0
    for step in range(1, _STEPS):
        half = step // 2
        if step % 2:
            part = -(a + half) * (a + b + half) * share / ((a + 2 * half) * (a + 2 * half + 1))
        else:
            part = half * (b - half) * share / ((a + 2 * half - 1) * (a + 2 * half))
        denominator = 1 / ((1 + part * denominator) or _TINY)
        numerator = (1 + part / numerator) or _TINY
        value *= numerator * denominator
        if abs(numerator * denominator - 1) < 1e-15:
            break
    return value


def f_quantile(chance: float, upper: float, lower: float) -> float:
    """The value that F with ``upper`` and ``lower`` degrees of freedom stays below with this chance."""
    low, high = 0.0, 1.0
    for _ in range(80):
        middle = (low + high) / 2
        if beta_share(middle, upper / 2, lower / 2) < chance:
            low = middle
        else:
            high = middle
    return lower * high / (upper * (1 - high)) if high < 1 else inf
