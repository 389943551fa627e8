"""A class of an invented harbour-works unit before its wall slate: one instructor, four trainees."""

from random import Random

import pytest
from django.test import Client
from django.urls import reverse

from course.classroom import actions
from course.classroom.models import Showing, Stage
from course.demo.factories import CohortFactory, PersonFactory
from course.demo.learners import SimulatedLearner
from course.people.models import Role

TASKS = {
    "number": "depth-to-gauge",
    "table": "air-table",
    "choice": "name-the-injury",
    "ordering": "chain-of-events",
}
"""A family of each kind of form."""


class Class:
    """The cohort with its people, and their deeds in few words."""

    def __init__(self, size=4):
        self.instructor = PersonFactory(name="Ada Holm", role=Role.INSTRUCTOR)
        self.trainees = [PersonFactory(name=f"Wren Number {n}", system="metric") for n in range(size)]
        self.cohort = CohortFactory(name="Slipway", trainees=self.trainees, instructors=[self.instructor])

    def put_up(self, family="depth-to-gauge", system="us", after=0):
        return actions.put_up(
            cohort=self.cohort, family=family, system=system, by=self.instructor, after=after
        )

    def move(self, *stages):
        for stage in stages:
            actions.move(cohort=self.cohort, showing_id=self.showing.pk, to=Stage(stage), by=self.instructor)

    def answer(self, number, form):
        return actions.answer(
            learner=self.trainees[number], cohort=self.cohort, showing_id=self.showing.pk, form=form
        )

    @property
    def showing(self):
        return Showing.objects.exclude(stage=Stage.DOWN).get(cohort=self.cohort)

    def url(self, name):
        return reverse(f"classroom:{name}", args=[self.cohort.pk])

    def client(self, person):
        client = Client()
        client.force_login(person)
        return client


def right(showing):
    """What somebody would send who has it right, whatever is asked."""
    if showing.shown["task"] == "number":
        return {"answer": f"{showing.key['answer']:.6g} {showing.key['unit']}"}
    return SimulatedLearner(None, None, Random(3)).fill_in(showing, right=True)


def slip(showing, which=0):
    """The answer that a known misunderstanding leads to, for a problem of one number."""
    one = showing.key["slips"][which]
    return {"answer": f"{(one['low'] + one['high']) / 2:.6g} {showing.key['unit']}"}


def wrong(showing):
    """A number that no convention and no known slip leads to."""
    return {"answer": f"{showing.key['answer'] * 37:.6g} {showing.key['unit']}"}


@pytest.fixture
def room(db):
    return Class()


@pytest.fixture
def wall(room):
    """The instructor's browser."""
    return room.client(room.instructor)


@pytest.fixture
def hand(room):
    """The browser of the first trainee."""
    return room.client(room.trainees[0])
