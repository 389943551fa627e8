"""How one question behaves: share right, discrimination, slips and options, time. Pure."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import atanh, sqrt, tanh

from quizzes.statistics.distributions import Z
from quizzes.statistics.draws import Unevenness, unevenness
from quizzes.statistics.shares import Estimate, Share
from quizzes.statistics.tallies import Split, Tally

UNEXPLAINED = ""
"""The name under which a tally counts wrong answers that no slip explains."""

_NEARLY_ONE = 1 - 1e-12


@dataclass(frozen=True, slots=True)
class Times:
    """Seconds: the median and the quartiles."""

    lower: float
    median: float
    upper: float
    of: int


@dataclass(frozen=True, slots=True)
class Chosen:
    """A slip or wrong option, as a share of the wrong answers and of all answers."""

    name: str
    of_wrong: Share
    of_answers: Share


@dataclass(frozen=True, slots=True)
class ItemStatistics:
    """What is known of one item; None stands where the answers cannot tell."""

    right: Share
    discrimination: Estimate | None
    chosen: Sequence[Chosen]
    unexplained: Share | None
    times: Times | None
    draws: Unevenness | None


def describe(tally: Tally) -> ItemStatistics:
    """The statistics of an item that was answered at least once; ValueError otherwise."""
    right, wrong = tally.split
    unexplained = tally.chosen.get(UNEXPLAINED, 0)
    return ItemStatistics(
        right=Share(right, right + wrong),
        discrimination=discrimination(tally.rests),
        chosen=_chosen(tally.chosen, wrong, right + wrong),
        unexplained=Share(unexplained, wrong) if wrong and tally.chosen else None,
        times=times(tally.seconds),
        draws=unevenness(tally.draws),
    )


def discrimination(rests: Mapping[tuple[int, int], Split]) -> Estimate | None:
    """The corrected item-rest correlation: right or not, against the number right among the others.

    Blocks of different length are compared within their length only: sums of squares about the means of each,
    then pooled. The interval is that of R. A. Fisher, Metron 1 (1921) 3, on z = artanh r with variance
    1/(n - 3), less one more for each further length as for a partial correlation (Metron 3 (1924) 329). None
    without variance on either side, or for three answers or fewer. For a question right or wrong it is an
    approximation; it is used beyond 30 answers.
    """
    lengths: dict[int, list[tuple[int, Split]]] = defaultdict(list)
    for (size, rest), split in rests.items():
        if split.answers:
            lengths[size].append((rest, split))
    sums = [_sums(rows) for rows in lengths.values()]
    count, groups = sum(one.answers for one in sums), len(sums)
    freedom = count - groups - 2
    spread = sum(one.item for one in sums) * sum(one.rest for one in sums)
    if freedom < 1 or not spread:
        return None
    r = max(-_NEARLY_ONE, min(_NEARLY_ONE, sum(one.both for one in sums) / sqrt(spread)))
    reach = Z / sqrt(freedom)
    return Estimate(r, tanh(atanh(r) - reach), tanh(atanh(r) + reach), count)


@dataclass(frozen=True, slots=True)
class _Sums:
    """Sums of squares and products about the means."""

    answers: int
    item: float
    rest: float
    both: float


def _sums(rows: Sequence[tuple[int, Split]]) -> _Sums:
    answers = sum(split.answers for _, split in rows)
    right = sum(split.right for _, split in rows)
    total = sum(rest * split.answers for rest, split in rows)
    squares = sum(rest * rest * split.answers for rest, split in rows)
    both = sum(rest * split.right for rest, split in rows)
    return _Sums(
        answers,
        right * (answers - right) / answers,
        (answers * squares - total * total) / answers,
        (answers * both - right * total) / answers,
    )


def _chosen(chosen: Mapping[str, int], wrong: int, answers: int) -> list[Chosen]:
    """The commonest first; what nothing explains is among them, under its empty name."""
    in_order = sorted(chosen.items(), key=lambda pair: (-pair[1], pair[0]))
    return [Chosen(name, Share(count, wrong), Share(count, answers)) for name, count in in_order if wrong]


def times(seconds: Mapping[int, int]) -> Times | None:
    """Median and quartiles of counted seconds, interpolated between neighbours; None without any.

    Definition 7 of R. J. Hyndman and Y. Fan, American Statistician 50 (1996) 361.
    """
    kept = sorted((value, count) for value, count in seconds.items() if count)
    if not kept:
        return None
    ends = list(accumulate(count for _, count in kept))

    def at(place: int) -> int:
        return next(value for (value, _), end in zip(kept, ends, strict=True) if place < end)

    def quantile(part: float) -> float:
        whole, rest = divmod((ends[-1] - 1) * part, 1)
        low, high = at(int(whole)), at(min(int(whole) + 1, ends[-1] - 1))
        return low + rest * (high - low)

    return Times(quantile(0.25), quantile(0.5), quantile(0.75), ends[-1])


_RATINGS = ((0.40, "very good"), (0.30, "good"), (0.20, "marginal"), (0.0, "poor"))


def rating(r: float) -> str:
    """The customary word for an item-rest correlation.

    R. L. Ebel and D. A. Frisbie, Essentials of Educational Measurement (1991), as quoted; for a test that
    spreads people out, not for one that most pass.
    """
    return next((word for limit, word in _RATINGS if r >= limit), "against the rest: check the key first")
