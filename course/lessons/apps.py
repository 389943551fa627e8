"""The room's place in Django."""

from django.apps import AppConfig


class LessonsConfig(AppConfig):
    name = "course.lessons"
    label = "lessons"
