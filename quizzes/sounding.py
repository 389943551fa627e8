"""The sounding line down the side of a page: one mark a competency."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import Any

from django.template.loader import render_to_string
from django.urls import reverse
from django.utils.safestring import SafeString

from quizzes.competencies import COMPETENCIES
from quizzes.models import Standing


def marks(standings: Mapping[str, Standing], current: str = "") -> list[dict[str, Any]]:
    """What ``components/sounding.html`` draws; ``current`` is the competency of the page."""
    return _marks({slug: row.shown_state for slug, row in standings.items()}, current)


def line(standings: Mapping[str, Standing]) -> SafeString:
    """The line as markup, for pages of no competency; drawn once for each set of states."""
    return _drawn(tuple([(slug, row.shown_state.value) for slug, row in standings.items()]))


@lru_cache(maxsize=512)
def _drawn(states: tuple[tuple[str, str], ...]) -> SafeString:
    context = {"marks": _marks(dict(states)), "label": "Competencies"}
    return render_to_string("components/sounding.html", context)


def _marks(states: Mapping[str, str], current: str = "") -> list[dict[str, Any]]:
    return [
        {
            "title": COMPETENCIES[slug].title,
            "url": reverse("quizzes:practice", args=[slug]),
            "state": state,
            "current": slug == current,
        }
        for slug, state in states.items()
    ]
