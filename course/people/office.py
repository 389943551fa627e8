"""The office: who is on the roster, and the cohorts. Open to officers and administrators only."""

from __future__ import annotations

from collections.abc import Callable
from urllib.parse import urlencode

from django.contrib import messages
from django.core.exceptions import PermissionDenied
from django.core.paginator import Paginator
from django.db.models import Count, Q
from django.forms import BaseForm
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from course.people import roster as deeds
from course.people.access import Deed, cohort_or_404, cohorts_for, needs, people_for, person_or_404
from course.people.forms import CohortForm, PersonForm, initial_of
from course.people.http import PersonRequest
from course.people.models import Person
from quizzes.errors import Refused

A_PAGE = 50
either = require_http_methods(["GET", "HEAD", "POST"])


@require_safe
@needs(Deed.MANAGE_PEOPLE)
def roster(request: PersonRequest) -> HttpResponse:
    """Everybody, fifty to a page; ``q`` looks in names, addresses and cohorts."""
    sought = request.GET.get("q", "").strip()[:100]
    people = people_for(request.user, Deed.MANAGE_PEOPLE).prefetch_related("cohorts", "teaches")
    if sought:
        found = Q(name__icontains=sought) | Q(email__icontains=sought) | Q(cohorts__name__icontains=sought)
        people = people.filter(found).distinct()
    page = Paginator(people, A_PAGE).get_page(request.GET.get("page"))
    query = f"{urlencode({'q': sought})}&" if sought else ""
    return render(request, "people/roster.html", {"page": page, "sought": sought, "query": query})


@never_cache
@either
@needs(Deed.MANAGE_PEOPLE)
def person_add(request: PersonRequest) -> HttpResponse:
    """Add somebody; the answer shows the one-time link with which they set a password."""
    form = PersonForm(request.POST or None, actor=request.user)
    if form.is_valid() and _stands(form, lambda: deeds.add_person(actor=request.user, entry=form.entry())):
        added = people_for(request.user, Deed.MANAGE_PEOPLE).get(email=form.cleaned_data["email"])
        messages.success(request, f"{added.name} is on the roster.")
        return _show_link(request, added)
    return render(request, "people/person_form.html", {"form": form})


@never_cache
@either
@needs(Deed.MANAGE_PEOPLE)
def person(request: PersonRequest, pk: int) -> HttpResponse:
    """One person's entry: to change, or only to read where it is not in the actor's gift."""
    shown = person_or_404(request.user, Deed.MANAGE_PEOPLE, pk)
    may_change = deeds.may_change(request.user, shown)
    if request.method == "POST" and not may_change:
        raise PermissionDenied
    form = PersonForm(request.POST or None, actor=request.user, person=shown, initial=initial_of(shown))
    if form.is_valid() and _stands(
        form, lambda: deeds.change_person(actor=request.user, person=shown, entry=form.entry())
    ):
        messages.success(request, f"The entry of {form.cleaned_data['name']} is up to date.")
        return redirect("people:roster")
    context = {"form": form, "shown": shown, "may_change": may_change, "own": shown.pk == request.user.pk}
    return render(request, "people/person.html", context)


def _stands(form: BaseForm, deed: Callable[[], object]) -> bool:
    """Do the deed; where it is refused, the sentence goes on the form."""
    try:
        deed()
    except Refused as refusal:
        form.add_error(None, str(refusal))
        return False
    return True


@never_cache
@require_POST
@needs(Deed.MANAGE_PEOPLE)
def person_link(request: PersonRequest, pk: int) -> HttpResponse:
    """A fresh one-time link for somebody who has none, or lost it."""
    shown = person_or_404(request.user, Deed.MANAGE_PEOPLE, pk)
    try:
        return _show_link(request, shown)
    except Refused as refusal:
        messages.error(request, str(refusal))
        return redirect("people:person", shown.pk)


def _show_link(request: PersonRequest, shown: Person) -> HttpResponse:
    link = request.build_absolute_uri(deeds.one_time_path(actor=request.user, person=shown))
    return render(request, "people/person_link.html", {"shown": shown, "link": link})


@require_safe
@needs(Deed.MANAGE_PEOPLE)
def cohorts(request: PersonRequest) -> HttpResponse:
    """Every cohort with how many learn and who teaches."""
    rows = cohorts_for(request.user, Deed.MANAGE_PEOPLE)
    rows = rows.annotate(learners=Count("trainees")).prefetch_related("instructors")
    return render(request, "people/cohorts.html", {"cohorts": rows})


@either
@needs(Deed.MANAGE_PEOPLE)
def cohort_add(request: PersonRequest) -> HttpResponse:
    """Open a cohort."""
    form = CohortForm(request.POST or None)
    if form.is_valid() and _stands(form, lambda: deeds.add_cohort(actor=request.user, entry=form.entry())):
        name = form.cleaned_data["name"]
        messages.success(request, f"{name} is open. Say with each person who learns or teaches in it.")
        return redirect("people:cohorts")
    return render(request, "people/cohort_form.html", {"form": form})


@either
@needs(Deed.MANAGE_PEOPLE)
def cohort(request: PersonRequest, pk: int) -> HttpResponse:
    """Rename, re-date or close a cohort."""
    shown = cohort_or_404(request.user, Deed.MANAGE_PEOPLE, pk)
    name = shown.name
    form = CohortForm(request.POST or None, instance=shown)
    if form.is_valid() and _stands(
        form, lambda: deeds.change_cohort(actor=request.user, cohort=shown, entry=form.entry())
    ):
        messages.success(request, f"{form.cleaned_data['name']} is up to date.")
        return redirect("people:cohorts")
    return render(request, "people/cohort_form.html", {"form": form, "name": name})
