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
from course.desks.filters import BoardForm
from course.desks.forms import DecideForm, OpenCheckForm
from course.desks.promises import others, promises
from course.desks.shelves import by_topic, problem_or_404
from course.desks.statistics import paused_lines
from course.people.access import Deed, cohort_or_404, cohorts_for, needs, people_for, person_or_404
from course.people.http import PersonRequest
from course.people.models import Person
from quizzes import actions, queries
from quizzes.competencies import COMPETENCIES, Competency
from quizzes.errors import Refused
from quizzes.models import DecisionRecord
from quizzes.models.pauses import paused_items
from quizzes.models.policy import in_force
from quizzes.subjects import WHOLE, subject


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
        "paused": paused_lines(),
    }
    return render(request, "desks/rules.html", context)


@needs(Deed.READ_RECORDS)
@require_safe
def families(request: PersonRequest) -> HttpResponse:
    """Every family of problems, by topic."""
    return render(request, "desks/families.html", {"topics": by_topic(), "paused": paused_items()})


@needs(Deed.READ_RECORDS)
@require_safe
def problem(request: PersonRequest, family: str, system: str, seed: int) -> HttpResponse:
    """Any draw of a family with its key and solution: to look at, or to put on the screen."""
    drawn = problem_or_404(family, system, seed, mixed="mixed" in request.GET)
    return render(request, "desks/problem.html", dict(drawn))


@needs(Deed.READ_RECORDS)
@never_cache
@require_safe
def board(request: PersonRequest, pk: int) -> HttpResponse:
    """Where every trainee of a cohort stands. One's own row, if any, is left out."""
    cohort = cohort_or_404(request.user, Deed.READ_RECORDS, pk)
    trainees = people_for(request.user, Deed.READ_RECORDS).filter(cohorts=cohort).values_list("pk", "name")
    form = BoardForm(request.GET)
    context = {"cohort": cohort, "form": form, "wish": form.wish, "board": lay_out(trainees, form.wish)}
    return render(request, "desks/board.html", context)


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
        context |= {"doubt": queries.doubt_about(found), "rulings": queries.rulings_on(found)}
    return render(request, "desks/attempt.html", context)


@needs(Deed.DECIDE)
@require_POST
def open_check(request: PersonRequest, pk: int, competency: str) -> HttpResponseBase:
    """Open a held check again, or waive what goes before it. A refusal comes back with what was typed."""
    person = person_or_404(request.user, Deed.DECIDE, pk)
    if competency not in COMPETENCIES and competency != WHOLE:
        raise Http404
    form = OpenCheckForm(competency, request.POST)
    if form.is_valid():
        try:
            _open(request.user, person, subject(competency), form.cleaned_data)
        except Refused as refusal:
            form.add_error("why", str(refusal))
    if form.errors:
        return render(request, "desks/trainee.html", dossier(request, person, form))
    done = {"rest": "the rest is waived", "practice": "the practice is waived"}
    what = done.get(form.cleaned_data["what"], "the check is open again")
    messages.success(request, f"{subject(competency).title}: {what} for {person.name}.")
    return redirect("desks:trainee", person.pk)


def _open(by: Person, learner: Person, competency: Competency, said: dict[str, Any]) -> None:
    if said["what"] in ("rest", "practice"):
        actions.waive(learner=learner, competency=competency, what=said["what"], by=by, why=said["why"])
    else:
        actions.open_check_again(learner=learner, competency=competency, by=by, why=said["why"])


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
    return _DEEDS[said["deed"]](learner=learner, competency=competency, by=by, why=why)


_DEEDS = {
    "open": actions.open_check_again,
    "grant": actions.grant,
    "revoke": actions.revoke,
    "supervise": actions.require_supervision,
}
