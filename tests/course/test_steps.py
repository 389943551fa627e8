"""The one thing to do next: what is read, what is practised, what is checked, in the order of the course."""

import re
from dataclasses import replace
from html import unescape
from types import MappingProxyType

import pytest
from django.urls import reverse
from django.utils import timezone

from course.demo.factories import PersonFactory
from course.lessons import library, steps
from course.lessons.places import Seen
from course.lessons.steps import Course, Plan
from quizzes.competencies import COMPETENCIES
from quizzes.models import Standing
from quizzes.models.policy import in_force


@pytest.fixture
def course(db):
    """Two lessons on depth, then one on boxes; nothing is begun."""
    pattern = replace(
        next(iter(library.lessons().values())), parts=MappingProxyType({"us": (), "metric": ()})
    )
    told = {"tides": "depth-pressure", "locks": "depth-pressure", "boxes": "boyle"}
    lessons = [
        replace(pattern, slug=slug, order=order, title=slug.title(), competencies=(competency,))
        for order, (slug, competency) in enumerate(told.items())
    ]
    person = PersonFactory()
    standings = {slug: Standing(learner=person, competency=slug) for slug in COMPETENCIES}
    return Course(Plan.of(lessons), standings, {}, in_force())


def read(course, *slugs):
    done = {slug: Seen(is_finished=True) for slug in slugs}
    return replace(course, places={**course.places, **done})


def stand(course, competency, state, **fields):
    row = Standing(learner=course.standings[competency].learner, competency=competency, state=state, **fields)
    return replace(course, standings={**course.standings, competency: row})


def lesson(course, slug):
    return next(one for one in course.plan.lessons if one.slug == slug)


def step(found):
    return found.title, found.action.split()[-1]


def test_two_lessons_of_one_competency_are_offered_in_order_before_practice(course):
    assert step(steps.next_step(course)) == ("Tides", "lesson")
    assert step(steps.next_step(read(course, "tides"))) == ("Locks", "lesson")
    assert step(steps.next_step(read(course, "tides", "locks"))) == ("Depth and pressure", "practice")


def test_practice_begun_counts_as_having_read_the_first_lesson_only(course):
    begun = stand(course, "depth-pressure", "practising", streak=1)
    assert step(steps.next_step(begun)) == ("Locks", "lesson")


def test_an_open_check_comes_before_reading_on(course):
    ready = stand(course, "depth-pressure", "ready", streak=3)
    assert step(steps.next_step(ready)) == ("Depth and pressure", "check")


def test_a_lesson_ends_in_the_next_of_its_competency_then_practice_then_check_then_the_next_lesson(course):
    tides, locks = lesson(course, "tides"), lesson(course, "locks")
    assert step(steps.after(tides, course)) == ("Locks", "lesson")
    course = read(course, "tides")
    assert step(steps.after(locks, course)) == ("Depth and pressure", "practice")
    ready = stand(course, "depth-pressure", "ready", streak=3)
    assert step(steps.after(locks, ready)) == ("Depth and pressure", "check")
    held = stand(
        course, "depth-pressure", "ready", streak=3, held_until=timezone.localdate().replace(year=2999)
    )
    assert step(steps.after(locks, held)) == ("Boxes", "lesson")


def test_after_the_last_lesson_comes_whatever_is_not_done(course):
    course = read(stand(course, "boyle", "ready", streak=3, waits=True), "tides", "locks")
    assert step(steps.after(lesson(course, "boxes"), course)) == ("Depth and pressure", "practice")


@pytest.mark.django_db
def test_marking_as_read_leads_where_the_button_said(client):
    client.force_login(PersonFactory())
    for one in library.lessons().values():
        page = unescape(client.get(reverse("lessons:lesson", args=[one.slug])).text)
        promised = re.search(r'name="finished" value="1">[^:<]+: ([^<]+)</button>', page)[1]
        done = client.post(reverse("lessons:place", args=[one.slug]), {"finished": "1"}, follow=True)
        assert f"<h1>{promised}</h1>" in unescape(done.text)
