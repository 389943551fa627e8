"""The room's place in Django."""

from django.apps import AppConfig


class DesksConfig(AppConfig):
    name = "course.desks"
    label = "desks"
