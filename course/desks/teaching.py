"""The teaching list: the slips a cohort makes most, where each is mended, and practice because of it."""

from __future__ import annotations

import secrets
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from django import forms
from django.contrib import messages
from django.db.models import QuerySet
from django.http import HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST, require_safe

from course.desks.mending import Place, place_that_mends
from course.desks.statistics import percent
from course.people.access import Deed, cohort_or_404, needs, people_for
from course.people.http import PersonRequest
from course.people.models import Cohort, Person
from pressure import catalogue
from pressure.problem import System
from quizzes import actions
from quizzes.errors import Refused
from quizzes.items import title_of
from quizzes.models.assignments import open_assignments
from quizzes.models.pauses import paused_items
from quizzes.slips_made import SlipMade, slips_of
from quizzes.statistics.ranking import Ranked, ranked

MOST = 10
"""So many slips fit a printed page, and more are not taught again in one class."""

_SEEDS = 1000
_PERIODS = {"7": "the last 7 days", "30": "the last 30 days", "90": "the last 90 days", "": "all days"}


class PeriodForm(forms.Form):
    """Which answers the list looks at. It is never refused: what cannot be read is said and left out."""

    days = forms.ChoiceField(
        label="Answers of",
        required=False,
        choices=list(_PERIODS.items()),
        error_messages={"invalid_choice": "There is no such period. The answers of all days are counted."},
    )

    def __init__(self, query: Mapping[str, Any]) -> None:
        super().__init__(query, auto_id="teaching-%s")
        self.full_clean()

    @property
    def chosen(self) -> str:
        """The days as an address says them; empty for all."""
        days: str = self.cleaned_data.get("days", "")
        return days

    @property
    def since(self) -> datetime | None:
        return timezone.now() - timedelta(days=int(self.chosen)) if self.chosen else None

    @property
    def in_words(self) -> str:
        return _PERIODS[self.chosen]


@dataclass(frozen=True, slots=True)
class Line:
    """A slip of the list. ``family`` is a kind of problem that shows it; empty where none is left.

    ``askable`` are those who made it and can be asked to practise, ``asked`` those of them who are not done.
    """

    slip: str
    label: str
    shares: Ranked
    family: str
    place: Place | None
    example: str
    askable: int
    asked: int

    @property
    def title(self) -> str:
        return title_of(self.family)

    @property
    def people(self) -> str:
        return percent(self.shares.people)

    @property
    def answers(self) -> str:
        return percent(self.shares.answers)

    @property
    def left(self) -> int:
        """How many are not asked yet."""
        return self.askable - self.asked


def lines(learners: Collection[int], since: datetime | None, system: System) -> tuple[list[Line], int]:
    """The commonest slips of these learners, and how many there are in all. At most four queries."""
    found, paused = slips_of(learners, since), paused_items()
    asked = {(one.slip, one.learner_id) for one in open_assignments(learners)}
    order = ranked({slip: one.people for slip, one in found.items()})
    return [_line(row, found[row.name], paused, asked, system) for row in order[:MOST]], len(order)


def _line(
    row: Ranked, made: SlipMade, paused: Collection[str], asked: Collection[tuple[str, int]], system: System
) -> Line:
    family = _commonest(made.families, paused) or _commonest(made.families, ())
    who = families_for(made, paused)
    return Line(
        slip=row.name,
        label=made.label or row.name.replace("-", " "),
        shares=row,
        family=family,
        place=place_that_mends(made.label, family, system) if family else None,
        example=_example(family, system),
        askable=len(who),
        asked=sum((row.name, learner) in asked for learner in who),
    )


def families_for(made: SlipMade, paused: Collection[str]) -> dict[int, str]:
    """For everybody who made the slip the kind in which they made it most, of those that are asked now."""
    found = {learner: _commonest(families, paused) for learner, families in made.makers.items()}
    return {learner: family for learner, family in found.items() if family}


def _commonest(families: Mapping[str, int], without: Iterable[str]) -> str:
    """The family with most of it, of those the course still has; empty if there is none."""
    left = (families.keys() & catalogue.families().keys()).difference(without)
    return min(left, key=lambda family: (-families[family], family), default="")


def _example(family: str, system: System) -> str:
    """The address of a draw nobody has seen coming, with its solution."""
    if not family:
        return ""
    systems = catalogue.family(family).systems
    shown = system if system in systems else systems[0]
    return reverse("desks:problem", args=[family, shown, 1 + secrets.randbelow(_SEEDS)])


@needs(Deed.ASSIGN)
@never_cache
@require_safe
def teaching(request: PersonRequest, pk: int) -> HttpResponse:
    """The list of one cohort; one's own answers, if any, are left out."""
    cohort = cohort_or_404(request.user, Deed.ASSIGN, pk)
    form, trainees = PeriodForm(request.GET), _trainees(request.user, cohort)
    found, among = lines(trainees, form.since, request.user.system)  # type: ignore[arg-type]  # one of the two
    context = {"cohort": cohort, "form": form, "size": len(trainees), "lines": found, "among": among}
    return render(request, "desks/teaching.html", context)


@needs(Deed.ASSIGN)
@require_POST
def assign(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Ask those who made a slip to practise it; whoever is asked already is not asked twice."""
    cohort = cohort_or_404(request.user, Deed.ASSIGN, pk)
    form, slip = PeriodForm(request.POST), request.POST.get("slip", "")
    made = slips_of(_trainees(request.user, cohort), form.since).get(slip, SlipMade())
    try:
        families = families_for(made, paused_items())
        written = actions.assign_practice(families=families, slip=slip, label=made.label, by=request.user)
    except Refused as refusal:
        messages.error(request, str(refusal))
    else:
        messages.success(request, _told(len(written), made.label))
    return redirect(reverse("desks:teaching", args=[pk]) + (f"?days={form.chosen}" if form.chosen else ""))


def _trainees(person: Person, cohort: Cohort) -> list[int]:
    found: QuerySet[Person] = people_for(person, Deed.ASSIGN).filter(cohorts=cohort)
    return list(found.values_list("pk", flat=True))


def _told(count: int, label: str) -> str:
    if not count:
        return f"Everybody who made this slip is asked already: {label}."
    whom = "1 trainee meets" if count == 1 else f"{count} trainees meet"
    return f"{whom} it next in practice, with the reason: {label}."
