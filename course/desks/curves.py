"""One trainee's progress, week by week: competencies met and share right in practice; curves and a table."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from math import ceil, nan

from django.utils import timezone

from pressure.figures.curves import Curve, sketch
from pressure.figures.drawing import svg
from quizzes.competencies import COMPETENCIES
from quizzes.models import DecisionRecord
from quizzes.models.competency import Decided
from quizzes.standing import Purpose

_GAINED = {Decided.MET, Decided.CONFIRMED, Decided.RENEWED, Decided.GRANTED}
_LOST = {Decided.REOPENED, Decided.REVOKED}
_WEEK = timedelta(days=7)
_STEPS = (1, 2, 4, 8, 13, 26, 52)
_MOST_TICKS = 8
_WIDTH = 400
_TABLE = "The table says the same in numbers."


@dataclass(frozen=True, slots=True)
class Week:
    """One week in which something was answered or decided; ``met`` as of its end."""

    begins: date
    answers: int
    right: int
    met: int

    @property
    def percent(self) -> int | None:
        return round(100 * self.right / self.answers) if self.answers else None


@dataclass(frozen=True, slots=True)
class Progress:
    """Two figures and the table that says the same; ``weeks`` earliest first."""

    met: str
    practice: str
    weeks: tuple[Week, ...]
    total: int


def progress(
    practised: Sequence[tuple[date, int, int]], decisions: Iterable[DecisionRecord], today: date
) -> Progress | None:
    """The progress from weeks of practice, as (Monday, answers, right), and every decision; None before both.

    Met is what was decided: that a competency falls due or lapses with time takes nothing away here.
    """
    steps = list(_met_after(decisions))
    mondays = {monday for monday, *_ in practised} | {_monday(day) for day, _ in steps}
    if not mondays:
        return None
    weeks = tuple(_weeks(sorted(mondays), practised, steps))
    first, last = weeks[0].begins, max(today, weeks[-1].begins)
    return Progress(
        met=_drawn_met(first, last, steps),
        practice=_drawn_practice(first, last, weeks),
        weeks=weeks,
        total=len(COMPETENCIES),
    )


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday())


def _met_after(decisions: Iterable[DecisionRecord]) -> Iterator[tuple[date, int]]:
    """Each day on which something was decided, earliest first, with how many were met after it."""
    met: set[str] = set()
    for entry in sorted(decisions, key=lambda entry: entry.pk):
        if entry.competency not in COMPETENCIES:
            continue
        if _is_met_after(entry, before=entry.competency in met):
            met.add(entry.competency)
        else:
            met.discard(entry.competency)
        yield timezone.localdate(entry.at), len(met)


def _is_met_after(entry: DecisionRecord, *, before: bool) -> bool:
    """After a review a check may meet its competency no more, and a short one may have taken nothing away."""
    if entry.decided in _GAINED:
        return True
    if entry.decided in _LOST:
        return False
    if entry.ruling_id and entry.sitting:
        return entry.sitting.purpose != Purpose.CHECK
    return before


def _weeks(
    mondays: Sequence[date], practised: Iterable[tuple[date, int, int]], steps: Sequence[tuple[date, int]]
) -> Iterator[Week]:
    answered = {monday: (answers, right) for monday, answers, right in practised}
    met, left = 0, list(reversed(steps))
    for monday in mondays:
        while left and left[-1][0] < monday + _WEEK:
            met = left.pop()[1]
        yield Week(monday, *answered.get(monday, (0, 0)), met)


def _drawn_met(first: date, last: date, steps: Sequence[tuple[date, int]]) -> str:
    """A line that rises by a step at each decision and runs on until today."""
    xs, ys = [0.0], [0.0]
    for day, met in steps:
        xs += [_weeks_between(first, day)] * 2
        ys += [ys[-1], float(met)]
    now = ys[-1]
    xs, ys = [*xs, _weeks_between(first, last)], [*ys, now]
    whole = len(COMPETENCIES)
    curve = Curve(
        title="Competencies met over time",
        across=_across(first),
        up="competencies met",
        xs=tuple(xs),
        ys=tuple(ys),
        x_ticks=_week_ticks(first, last),
        y_ticks=_ticks(whole, ceil(whole / _MOST_TICKS)),
    )
    most = int(max(ys))
    fallen = f", after {most} at most" if now < most else ""
    words = f"A line of steps from none on {_said(first)} to {now:.0f} of {whole} on {_said(last)}{fallen}."
    return svg("met", sketch(curve), f"{words} {_TABLE}", _WIDTH)


def _drawn_practice(first: date, last: date, weeks: Sequence[Week]) -> str:
    """A level stroke for each week with practice, at the height of its share right."""
    xs: list[float] = []
    ys: list[float] = []
    for week in weeks:
        if week.percent is not None:
            start = _weeks_between(first, week.begins)
            xs += [start + 0.1, start + 0.9, nan]
            ys += [float(week.percent)] * 2 + [nan]
    curve = Curve(
        title="Share right in practice, week by week",
        across=_across(first),
        up="per cent right",
        xs=tuple(xs),
        ys=tuple(ys),
        x_ticks=_week_ticks(first, last),
        y_ticks=(0.0, 25.0, 50.0, 75.0, 100.0),
    )
    return svg("practice", sketch(curve), f"{_practice_words(weeks)} {_TABLE}", _WIDTH)


def _practice_words(weeks: Iterable[Week]) -> str:
    practised = [week for week in weeks if week.percent is not None]
    if not practised:
        return "Nothing was practised yet."
    first, last = practised[0], practised[-1]
    begun = f"{first.percent} per cent of {first.answers} in the week of {_said(first.begins)}"
    if len(practised) == 1:
        return f"One stroke: {begun}."
    ended = f"{last.percent} per cent of {last.answers} in the week of {_said(last.begins)}"
    return f"A stroke for each of {len(practised)} weeks with practice, from {begun} to {ended}."


def _across(first: date) -> str:
    return f"weeks since {_said(first)}"


def _weeks_between(first: date, day: date) -> float:
    return (day - first).days / 7


def _week_ticks(first: date, last: date) -> tuple[float, ...]:
    """Whole weeks, few enough to be read, until the end of the week of ``last``."""
    weeks = (_monday(last) - first).days // 7 + 1
    step = next((step for step in _STEPS if weeks <= step * _MOST_TICKS), _STEPS[-1])
    return _ticks(weeks, step)


def _ticks(end: int, step: int) -> tuple[float, ...]:
    """From nought in these steps until the end is reached or passed."""
    return tuple(float(step * tick) for tick in range(ceil(end / step) + 1))


def _said(day: date) -> str:
    return f"{day.day} {day:%B %Y}"
