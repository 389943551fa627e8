"""The room's place in Django."""

from django.apps import AppConfig


class ClassroomConfig(AppConfig):
    name = "course.classroom"
    label = "classroom"
