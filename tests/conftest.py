"""The named cast: two cohorts of an invented harbour-works unit, and what its trainees have done so far."""

import os

import pytest
from django.conf import settings
from django.utils import timezone

from course.demo.factories import CohortFactory, PersonFactory
from course.people.models import Role
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, Standing
from tests.quizzes.conftest import give, waiting

ROLES = {
    "trainee": Role.TRAINEE,  # owns the things in every address of the tests
    "stranger": Role.TRAINEE,  # learns in another cohort
    "instructor": Role.INSTRUCTOR,  # teaches the trainee
    "outsider": Role.INSTRUCTOR,  # teaches the stranger
    "officer": Role.OFFICER,
    "administrator": Role.ADMINISTRATOR,
}


def pytest_configure():
    """Where PostgreSQL is required, a run on anything else proves nothing."""
    if os.environ.get("REQUIRE_POSTGRES") and "postgresql" not in settings.DATABASES["default"]["ENGINE"]:
        raise pytest.UsageError("REQUIRE_POSTGRES is set, but DATABASE_URL names no PostgreSQL server.")


class Quay:
    """Two cohorts, each of one trainee and one instructor.

    Both trainees were held in a check of Boyle's law, which waits for the instructor; a practice problem
    about depth waits for each of them.
    """

    def __init__(self):
        self.people = {
            who: PersonFactory(name=f"Given {who.title()}", email=f"{who}@quay.example", role=role)
            for who, role in ROLES.items()
        }
        self.cohort = self._cohort("Slipway", "trainee", "instructor")
        self.other = self._cohort("Boathouse", "stranger", "outsider")
        self.attempt, self.waiting = self._held("trainee")
        self._held("stranger")

    def _cohort(self, name, trainee, instructor):
        return CohortFactory(
            name=name, trainees=[self.people[trainee]], instructors=[self.people[instructor]]
        )

    def _held(self, who):
        """The first answer of the check, and the problem that waits."""
        learner, now = self.people[who], timezone.now()
        boyle, depth = COMPETENCIES["boyle"], COMPETENCIES["depth-pressure"]
        give(actions.start_practice(learner=learner, competency=boyle), "+++", now)
        give(actions.start_check(learner=learner, competency=boyle), "--", now)
        Standing.objects.filter(learner=learner).update(waits=True)
        first = Attempt.objects.filter(learner=learner, sitting__purpose="check").first()
        return first, waiting(actions.start_practice(learner=learner, competency=depth))


@pytest.fixture
def quay(db):
    return Quay()
