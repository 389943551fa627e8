"""The learner's own pages, all reached through the signed-in learner: another's is not found."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST, require_safe

from pressure.marking import Unjudged
from quizzes import actions, queries
from quizzes.actions.sittings import rule_of
from quizzes.aids import aid_for
from quizzes.competencies import COMPETENCIES, Competency
from quizzes.errors import Refused
from quizzes.models import Attempt, Sitting
from quizzes.models.policy import in_force
from quizzes.sheets import fields_of
from quizzes.sounding import marks
from quizzes.standing import DECIDING, Purpose

if TYPE_CHECKING:
    from django_htmx.middleware import HtmxDetails

    from quizzes.typing import Learner

    class LearnerRequest(HttpRequest):
        """Typing only: signed in, with htmx details."""

        user: Learner
        htmx: HtmxDetails


def _competency_or_404(slug: str) -> Competency:
    try:
        return COMPETENCIES[slug]
    except KeyError:
        raise Http404 from None


@never_cache
@require_safe
def practice(request: LearnerRequest, competency: str) -> HttpResponse:
    """The problem that waits, or the way to begin."""
    chosen = _competency_or_404(competency)
    waiting = queries.open_attempt(request.user, chosen.slug, Purpose.REVIEW, Purpose.PRACTICE)
    running = queries.open_attempt(request.user, chosen.slug, *DECIDING)
    row = queries.standing_for(request.user, chosen.slug)
    context = {
        "competency": chosen,
        "attempt": None if running else waiting,
        "fields": fields_of(waiting.shown, {}) if waiting else [],
        "aid": aid_for(waiting) if waiting else None,
        "running": running,
        "standing": row,
        "opening": row.opening(in_force()),
    }
    return _card(request, "quizzes/practice.html", context)


@require_POST
def practice_start(request: LearnerRequest, competency: str) -> HttpResponse:
    """Begin practice, or go on with it."""
    chosen = _competency_or_404(competency)
    try:
        actions.start_practice(learner=request.user, competency=chosen)
    except Refused as refusal:
        messages.error(request, str(refusal))
    return redirect("quizzes:practice", chosen.slug)


@require_POST
def review_start(request: LearnerRequest, competency: str) -> HttpResponse:
    """Begin the review set that has come round, or go on with it."""
    chosen = _competency_or_404(competency)
    try:
        actions.start_review(learner=request.user, competency=chosen)
    except Refused as refusal:
        messages.error(request, str(refusal))
    return redirect("quizzes:practice", chosen.slug)


@never_cache
@require_safe
def check(request: LearnerRequest, competency: str) -> HttpResponse:
    """The question that waits; otherwise the rule in words and how to begin."""
    return _check(request, _competency_or_404(competency))


def _check(request: LearnerRequest, chosen: Competency) -> HttpResponse:
    row, policy = queries.standing_for(request.user, chosen.slug), in_force()
    opening = row.opening(policy)
    waiting = queries.open_attempt(request.user, chosen.slug, *DECIDING)
    context = {
        "competency": chosen,
        "attempt": waiting,
        "fields": fields_of(waiting.shown, {}) if waiting else [],
        "standing": row,
        "opening": opening,
        "rule": waiting.sitting.decision_rule
        if waiting
        else rule_of(policy, opening.purpose or Purpose.CHECK, chosen, row.holds),
        "last": None if waiting else queries.last_check(request.user, chosen.slug),
    }
    return _card(request, "quizzes/check.html", context)


@require_POST
def check_start(request: LearnerRequest, competency: str) -> HttpResponse:
    """Begin the check, or go on with it."""
    chosen = _competency_or_404(competency)
    try:
        actions.start_check(learner=request.user, competency=chosen)
    except Refused as refusal:
        messages.error(request, str(refusal))
    return redirect("quizzes:check", chosen.slug)


@require_POST
def answer(request: LearnerRequest, pk: int) -> HttpResponse:
    """Take an answer to a problem of one's own; a page or a card comes back, whichever was asked for."""
    try:
        outcome = actions.answer(learner=request.user, attempt_id=pk, form=request.POST.dict())
    except Attempt.DoesNotExist:
        raise Http404 from None
    if outcome.trouble:
        context = _asking(outcome.attempt, request.POST.dict(), outcome.trouble)
        return _card(request, "quizzes/asked.html", context)
    if not outcome.counted:
        messages.info(request, "That question was answered before. The first answer counts.")
    return _after_answer(request, outcome.attempt)


