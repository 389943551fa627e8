"""Where a person is in the lessons: what is remembered, and the one deed that moves it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from django.db import connection, transaction
from django.utils import timezone

from course.lessons.manuscript import Lesson
from course.lessons.models import Place
from course.people.models import Person

_FRESH = timedelta(minutes=10)


class UnknownSection(Exception):
    """The lesson has no such section; the sentence says which there are."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What a page needs to know of a place; one that is stale was not noted for a while."""

    section: str = ""
    is_finished: bool = False
    is_stale: bool = False


# By hand, since every lesson's page asks it: put into words by the ORM it costs several times as much.
_PLACES = (
    'SELECT "lesson", "section", "finished_at" IS NOT NULL, "at" < %s FROM "lessons_place" '
    'WHERE "person_id" = %s'
)


def places_of(person: Person) -> dict[str, Seen]:
    """The person's places by lesson."""
    long_ago = connection.ops.adapt_datetimefield_value(timezone.now() - _FRESH)
    with connection.cursor() as cursor:
        cursor.execute(_PLACES, [long_ago, person.pk])
        rows = cursor.fetchall()
    return {lesson: Seen(section, bool(finished), bool(stale)) for lesson, section, finished, stale in rows}


def remember(
    *,
    person: Person,
    lesson: Lesson,
    section: str = "",
    finished: bool = False,
    now: datetime | None = None,
) -> Place:
    """Note where the person is; without a section that they were here. Read once stays read.

    Raises UnknownSection for an anchor that the lesson does not have.
    """
    anchors = [one.anchor for one in lesson.sections]
    if section and section not in anchors:
        raise UnknownSection(f"There is no section {section[:40]!r} here. There are: {', '.join(anchors)}.")
    now = now or timezone.now()
    with transaction.atomic():
        rows = Place.objects.select_for_update(of=("self",), no_key=True)
        place, _ = rows.get_or_create(person=person, lesson=lesson.slug, defaults={"at": now})
        place.at = now
        place.section = section or place.section
        if finished and not place.is_finished:
            place.finished_at = now
        place.save(update_fields=["at", "section", "finished_at"])
    return place


def opened(person: Person, lesson: Lesson, places: Mapping[str, Seen]) -> None:
    """Note that the lesson was opened, unless that was noted a moment ago: a page is loaded often."""
    place = places.get(lesson.slug)
    if place is None or place.is_stale:
        remember(person=person, lesson=lesson)
