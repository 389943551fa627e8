"""Printing papers for a cohort: drawn, given their codes and stored, so that they read the same for ever."""

from __future__ import annotations

import secrets
from collections.abc import Iterable, Iterator, Sequence

from django.db import transaction
from django.db.models import Count, Q, QuerySet
from django.http import Http404
from django.utils import timezone

from course.papers.models import Paper, Run, kept
from course.people.access import Deed, cohorts_for
from course.people.models import Cohort, Person
from pressure.problem import System
from quizzes.actions.paper_plans import PaperCheck, plan_papers
from quizzes.actions.supervision import LETTERS
from quizzes.competencies import Competency
from quizzes.models import journal

LENGTH = 6


def print_papers(
    *,
    cohort: Cohort,
    competency: Competency,
    trainees: Iterable[Person],
    spares: int,
    system: System,
    sheet: str,
    by: Person,
) -> Run:
    """A paper for each trainee and ``spares`` without a name; no two of them hold the same numbers."""
    trainees = list(trainees)
    checks = plan_papers(
        competency=competency, learners=trainees, spares=spares, group=cohort.group, system=system
    )
    named: list[Person | None] = [*trainees, *([None] * spares)]
    now = timezone.now()
    with transaction.atomic():
        run = Run.objects.create(
            cohort=cohort, competency=competency.slug, sheet=sheet, at=now, by_key=by.pk, by_name=str(by)
        )
        codes = _fresh_codes(len(checks))
        Paper.objects.bulk_create(_papers(run, named, checks, codes))
        details = {"papers": codes}
        journal.write(actor=by, verb="paper checks printed", subject=run, details=details, at=now)
    return run


def _papers(
    run: Run, named: Sequence[Person | None], checks: Sequence[PaperCheck], codes: Sequence[str]
) -> Iterator[Paper]:
    for number, (person, check, code) in enumerate(zip(named, checks, codes, strict=True), start=1):
        name = person.name if person else ""
        yield Paper(run=run, number=number, code=code, learner=person, name=name, **kept(check))


def _fresh_codes(count: int) -> list[str]:
    codes: set[str] = set()
    while len(codes) < count:
        codes |= {"".join(secrets.choice(LETTERS) for _ in range(LENGTH)) for _ in range(count - len(codes))}
        codes -= set(Paper.objects.filter(code__in=codes).values_list("code", flat=True))
    return sorted(codes)


def runs_of(cohort: Cohort) -> QuerySet[Run]:
    """What was printed for a cohort, latest first, with how many papers and how many are entered."""
    return Run.objects.filter(cohort=cohort).annotate(
        size=Count("papers"), entered=Count("papers", filter=Q(papers__entered_at__isnull=False))
    )


def open_to(person: Person) -> QuerySet[Paper]:
    """The papers of the cohorts within a person's reach."""
    return Paper.objects.filter(run__cohort__in=cohorts_for(person, Deed.PAPERS))


def run_or_404(person: Person, pk: int) -> Run:
    """Gate to one run; another cohort's answers like one that does not exist."""
    try:
        return Run.objects.select_related("cohort").get(pk=pk, cohort__in=cohorts_for(person, Deed.PAPERS))
    except Run.DoesNotExist:
        raise Http404 from None


def paper_or_404(person: Person, code: str) -> Paper:
    """Gate to one paper, by its code as it is kept."""
    try:
        return open_to(person).select_related("run__cohort", "learner", "sitting").get(code=code)
    except Paper.DoesNotExist:
        raise Http404 from None


def plain(code: str) -> str:
    """A code as somebody types it, without gaps and in capitals."""
    return "".join(code.split()).replace("-", "").upper()[:64]
