"""Decisions: by the rule when a check ends, by people with a reason; each appended and journalled."""

from __future__ import annotations

from datetime import date, datetime
from typing import TYPE_CHECKING, Any

from django.db import transaction
from django.utils import timezone

from quizzes.actions.sittings import lock_standing
from quizzes.competencies import Competency
from quizzes.errors import Refused
from quizzes.models import DecisionRecord, Sitting, Standing, journal
from quizzes.models.competency import Decided
from quizzes.models.policy import in_force
from quizzes.policy import Policy
from quizzes.standing import Purpose, State

if TYPE_CHECKING:
    from quizzes.typing import Learner

_WAIVED = {"rest": "the rest after a hold", "practice": "the practice after a hold"}
_CLEARED = ("met_on", "confirm_from", "confirmed_on", "notice_on", "due_on", "review_on")


def record_decision(sitting: Sitting, row: Standing, now: datetime) -> None:
    """Move the standing by a check that has ended and append the decision, in the caller's transaction."""
    policy = in_force()
    decided = _move(row, Purpose(sitting.purpose), sitting.outcome == "met", policy, now)
    row.streak, row.moved_at = 0, now
    row.save()
    entry = entry_of(sitting, sitting.competency, decided, row.due_on, policy, now)
    entry.save()
    details = {"score": sitting.score, "sitting": sitting.pk}
    journal.write(actor=sitting.learner, verb=f"check {decided}", subject=entry, details=details, at=now)


def entry_of(
    sitting: Sitting,
    competency: str,
    decided: Decided,
    due_on: date | None,
    policy: Policy,
    now: datetime,
    evidence: list[int] | None = None,
) -> DecisionRecord:
    """What a check that has ended says of a competency, not yet saved.

    It rests on every answer that counts, unless ``evidence`` names fewer.
    """
    if evidence is None:
        counting = sitting.attempts.counting().order_by("number")
        evidence = list(counting.values_list("pk", flat=True))
    return DecisionRecord(
        learner=sitting.learner,
        competency=competency,
        decided=decided,
        at=now,
        due_on=due_on,
        by_name="the rule",
        why=sitting.why,
        rule=sitting.rule,
        policy=policy.edition,
        score=sitting.score,
        sitting=sitting,
        evidence=evidence,
        supervised_by=sitting.supervised_by,
        accommodation=sitting.accommodation,
    )


def _move(row: Standing, purpose: Purpose, met: bool, policy: Policy, now: datetime) -> Decided:
    day = timezone.localdate(now)
    if not met and purpose is Purpose.CHECK:
        row.state = State.HELD
        row.holds += 1
        row.waits = row.holds >= policy.holds_before_instructor
        row.held_until = policy.opens_again_on(day)
        return Decided.HELD
    if not met:  # a short check failed opens the competency again; it is not a hold
        clear(row, State.PRACTISING)
        return Decided.REOPENED
    if purpose is Purpose.CHECK:
        _meet(row, policy, now)
        row.confirm_from, row.confirmed_on = policy.confirms_on(day), None
        return Decided.MET
    if purpose is Purpose.CONFIRMATION:
        row.confirmed_on = day
        return Decided.CONFIRMED
    _meet(row, policy, now)
    return Decided.RENEWED


def _meet(row: Standing, policy: Policy, now: datetime) -> None:
    row.state, row.holds, row.waits, row.held_until = State.MET, 0, False, None
    renew(row, policy, now)


def renew(row: Standing, policy: Policy, now: datetime) -> None:
    """New dates from today; reviews come round afresh."""
    day = timezone.localdate(now)
    due_on = policy.due_on(day)
    row.met_on, row.due_on, row.notice_on = day, due_on, policy.notice_on(due_on)
    row.reviews, row.review_on, row.moved_at = 0, policy.review_on(day, 0), now


def clear(row: Standing, state: State) -> None:
    """Take back what was met: no date of it stays in the standing."""
    row.state, row.streak, row.reviews = state, 0, 0
    for name in _CLEARED:
        setattr(row, name, None)


def open_check_again(
    *, learner: Learner, competency: Competency, by: Learner, why: str, now: datetime | None = None
) -> DecisionRecord:
    """An instructor opens a check that waits for them or rests after a hold, practice or no practice.

    The mark to reach stays as high as the holds made it. Raises Refused without a reason, for oneself, or
    where nothing is held.
    """
    now = now or timezone.now()
    with transaction.atomic():
        row = lock_standing(learner, competency.slug)
        allow(learner, by, why)
        if not row.waits and row.state != State.HELD and row.held_until is None:
            raise Refused("This check is not held.")
        row.waits, row.held_until, row.state, row.moved_at = False, None, State.READY, now
        row.save()
        return _append(row, Decided.OPENED, by, why, now)


