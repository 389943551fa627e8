"""Codes that open supervised checks, and how often somebody has typed a wrong one."""

from __future__ import annotations

from datetime import datetime

from django.conf import settings
from django.db import models
from django.db.models import Q

from quizzes.models.appendonly import AppendOnly


class Slot(models.Model):
    """A supervised hour: whoever of the group types its code may begin a check while it is open.

    Only a keyed digest of the code is kept. A slot is closed, never deleted: sittings point at it.
    """

    group = models.CharField(max_length=40, help_text="Whose code it is, as in learner.code_groups.")
    group_name = models.CharField(max_length=80)
    digest = models.CharField(max_length=64, unique=True)
    opened_at = models.DateTimeField()
    until = models.DateTimeField()
    closed_at = models.DateTimeField(null=True, blank=True)
    by_key = models.BigIntegerField(null=True, blank=True)
    by_name = models.CharField(max_length=160)

    class Meta:
        ordering = ["-pk"]
        indexes = [models.Index(fields=["group", "-id"], name="slots_of_group")]
        constraints = [
            models.CheckConstraint(condition=Q(until__gt=models.F("opened_at")), name="slot_has_an_end")
        ]

    def __str__(self) -> str:
        return f"supervised checks of {self.group_name}"

    def is_open(self, now: datetime) -> bool:
        return self.closed_at is None and self.opened_at <= now < self.until


class CodeTries(models.Model):
    """Wrong codes typed by one learner since the last right one."""

    learner = models.OneToOneField(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="code_tries"
    )
    wrong = models.PositiveIntegerField(default=0)
    last_at = models.DateTimeField(null=True, blank=True)

    class Meta:
        ordering = ["pk"]
        verbose_name_plural = "code tries"

    def __str__(self) -> str:
        return f"{self.wrong} wrong codes by {self.learner}"


class Accommodation(AppendOnly):
    """What one learner's checks are held under, who set it and why; the latest entry is in force."""

    learner = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="accommodations"
    )
    extra_time_percent = models.PositiveIntegerField(default=0)
    other = models.CharField(max_length=400, blank=True, help_text="In words: read aloud, larger print …")
    at = models.DateTimeField()
    by_key = models.BigIntegerField(null=True, blank=True)
    by_name = models.CharField(max_length=160)
    why = models.CharField(max_length=400)

    class Meta:
        ordering = ["-pk"]
        indexes = [models.Index(fields=["learner", "-id"], name="latest_accommodation")]

    def __str__(self) -> str:
        return f"{self.in_words} for {self.learner}"

    @property
    def is_empty(self) -> bool:
        """Whether the entry took back what was before it."""
        return not (self.extra_time_percent or self.other)

    @property
    def in_words(self) -> str:
        """Both parts in a phrase; "none" for an empty entry."""
        parts = [f"{self.extra_time_percent} % more time"] if self.extra_time_percent else []
        return "; ".join([*parts, *([self.other] if self.other else [])]) or "none"
