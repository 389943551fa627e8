"""Setting the policy: a new version, with who and why."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from django.db import transaction
from django.utils import timezone

from quizzes.errors import Refused
from quizzes.models import PolicyVersion, journal
from quizzes.policy import Policy

if TYPE_CHECKING:
    from quizzes.typing import Learner


def set_policy(*, policy: Policy, by: Learner, why: str, now: datetime | None = None) -> PolicyVersion:
    """Put a policy in force as the next edition. Raises Refused without a reason, and for what cannot work.

    Checks under way and decisions made keep the rule they began under.
    """
    now = now or timezone.now()
    if not why.strip():
        raise Refused("Give the reason for the change; it is kept with the policy.")
    if policy.troubles:
        raise Refused(" ".join(policy.troubles))
    with transaction.atomic():
        latest = PolicyVersion.objects.select_for_update().values_list("edition", flat=True).first() or 1
        values = replace(policy, edition=latest + 1).as_record()
        version = PolicyVersion.objects.create(
            edition=latest + 1, values=values, at=now, by_key=by.pk, by_name=str(by), why=why.strip()[:400]
        )
        journal.write(actor=by, verb="policy set", subject=version, details={"why": why.strip()}, at=now)
    return version
