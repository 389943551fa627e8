"""Whether a family keeps its promises over many draws: the same problem twice, and nothing to confuse."""

from __future__ import annotations

from collections.abc import Iterator

from pressure.draw import draw, flaws
from pressure.problem import Family, System


def audit(family: Family, system: System, draws: int) -> Iterator[str]:
    """A sentence for every promise broken by the problems of the seeds 0 to ``draws`` - 1."""
    seen: set[int] = set()
    for seed in range(draws):
        problem = draw(family, seed, system)
        if draw(family, seed, system) != problem:
            yield f"{family.slug} {system} seed {seed}: drawn twice, it differs."
        if problem.number in seen:
            continue
        seen.add(problem.number)
        for flaw in flaws(family.pose(system, problem.facts)):
            yield f"{family.slug} {system} seed {seed}: {flaw}"
