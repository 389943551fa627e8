"""What a decision rule promises: exact, by dynamic programming over the score. Pure.

All figures are for a steady trainee who gives independent answers to fresh draws and is right with the
chance ``right``. ``first`` is the length of the first block, which is always finished; it lets through a
little more than a rule that may hold within it. That a kind answered wrong is answered right again is left
out: it can only lower the chance of "met". Sources: A. Wald, "Sequential Tests of Statistical Hypotheses",
Annals of Mathematical Statistics 16 (1945); J. Ville, Étude critique de la notion de collectif (1939), for
the lifetime bound.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import comb, exp

from quizzes.rules import Rule

_NEGLIGIBLE = 1e-12
_UNSEEN = 1e-6
"""Chances below this change nothing that is shown."""
_LONGEST_WINDOW = 12


@dataclass(frozen=True, slots=True)
class Course:
    """How a check runs for one chance of a right answer: ``ends[n]`` is the chance that it ends at n."""

    met: float
    ends: tuple[float, ...]

    @property
    def mean(self) -> float:
        """The expected number of questions."""
        return sum(count * chance for count, chance in enumerate(self.ends))

    def percentile(self, share: float) -> int:
        """The number of questions within which ``share`` of such trainees have finished."""
        total = 0.0
        for count, chance in enumerate(self.ends):
            total += chance
            if total >= share - _NEGLIGIBLE:
                return count
        return len(self.ends) - 1


@lru_cache(maxsize=4096)
def course_of(rule: Rule, right: float, first: int = 1) -> Course:
    """The exact course of a check under the rule; it ends as soon as the target is out of reach."""
    alive, met, ends = {0: 1.0}, 0.0, [0.0]
    for count in range(1, rule.maximum + 1):
        after: dict[int, float] = {}
        for score, chance in alive.items():
            for landed, part in ((score + 1, right), (score - rule.loss, 1.0 - right)):
                after[landed] = after.get(landed, 0.0) + chance * part
        alive, left = {}, rule.maximum - count
        ended = 0.0
        for score, chance in after.items():
            if count < first or _undecided(rule, score, left):
                alive[score] = chance
                continue
            met += chance if score >= rule.target else 0.0
            ended += chance
        ends.append(ended)
    return Course(met, tuple(ends))


def _undecided(rule: Rule, score: int, left: int) -> bool:
    return rule.floor < score < rule.target <= score + left


def met_chance(rule: Rule, right: float, first: int = 1) -> float:
    """The operating characteristic: the chance of "met" at the first try."""
    return course_of(rule, right, first).met


def met_within(rule: Rule, right: float, tries: int | None = None, first: int = 1) -> float:
    """The chance of "met" within so many tries, the target rising with each hold; None is without limit."""
    held, holds = 1.0, 0
    while tries is None or holds < tries:
        chance = met_chance(rule.after(holds), right, first)
        if tries is None and (held * chance < _UNSEEN or held < _UNSEEN):
            break
        held *= 1.0 - chance
        holds += 1
    return 1.0 - held


def odds_ratio(rule: Rule, right: float) -> float:
    """The root rho below 1 of p/rho + (1 - p) rho**w = 1 (Wald 1945): what +1 and -w test exactly.

    1.0 where right answers come often enough that the score drifts upwards.
    """
    if right >= rule.loss / (rule.loss + 1):
        return 1.0
    low, high = right, 1.0 - 1e-12
    for _ in range(200):
        middle = (low + high) / 2
        if right / middle + (1 - right) * middle**rule.loss > 1:
            low = middle
        else:
            high = middle
    return high


def lifetime_bound(rule: Rule, right: float) -> float:
    """A bound on ever being met, however often retried and however the answers depend on each other.

    By Ville's inequality a try at target A succeeds with chance rho**A at most, as long as the chance of a
    right answer never exceeds ``right``; the rising targets make the sum of all tries finite.
    """
    rho = odds_ratio(rule, right)
    if rho >= 1.0 or rule.rise == 0:
        return 1.0
    return min(1.0, float(rho**rule.target / (1 - rho**rule.rise)))


def fixed_length(needed: int, length: int, right: float) -> float:
    """The chance of at least ``needed`` right of ``length``."""
    return sum(comb(length, k) * right**k * (1 - right) ** (length - k) for k in range(needed, length + 1))


def n_of_last_m(needed: int, window: int, right: float, maximum: int) -> float:
    """The chance that, within ``maximum`` answers, ``needed`` of the last ``window`` or fewer are right.

    Raises ValueError for a window over 12: the states are the answers in it.
    """
    if window > _LONGEST_WINDOW:
        raise ValueError(f"A window of at most {_LONGEST_WINDOW} answers can be computed.")
    alive, met, mask = {0: 1.0}, 0.0, (1 << window) - 1
    for _ in range(maximum):
        after: dict[int, float] = {}
        for seen, chance in alive.items():
            for bit, part in ((1, right), (0, 1.0 - right)):
                state = (seen << 1 | bit) & mask
                if state.bit_count() >= needed:
                    met += chance * part
                else:
                    after[state] = after.get(state, 0.0) + chance * part
        alive = after
    return met


def wobbling(share: float, spread: float, points: int = 81) -> Sequence[tuple[float, float]]:
    """Chances of a right answer that vary from day to day around ``share``, with their weights.

    The log-odds are normal with standard deviation ``spread`` and the mean that makes the share on average
    what is asked, found by bisection.
    """
    grid = [-4 + 8 * place / (points - 1) for place in range(points)]
    weights = [exp(-z * z / 2) for z in grid]
    total = sum(weights)

    def chances(centre: float) -> list[float]:
        return [1 / (1 + exp(-(centre + spread * z))) for z in grid]

    low, high = -8.0, 8.0
    for _ in range(60):
        middle = (low + high) / 2
        if sum(w * p for w, p in zip(weights, chances(middle), strict=True)) / total < share:
            low = middle
        else:
            high = middle
    return list(zip(chances(high), [w / total for w in weights], strict=True))


def averaged(rule: Rule, days: Sequence[tuple[float, float]]) -> float:
    """The chance of "met" at one try on a day drawn from ``days`` (chance of a right answer, weight)."""
    return sum(weight * met_chance(rule, right) for right, weight in days)


def break_even(rule: Rule) -> float:
    """The share right at which the score neither rises nor falls: the rule's pass mark."""
    return rule.loss / (rule.loss + 1)


def certain_of(rule: Rule, right: float) -> float:
    """The alternative that +1 and -w test ``right`` against exactly: p1 = p0 / rho."""
    return right / odds_ratio(rule, right)
