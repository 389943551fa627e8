"""Supervised checks: opening a slot with a code, closing it, and the code typed by a trainee."""

from __future__ import annotations

import secrets
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from django.db import transaction
from django.utils import timezone
from django.utils.crypto import salted_hmac

from quizzes.errors import Refused
from quizzes.models import CodeTries, Slot, journal
from quizzes.models.policy import in_force

if TYPE_CHECKING:
    from quizzes.typing import Learner

LETTERS = "34679ACDEFGHJKMNPQRTWXY"
"""No two of these are taken for each other on a board or over the phone."""
_LENGTH = 8
_WRONG_AT_MOST = 5
_PAUSE = timedelta(minutes=15)


def open_slot(*, group: str, group_name: str, by: Learner, now: datetime | None = None) -> tuple[Slot, str]:
    """Open a slot for a group of learners: the slot, and the code to show. Only a digest of it is kept."""
    now = now or timezone.now()
    code = "".join(secrets.choice(LETTERS) for _ in range(_LENGTH))
    until = now + timedelta(minutes=in_force().code_minutes)
    with transaction.atomic():
        slot = Slot.objects.create(
            group=group,
            group_name=group_name,
            digest=_digest(code),
            opened_at=now,
            until=until,
            by_key=by.pk,
            by_name=str(by),
        )
        details = {"until": until.isoformat()}
        journal.write(actor=by, verb="supervised slot opened", subject=slot, details=details, at=now)
    return slot, f"{code[:4]} {code[4:]}"


def close_slot(*, slot_id: int, group: str, by: Learner, now: datetime | None = None) -> Slot:
    """Close a slot of the group before its time; closing twice changes nothing. Raises Slot.DoesNotExist."""
    now = now or timezone.now()
    with transaction.atomic():
        slots = Slot.objects.select_for_update(of=("self",), no_key=True)
        slot = slots.get(pk=slot_id, group=group)
        if slot.closed_at is None:
            slot.closed_at = now
            slot.save(update_fields=["closed_at"])
            journal.write(actor=by, verb="supervised slot closed", subject=slot, at=now)
    return slot


def redeem(learner: Learner, code: str, now: datetime) -> Slot:
    """The open slot of a code typed by the learner. Raises Refused for a wrong one, which is counted.

    A transaction of its own, so that the count stays when the check is then refused.
    """
    with transaction.atomic():
        tries = _lock_tries(learner)
        if tries.last_at is None or now >= tries.last_at + _PAUSE:
            tries.wrong = 0
        if tries.wrong >= _WRONG_AT_MOST:
            raise Refused(
                "Five codes in a row were wrong. Wait a quarter of an hour, then ask your instructor "
                "for the code."
            )
        slot = _slot_of(learner, code, now)
        tries.wrong, tries.last_at = (tries.wrong + 1, now) if slot is None else (0, None)
        tries.save(update_fields=["wrong", "last_at"])
    if slot is None:
        raise Refused(
            "That code opens nothing. Compare each character with the one shown; a code is good for one "
            "cohort and a short time. Nothing was counted."
        )
    return slot


def still_open(slot: Slot, now: datetime) -> Slot:
    """The slot, locked until the check has begun. Raises Refused where it was closed in the meantime."""
    locked = Slot.objects.select_for_update(of=("self",), no_key=True).get(pk=slot.pk)
    if not locked.is_open(now):
        raise Refused("That code was closed just now. Ask your instructor for another.")
    return locked


def _lock_tries(learner: Learner) -> CodeTries:
    CodeTries.objects.bulk_create([CodeTries(learner=learner)], ignore_conflicts=True)
    return CodeTries.objects.select_for_update(of=("self",), no_key=True).get(learner=learner)


def _slot_of(learner: Learner, code: str, now: datetime) -> Slot | None:
    """Nobody supervises themselves: a code of one's own opens nothing."""
    found = Slot.objects.filter(digest=_digest(code), group__in=learner.code_groups).exclude(
        by_key=learner.pk
    )
    slot = found.first()
    return slot if slot and slot.is_open(now) else None


def _digest(code: str) -> str:
    """Keyed, since so short a code could be found from a plain digest by trying them all."""
    plain = "".join(code.split()).replace("-", "").upper()[:64]
    return salted_hmac("quizzes.supervision", plain, algorithm="sha256").hexdigest()
