"""The learner's own pages, all reached through the signed-in learner: another's is not found."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.utils import timezone
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST, require_safe

from pressure.marking import Unjudged
from quizzes import actions, queries, windows
from quizzes.actions.recounts import CLOSED
from quizzes.aids import aid_for, mended
from quizzes.check_views import show_check
from quizzes.clock import Clock
from quizzes.competencies import COMPETENCIES, Competency
from quizzes.errors import Refused
from quizzes.models import Attempt
from quizzes.models.policy import in_force
from quizzes.pages import card, go, page, sitting_url
from quizzes.readiness import rate, readiness
from quizzes.recordsheet import lines
from quizzes.sheets import fields_of
from quizzes.standing import Purpose
from quizzes.subjects import subject

if TYPE_CHECKING:
    from quizzes.pages import LearnerRequest


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
    running = queries.open_check(request.user, chosen.slug)
    row = queries.standing_for(request.user, chosen.slug)
    set_for = windows.conditions_of(request.user.pk, chosen.slug, timezone.now())
    opening = set_for.narrow(row.opening(in_force()))
    context = {
        "competency": chosen,
        "attempt": None if running else waiting,
        "fields": fields_of(waiting.shown, {}) if waiting else [],
        "aid": aid_for(waiting) if waiting else None,
        "running": running,
        "running_url": sitting_url(running) if running else "",
        "standing": row,
        "opening": opening,
        "readiness": readiness(queries.latest_practice(request.user, chosen.slug), opening),
    }
    return card(request, "quizzes/practice.html", context)


@require_POST
def practice_start(request: LearnerRequest, competency: str) -> HttpResponse:
    """Begin practice, or go on with it."""
    chosen = _competency_or_404(competency)
    try:
        actions.start_practice(learner=request.user, competency=chosen)
    except Refused as refusal:
        messages.error(request, str(refusal))
    return redirect("quizzes:practice", chosen.slug)


@never_cache
@require_safe
def across(request: LearnerRequest) -> HttpResponse:
    """Practice over everything that was begun, and the way into it."""
    return page(request, "quizzes/across.html", {})


@require_POST
def across_next(request: LearnerRequest) -> HttpResponse:
    """A problem from the competency that needs it most, of all that were begun."""
    chosen = queries.next_across(request.user)
    if chosen is None:
        messages.error(request, "A check is open. Practice opens again when it has ended.")
        return redirect("quizzes:across")
    return practice_start(request, chosen)


@require_POST
def review_start(request: LearnerRequest, competency: str) -> HttpResponse:
    """Begin the review set that has come round, or go on with it."""
    chosen = _competency_or_404(competency)
    try:
        actions.start_review(learner=request.user, competency=chosen)
    except Refused as refusal:
        messages.error(request, str(refusal))
    return redirect("quizzes:practice", chosen.slug)


@require_POST
def answer(request: LearnerRequest, pk: int) -> HttpResponse:
    """Take an answer to a problem of one's own; a page or a card comes back, whichever was asked for."""
    try:
        outcome = actions.answer(learner=request.user, attempt_id=pk, form=request.POST.dict())
    except Attempt.DoesNotExist:
        raise Http404 from None
    if outcome.trouble:
        context = _asking(outcome.attempt, request.POST.dict(), outcome.trouble)
        return card(request, "quizzes/asked.html", context)
    if outcome.late:
        messages.warning(
            request, f"{_why_late(outcome.attempt)} before that answer arrived, so it does not count."
        )
    elif not outcome.counted:
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
        if request.htmx and not sitting.ended:
            return show_check(request, subject(sitting.competency))
        return go(request, sitting_url(sitting))
    if request.htmx:
        return card(request, "quizzes/attempt.html", _explained(answered, 0))
    return redirect("quizzes:attempt", answered.pk)


@never_cache
@require_safe
def attempt(request: LearnerRequest, pk: int) -> HttpResponse:
    """An answered attempt with its verdict; the worked solution opens step by step with ``?steps=``."""
    found = get_object_or_404(Attempt.objects.select_related("sitting"), pk=pk, learner=request.user)
    if not found.is_answered or (found.sitting.is_check and not found.sitting.ended):
        return redirect(sitting_url(found.sitting))
    context = _explained(found, _steps_wanted(request)) | {"doubt": queries.doubt_about(found)}
    if found.ruled:
        context["rulings"] = queries.rulings_on(found)
    return card(request, "quizzes/attempt.html", context)


@never_cache
@require_safe
def record(request: LearnerRequest) -> HttpResponse:
    """One's own competency record, to read and to print."""
    latest = queries.latest_practice_in_each(request.user)
    standings = queries.standings_for(request.user)
    decisions = list(queries.decisions_of(request.user))
    context = {
        "decisions": decisions,
        "standings": standings,
        "lines": lines(standings, decisions),
        "accommodation": queries.accommodation_of(request.user),
        "doubts": queries.doubts_of(request.user),
        "now": timezone.localtime(),
        "practice": [(one.title, rate(latest[slug])) for slug, one in COMPETENCIES.items() if slug in latest],
    }
    return page(request, "quizzes/record.html", context)


def _why_late(late: Attempt) -> str:
    return "A review had closed the check" if late.sitting.outcome == CLOSED else "Time was over"


def _asking(waiting: Attempt, form: dict[str, str], trouble: Unjudged) -> dict[str, Any]:
    return {
        "attempt": waiting,
        "competency": subject(waiting.sitting.competency),
        "trouble": trouble,
        "aid": aid_for(waiting),
        "clock": Clock.of(waiting.sitting, timezone.now()),
        "url": sitting_url(waiting.sitting),
        "fields": fields_of(waiting.shown, form, trouble.field, trouble.sentence),
    }


def _explained(answered: Attempt, wanted: int) -> dict[str, Any]:
    steps = answered.key["steps"]
    shown = min(wanted, len(steps))
    return {
        "attempt": answered,
        "competency": subject(answered.sitting.competency),
        "mended": mended(answered),
        "steps": steps[:shown],
        "steps_in_all": len(steps),
        "next_step": shown + 1 if shown < len(steps) else None,
    }


def _steps_wanted(request: HttpRequest) -> int:
    wanted = request.GET.get("steps", "")
    return min(int(wanted), 99) if wanted.isascii() and wanted.isdigit() and len(wanted) < 4 else 0
