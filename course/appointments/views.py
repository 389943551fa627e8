"""Setting a check for a cohort: what was set, a draft, its preview; sending it and taking it back."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.db.models import Count
from django.http import Http404, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from course.appointments import deeds
from course.appointments.calendar import has_begun, progress
from course.appointments.forms import PlanForm, TakeBackForm
from course.appointments.models import Appointment
from course.appointments.previews import DRAWS, draws_or_404, families_of
from course.people.access import Deed, cohort_or_404, cohorts_for, needs, people_for
from course.people.http import PersonRequest
from course.people.models import Person
from quizzes.errors import Refused
from quizzes.models.policy import in_force
from quizzes.subjects import WHOLE

either = require_http_methods(["GET", "HEAD", "POST"])
_SHOWN = 100


def _appointment_or_404(person: Person, pk: int) -> Appointment:
    """Gate to what was set for a cohort within reach."""
    within = cohorts_for(person, Deed.SET_CHECKS)
    try:
        return Appointment.objects.select_related("cohort").get(pk=pk, cohort__in=within)
    except Appointment.DoesNotExist:
        raise Http404 from None


@needs(Deed.SET_CHECKS)
@never_cache
@require_safe
def index(request: PersonRequest, pk: int) -> HttpResponse:
    """Every check that was set for a cohort, and the drafts, latest first."""
    cohort = cohort_or_404(request.user, Deed.SET_CHECKS, pk)
    now = timezone.now()
    found = cohort.appointments.annotate(size=Count("people")).order_by("-pk")[:_SHOWN]
    rows = [(one, one.state(now)) for one in found]
    return render(request, "appointments/index.html", {"cohort": cohort, "rows": rows})


@needs(Deed.SET_CHECKS)
@never_cache
@either
def new(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Write a draft for a cohort."""
    cohort = cohort_or_404(request.user, Deed.SET_CHECKS, pk)
    people = people_for(request.user, Deed.SET_CHECKS).filter(cohorts=cohort)
    form = PlanForm(people, request.POST or None)
    if form.is_valid():
        one = deeds.draft(cohort=cohort, by=request.user, plan=form.plan)
        return redirect("appointments:appointment", one.pk)
    context = {"cohort": cohort, "form": form, "policy": in_force()}
    return render(request, "appointments/form.html", context)


@needs(Deed.SET_CHECKS)
@never_cache
@either
def change(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Write a draft anew."""
    one = _appointment_or_404(request.user, pk)
    people = people_for(request.user, Deed.SET_CHECKS).filter(cohorts=one.cohort)
    begins = deeds.plan_of(one) | {"people": one.people.all()}
    form = PlanForm(people, request.POST or None, begins)
    if form.is_valid():
        try:
            deeds.change(appointment_id=one.pk, by=request.user, plan=form.plan)
        except Refused as refusal:
            messages.error(request, str(refusal))
        return redirect("appointments:appointment", one.pk)
    context = {"cohort": one.cohort, "form": form, "policy": in_force(), "one": one}
    return render(request, "appointments/form.html", context)


@needs(Deed.SET_CHECKS)
@never_cache
@require_safe
def appointment(request: PersonRequest, pk: int) -> HttpResponse:
    """One of them: a draft with its preview, ready to send; or what was sent, and how far everybody is."""
    return _show(request, _appointment_or_404(request.user, pk), TakeBackForm())


def _show(request: PersonRequest, one: Appointment, form: TakeBackForm) -> HttpResponse:
    context: dict[str, Any] = {
        "one": one,
        "cohort": one.cohort,
        "state": one.state(timezone.now()),
        "limits": _limits(one),
        "papers": families_of(one.subjects),
        "draws": DRAWS,
    }
    if one.is_draft:
        context["who"] = deeds.set_for(one, request.user)
    else:
        reach = people_for(request.user, Deed.SET_CHECKS)
        begun = has_begun(one)
        context |= {"lines": progress(one, reach.filter(appointments=one)), "begun": begun}
        if form.errors or not (one.taken_back_at or begun):
            context["form"] = form
    return render(request, "appointments/appointment.html", context)


def _limits(one: Appointment) -> int:
    """Minutes that its check may take by the policy; 0 is without limit."""
    return in_force().limit_for(WHOLE if WHOLE in one.subjects else "")


@needs(Deed.SET_CHECKS)
@require_POST
def send(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Send a draft to those it is for."""
    one = _appointment_or_404(request.user, pk)
    try:
        deeds.send(appointment_id=one.pk, by=request.user)
    except Refused as refusal:
        messages.error(request, str(refusal))
    else:
        messages.success(request, "The check is set. It stands on the start page of everybody it is for.")
    return redirect("appointments:appointment", one.pk)


@needs(Deed.SET_CHECKS)
@require_POST
def discard(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Throw a draft away."""
    one = _appointment_or_404(request.user, pk)
    try:
        deeds.discard(appointment_id=one.pk)
    except Refused as refusal:
        messages.error(request, str(refusal))
        return redirect("appointments:appointment", one.pk)
    messages.success(request, "The draft is gone. Nobody had been told of it.")
    return redirect("appointments:index", one.cohort_id)


@needs(Deed.SET_CHECKS)
@require_POST
def take_back(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Take a set check back while nobody has begun. A refusal comes back with what was typed."""
    one = _appointment_or_404(request.user, pk)
    form = TakeBackForm(request.POST)
    if form.is_valid():
        try:
            deeds.take_back(appointment_id=one.pk, by=request.user, why=form.cleaned_data["why"])
        except Refused as refusal:
            form.add_error("why", str(refusal))
    if form.errors:
        return _show(request, one, form)
    messages.success(request, "It is taken back. Those it was set for read your reason.")
    return redirect("appointments:appointment", one.pk)


@needs(Deed.SET_CHECKS)
@require_safe
def draws(request: PersonRequest, family: str, system: str, first: int) -> HttpResponse:
    """Ten draws of a family as trainees will see them; their own numbers come from elsewhere."""
    found, shown = draws_or_404(family, system, first)
    context = {"family": found, "system": system, "first": first, "draws": shown, "next": first + DRAWS}
    return render(request, "appointments/draws.html", context)
