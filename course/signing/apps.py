"""The room's place in Django."""

from django.apps import AppConfig


class SigningConfig(AppConfig):
    name = "course.signing"
    label = "signing"
