"""Setting what a trainee's checks are held under: extra time, and whatever else in words."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from django.db import transaction
from django.utils import timezone

from quizzes.actions.decisions import allow
from quizzes.errors import Refused
from quizzes.models import Accommodation, journal

if TYPE_CHECKING:
    from quizzes.typing import Learner

MOST_PERCENT = 900
"""Ten times the limit in all (WCAG 2.2, success criterion 2.2.1)."""


def set_accommodation(
    *,
    learner: Learner,
    by: Learner,
    why: str,
    extra_time_percent: int = 0,
    other: str = "",
    now: datetime | None = None,
) -> Accommodation:
    """Append what holds from now on; nothing in both fields takes back what was before.

    A check under way keeps what it began with. Raises Refused without a reason, for oneself, or for a
    share of extra time that cannot be.
    """
    now = now or timezone.now()
    allow(learner, by, why)
    if not 0 <= extra_time_percent <= MOST_PERCENT:
        raise Refused(f"Give extra time from 0 to {MOST_PERCENT} per cent; 100 doubles the time.")
    with transaction.atomic():
        entry = Accommodation.objects.create(
            learner=learner,
            extra_time_percent=extra_time_percent,
            other=other.strip()[:400],
            at=now,
            by_key=by.pk,
            by_name=str(by),
            why=why.strip()[:400],
        )
        details = {"set": entry.in_words, "why": why.strip()}
        journal.write(actor=by, verb="accommodation set", subject=entry, details=details, at=now)
    return entry
