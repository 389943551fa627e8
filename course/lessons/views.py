"""The trainee's start page and the lessons."""

from __future__ import annotations

from typing import Any, cast

from django.http import Http404, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.utils.http import urlencode
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_safe

from course.lessons import apparatus, library, steps
from course.lessons.manuscript import Lesson, Part
from course.people.http import PersonRequest
from pressure import record
from pressure.draw import draw
from pressure.problem import System
from quizzes.competencies import COMPETENCIES
from quizzes.models.policy import in_force
from quizzes.queries import standings_for
from quizzes.sounding import marks


@never_cache
@require_safe
def home(request: PersonRequest) -> HttpResponse:
    """Where one stands, and the one thing to do next."""
    lessons, standings = library.lessons().values(), standings_for(request.user)
    context = {
        "marks": marks(standings),
        "next_step": steps.next_step(lessons, standings, in_force()),
        "reviews": [row for row in standings.values() if row.review_is_due],
        "chapters": steps.chapters(lessons, standings),
    }
    return render(request, "lessons/home.html", context)


@never_cache
@require_safe
def lesson(request: PersonRequest, slug: str) -> HttpResponse:
    """One lesson in the reader's units; the apparatus stands at ``?depth=``."""
    found = library.lessons().get(slug)
    if found is None:
        raise Http404
    system = cast("System", request.user.system)
    here = {"next": request.path}
    context = {
        "lesson": found,
        "units_url": f"{reverse('people:units')}?{urlencode(here)}",
        "marks": marks(standings_for(request.user)),
        "competencies": [COMPETENCIES[name] for name in found.competencies],
    }
    context |= _laid_out(found, system, request.GET.get("depth"))
    return render(request, "lessons/lesson.html", context)


def _laid_out(found: Lesson, system: System, asked: str | None) -> dict[str, Any]:
    """What is read before and after the apparatus, and the apparatus where there is one."""
    parts = [_shown(part, system) for part in found.parts[system]]
    if not found.has_apparatus:
        return {"opening": parts}
    at = next(n for n, part in enumerate(parts) if part["kind"] == "apparatus")
    bench = apparatus.bench(system)
    depth, note = apparatus.find_depth(asked, bench)
    return {
        "opening": parts[:at],
        "closing": parts[at + 1 :],
        "stage": apparatus.stage(bench, depth),
        "depth_note": note,
    }


def _shown(part: Part, system: System) -> dict[str, Any]:
    if part.kind != "example" or part.settings is None:
        return {"kind": part.kind, "html": part.html}
    problem = draw(part.settings["family"], int(part.settings["seed"]), system)
    return {"kind": "example", "shown": record.shown(problem), "key": record.key(problem)}
