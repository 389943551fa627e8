"""One trainee as the desk reads them: standings, decisions, checks and practice, attempts page by page."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.core.paginator import Paginator
from django.db.models import Count, OuterRef, Q, QuerySet, Subquery
from django.db.models.lookups import Exact
from django.http import Http404
from django.utils import timezone

from course.desks.curves import progress
from course.desks.forms import OpenCheckForm
from course.people.access import Deed, cohorts_for, people_for
from course.people.http import PersonRequest
from course.people.models import Person
from pressure.units import rounded, unit_text
from quizzes import queries
from quizzes.models import Attempt, DecisionRecord, Sitting
from quizzes.models.attempt import counts_as
from quizzes.reviews import Ruled
from quizzes.subjects import WHOLE

PAGE = 50


def dossier(request: PersonRequest, person: Person, refused: OpenCheckForm | None = None) -> dict[str, Any]:
    """The context of the trainee's page; ``refused`` is a form that came back, with what was typed."""
    attempts = Paginator(attempts_of(person), PAGE).get_page(request.GET.get("page"))
    decisions = queries.decisions_of(person)
    return {
        "trainee": person,
        "cohorts": cohorts_for(request.user, Deed.READ_RECORDS).filter(trainees=person),
        "standings": _standings(request, person, refused),
        "accommodation": queries.accommodation_of(person),
        "decisions": decisions,
        "progress": progress(queries.practice_by_week(person), decisions, timezone.localdate()),
        "sittings": sittings_of(person),
        "attempts": attempts,
        "refused": refused,
    }


def attempts_of(person: Person) -> QuerySet[Attempt]:
    """Every attempt, latest first, without the long texts that a list does not show."""
    return (
        Attempt.objects.filter(learner=person)
        .select_related("sitting")
        .defer("shown", "key", "mend", "sitting__rule")
        .order_by("-pk")
    )


def attempt_or_404(learners: QuerySet[Person], pk: int) -> Attempt:
    """One attempt of these learners; another's answers like one that does not exist."""
    try:
        return Attempt.objects.select_related("sitting", "learner").get(pk=pk, learner__in=learners)
    except Attempt.DoesNotExist:
        raise Http404 from None


_ASIDE = Q(attempts__ruled=Ruled.ASIDE.value)
_REVIEWED = DecisionRecord.objects.filter(
    sitting=OuterRef("pk"), competency=OuterRef("competency"), ruling__isnull=False
).order_by("-pk")


def sittings_of(person: Person) -> QuerySet[Sitting]:
    """Every practice and check with the number of its answers, latest first."""
    counted = queries.sittings_of(person).annotate(
        answers=Count("attempts", filter=Q(attempts__answered_at__isnull=False) & ~_ASIDE),
        right=Count("attempts", filter=Q(Exact(counts_as("attempts__"), "right"))),
        reviewed=Subquery(_REVIEWED.values("decided")[:1]),
    )
    return counted.order_by("-pk")  # grouping drops the model's own order


def marking_of(attempt: Attempt) -> dict[str, Any]:
    """What an answered attempt was marked against: for each number its range and those of its slips."""
    cells = attempt.key.get("cells") or ([attempt.key] if "low" in attempt.key else [])
    asked = attempt.shown.get("cells") or [attempt.shown.get("asked")]
    return {"marking": [_ranges(one, cell) for one, cell in zip(asked, cells, strict=False)]}


def _ranges(asked: Mapping[str, Any], cell: Mapping[str, Any]) -> dict[str, Any]:
    unit = unit_text(cell["unit"])

    def between(band: Mapping[str, float]) -> str:
        return f"{rounded(band['low'], 5)} to {rounded(band['high'], 5)} {unit}"

    slips = [(slip["label"], between(slip)) for slip in cell["slips"]]
    return {"asked": asked["text"], "answer": cell["answer_text"], "accepted": between(cell), "slips": slips}


def _standings(
    request: PersonRequest, person: Person, refused: OpenCheckForm | None
) -> list[tuple[Any, OpenCheckForm | None]]:
    """Each standing, with the form that opens or waives where a check is held and the reader may decide.

    The whole course comes last, once its check was tried.
    """
    rows = list(queries.standings_for(person).values())
    whole = queries.standing_for(person, WHOLE)
    rows += [whole] if whole.pk else []
    held = [row for row in rows if row.is_held]
    may_decide = bool(held) and people_for(request.user, Deed.DECIDE).contains(person)
    forms = {row.competency: OpenCheckForm(row.competency) for row in held if may_decide}
    if refused:
        forms[refused.competency] = refused
    return [(row, forms.get(row.competency)) for row in rows]
