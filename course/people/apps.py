"""The people's place in Django."""

from django.apps import AppConfig


class PeopleConfig(AppConfig):
    name = "course.people"
    label = "people"
