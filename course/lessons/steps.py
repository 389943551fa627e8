"""Where a trainee stands in the course, and the one thing to do next."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from django.urls import reverse
from django.utils.functional import lazy

from course.lessons.manuscript import Lesson
from course.lessons.places import Seen
from quizzes.models import Standing
from quizzes.policy import Policy
from quizzes.standing import Opening, Purpose, State

Standings = Mapping[str, Standing]


@dataclass(frozen=True, slots=True)
class NextStep:
    """What to do, why, and where."""

    title: str
    why: str
    action: str
    url: str


@dataclass(frozen=True, slots=True)
class Plan:
    """The lessons in order; by slug the competencies each is the first to prepare for; which are reviews.

    A review goes over all that the others prepare for; nothing waits until it is read.
    """

    lessons: tuple[Lesson, ...]
    first: Mapping[str, tuple[str, ...]]
    reviews: frozenset[str]

    @classmethod
    def of(cls, lessons: Iterable[Lesson]) -> Plan:
        lessons = tuple(lessons)
        by: dict[str, str] = {}
        for lesson in lessons:
            for competency in lesson.competencies:
                by.setdefault(competency, lesson.slug)
        first = {one.slug: tuple([c for c in one.competencies if by[c] == one.slug]) for one in lessons}
        reviews = frozenset(
            [one.slug for one in lessons if not first[one.slug] and by.keys() <= {*one.competencies}]
        )
        return cls(lessons, first, reviews)


@dataclass(frozen=True, slots=True)
class Course:
    """One trainee in the whole course: where they stand, where they are reading.

    The policy may be one that is only fetched when it is asked something. ``shut`` says of which
    competency the check opens only at a time that was set, and why it is shut now.
    """

    plan: Plan
    standings: Standings
    places: Mapping[str, Seen]
    policy: Policy
    shut: Mapping[str, str] = field(default_factory=dict)

    def opening(self, row: Standing) -> Opening:
        """Which check is open. What is not ready, met or lapsed has none, whatever the policy."""
        if row.state in (State.READY, State.MET) or row.waits:
            opening = row.opening(self.policy)
            why = self.shut.get(row.competency) if opening.purpose else None
            return Opening(None, why) if why else opening
        return Opening(None)

    def seen(self, lesson: Lesson) -> Seen:
        """Where they were last seen in the lesson; at its top where they never were."""
        return self.places.get(lesson.slug, _NOWHERE)

    def has_read(self, lesson: Lesson) -> bool:
        """Whether it was marked as read, or something begun that it is the first to prepare for."""
        first = (self.standings[slug].state for slug in self.plan.first[lesson.slug])
        return self.seen(lesson).is_finished or any(state != State.NOT_STARTED for state in first)

    def having_read(self, lesson: Lesson) -> Course:
        """The same once this lesson is marked as read."""
        return replace(self, places={**self.places, lesson.slug: Seen(is_finished=True)})

    def unread(self, competency: str) -> Iterator[Lesson]:
        """The lessons that prepare for a competency and are not read yet, in order."""
        for lesson in self.plan.lessons:
            teaches = competency in lesson.competencies and lesson.slug not in self.plan.reviews
            if teaches and not self.has_read(lesson):
                yield lesson


_NOWHERE = Seen()


def chapters(course: Course) -> list[dict[str, Any]]:
    """Every lesson with the standings it is the first to prepare for; last those without a lesson."""
    left = dict(course.standings)
    found: list[dict[str, Any]] = [
        {
            "lesson": lesson,
            "place": course.places.get(lesson.slug),
            "at": lesson.section(course.seen(lesson).section),
            "standings": [left.pop(slug) for slug in lesson.competencies if slug in left],
        }
        for lesson in course.plan.lessons
    ]
    rest = {"lesson": None, "standings": list(left.values())}
    return [*found, rest] if left else found


def in_order(course: Course) -> list[Standing]:
    """The standings as the lessons come, then those that no lesson prepares for."""
    taught = [slug for lesson in course.plan.lessons for slug in lesson.competencies]
    return [course.standings[slug] for slug in dict.fromkeys([*taught, *course.standings])]


def next_step(course: Course) -> NextStep:
    """The first thing that is not done, in the order of the course; what falls due comes after that."""
    # What waits for its time comes after what can be done now.
    rows = sorted(
        in_order(course), key=lambda row: row.state == State.READY and row.competency in course.shut
    )
    for row in rows:
        confirm = course.opening(row).purpose is Purpose.CONFIRMATION
        if confirm or row.shown_state not in (State.MET, State.DUE):
            return _toward(row, course)
    for row in rows:
        if row.shown_state == State.DUE:
            why = f"This falls due on {row.due_on:%d %B %Y}. A short check renews it."
            return NextStep(row.title, why, "Take the check again", _check(row.competency))
    if lesson := next((one for one in course.plan.lessons if _is_left(one, course)), None):
        return _reading(lesson, course)
    why = "Every competency is met. The dates on which they fall due are in your record."
    return NextStep("All done for now", why, "Read your record", reverse("quizzes:record"))


def _is_left(lesson: Lesson, course: Course) -> bool:
    return lesson.slug in course.plan.reviews and not course.has_read(lesson)


def after(lesson: Lesson, course: Course) -> NextStep:
    """What follows when this lesson has been read: practice, then the check, then the next lesson.

    What a later lesson prepares for as well is practised after that one.
    """
    course = course.having_read(lesson)
    later = [one for one in course.plan.lessons if (one.order, one.slug) > (lesson.order, lesson.slug)]
    unread = [one for one in later if not course.has_read(one)]
    rows = [course.standings[slug] for slug in lesson.competencies]
    for row in rows:
        still_taught = any(one in later for one in course.unread(row.competency))
        if row.shown_state not in (State.READY, State.MET, State.DUE) and not still_taught:
            return _doing(row, course)
    for row in rows:
        if course.opening(row).purpose and row.shown_state != State.DUE:
            return _doing(row, course)
    return _reading(unread[0], course) if unread else next_step(course)


def _toward(row: Standing, course: Course) -> NextStep:
    """Reading goes before practice, an open check before reading."""
    lesson = next(course.unread(row.competency), None)
    if lesson and not course.opening(row).purpose:
        return _reading(lesson, course)
    return _doing(row, course)


def _doing(row: Standing, course: Course) -> NextStep:
    if purpose := course.opening(row).purpose:
        return NextStep(row.title, _INVITING[purpose], "Go to the check", _check(row.competency))
    action = "Begin practice" if row.shown_state == State.NOT_STARTED else "Go on practising"
    why = course.shut.get(row.competency) or _missing(row, course.policy)
    return NextStep(row.title, why, action, _practice(row.competency))


def _shut_because(row: Standing, policy: Policy) -> str:
    return row.opening(policy).shut_because


# Only the start page says it; a lesson need not ask the policy.
_missing = lazy(_shut_because, str)


def _reading(lesson: Lesson, course: Course) -> NextStep:
    place = course.places.get(lesson.slug)
    if place and not place.is_finished and (at := lesson.section(place.section)):
        why, url = f"You were at: {at.title}.", f"{lesson_url(lesson)}#{at.anchor}"
        return NextStep(lesson.title, why, "Go on reading", url)
    why = "Read this first; then practise." if lesson.competencies else "Read this next."
    action = "Go on reading" if place else "Read the lesson"
    return NextStep(lesson.title, why, action, lesson_url(lesson))


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
