"""The problems on the shelf, for the staff: every family, and any draw of it with key and solution."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import groupby
from typing import Any

from django.http import Http404

from pressure import catalogue, record
from pressure.draw import draw, walk
from pressure.errors import PressureError
from pressure.problem import Family


def by_topic() -> list[tuple[str, list[Family]]]:
    """Every family, gathered by topic."""
    ordered = sorted(catalogue.families().values(), key=lambda family: (family.topic, family.title))
    return [(topic, list(found)) for topic, found in groupby(ordered, key=lambda family: family.topic)]


def problem_or_404(slug: str, system: str, seed: int) -> Mapping[str, Any]:
    """One draw as a page needs it. Unknown families, systems and seeds do not exist."""
    try:
        family = catalogue.family(slug)
        problem = draw(family, seed, system)  # type: ignore[arg-type]  # an unknown system is refused there
        distinct = len(walk(family, problem.system))
    except PressureError:
        raise Http404 from None
    return {
        "family": family,
        "system": system,
        "seed": seed,
        "distinct": distinct,
        "shown": record.shown(problem),
        "key": record.key(problem),
    }
