"""Lets Django find the physics' template parts and its command."""

from django.apps import AppConfig


class PressureConfig(AppConfig):
    name = "pressure"
