"""The desk's pages about how checks are held: codes for supervised ones, accommodations of one trainee."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.http import Http404, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods, require_POST

from course.desks.forms import AccommodationForm
from course.people.access import Deed, cohort_or_404, needs, person_or_404
from course.people.http import PersonRequest
from course.people.models import Cohort
from quizzes import actions, queries
from quizzes.errors import Refused
from quizzes.models import Slot
from quizzes.models.policy import in_force

_SHOWN = 20


@needs(Deed.SUPERVISE)
@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def slots(request: PersonRequest, pk: int) -> HttpResponse:
    """The cohort's codes. A new one is shown in the answer to the request that opened it, and never again."""
    cohort = cohort_or_404(request.user, Deed.SUPERVISE, pk)
    code = ""
    if request.method == "POST":
        _, code = actions.open_slot(group=cohort.group, group_name=cohort.name, by=request.user)
    return render(request, "desks/slots.html", _slots(cohort) | {"code": code})


def _slots(cohort: Cohort) -> dict[str, Any]:
    now = timezone.now()
    found = [(slot, slot.is_open(now)) for slot in queries.slots_of(cohort.group)[:_SHOWN]]
    return {"cohort": cohort, "slots": found, "minutes": in_force().code_minutes}


@needs(Deed.SUPERVISE)
@require_POST
def close_slot(request: PersonRequest, pk: int, slot: int) -> HttpResponseBase:
    """Close a code before its time."""
    cohort = cohort_or_404(request.user, Deed.SUPERVISE, pk)
    try:
        actions.close_slot(slot_id=slot, group=cohort.group, by=request.user)
    except Slot.DoesNotExist:
        raise Http404 from None
    messages.success(request, "The code is closed. Checks begun with it go on.")
    return redirect("desks:slots", cohort.pk)


@needs(Deed.SUPERVISE)
@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def accommodations(request: PersonRequest, pk: int) -> HttpResponseBase:
    """What one trainee's checks are held under: every entry, and a form for the next."""
    person = person_or_404(request.user, Deed.SUPERVISE, pk)
    entries = queries.accommodations_of(person)
    form = AccommodationForm(request.POST or None)
    if form.is_valid():
        try:
            entry = actions.set_accommodation(learner=person, by=request.user, **form.cleaned_data)
        except Refused as refusal:
            form.add_error(None, str(refusal))
        else:
            messages.success(request, f"Checks of {person.name} are held with: {entry.in_words}.")
            return redirect("desks:trainee", person.pk)
    context = {"trainee": person, "entries": entries, "form": form}
    return render(request, "desks/accommodations.html", context)