@require_POST
def hint(request: LearnerRequest, pk: int) -> HttpResponse:
    """Open the next hint of a practice problem of one's own."""
    try:
        attempt = actions.take_hint(learner=request.user, attempt_id=pk)
    except Attempt.DoesNotExist:
        raise Http404 from None
    return redirect("quizzes:practice", attempt.sitting.competency)


def _after_answer(request: LearnerRequest, answered: Attempt) -> HttpResponse:
    sitting = answered.sitting
    if sitting.is_check:
        page = _check_url(sitting)
        if request.htmx and not sitting.ended:
            return _check(request, COMPETENCIES[sitting.competency])
        return _go(request, page)
    if request.htmx:
        return _card(request, "quizzes/attempt.html", _explained(answered, 0))
    return redirect("quizzes:attempt", answered.pk)


def _go(request: LearnerRequest, url: str) -> HttpResponse:
    """Send the browser to another page; htmx is told by a header, since it would swap a redirect's body."""
    if request.htmx:
        return HttpResponse(headers={"HX-Redirect": url})
    return redirect(url)


@never_cache
@require_safe
def attempt(request: LearnerRequest, pk: int) -> HttpResponse:
    """An answered attempt with its verdict; the worked solution opens step by step with ``?steps=``."""
    found = get_object_or_404(Attempt.objects.select_related("sitting"), pk=pk, learner=request.user)
    if not found.is_answered:
        return redirect(f"quizzes:{found.sitting.purpose}", found.sitting.competency)
    if found.sitting.is_check and not found.sitting.ended:
        return redirect("quizzes:check", found.sitting.competency)
    context = _explained(found, _steps_wanted(request))
    return _card(request, "quizzes/attempt.html", context)


@never_cache
@require_safe
def sitting(request: LearnerRequest, pk: int) -> HttpResponse:
    """A check that has ended: the decision, why, and every answer explained."""
    found = get_object_or_404(Sitting, pk=pk, learner=request.user, purpose__in=DECIDING)
    if not found.ended:
        return redirect("quizzes:check", found.competency)
    context = {
        "sitting": found,
        "attempts": queries.answered_of(found),
        "rule": found.decision_rule,
        "standing": queries.standing_for(request.user, found.competency),
    }
    return _page(request, "quizzes/sitting.html", context, current=found.competency)


@never_cache
@require_safe
def record(request: LearnerRequest) -> HttpResponse:
    """One's own competency record."""
    return _page(request, "quizzes/record.html", {"decisions": queries.decisions_of(request.user)})


def _card(request: LearnerRequest, template: str, context: dict[str, Any]) -> HttpResponse:
    """The whole page, or for htmx only its card."""
    if request.htmx and not request.htmx.boosted:
        return render(request, f"{template}#card", context)
    return _page(request, template, context, current=context["competency"].slug)


def _page(
    request: LearnerRequest, template: str, context: dict[str, Any], *, current: str = ""
) -> HttpResponse:
    """A whole page with the sounding line of the competencies down its side."""
    standings = queries.standings_for(request.user)
    line = marks(standings, current)
    return render(request, template, context | {"marks": line, "standings": standings})


def _asking(waiting: Attempt, form: dict[str, str], trouble: Unjudged) -> dict[str, Any]:
    return {
        "attempt": waiting,
        "competency": COMPETENCIES[waiting.sitting.competency],
        "trouble": trouble,
        "aid": aid_for(waiting),
        "fields": fields_of(waiting.shown, form, trouble.field, trouble.sentence),
    }


def _explained(answered: Attempt, wanted: int) -> dict[str, Any]:
    steps = answered.key["steps"]
    shown = min(wanted, len(steps))
    return {
        "attempt": answered,
        "competency": COMPETENCIES[answered.sitting.competency],
        "steps": steps[:shown],
        "steps_in_all": len(steps),
        "next_step": shown + 1 if shown < len(steps) else None,
    }


def _steps_wanted(request: HttpRequest) -> int:
    wanted = request.GET.get("steps", "")
    return min(int(wanted), 99) if wanted.isascii() and wanted.isdigit() and len(wanted) < 4 else 0


def _check_url(found: Sitting) -> str:
    if found.ended:
        return reverse("quizzes:sitting", args=[found.pk])
    return reverse("quizzes:check", args=[found.competency])
