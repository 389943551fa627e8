"""A check set for people of a cohort: which, when, on what terms; drafted, sent, perhaps taken back."""

from __future__ import annotations

from datetime import datetime

from django.db import models
from django.db.models import F, Q

from course.people.models import Cohort, Person
from quizzes.subjects import subject


class Appointment(models.Model):
    """Written as a draft, sent once, and never changed afterwards but to be taken back with a reason."""

    cohort = models.ForeignKey(Cohort, on_delete=models.PROTECT, related_name="appointments")
    whole_cohort = models.BooleanField(default=True, help_text="Whoever is in the cohort when it is sent.")
    people = models.ManyToManyField(Person, related_name="appointments", blank=True)
    subjects = models.JSONField(default=list, help_text="Competencies, or the whole course, by slug.")
    opens_at = models.DateTimeField()
    closes_at = models.DateTimeField()
    only = models.BooleanField(default=False, help_text="Outside its window the check is shut to them.")
    supervised = models.BooleanField(default=False)
    extra_time_percent = models.PositiveIntegerField(default=0)
    note = models.CharField(max_length=400, blank=True)
    by_key = models.BigIntegerField(null=True, blank=True)
    by_name = models.CharField(max_length=160)
    made_at = models.DateTimeField()
    sent_at = models.DateTimeField(null=True, blank=True)
    taken_back_at = models.DateTimeField(null=True, blank=True)
    taken_back_by = models.CharField(max_length=160, blank=True)
    taken_back_why = models.CharField(max_length=400, blank=True)

    class Meta:
        ordering = ["-pk"]
        constraints = [
            models.CheckConstraint(condition=Q(closes_at__gt=F("opens_at")), name="window_has_an_end"),
            models.CheckConstraint(
                condition=Q(taken_back_at__isnull=True) | Q(sent_at__isnull=False) & ~Q(taken_back_why=""),
                name="taken_back_once_sent_with_a_reason",
            ),
        ]

    def __str__(self) -> str:
        return f"check of {self.titles}, set for {self.cohort}"

    @property
    def titles(self) -> str:
        return ", ".join(subject(slug).title for slug in self.subjects)

    @property
    def is_draft(self) -> bool:
        return self.sent_at is None

    @property
    def binds_from(self) -> datetime:
        """The start of the window, or the moment it was sent where that came later."""
        return max(self.opens_at, self.sent_at or self.opens_at)

    def state(self, now: datetime) -> str:
        """In a word: draft, taken back, coming, open or over."""
        if self.is_draft:
            return "draft"
        if self.taken_back_at:
            return "taken back"
        if now < self.opens_at:
            return "coming"
        return "open" if now < self.closes_at else "over"
