"""The room's place in Django."""

from django.apps import AppConfig


class LessonsConfig(AppConfig):
    name = "course.lessons"
    label = "lessons"

    def ready(self) -> None:
        """Register the checks, and hand the questions of the shelf down to the floors below."""
        from course.lessons import banks, checks, library  # noqa: F401 (checks register themselves)

        banks.enlist(library.SHELF)
