"""The desk: cohorts, their boards, a trainee's record, one attempt, and a check opened again."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.db.models import Count
from django.http import Http404, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from course.desks.boards import lay_out
from course.desks.dossiers import attempt_or_404, dossier, marking_of
from course.desks.forms import DecideForm, OpenCheckForm
from course.desks.promises import others, promises
from course.desks.shelves import by_topic, problem_or_404
from course.people.access import Deed, cohort_or_404, cohorts_for, needs, people_for, person_or_404
from course.people.http import PersonRequest
from course.people.models import Person
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.models import DecisionRecord
from quizzes.models.policy import in_force


@needs(Deed.READ_RECORDS)
@never_cache
@require_safe
def cohorts(request: PersonRequest) -> HttpResponse:
    """The cohorts within reach."""
    found = cohorts_for(request.user, Deed.READ_RECORDS).annotate(size=Count("trainees"))
    return render(request, "desks/cohorts.html", {"cohorts": found.prefetch_related("instructors")})


@needs(Deed.READ_RECORDS)
@require_safe
def rules(request: PersonRequest) -> HttpResponse:
    """What the rules in force promise, and what other rules would."""
    policy = in_force()
    context = {
        "policy": policy,
        "promises": promises(policy),
        "others": others(policy.rules["standard"]),
    }
    return render(request, "desks/rules.html", context)


@needs(Deed.READ_RECORDS)
@require_safe
def families(request: PersonRequest) -> HttpResponse:
    """Every family of problems, by topic."""
    return render(request, "desks/families.html", {"topics": by_topic()})


@needs(Deed.READ_RECORDS)
@require_safe
def problem(request: PersonRequest, family: str, system: str, seed: int) -> HttpResponse:
    """Any draw of a family with its key and solution: to look at, or to put on the screen."""
    return render(request, "desks/problem.html", dict(problem_or_404(family, system, seed)))


@needs(Deed.READ_RECORDS)
@never_cache
@require_safe
def board(request: PersonRequest, pk: int) -> HttpResponse:
    """Where every trainee of a cohort stands. One's own row, if any, is left out."""
    cohort = cohort_or_404(request.user, Deed.READ_RECORDS, pk)
    trainees = people_for(request.user, Deed.READ_RECORDS).filter(cohorts=cohort)
    return render(request, "desks/board.html", {"cohort": cohort, "board": lay_out(trainees)})


@needs(Deed.READ_RECORDS)
@never_cache
@require_safe
def trainee(request: PersonRequest, pk: int) -> HttpResponse:
    """One trainee's standings, decisions, checks, practice and attempts."""
    person = person_or_404(request.user, Deed.READ_RECORDS, pk)
    return render(request, "desks/trainee.html", dossier(request, person))


@needs(Deed.READ_RECORDS)
@never_cache
@require_safe
def attempt(request: PersonRequest, pk: int) -> HttpResponse:
    """What was asked, typed, understood and decided; the key only once it is answered."""
    found = attempt_or_404(people_for(request.user, Deed.READ_RECORDS), pk)
    context: dict[str, Any] = {
        "attempt": found,
        "rule": found.sitting.decision_rule if found.sitting.is_check else None,
    }
    if found.is_answered:
        context |= marking_of(found)
    return render(request, "desks/attempt.html", context)


@needs(Deed.DECIDE)
@require_POST
def open_check(request: PersonRequest, pk: int, competency: str) -> HttpResponseBase:
    """Open a check that waits for an instructor. A refusal comes back with the reason as typed."""
    person = person_or_404(request.user, Deed.DECIDE, pk)
    if competency not in COMPETENCIES:
        raise Http404
    form = OpenCheckForm(competency, request.POST)
    if form.is_valid():
        try:
            actions.open_check_again(
                learner=person,
                competency=COMPETENCIES[competency],
                by=request.user,
                why=form.cleaned_data["why"],
            )
        except Refused as refusal:
            form.add_error("why", str(refusal))
    if form.errors:
        return render(request, "desks/trainee.html", dossier(request, person, form))
    messages.success(request, f"{COMPETENCIES[competency].title}: the check is open again for {person.name}.")
    return redirect("desks:trainee", person.pk)


@needs(Deed.DECIDE)
@never_cache
@require_http_methods(["GET", "HEAD", "POST"])
def decide(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Decide by hand about one trainee: sign off, open again, grant or revoke, always with a reason."""
    person = person_or_404(request.user, Deed.DECIDE, pk)
    form = DecideForm(request.POST or None)
    if form.is_valid():
        try:
            entry = _decided(request.user, person, form.cleaned_data)
        except Refused as refusal:
            form.add_error(None, str(refusal))
        else:
            messages.success(request, f"{entry.title}: {entry.get_decided_display()}, for {person.name}.")
            return redirect("desks:trainee", person.pk)
    return render(request, "desks/decide.html", {"trainee": person, "form": form})


def _decided(by: Person, learner: Person, said: dict[str, Any]) -> DecisionRecord:
    competency, why = COMPETENCIES[said["competency"]], said["why"]
    if said["deed"] == "sign":
        return actions.sign_off(learner=learner, competency=competency, part=said["part"], by=by, why=why)
    deed = {"open": actions.open_check_again, "grant": actions.grant, "revoke": actions.revoke}[said["deed"]]
    return deed(learner=learner, competency=competency, by=by, why=why)
