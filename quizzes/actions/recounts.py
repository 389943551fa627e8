"""What a ruling moves: its check is decided anew by the rule it was held under, and the standing follows.

Nothing is overwritten. The check keeps what it came to when it ended; what it comes to now is one more entry
of the record. What is met after all is met from the day of the check. What is not met any more is held, or
open again, from the ruling on, and with it what was confirmed or renewed on the strength of it.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from django.db.models import Q
from django.utils import timezone

from quizzes import standing
from quizzes.actions.decisions import entry_of
from quizzes.actions.restanding import MOVED, restand, restand_whole, settled
from quizzes.actions.sittings import lock_standings, open_checks
from quizzes.models import Attempt, DecisionRecord, Ruling, Sitting, Standing, journal
from quizzes.models.competency import Decided
from quizzes.models.policy import in_force
from quizzes.policy import Policy
from quizzes.reviews import counted
from quizzes.standing import Purpose, State
from quizzes.subjects import WHOLE
from quizzes.weighing import Weighed, weigh_again

if TYPE_CHECKING:
    from quizzes.typing import Learner

CLOSED = "closed"
"""The outcome of a check that a review left without a purpose; it counts for neither side."""

_NEW_ROW = Q(
    decided__in=[Decided.MET, Decided.HELD, Decided.CONFIRMED, Decided.REOPENED, Decided.REVOKED]
) | Q(decided=Decided.RENEWED, sitting__purpose=Purpose.REFRESHER)
"""The decisions after which right answers in a row are counted afresh."""


def recount(attempt: Attempt, was: str, ruling: Ruling, row: Standing, by: Learner, now: datetime) -> None:
    """Bring in step what rested on the answer, which counted as ``was``, in the caller's transaction.

    A check that still runs needs nothing: its next answer weighs what counts then.
    """
    if not attempt.sitting.is_check:
        _recount_practice(attempt, was, row, now)
    elif attempt.sitting.ended:
        _decide_again(attempt.sitting, ruling, row, by, now)


def _decide_again(sitting: Sitting, ruling: Ruling, row: Standing, by: Learner, now: datetime) -> None:
    records = _records(sitting)
    own = [one for one in records[sitting.competency] if one.sitting_id == sitting.pk]
    again = weigh_again(sitting)
    if not own or own[-1].decided == again.decided:
        return
    policy = in_force()
    rows = lock_standings(sitting.learner) if sitting.competency == WHOLE else {row.competency: row}
    entry = _entry(sitting, ruling, sitting.competency, again, policy, now)
    moved = [entry, *_renewals(sitting, ruling, again, records, rows, policy, now)]
    for one in moved:
        records[one.competency].append(one)
        move = restand_whole if one.competency == WHOLE else restand
        at = row if one.competency == WHOLE else rows[one.competency]
        move(at, settled(records[one.competency]), sitting.pk, one.decided, policy, now)
        if one.decided == Decided.CONFIRMED:
            one.due_on = at.due_on
    Standing.objects.bulk_update({row.pk: row, **{one.pk: one for one in rows.values()}}.values(), MOVED)
    DecisionRecord.objects.bulk_create(moved)
    _write_lines(moved, own[-1].decided, ruling, by, now)
    _close_what_shut([rows[one.competency] for one in moved if one.competency != WHOLE], sitting, policy, now)


def _records(sitting: Sitting) -> Mapping[str, list[DecisionRecord]]:
    """The learner's record of every competency that the check may move, the oldest entry first."""
    slugs = {sitting.competency, *(sitting.asks if sitting.competency == WHOLE else ())}
    found = DecisionRecord.objects.filter(learner=sitting.learner_id, competency__in=slugs)
    by_slug: dict[str, list[DecisionRecord]] = defaultdict(list)
    for one in found.select_related("sitting").order_by("pk"):
        by_slug[one.competency].append(one)
    return by_slug


