"""What a set check may ask: for each subject its families, and ten draws of a family as trainees see them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from django.http import Http404

from pressure import catalogue, record
from pressure.draw import draw
from pressure.errors import PressureError
from pressure.problem import Family
from quizzes.sheets import Field, fields_of
from quizzes.subjects import paper_of, subject

DRAWS = 10
_LAST_SEED = 10**6


@dataclass(frozen=True, slots=True)
class Draw:
    """One problem as it would be shown, with the fields of its form."""

    number: int
    seed: int
    shown: dict[str, Any]
    fields: list[Field]


def families_of(subjects: Iterable[str]) -> list[tuple[str, list[Family]]]:
    """Each competency's title with the families that its check asks, of these subjects, in order."""
    return [
        (subject(competency).title, [catalogue.family(slug) for slug in families])
        for chosen in subjects
        for competency, families in paper_of(chosen).items()
    ]


def draws_or_404(slug: str, system: str, first: int) -> tuple[Family, list[Draw]]:
    """The family and ten draws from a seed on; what does not exist is not found."""
    if first > _LAST_SEED:
        raise Http404
    try:
        family = catalogue.family(slug)
        return family, [_drawn(family, system, first + n, n + 1) for n in range(DRAWS)]
    except PressureError:
        raise Http404 from None


def _drawn(family: Family, system: str, seed: int, number: int) -> Draw:
    problem = draw(family, seed, system)  # type: ignore[arg-type]  # an unknown system is refused there
    shown = dict(record.shown(problem))
    return Draw(number, seed, shown, fields_of(shown, {}))