def waive(
    *,
    learner: Learner,
    competency: Competency,
    what: str,
    by: Learner,
    why: str,
    now: datetime | None = None,
) -> DecisionRecord:
    """Waive one of the two things that go before the next try after a hold: "rest" or "practice".

    Raises Refused without a reason, for oneself, where it is not asked for, or where a check waits for an
    instructor: that one is opened again. Raises KeyError for anything else to waive.
    """
    part, now = _WAIVED[what], now or timezone.now()
    with transaction.atomic():
        row = lock_standing(learner, competency.slug)
        allow(learner, by, why)
        if row.waits:
            raise Refused("This check waits for an instructor. Open it again instead.")
        if what == "rest" and (row.held_until is None or row.held_until <= timezone.localdate(now)):
            raise Refused("This check does not rest, so there is no rest to waive.")
        if what == "practice" and row.state != State.HELD:
            raise Refused("No practice is asked for here, so there is none to waive.")
        if what == "rest":
            row.held_until = None
        else:
            row.state = State.READY
        row.moved_at = now
        row.save()
        return _append(row, Decided.WAIVED, by, why, now, part=part)


def require_supervision(
    *, learner: Learner, competency: Competency, by: Learner, why: str, now: datetime | None = None
) -> DecisionRecord:
    """Let the learner's next check of the competency begin only with a code. Raises Refused otherwise."""
    now = now or timezone.now()
    with transaction.atomic():
        row = lock_standing(learner, competency.slug)
        allow(learner, by, why)
        if row.supervise:
            raise Refused("The next check here needs a code already.")
        row.supervise, row.moved_at = True, now
        row.save()
        return _append(row, Decided.SUPERVISE, by, why, now)


def revoke(
    *, learner: Learner, competency: Competency, by: Learner, why: str, now: datetime | None = None
) -> DecisionRecord:
    """Take a met competency back; the check waits until an instructor opens it. Raises Refused otherwise."""
    now = now or timezone.now()
    with transaction.atomic():
        row = lock_standing(learner, competency.slug)
        allow(learner, by, why)
        if row.state != State.MET:
            raise Refused("Only a competency that is met can be revoked.")
        clear(row, State.HELD)
        row.waits, row.moved_at = True, now
        row.save()
        return _append(row, Decided.REVOKED, by, why, now)


def grant(
    *, learner: Learner, competency: Competency, by: Learner, why: str, now: datetime | None = None
) -> DecisionRecord:
    """Set a competency to met by hand, without a check: the reason says on what evidence instead."""
    now = now or timezone.now()
    with transaction.atomic():
        row = lock_standing(learner, competency.slug)
        allow(learner, by, why)
        _meet(row, in_force(), now)
        row.confirmed_on, row.moved_at = timezone.localdate(now), now
        row.save()
        return _append(row, Decided.GRANTED, by, why, now, due_on=row.due_on)


def sign_off(
    *,
    learner: Learner,
    competency: Competency,
    part: str,
    by: Learner,
    why: str,
    now: datetime | None = None,
) -> DecisionRecord:
    """Record what no page can test (oral, pool …) beside what the rule decided. Raises Refused otherwise."""
    now = now or timezone.now()
    with transaction.atomic():
        row = lock_standing(learner, competency.slug)
        allow(learner, by, why)
        if not part.strip():
            raise Refused("Say which part is signed off, such as oral or pool.")
        return _append(row, Decided.SIGNED, by, why, now, part=part.strip()[:60])


def allow(learner: Learner, by: Learner, why: str) -> None:
    """Raises Refused without a reason, and for somebody who would decide about themselves."""
    if not why.strip():
        raise Refused("Give the reason; it is kept with the record.")
    if by.pk == learner.pk:
        raise Refused("Nobody decides their own record; another instructor has to.")


def _append(
    row: Standing, decided: Decided, by: Learner, why: str, now: datetime, **fields: Any
) -> DecisionRecord:
    entry = DecisionRecord.objects.create(
        learner_id=row.learner_id,
        competency=row.competency,
        decided=decided,
        at=now,
        by_key=by.pk,
        by_name=str(by),
        why=why.strip()[:400],
        policy=in_force().edition,
        **fields,
    )
    journal.write(actor=by, verb=str(decided.label), subject=entry, details={"why": why.strip()}, at=now)
    return entry
