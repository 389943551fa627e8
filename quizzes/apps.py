"""The records' place in Django."""

from django.apps import AppConfig


class QuizzesConfig(AppConfig):
    name = "quizzes"

    def ready(self) -> None:
        from quizzes import checks  # noqa: F401 (registers the checks)
