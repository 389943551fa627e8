"""The named cast: two cohorts of an invented harbour-works unit, and what its trainees have done so far."""

import os
from datetime import timedelta

import pytest
from django.conf import settings
from django.utils import timezone

from course.appointments import deeds
from course.demo.factories import CohortFactory, PersonFactory
from course.people.models import Role
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, Standing
from tests.course.papers.factories import PaperFactory, RunFactory
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
        self.paper = self._printed(self.attempt)
        self._held("stranger")
        self.slot, self.code = actions.open_slot(
            group=self.cohort.group, group_name=self.cohort.name, by=self.people["instructor"]
        )
        self.appointment = self._appointed()

    def _cohort(self, name, trainee, instructor):
        return CohortFactory(
            name=name, trainees=[self.people[trainee]], instructors=[self.people[instructor]]
        )

    def _appointed(self):
        """A check of dials set for the trainee's cohort, an hour of tomorrow."""
        opens = timezone.now() + timedelta(days=1)
        plan = deeds.Plan(True, [], ["dials-units"], opens, opens + timedelta(hours=1), supervised=True)
        one = deeds.draft(cohort=self.cohort, by=self.people["instructor"], plan=plan)
        return deeds.send(appointment_id=one.pk, by=self.people["instructor"])

    def _printed(self, attempt):
        """A paper for the trainee, of the one question that an attempt was asked."""
        question = {"shown": attempt.shown, "key": attempt.key}
        run = RunFactory(cohort=self.cohort)
        return PaperFactory(run=run, learner=self.people["trainee"], questions=[question], holds=1)

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
