"""The trainee's start page and the lessons."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import cast

from django.core.exceptions import BadRequest
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.functional import SimpleLazyObject
from django.utils.html import escape, format_html
from django.utils.safestring import SafeString
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST, require_safe

from course.lessons import library, places, shell, steps, typeset
from course.lessons.apparatus import page
from course.lessons.manuscript import Lesson
from course.people.http import PersonRequest
from pressure.problem import System
from quizzes import sounding, windows
from quizzes.models.policy import in_force
from quizzes.policy import Policy
from quizzes.queries import standings_for


@never_cache
@require_safe
def home(request: PersonRequest) -> HttpResponse:
    """Where one stands, and the one thing to do next."""
    appointed, now = windows.windows_of(request.user.pk), timezone.now()
    course = replace(_course(request), shut=windows.shut(appointed, now))
    context = {
        "windows": windows.to_be_told(appointed, now),
        "now": now,
        "sounding": sounding.line(course.standings),
        "next_step": steps.next_step(course),
        "reviews": [row for row in course.standings.values() if row.review_is_due],
        "chapters": steps.chapters(course),
    }
    return render(request, "lessons/home.html", context)


@never_cache
@require_safe
def lesson(request: PersonRequest, slug: str) -> HttpResponse:
    """One lesson in the reader's units; its apparatus stand where the address puts them."""
    found, system = _lesson_or_404(slug), cast("System", request.user.system)
    if request.htmx and request.htmx.target in found.apparatus:
        return HttpResponse(page.rendered(request.htmx.target, system, request.GET, found.apparatus))
    course = _course(request)
    places.opened(request.user, found, course.places)
    seen = course.seen(found)
    own = {
        "sounding": sounding.line(course.standings),
        "way_back": typeset.way_back(slug, seen.section, seen.is_finished),
        "body": typeset.body(found, system, request.GET),
        "seen": escape(seen.section),
        "button": _button(steps.after(found, course), seen.is_finished),
        "states": typeset.states(tuple([(s, course.standings[s].shown_state) for s in found.competencies])),
    }
    return shell.filled(request, slug, own)


@never_cache
@require_POST
def place(request: PersonRequest, slug: str) -> HttpResponse:
    """Note where in the lesson the person is; marked as read, it leads on to what comes next."""
    found, finished = _lesson_or_404(slug), bool(request.POST.get("finished"))
    try:
        section = request.POST.get("section", "")
        places.remember(person=request.user, lesson=found, section=section, finished=finished)
    except places.UnknownSection as error:
        raise BadRequest(str(error)) from None
    if not finished:
        return HttpResponse(status=204)
    return redirect(steps.after(found, _course(request)).url)


def _button(onward: steps.NextStep, is_finished: bool) -> SafeString:
    """The one thing to do at the end of a lesson."""
    text = (
        onward.action if is_finished else f"Mark as read, then {onward.action[0].lower()}{onward.action[1:]}"
    )
    button = '<button class="button" type="submit" name="finished" value="1">{}: {}</button>'
    return format_html(button, text, onward.title)


def _lesson_or_404(slug: str) -> Lesson:
    found = library.lessons().get(slug)
    if found is None:
        raise Http404
    return found


def _course(request: PersonRequest) -> steps.Course:
    policy = cast("Policy", SimpleLazyObject(in_force))
    return steps.Course(_plan(), standings_for(request.user), places.places_of(request.user), policy)


@cache
def _plan() -> steps.Plan:
    return steps.Plan.of(library.lessons().values())
