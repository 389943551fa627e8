"""The check that the demo's cohorts have before them: set some days ahead, supervised."""

from __future__ import annotations

from datetime import datetime, time, timedelta

from django.utils import timezone

from course.appointments import deeds
from course.people.models import Cohort
from quizzes.subjects import WHOLE

_DAYS_AHEAD = 3


def set_checks(now: datetime) -> None:
    """The latest cohort has its first two competencies checked, the others the whole course."""
    day = timezone.localdate(now) + timedelta(days=_DAYS_AHEAD)
    opens = timezone.make_aware(datetime.combine(day, time(9)))
    for number, cohort in enumerate(Cohort.objects.order_by("-started", "pk")):
        plan = deeds.Plan(
            whole_cohort=True,
            people=[],
            subjects=["boyle-at-work", "held-breath"] if number == 0 else [WHOLE],
            opens_at=opens,
            closes_at=opens + timedelta(hours=3),
            supervised=True,
            note="In the drill hall above the slip.",
        )
        by = cohort.instructors.get()
        draft = deeds.draft(cohort=cohort, by=by, plan=plan, now=now)
        deeds.send(appointment_id=draft.pk, by=by, now=now)
