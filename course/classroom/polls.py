"""What the slates ask every two seconds: one query each, and nothing to send while nothing has changed.

``seen`` in the address says what the slate shows already. A browser that keeps the tag of the last answer
gets 304; any other 204, which htmx takes for nothing to do.
"""

from __future__ import annotations

from collections.abc import Callable

from django.http import HttpResponse, HttpResponseBase
from django.shortcuts import render
from django.utils.cache import get_conditional_response
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_safe

from course.classroom.queries import State, state_for_hand_or_404, state_for_wall_or_404
from course.people.access import Deed, needs
from course.people.http import PersonRequest

_kept_but_asked_again = cache_control(private=True, no_cache=True)


@require_safe
@_kept_but_asked_again
def hand(request: PersonRequest, pk: int) -> HttpResponseBase:
    """Tells a hand slate to look again once the wall has moved on; the number of answers is no news to it."""
    state = state_for_hand_or_404(request.user, pk)
    return _news(request, state.moved, _moved_on)


@needs(Deed.TEACH)
@require_safe
@_kept_but_asked_again
def wall(request: PersonRequest, pk: int) -> HttpResponseBase:
    """The count for the wall slate; the whole page again where another window moved it on."""
    state = state_for_wall_or_404(request.user, pk)

    def changed() -> HttpResponse:
        if request.GET.get("seen", "").rpartition("-")[0] != state.moved:
            return HttpResponse(headers={"HX-Refresh": "true"})
        return _count(request, pk, state)

    return _news(request, state.counted, changed)


def _news(request: PersonRequest, token: str, changed: Callable[[], HttpResponse]) -> HttpResponseBase:
    tag = f'"{token}"'
    answer = get_conditional_response(request, etag=tag)
    if answer is None:
        answer = HttpResponse(status=204) if request.GET.get("seen") == token else changed()
    answer["ETag"] = tag
    return answer


def _moved_on() -> HttpResponse:
    return HttpResponse(headers={"HX-Trigger": "wall-moved"})


def _count(request: PersonRequest, pk: int, state: State) -> HttpResponse:
    return render(request, "classroom/_count.html", {"cohort_pk": pk, "state": state})
