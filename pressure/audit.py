"""Whether a family keeps its promises over many draws, and what its draws are like."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from statistics import median
from time import perf_counter

from pressure.draw import draw, flaws, walk
from pressure.problem import Family, Key, Problem, System, TableKey


@dataclass(frozen=True, slots=True)
class Findings:
    """What an audit found: faults in sentences, distinct problems, the range of answers, draw times in µs."""

    faults: tuple[str, ...]
    distinct: int
    lowest: float | None
    highest: float | None
    unit: str
    median_us: float
    slowest_us: float


def audit(family: Family, system: System, draws: int) -> Findings:
    """Draw the seeds 0 to ``draws`` - 1 and look at each: the same twice, separated, fit to be asked."""
    length = len(walk(family, system))
    faults: list[str] = []
    times: list[float] = []
    seen: dict[int, Problem] = {}
    for seed in range(draws):
        began = perf_counter()
        problem = draw(family, seed, system)
        times.append((perf_counter() - began) * 1e6)
        if problem.number not in seen:
            seen[problem.number] = problem
            faults.extend(_faults_of(family, system, problem))
    if len(seen) < min(length, draws):
        faults.append(f"{family.slug} {system}: numbers came again before all {length} had been drawn.")
    answers = [key.answer for problem in seen.values() for key in _cells(problem)]
    unit = next((key.asked.unit for problem in seen.values() for key in _cells(problem)), "")
    return Findings(
        faults=tuple(faults),
        distinct=length,
        lowest=min(answers, default=None),
        highest=max(answers, default=None),
        unit=unit,
        median_us=median(times) if times else 0.0,
        slowest_us=max(times, default=0.0),
    )


def _faults_of(family: Family, system: System, problem: Problem) -> Iterator[str]:
    where = f"{family.slug} {system} seed {problem.seed}"
    if draw(family, problem.seed, system) != problem:
        yield f"{where}: drawn twice, it differs."
    yield from (f"{where}: {flaw}" for flaw in flaws(family.pose(system, problem.facts)))


def _cells(problem: Problem) -> tuple[Key, ...]:
    key = problem.key
    return key.cells if isinstance(key, TableKey) else (key,) if isinstance(key, Key) else ()
