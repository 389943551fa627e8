"""A learner, a stranger, and ways to answer right or wrong through the real actions."""

from datetime import UTC, datetime, timedelta
from random import Random

import pytest

from course.demo.learners import SimulatedLearner
from course.people.models import Person
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt

NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)


@pytest.fixture
def learner(db):
    return Person.objects.create_user("mara@quay.example", name="Mara Quill")


@pytest.fixture
def stranger(db):
    return Person.objects.create_user("otto@quay.example", name="Otto Brandt")


@pytest.fixture
def boyle():
    return COMPETENCIES["boyle"]


def right_text(attempt):
    """The right answer as somebody would type it."""
    return f"{attempt.key['answer']:.6g} {attempt.key['unit']}"


def wrong_text(attempt):
    """A number that no convention and no known slip leads to."""
    return f"{attempt.key['answer'] * 37:.6g} {attempt.key['unit']}"


def form_for(attempt, *, right):
    """What somebody would send, whatever the problem asks for."""
    if attempt.shown["task"] == "number":
        return {"answer": right_text(attempt) if right else wrong_text(attempt)}
    return SimulatedLearner(attempt.learner, attempt.learner, Random(3)).fill_in(attempt, right=right)


def waiting(sitting):
    return Attempt.objects.get(sitting=sitting, answered_at__isnull=True)


def give(sitting, marks, start=NOON):
    """Answer the sitting's problems one after another: "+" right, "-" wrong."""
    for minute, sign in enumerate(marks):
        attempt = waiting(sitting)
        actions.answer(
            learner=sitting.learner,
            attempt_id=attempt.pk,
            form=form_for(attempt, right=sign == "+"),
            now=start + timedelta(minutes=minute),
        )


@pytest.fixture
def ready(learner, boyle):
    """The learner with the check open."""
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    return learner
