"""The room's place in Django."""

from django.apps import AppConfig


class LessonsConfig(AppConfig):
    name = "course.lessons"
    label = "lessons"

    def ready(self) -> None:
        from course.lessons import checks  # noqa: F401 (registers the check)
