"""The room's place in Django."""

from django.apps import AppConfig


class DemoConfig(AppConfig):
    name = "course.demo"
    label = "demo"
