"""The wall slate: the page that an instructor projects, and the deeds that move it on."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.http import HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST, require_safe

from course.classroom import actions, queries
from course.classroom.forms import PutUpForm, number
from course.classroom.models import Showing, Stage
from course.people.access import Deed, cohort_or_404, needs
from course.people.http import PersonRequest
from course.people.models import Cohort
from quizzes.errors import Refused


@needs(Deed.TEACH)
@never_cache
@require_safe
def wall(request: PersonRequest, pk: int) -> HttpResponse:
    """What the class sees: the problem, how many have answered, then the spread and the solution."""
    cohort = cohort_or_404(request.user, Deed.TEACH, pk)
    showing = queries.on_the_wall(cohort)
    form = PutUpForm(initial=_first_choice(request, showing))
    return render(request, "classroom/wall.html", _slate(request, cohort, showing) | {"form": form})


@needs(Deed.TEACH)
@require_POST
def put_up(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Put up a fresh problem of a kind, or another of the same."""
    cohort = cohort_or_404(request.user, Deed.TEACH, pk)
    form = PutUpForm(request.POST)
    if not form.is_valid():
        slate = _slate(request, cohort, queries.on_the_wall(cohort))
        return render(request, "classroom/wall.html", slate | {"form": form, "still": True})
    try:
        actions.put_up(cohort=cohort, by=request.user, **form.cleaned_data)
    except Refused as refusal:
        messages.warning(request, str(refusal))
    return redirect("classroom:wall", cohort.pk)


@needs(Deed.TEACH)
@require_POST
def move(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Close the problem, open it again, show the answers, or take it down."""
    cohort = cohort_or_404(request.user, Deed.TEACH, pk)
    to, showing = request.POST.get("to", ""), number(request.POST.get("showing", ""))
    try:
        if to not in Stage.values:
            raise Refused("The wall can be closed, opened again, shown or taken down. Choose one of these.")
        actions.move(cohort=cohort, showing_id=showing, to=Stage(to), by=request.user)
    except Refused as refusal:
        messages.warning(request, str(refusal))
    return redirect("classroom:wall", cohort.pk)


@needs(Deed.TEACH)
@require_POST
def step(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Show the next step of the solution."""
    cohort = cohort_or_404(request.user, Deed.TEACH, pk)
    wanted, showing = number(request.POST.get("number", "")), number(request.POST.get("showing", ""))
    try:
        actions.show_step(cohort=cohort, showing_id=showing, number=wanted)
    except Refused as refusal:
        messages.warning(request, str(refusal))
    return redirect("classroom:wall", cohort.pk)


def _slate(request: PersonRequest, cohort: Cohort, showing: Showing | None) -> dict[str, Any]:
    return {
        "cohort": cohort,
        "cohort_pk": cohort.pk,
        "showing": showing,
        "state": queries.state_of(showing),
        "after": showing.pk if showing else 0,
        "address": request.build_absolute_uri(reverse("classroom:mine")).partition("://")[2],
        **queries.solved(showing),
    }


def _first_choice(request: PersonRequest, showing: Showing | None) -> dict[str, Any]:
    """The kind named in the address, else that on the wall; ``after`` is what this page saw."""
    return {
        "family": request.GET.get("family") or (showing.family if showing else ""),
        "system": showing.system if showing else request.user.system,
        "after": showing.pk if showing else 0,
    }
