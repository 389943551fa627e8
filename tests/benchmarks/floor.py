"""Times our work against a bare floor in the same run, so that the figure holds on any machine."""

import gc
from collections.abc import Callable
from statistics import median
from time import perf_counter
from typing import NamedTuple


class Timing(NamedTuple):
    """Median seconds of one call of each, and the median of the ratios taken round by round."""

    ours: float
    floor: float
    ratio: float


def timed(work: Callable[[], object]) -> float:
    began = perf_counter()
    work()
    return perf_counter() - began


def measure(ours: Callable[[], object], floor: Callable[[], object], rounds: int = 15) -> Timing:
    """Time the two turn about: what slows the machine for a while slows both, and the ratio stands."""
    ours(), floor()
    pairs = []
    was_collecting = gc.isenabled()
    gc.disable()
    try:
        for turn in range(rounds):
            first, second = (ours, floor) if turn % 2 else (floor, ours)
            a, b = timed(first), timed(second)
            pairs.append((a, b) if turn % 2 else (b, a))
    finally:
        if was_collecting:
            gc.enable()
    return Timing(
        median(mine for mine, _ in pairs),
        median(bare for _, bare in pairs),
        median(mine / bare for mine, bare in pairs),
    )


def compare(
    name: str,
    ours: Callable[[], object],
    floor: Callable[[], object],
    limit: float | None = None,
    rounds: int = 15,
    *,
    against: str = "floor",
    each: int = 1,
    say: Callable[[str], object] = print,
) -> Timing:
    """Print one line with the ratio and fail above ``limit``; ``each`` is the items one call works through.

    One call of either should take at least a few milliseconds, and both must do the same number of items.
    """
    timing = measure(ours, floor, rounds)
    allowed = f" (limit {limit:g}x)" if limit is not None else ""
    say(
        f"{name} {timing.ratio:.1f}x {against}{allowed}; "
        f"{timing.ours / each * 1e6:.2f} against {timing.floor / each * 1e6:.2f} µs each"
    )
    assert limit is None or timing.ratio <= limit, (
        f"{name} takes {timing.ratio:.1f}x {against}, over {limit:g}x"
    )
    return timing
