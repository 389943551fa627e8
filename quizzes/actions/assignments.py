"""Asking learners to practise what they slipped in; practice then puts it next."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from datetime import datetime
from typing import TYPE_CHECKING

from django.db import transaction
from django.utils import timezone

from quizzes.errors import Refused
from quizzes.models import Assignment, journal
from quizzes.models.assignments import open_assignments

if TYPE_CHECKING:
    from quizzes.typing import Learner


def assign_practice(
    *, families: Mapping[int, str], slip: str, label: str, by: Learner, now: datetime | None = None
) -> list[Assignment]:
    """Ask each learner, by key, for the family beside it until it comes right without help.

    Whoever was asked because of this slip and is not done is left out; so sending it twice asks once.
    Raises Refused where there is nobody to ask.
    """
    if not families:
        raise Refused("Nobody here made this slip in that time, so there is nobody to ask.")
    now = now or timezone.now()
    with transaction.atomic():
        asked = {one.learner_id for one in open_assignments(families) if one.slip == slip}
        before = Counter(
            Assignment.objects.filter(learner__in=families, slip=slip)
            .order_by()
            .values_list("learner", flat=True)
        )
        said = {"slip": slip, "label": label[:300], "at": now, "by_key": by.pk, "by_name": str(by)[:160]}
        rows = [
            Assignment(learner_id=learner, family=family, number=before[learner] + 1, **said)
            for learner, family in families.items()
            if learner not in asked
        ]
        # Of two who send it at once the second finds the number taken, and asks nobody again.
        Assignment.objects.bulk_create(rows, ignore_conflicts=True)
        written = list(Assignment.objects.filter(learner__in=families, slip=slip, at=now, by_key=by.pk))
        if written:
            _note(written, by, now)
    return written


def _note(written: list[Assignment], by: Learner, now: datetime) -> None:
    details = {
        "slip": written[0].slip,
        "label": written[0].label,
        "families": {str(one.learner_id): one.family for one in written},
    }
    journal.write(actor=by, verb="practice assigned", details=details, at=now)
