"""The sounding line down the side of a page: one mark a competency."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.urls import reverse

from quizzes.models import Standing


def marks(standings: Mapping[str, Standing], current: str = "") -> list[dict[str, Any]]:
    """What ``components/sounding.html`` draws; ``current`` is the competency of the page."""
    return [
        {
            "title": row.title,
            "url": reverse("quizzes:practice", args=[slug]),
            "state": row.shown_state,
            "current": slug == current,
        }
        for slug, row in standings.items()
    ]
