"""What an export is: one module in this package ends in ``EXPORT = Export(...)``."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from django.utils import timezone

from course.people.models import Cohort

Cell = str | int | float


@dataclass(frozen=True, slots=True)
class Scope:
    """What was chosen: a cohort and a range of days, both ends included."""

    cohort: Cohort
    first: date
    last: date

    @property
    def begins(self) -> datetime:
        """The first moment of the first day, in the site's time zone."""
        return timezone.make_aware(datetime.combine(self.first, time.min))

    @property
    def ends(self) -> datetime:
        """The first moment after the last day, in the site's time zone."""
        return timezone.make_aware(datetime.combine(self.last + timedelta(days=1), time.min))


@dataclass(frozen=True, slots=True)
class Column:
    """A column's name in the header line and what it means."""

    name: str
    explanation: str


@dataclass(frozen=True, slots=True)
class Export:
    """One kind of file. ``rows`` yields as many cells as there are columns, and never loads the whole set."""

    slug: str
    title: str
    summary: str
    columns: tuple[Column, ...]
    rows: Callable[[Scope], Iterable[Sequence[Cell]]]
