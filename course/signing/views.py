"""Signing off and releasing for a cohort at once: tick, look over what will be written, then write it."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.db.models import QuerySet
from django.http import Http404, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods, require_safe

from course.people.access import Deed, cohort_or_404, needs, people_for
from course.people.http import PersonRequest
from course.people.models import Cohort, Person
from course.signing import tables
from course.signing.forms import ReleaseForm, SignForm
from quizzes import actions
from quizzes.actions.rounds import Round
from quizzes.competencies import COMPETENCIES, Competency

either = require_http_methods(["GET", "HEAD", "POST"])


def _trainees(request: PersonRequest, cohort: Cohort) -> QuerySet[Person]:
    """Those of the cohort about whom the reader may decide: never themselves."""
    return people_for(request.user, Deed.DECIDE).filter(cohorts=cohort)


@needs(Deed.DECIDE)
@never_cache
@require_safe
def index(request: PersonRequest, pk: int) -> HttpResponse:
    """How many of the cohort have which part signed off, competency by competency."""
    cohort = cohort_or_404(request.user, Deed.DECIDE, pk)
    people = list(_trainees(request, cohort))
    context = {"cohort": cohort, "sums": tables.sums(people), "size": len(people)}
    return render(request, "signing/index.html", context)


@needs(Deed.DECIDE)
@never_cache
@either
def sign(request: PersonRequest, pk: int, competency: str) -> HttpResponseBase:
    """The cohort's trainees by the parts of one competency: tick, confirm, written in one go."""
    cohort = cohort_or_404(request.user, Deed.DECIDE, pk)
    if competency not in COMPETENCIES:
        raise Http404
    chosen, people = COMPETENCIES[competency], {one.pk: one for one in _trainees(request, cohort)}
    boxes = [tables.box(person, part) for person in people.values() for part in tables.PARTS]
    form = SignForm(boxes, request.POST or None)
    context = {"cohort": cohort, "competency": chosen, "form": form}
    if not form.is_valid() or "back" in request.POST:
        context["rows"] = tables.rows([*people.values()], competency, request.POST.getlist("sign"))
        return render(request, "signing/sign.html", context | {"parts": tables.PARTS})
    if "confirmed" not in request.POST:
        return render(request, "signing/sign_confirm.html", context | _to_sign(form, people))
    _report(request, _sign(request, chosen, form, people), "signature")
    return redirect("signing:sign", cohort.pk, competency)


def _to_sign(form: SignForm, people: dict[int, Person]) -> dict[str, Any]:
    lines = [(people[pk], part) for pk, part in form.signatures]
    return {"lines": lines, "why": form.why}


def _sign(request: PersonRequest, competency: Competency, form: SignForm, people: dict[int, Person]) -> Round:
    signatures = [(people[pk], part) for pk, part in form.signatures]
    return actions.sign_off_round(signatures=signatures, competency=competency, by=request.user, why=form.why)


@needs(Deed.DECIDE)
@never_cache
@either
def holds(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Every held check of the cohort: tick, choose, confirm, written in one go."""
    cohort = cohort_or_404(request.user, Deed.DECIDE, pk)
    held = {
        f"{who.pk}:{row.competency}": (who, row) for who, row in tables.held([*_trainees(request, cohort)])
    }
    form = ReleaseForm(held, request.POST or None)
    context: dict[str, Any] = {"cohort": cohort, "form": form}
    if not form.is_valid() or "back" in request.POST:
        ticked = request.POST.getlist("held")
        context["held"] = [(box, who, row, box in ticked) for box, (who, row) in held.items()]
        return render(request, "signing/holds.html", context)
    chosen = [held[box] for box in form.cleaned_data["held"]]
    if "confirmed" not in request.POST:
        return render(request, "signing/holds_confirm.html", context | {"lines": chosen})
    _report(request, _release(request, form, chosen), "entry")
    return redirect("signing:holds", cohort.pk)


def _release(request: PersonRequest, form: ReleaseForm, chosen: list[tuple[Person, Any]]) -> Round:
    said = form.cleaned_data
    pairs = [(who, row.competency) for who, row in chosen]
    return actions.release_round(held=pairs, what=said["what"], by=request.user, why=said["why"])


def _report(request: PersonRequest, done: Round, word: str) -> None:
    """Say what was written, and for whom nothing was."""
    count = len(done.written)
    plural = {"signature": "signatures", "entry": "entries"}[word]
    if count:
        messages.success(request, f"{count} {word if count == 1 else plural} written.")
    for learner, sentence in done.left:
        messages.warning(request, f"{learner}: nothing was written. {sentence}")
