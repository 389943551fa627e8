"""Where a trainee stands in the course, and the one thing to do next."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from django.urls import reverse

from course.lessons.manuscript import Lesson
from quizzes.models import Standing
from quizzes.policy import Policy
from quizzes.standing import Purpose, State

Standings = Mapping[str, Standing]


@dataclass(frozen=True, slots=True)
class NextStep:
    """What to do, why, and where."""

    title: str
    why: str
    action: str
    url: str


def chapters(lessons: Iterable[Lesson], standings: Standings) -> list[dict[str, Any]]:
    """Every lesson with the standings it is the first to prepare for; last those without a lesson."""
    left = dict(standings)
    found: list[dict[str, Any]] = [
        {"lesson": lesson, "standings": [left.pop(slug) for slug in lesson.competencies if slug in left]}
        for lesson in lessons
    ]
    rest = {"lesson": None, "standings": list(left.values())}
    return [*found, rest] if left else found


def in_order(lessons: Iterable[Lesson], standings: Standings) -> list[Standing]:
    """The standings as the lessons come, then those that no lesson prepares for."""
    taught = [slug for lesson in lessons for slug in lesson.competencies]
    return [standings[slug] for slug in dict.fromkeys([*taught, *standings])]


def next_step(lessons: Iterable[Lesson], standings: Standings, policy: Policy) -> NextStep:
    """The first thing that is not done, in the order of the course; what falls due comes after that."""
    rows = in_order(lessons, standings)
    for row in rows:
        confirm = row.opening(policy).purpose is Purpose.CONFIRMATION
        if confirm or row.shown_state not in (State.MET, State.DUE):
            return _toward(row, lessons, standings, policy)
    for row in rows:
        if row.shown_state == State.DUE:
            why = f"This falls due on {row.due_on:%d %B %Y}. A short check renews it."
            return NextStep(row.title, why, "Take the check again", _check(row.competency))
    why = "Every competency is met. The dates on which they fall due are in your record."
    return NextStep("All done for now", why, "Read your record", reverse("quizzes:record"))


def _toward(row: Standing, lessons: Iterable[Lesson], standings: Standings, policy: Policy) -> NextStep:
    lesson = next((one for one in lessons if row.competency in one.competencies), None)
    if lesson and all(standings[slug].shown_state == State.NOT_STARTED for slug in lesson.competencies):
        return NextStep(
            lesson.title, "Read this first; then practise.", "Read the lesson", lesson_url(lesson)
        )
    opening = row.opening(policy)
    if opening.purpose:
        return NextStep(row.title, _INVITING[opening.purpose], "Go to the check", _check(row.competency))
    action = "Begin practice" if row.shown_state == State.NOT_STARTED else "Go on practising"
    return NextStep(row.title, opening.shut_because, action, _practice(row.competency))


_INVITING = {
    Purpose.CHECK: "The check is open to you.",
    Purpose.CONFIRMATION: "It is met; a short check on this other day confirms it.",
    Purpose.REFRESHER: "It has lapsed. A short check renews it.",
}


def lesson_url(lesson: Lesson) -> str:
    return reverse("lessons:lesson", args=[lesson.slug])


def _practice(competency: str) -> str:
    return reverse("quizzes:practice", args=[competency])


def _check(competency: str) -> str:
    return reverse("quizzes:check", args=[competency])
