"""The room's place in Django."""

from django.apps import AppConfig


class AppointmentsConfig(AppConfig):
    name = "course.appointments"
    label = "appointments"

    def ready(self) -> None:
        """Hand the windows of set checks down to the floor that holds checks."""
        from course.appointments import calendar
        from quizzes import windows

        windows.enlist(calendar.windows_of)
