"""Paper checks: printed for a quay without a network, entered afterwards."""

from django.apps import AppConfig


class PapersConfig(AppConfig):
    name = "course.papers"
    label = "papers"
