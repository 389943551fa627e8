"""Where a person is in a lesson."""

from __future__ import annotations

from django.conf import settings
from django.db import models


class Place(models.Model):
    """One person in one lesson: the section they were last seen at, and whether they have read it all."""

    person = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="places")
    lesson = models.SlugField(max_length=60, help_text="The lesson's folder.")
    section = models.CharField(max_length=120, blank=True, help_text="Its anchor; empty for the top.")
    finished_at = models.DateTimeField(null=True, blank=True, help_text="When it was marked as read.")
    at = models.DateTimeField(help_text="When they were last there.")

    class Meta:
        ordering = ["-at", "pk"]
        constraints = [models.UniqueConstraint(fields=["person", "lesson"], name="one_place_in_each_lesson")]

    def __str__(self) -> str:
        return f"{self.person}, {self.lesson}: {'read' if self.is_finished else self.section or 'begun'}"

    @property
    def is_finished(self) -> bool:
        return self.finished_at is not None
