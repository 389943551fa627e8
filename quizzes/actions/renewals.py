"""What a check over the whole course comes to: all of it renewed, or a pause in which nothing is lost."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from django.utils import timezone

from quizzes.actions.decisions import entry_of, renew
from quizzes.actions.sittings import lock_standings
from quizzes.models import DecisionRecord, Sitting, Standing, journal
from quizzes.models.competency import Decided
from quizzes.models.policy import in_force
from quizzes.policy import Policy
from quizzes.standing import State
from quizzes.subjects import kind_in

_RENEWED = ["met_on", "due_on", "notice_on", "reviews", "review_on", "moved_at"]


def record_course_decision(sitting: Sitting, row: Standing, now: datetime) -> None:
    """Append what was decided and move the standings, in the caller's transaction.

    What was revoked or opened for practice while the check ran stays so: only what is met is renewed.
    """
    policy, day = in_force(), timezone.localdate(now)
    if sitting.outcome == "met":
        renewed = _renew(sitting, policy, now)
        row.state, row.holds, row.held_until = State.READY, 0, None
        decided = Decided.MET
    else:
        renewed = []
        row.state, row.holds, row.held_until = State.HELD, row.holds + 1, policy.opens_again_on(day)
        decided = Decided.HELD
    row.moved_at = now
    row.save()
    due_on = policy.due_on(day) if renewed else None
    entry = entry_of(sitting, sitting.competency, decided, due_on, policy, now)
    entry.save()
    details = {"score": sitting.score, "sitting": sitting.pk, "renewed": renewed}
    journal.write(
        actor=sitting.learner, verb=f"course check {decided}", subject=entry, details=details, at=now
    )


def _renew(sitting: Sitting, policy: Policy, now: datetime) -> list[str]:
    """Give every competency that is met new dates and an entry with the answers about it."""
    paper = sitting.asks
    rows = [
        row
        for slug, row in lock_standings(sitting.learner).items()
        if slug in paper and row.state == State.MET
    ]
    answered = list(
        sitting.attempts.filter(answered_at__isnull=False).order_by("number").values_list("pk", "family")
    )
    entries = []
    for row in rows:
        renew(row, policy, now)
        evidence = [pk for pk, family in answered if kind_in(paper, family) == row.competency]
        entries.append(_renewal(sitting, row, evidence, policy, now))
    Standing.objects.bulk_update(rows, _RENEWED)
    DecisionRecord.objects.bulk_create(entries)
    return [row.competency for row in rows]


def _renewal(
    sitting: Sitting, row: Standing, evidence: Iterable[int], policy: Policy, now: datetime
) -> DecisionRecord:
    entry = entry_of(sitting, row.competency, Decided.RENEWED, row.due_on, policy, now, list(evidence))
    entry.why = f"Renewed by the course check. {sitting.why}"
    return entry
