"""The problems on the shelf, for the staff: every family, and any draw of it with key and solution."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import groupby
from typing import Any

from django.http import Http404

from pressure import catalogue, record
from pressure.draw import draw, walk
from pressure.errors import PressureError
from pressure.mixing import mix
from pressure.problem import Family


def by_topic() -> list[tuple[str, list[Family]]]:
    """Every family, gathered by topic."""
    ordered = sorted(catalogue.families().values(), key=lambda family: (family.topic, family.title))
    return [(topic, list(found)) for topic, found in groupby(ordered, key=lambda family: family.topic)]


def problem_or_404(slug: str, system: str, seed: int, *, mixed: bool) -> Mapping[str, Any]:
    """One draw as a page needs it, ``mixed`` with its answer wanted in another unit.

    Unknown families, systems and seeds do not exist; nor does a mixed form that a draw has not.
    """
    try:
        family = catalogue.family(slug)
        problem = draw(family, seed, system)  # type: ignore[arg-type]  # an unknown system is refused there
        distinct = len(walk(family, problem.system))
    except PressureError:
        raise Http404 from None
    other = mix(problem)
    if mixed and other is None:
        raise Http404
    problem = other if mixed and other else problem
    return {
        "mixed": mixed,
        "has_mixed": other is not None,
        "family": family,
        "system": system,
        "seed": seed,
        "distinct": distinct,
        "shown": record.shown(problem),
        "key": record.key(problem),
    }
