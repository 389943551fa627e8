"""The room's place in Django."""

from django.apps import AppConfig


class ExportsConfig(AppConfig):
    name = "course.exports"
    label = "exports"
