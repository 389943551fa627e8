"""The check as its learner meets it: the rule and how to begin, what is asked, the end explained."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.utils import timezone
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST, require_safe

from quizzes import actions, queries, windows
from quizzes.actions.checks import course_opening, needs_code, rule_of
from quizzes.clock import Clock, terms
from quizzes.competencies import Competency
from quizzes.errors import Refused
from quizzes.models import Sitting, Standing
from quizzes.models.policy import in_force
from quizzes.pages import card, check_start_url, check_url, page, sitting_url
from quizzes.policy import Policy
from quizzes.sheets import fields_of
from quizzes.standing import DECIDING, Opening, Purpose
from quizzes.subjects import WHOLE, subject, whole_course

if TYPE_CHECKING:
    from quizzes.pages import LearnerRequest


def _subject_or_404(slug: str) -> Competency:
    try:
        return subject(slug)
    except KeyError:
        raise Http404 from None


@never_cache
@require_safe
def check(request: LearnerRequest, competency: str) -> HttpResponse:
    """The question that waits; otherwise the rule in words and how to begin."""
    if competency == WHOLE:
        return redirect("quizzes:course-check")
    return show_check(request, _subject_or_404(competency))


@never_cache
@require_safe
def course_check(request: LearnerRequest) -> HttpResponse:
    """The check over the whole course: like any other, with every competency in it."""
    return show_check(request, whole_course())


def show_check(
    request: LearnerRequest, chosen: Competency, code: str = "", refusal: str = ""
) -> HttpResponse:
    """The page, or its card; ``code`` and ``refusal`` are of a start that was refused."""
    row, policy = queries.standing_for(request.user, chosen.slug), in_force()
    waiting = queries.open_attempt(request.user, chosen.slug, *DECIDING)
    clock = Clock.of(waiting.sitting, timezone.now()) if waiting else None
    context: dict[str, Any] = {
        "competency": chosen,
        "whole": chosen.slug == WHOLE,
        "url": check_url(chosen.slug),
        "start_url": check_start_url(chosen.slug),
        "attempt": None if clock and clock.is_over else waiting,
        "clock": clock,
        "standing": row,
    }
    if waiting:
        context |= {"rule": waiting.sitting.decision_rule, "fields": fields_of(waiting.shown, {})}
    else:
        context |= _before(request, chosen, row, policy) | {"code": code, "refusal": refusal}
    return card(request, "quizzes/check.html", context)


def _before(request: LearnerRequest, chosen: Competency, row: Standing, policy: Policy) -> dict[str, Any]:
    """What is said before a check begins, or about why it is shut."""
    now = timezone.now()
    appointed = windows.of_subject(windows.windows_of(request.user.pk), chosen.slug)
    held_under = windows.conditions(appointed, now)
    opening = held_under.narrow(_opening(request, row, policy))
    accommodation = queries.accommodation_of(request.user)
    return {
        "windows": windows.to_be_told(appointed, now),
        "now": now,
        "opening": opening,
        "rule": rule_of(policy, opening.purpose or _usual(chosen), chosen, row.holds),
        "needs_code": held_under.supervised or needs_code(policy, row),
        "terms": terms(policy.limit_for(chosen.slug), accommodation, held_under.extra_time_percent),
        "last": queries.last_check(request.user, chosen.slug),
    }


def _usual(chosen: Competency) -> Purpose:
    return Purpose.COURSE if chosen.slug == WHOLE else Purpose.CHECK


def _opening(request: LearnerRequest, row: Standing, policy: Policy) -> Opening:
    if row.competency != WHOLE:
        return row.opening(policy)
    return course_opening(queries.standings_for(request.user), row, timezone.localdate())


@require_POST
def check_start(request: LearnerRequest, competency: str) -> HttpResponse:
    """Begin the check, or go on with it."""
    chosen, code = _subject_or_404(competency), request.POST.get("code", "")
    if chosen.slug == WHOLE:
        raise Http404
    return _started(
        request,
        chosen,
        lambda: actions.start_check(learner=request.user, competency=chosen, code=code),
    )


@require_POST
def course_check_start(request: LearnerRequest) -> HttpResponse:
    """Begin the check over the whole course, or go on with it."""
    code = request.POST.get("code", "")
    return _started(
        request, whole_course(), lambda: actions.start_course_check(learner=request.user, code=code)
    )


def _started(request: LearnerRequest, chosen: Competency, start: Callable[[], Sitting]) -> HttpResponse:
    """On to the check. Where a code is asked for, a refusal comes back with the code as it was typed."""
    try:
        return redirect(sitting_url(start()))
    except Refused as refusal:
        if "code" in request.POST:
            return show_check(request, chosen, request.POST["code"][:64], str(refusal))
        messages.error(request, str(refusal))
        return redirect(check_url(chosen.slug))


@never_cache
@require_safe
def sitting(request: LearnerRequest, pk: int) -> HttpResponse:
    """A check that has ended: the decision, why, and every answer explained."""
    found = get_object_or_404(Sitting, pk=pk, learner=request.user, purpose__in=DECIDING)
    if not found.ended:
        return redirect(check_url(found.competency))
    context = {
        "sitting": found,
        "whole": found.competency == WHOLE,
        "attempts": queries.answered_of(found),
        "rule": found.decision_rule,
        "reviewed": queries.after_review(found),
        "standing": queries.standing_for(request.user, found.competency),
    }
    return page(request, "quizzes/sitting.html", context, current=found.competency)
