"""The hand slates: what is on the wall, on the phone of each trainee of the cohort."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.http import HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST, require_safe

from course.classroom import actions, queries
from course.classroom.forms import number
from course.people.access import cohorts_of, own_cohort_or_404
from course.people.http import PersonRequest
from course.people.models import Cohort
from pressure.marking import Unjudged
from quizzes.errors import Refused
from quizzes.sheets import fields_of


@never_cache
@require_safe
def mine(request: PersonRequest) -> HttpResponseBase:
    """The short address: straight to the slate of one's only cohort, or a choice among several."""
    found = list(cohorts_of(request.user).filter(closed=False))
    if len(found) == 1:
        return redirect("classroom:hand", found[0].pk)
    return render(request, "classroom/mine.html", {"cohorts": found})


@never_cache
@require_safe
def hand(request: PersonRequest, pk: int) -> HttpResponse:
    """The problem on the wall with the fields for one's answer; once it is over, what became of it."""
    return _slate(request, own_cohort_or_404(request.user, pk))


@require_POST
def answer(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Take an answer; a page or a card comes back, whichever was asked for."""
    cohort, form = own_cohort_or_404(request.user, pk), request.POST.dict()
    try:
        trouble = actions.answer(
            learner=request.user, cohort=cohort, showing_id=number(form.get("showing", "")), form=form
        )
    except Refused as refusal:
        messages.warning(request, str(refusal))
        trouble = None
    if trouble or request.htmx:
        return _slate(request, cohort, form, trouble)
    return redirect("classroom:hand", cohort.pk)


def _slate(
    request: PersonRequest,
    cohort: Cohort,
    typed: dict[str, str] | None = None,
    trouble: Unjudged | None = None,
) -> HttpResponse:
    showing = queries.on_the_wall(cohort)
    own = queries.answer_of(showing, request.user) if showing else None
    context: dict[str, Any] = {
        "cohort": cohort,
        "showing": showing,
        "answer": own,
        "state": queries.state_of(showing),
        **queries.solved(showing),
    }
    if showing and showing.is_open:
        said = (typed or {}, trouble.field, trouble.sentence) if trouble else ({},)
        context["fields"] = fields_of(showing.shown, *said)
    part = "#card" if request.htmx and not request.htmx.boosted else ""
    return render(request, f"classroom/hand.html{part}", context)
