"""Reviewing answers: what trainees doubt, the oldest first, and a ruling on one of them."""

from __future__ import annotations

from typing import Any

from django import forms
from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.utils.functional import SimpleLazyObject
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods, require_safe

from course.desks.dossiers import attempt_or_404, marking_of
from course.people.access import Deed, needs, people_for
from course.people.http import PersonRequest
from quizzes import actions, queries
from quizzes.errors import Refused
from quizzes.models import Attempt, Ruling
from quizzes.reviews import Ruled
from quizzes.weighing import foresee

_PAGE = 50


class RulingForm(forms.Form):
    """What becomes of an answer, and why; ``seen`` is how many rulings the page showed."""

    ruled = forms.ChoiceField(
        label="What becomes of the answer",
        choices=[
            (Ruled.RIGHT.value, "Accept it as right"),
            (Ruled.ASIDE.value, "Set the question aside: it does not count"),
            (Ruled.LEFT.value, "Leave it as it was marked"),
        ],
        widget=forms.RadioSelect,
        error_messages={"required": "Choose what becomes of the answer."},
    )
    why = forms.CharField(
        label="Reason",
        max_length=400,
        help_text="It is kept with your name, and the trainee reads it.",
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={
            "required": "Give the reason; it is kept with the record.",
            "max_length": "Keep the reason to 400 characters; it is %(show_value)d now.",
        },
    )
    seen = forms.IntegerField(min_value=0, widget=forms.HiddenInput)


def site(request: HttpRequest) -> dict[str, Any]:
    """For the navigation of the desk: how many doubts wait. Asked of the database where a page shows it."""

    def count() -> int:
        return queries.doubts_waiting(people_for(request.user, Deed.DECIDE)).count()

    return {"doubts_waiting": SimpleLazyObject(count)}


@needs(Deed.DECIDE)
@never_cache
@require_safe
def reviews(request: PersonRequest) -> HttpResponse:
    """What waits for a ruling, the oldest first."""
    waiting = queries.doubts_waiting(people_for(request.user, Deed.DECIDE))
    doubts = Paginator(waiting, _PAGE).get_page(request.GET.get("page"))
    return render(request, "desks/reviews.html", {"doubts": doubts})


@needs(Deed.DECIDE)
@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def review(request: PersonRequest, pk: int) -> HttpResponseBase:
    """One answer as it was asked, typed, understood and decided, with the key; and the ruling on it."""
    found = attempt_or_404(people_for(request.user, Deed.DECIDE), pk)
    if not found.is_answered:
        return redirect("desks:attempt", found.pk)
    form = RulingForm(request.POST or None)
    if form.is_valid():
        try:
            ruling = actions.rule_on(attempt_id=found.pk, by=request.user, **form.cleaned_data)
        except Refused as refusal:
            form.add_error("why", str(refusal))
        else:
            messages.success(request, _told(ruling))
            return redirect("desks:reviews")
    return render(request, "desks/review.html", _reviewed(found) | {"form": form})


def _reviewed(attempt: Attempt) -> dict[str, Any]:
    return {
        "attempt": attempt,
        "doubt": queries.doubt_about(attempt),
        "rulings": list(queries.rulings_on(attempt)),
        "reviewed": queries.after_review(attempt.sitting),
        "foreseen": list(foresee(attempt).items()),
        **marking_of(attempt),
    }


def _told(ruling: Ruling) -> str:
    """What was ruled and what it moved, in a sentence."""
    moved = [f"{entry.title} is now {entry.decided}" for entry in ruling.decisions.all()]
    learner = str(ruling.attempt.learner)
    what = "; ".join(moved[:3]) if moved else "Nothing that was decided changes"
    return f"The answer of {learner} is {ruling.get_ruled_display()}. {what}."