def _entry(
    sitting: Sitting, ruling: Ruling, competency: str, again: Weighed, policy: Policy, now: datetime
) -> DecisionRecord:
    """What the check says of a competency after the ruling, not yet saved."""
    is_new = again.decided in (Decided.MET, Decided.RENEWED) and sitting.ended
    due_on = policy.due_on(timezone.localdate(sitting.ended)) if is_new else None
    evidence = [one.attempt for one in again.counting]
    entry = entry_of(sitting, competency, Decided(again.decided), due_on, policy, now, evidence)
    entry.ruling, entry.by_key, entry.by_name = ruling, ruling.by_key, ruling.by_name
    entry.score, entry.why = again.decision.score, again.decision.why
    return entry


def _renewals(
    sitting: Sitting,
    ruling: Ruling,
    again: Weighed,
    records: Mapping[str, list[DecisionRecord]],
    rows: Mapping[str, Standing],
    policy: Policy,
    now: datetime,
) -> Iterable[DecisionRecord]:
    """What a course check renews after all, or renews no longer: an entry for each competency."""
    if sitting.competency != WHOLE:
        return
    is_met = again.decided == Decided.MET
    word = Decided.RENEWED if is_met else Decided.UNDECIDED
    for slug in sitting.asks:
        before = [one.decided for one in records[slug] if one.sitting_id == sitting.pk]
        now_met = slug in rows and rows[slug].state == State.MET
        if (is_met and now_met) or (not is_met and before and before[-1] == Decided.RENEWED):
            about = [one for one in again.counting if one.kind == slug]
            yield _entry(sitting, ruling, slug, Weighed(again.decision, word, about), policy, now)


def _write_lines(
    moved: Sequence[DecisionRecord], before: str, ruling: Ruling, by: Learner, now: datetime
) -> None:
    entry = moved[0]
    details = {
        "before": before,
        "score": entry.score,
        "sitting": entry.sitting_id,
        "attempt": ruling.attempt_id,
        "why": ruling.why,
        "competencies": [one.competency for one in moved],
    }
    verb = f"check {entry.decided} after a review"
    journal.write(actor=by, verb=verb, subject=entry, details=details, at=now)


def _close_what_shut(rows: Sequence[Standing], sitting: Sitting, policy: Policy, now: datetime) -> None:
    """End the checks that run though the standing opens none of their kind any more."""
    day = timezone.localdate(now)
    opened = {row.competency: row.opening(policy, day).purpose for row in rows}
    for running in open_checks(sitting.learner, *opened):
        if running.purpose != opened[running.competency]:
            running.ended, running.outcome = now, CLOSED
            running.why = f"Closed by the review of check {sitting.pk}: it counts for neither side."
            running.save(update_fields=["ended", "outcome", "why"])


def _recount_practice(attempt: Attempt, was: str, row: Standing, now: datetime) -> None:
    """Practice certifies nothing; its counts and the way to the check follow all the same."""
    row.practised += bool(attempt.counts) - bool(was)
    row.practised_right += (attempt.counts == "right") - (was == "right")
    row.streak = _in_a_row(row)
    row.state = standing.after_practice(State(row.state), row.streak, in_force().in_a_row).value
    row.moved_at = now
    row.save(update_fields=["practised", "practised_right", "streak", "state", "moved_at"])


def _in_a_row(row: Standing) -> int:
    """Right in a row at the end of practice, since the last decision that began the row afresh."""
    about = {"learner": row.learner_id, "competency": row.competency}
    last = DecisionRecord.objects.filter(_NEW_ROW, **about).values_list("at", flat=True).first()
    practised = Attempt.objects.counting().filter(
        learner=row.learner_id,
        sitting__competency=row.competency,
        sitting__purpose__in=[Purpose.PRACTICE, Purpose.REVIEW],
        **({"answered_at__gt": last} if last else {}),
    )
    latest = practised.order_by("-answered_at", "-pk").values_list("verdict", "ruled", "hints")
    streak = 0
    for verdict, ruled, hints in latest.iterator(chunk_size=100):
        if counted(verdict, ruled) != "right":
            break
        streak += not hints
    return streak
