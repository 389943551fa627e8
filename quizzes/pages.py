"""What the learner's pages share: the whole page with its sounding line, or only its card for htmx."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from quizzes import queries
from quizzes.models import Sitting
from quizzes.sounding import marks
from quizzes.subjects import WHOLE

if TYPE_CHECKING:
    from django_htmx.middleware import HtmxDetails

    from quizzes.typing import Learner

    class LearnerRequest(HttpRequest):
        """Typing only: signed in, with htmx details."""

        user: Learner
        htmx: HtmxDetails


def card(request: LearnerRequest, template: str, context: dict[str, Any]) -> HttpResponse:
    """The whole page, or for htmx only its card."""
    if request.htmx and not request.htmx.boosted:
        return render(request, f"{template}#card", context)
    return page(request, template, context, current=context["competency"].slug)


def page(
    request: LearnerRequest, template: str, context: dict[str, Any], *, current: str = ""
) -> HttpResponse:
    """A whole page with the sounding line of the competencies down its side.

    The standings are read unless the context has them already.
    """
    standings = context.get("standings") or queries.standings_for(request.user)
    line = marks(standings, current)
    return render(request, template, context | {"marks": line, "standings": standings})


def go(request: LearnerRequest, url: str) -> HttpResponse:
    """Send the browser to another page; htmx is told by a header, since it would swap a redirect's body."""
    if request.htmx:
        return HttpResponse(headers={"HX-Redirect": url})
    return redirect(url)


def check_url(slug: str) -> str:
    """Where the check of a subject is begun and goes on."""
    return reverse("quizzes:course-check") if slug == WHOLE else reverse("quizzes:check", args=[slug])


def check_start_url(slug: str) -> str:
    """Where the form that begins the check of a subject is sent."""
    if slug == WHOLE:
        return reverse("quizzes:course-check-start")
    return reverse("quizzes:check-start", args=[slug])


def sitting_url(sitting: Sitting) -> str:
    """Where a sitting goes on, or a check that has ended is read."""
    if not sitting.is_check:
        return reverse("quizzes:practice", args=[sitting.competency])
    return reverse("quizzes:sitting", args=[sitting.pk]) if sitting.ended else check_url(sitting.competency)
