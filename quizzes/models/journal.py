"""The journal: who did what to what, when. Written by actions, never changed, outlives its subjects."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from typing import TYPE_CHECKING, Any

from django.db import models
from django.utils import timezone

from quizzes.models.appendonly import AppendOnly

if TYPE_CHECKING:
    from quizzes.typing import Learner


class JournalLine(AppendOnly):
    """One deed. Keys are kept as numbers beside names, without a constraint, so that a line never dangles."""

    at = models.DateTimeField(default=timezone.now)
    actor_key = models.BigIntegerField(null=True, blank=True)
    actor_name = models.CharField(max_length=160)
    verb = models.CharField(max_length=60)
    subject_type = models.CharField(max_length=60, blank=True)
    subject_key = models.BigIntegerField(null=True, blank=True)
    subject_name = models.CharField(max_length=200, blank=True)
    details = models.JSONField(default=dict, blank=True)

    class Meta:
        ordering = ["-pk"]
        indexes = [models.Index(fields=["subject_type", "subject_key"], name="journal_by_subject")]

    def __str__(self) -> str:
        return f"{self.actor_name}: {self.verb} {self.subject_name}".strip()


def write(
    *,
    actor: Learner | None,
    verb: str,
    subject: models.Model | None = None,
    details: Mapping[str, Any] | None = None,
    at: datetime | None = None,
) -> JournalLine:
    """Add a line. Call it inside the transaction of the deed, so that both stand or neither."""
    return JournalLine.objects.create(
        at=at or timezone.now(),
        actor_key=actor.pk if actor else None,
        actor_name=str(actor) if actor else "the site",
        verb=verb,
        subject_type=subject._meta.label_lower if subject else "",
        subject_key=subject.pk if subject else None,
        subject_name=str(subject)[:200] if subject else "",
        details=dict(details or {}),
    )
