"""Beginning a check: of one competency, or of the whole course at once."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Any

from django.db import transaction
from django.utils import timezone

from quizzes import standing, windows
from quizzes.actions.endings import end_out_of_time
from quizzes.actions.sittings import ask_next, begin, lock_standing, lock_standings, open_checks
from quizzes.actions.supervision import redeem, still_open
from quizzes.competencies import COMPETENCIES, Competency
from quizzes.errors import Refused
from quizzes.models import Accommodation, Sitting, Slot, Standing, journal
from quizzes.models.policy import in_force
from quizzes.policy import Policy
from quizzes.rules import Rule
from quizzes.standing import Opening, Purpose
from quizzes.subjects import WHOLE, whole_course

if TYPE_CHECKING:
    from quizzes.typing import Learner


def start_check(
    *, learner: Learner, competency: Competency, code: str = "", now: datetime | None = None
) -> Sitting:
    """Begin the check that is open, or go on with one begun before; one whose time is over ends here.

    Raises Refused while it is shut, and for a supervised one without a code that is good.
    """
    now = now or timezone.now()
    slot = redeem(learner, code, now) if code.strip() else None
    with transaction.atomic():
        row = lock_standing(learner, competency.slug)
        running = open_checks(learner, competency.slug, WHOLE)
        if running:
            return _go_on(running[0], row, now)
        policy = in_force()
        opening = row.opening(policy, timezone.localdate(now))
        return _begin_check(learner, competency, row, opening, policy, slot, now)


def start_course_check(*, learner: Learner, code: str = "", now: datetime | None = None) -> Sitting:
    """Begin the check over the whole course, or go on with it. Raises Refused as ``start_check`` does."""
    now = now or timezone.now()
    slot = redeem(learner, code, now) if code.strip() else None
    with transaction.atomic():
        row = lock_standing(learner, WHOLE)
        rows = lock_standings(learner)
        running = open_checks(learner)
        if running:
            return _go_on(running[0], row, now)
        opening = course_opening(rows, row, timezone.localdate(now))
        return _begin_check(learner, whole_course(), row, opening, in_force(), slot, now)


def course_opening(rows: dict[str, Standing], row: Standing, today: Any) -> Opening:
    """Whether the check over the whole course is open; ``row`` is the standing under its own slug."""
    kept = {
        one.title: rows[slug].facts if slug in rows else standing.Facts()
        for slug, one in COMPETENCIES.items()
    }
    return standing.course_opening(kept, row.facts, today)


def rule_of(policy: Policy, purpose: Purpose, competency: Competency, holds: int) -> Rule:
    """The rule that decides a sitting of that purpose."""
    long = purpose in (Purpose.CHECK, Purpose.COURSE)
    return policy.rule_for(competency, holds) if long else policy.confirmation


def needs_code(policy: Policy, row: Standing) -> bool:
    """Whether the check begins only with a code: by the policy, or because an instructor asked for it."""
    return row.competency in policy.supervised or row.supervise


def _go_on(sitting: Sitting, row: Standing, now: datetime) -> Sitting:
    if sitting.competency != row.competency:
        raise Refused(f"Your check of {sitting.title} is open. Finish it first.")
    if sitting.is_over(now):
        end_out_of_time(sitting, row, now)
    return sitting


def _begin_check(
    learner: Learner,
    about: Competency,
    row: Standing,
    opening: Opening,
    policy: Policy,
    slot: Slot | None,
    now: datetime,
) -> Sitting:
    appointed = windows.conditions_of(learner.pk, about.slug, now, lock=True)
    opening = appointed.narrow(opening)
    if opening.purpose is None:
        raise Refused(opening.shut_because)
    if slot is None and (appointed.supervised or needs_code(policy, row)):
        raise Refused("This check is supervised. Type the code that your instructor shows you.")
    rule = rule_of(policy, opening.purpose, about, row.holds)
    sitting = begin(
        learner,
        about,
        opening.purpose,
        now,
        rule=rule.as_record(),
        policy=policy.edition,
        **_supervision(slot, now),
        **_time(learner, policy.limit_for(about.slug), appointed.extra_time_percent, now),
    )
    ask_next(sitting, learner, now)
    if row.supervise:
        row.supervise = False
        row.save(update_fields=["supervise"])
    details = {"rule": rule.as_record(), "policy": policy.edition}
    if sitting.supervised_by:
        details["supervised by"] = sitting.supervised_by
    verb = f"{opening.purpose.in_words.lower()} begun"
    journal.write(actor=learner, verb=verb, subject=sitting, details=details, at=now)
    return sitting


def _supervision(slot: Slot | None, now: datetime) -> dict[str, Any]:
    if slot is None:
        return {}
    return {"slot": still_open(slot, now), "supervised_by": slot.by_name}


def _time(learner: Learner, minutes: int, appointed: int, now: datetime) -> dict[str, Any]:
    """When time is over, with the learner's extra time, or that of the set check where it is more.

    Beside it what else the check is held under.
    """
    found = Accommodation.objects.filter(learner=learner).first()
    own = found.extra_time_percent if found else 0
    parts = [found.in_words] if found and found.in_words != "none" else []
    if appointed > own:
        parts.append(f"{appointed} % more time for this check")
    extra = max(own, appointed)
    return {
        "ends_at": now + timedelta(minutes=minutes) * (100 + extra) / 100 if minutes else None,
        "accommodation": "; ".join(parts),
    }
