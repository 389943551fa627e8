"""The versions of the policy: appended, never edited; the latest is in force."""

from __future__ import annotations

from django.db import models

from quizzes.models.appendonly import AppendOnly
from quizzes.policy import DEFAULT, Policy


class PolicyVersion(AppendOnly):
    """One version: its values, who set them, and why."""

    edition = models.PositiveIntegerField(unique=True)
    values = models.JSONField()
    at = models.DateTimeField()
    by_key = models.BigIntegerField(null=True, blank=True)
    by_name = models.CharField(max_length=160)
    why = models.CharField(max_length=400)

    class Meta:
        ordering = ["-edition"]

    def __str__(self) -> str:
        return f"policy, edition {self.edition}"


def in_force() -> Policy:
    """The policy in force: the latest version, or the values the course comes with."""
    latest = PolicyVersion.objects.values_list("values", flat=True).first()
    return Policy.from_record(latest) if latest else DEFAULT
