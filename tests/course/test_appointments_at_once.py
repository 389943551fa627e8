"""Six hands at one set check, or at one round of signatures: what is kept holds together."""

from datetime import timedelta

import pytest
from django.utils import timezone

from course.appointments import deeds
from course.demo.factories import CohortFactory, PersonFactory
from course.people.models import Role
from quizzes import actions
from quizzes.errors import Refused
from quizzes.models import DecisionRecord, JournalLine, Sitting, Standing
from tests.quizzes.test_two_at_once import all_at_once

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def instructor(transactional_db):
    return PersonFactory(role=Role.INSTRUCTOR)


@pytest.fixture
def trainees(instructor):
    return PersonFactory.create_batch(3)


@pytest.fixture
def draft(instructor, trainees):
    """A check of Boyle's law for the three, from a moment ago on, with half the time again."""
    cohort = CohortFactory(trainees=trainees, instructors=[instructor])
    opens = timezone.now() - timedelta(minutes=1)
    closes = opens + timedelta(hours=1)
    plan = deeds.Plan(True, [], ["boyle"], opens, closes, extra_time_percent=50)
    return deeds.draft(cohort=cohort, by=instructor, plan=plan)


def test_a_draft_sent_by_six_at_once_is_sent_once(draft, instructor):
    all_at_once(lambda: deeds.send(appointment_id=draft.pk, by=instructor))
    assert JournalLine.objects.filter(verb="check set").count() == 1


def test_a_check_is_begun_under_what_was_set_or_after_it_was_taken_back(draft, instructor, trainees, boyle):
    deeds.send(appointment_id=draft.pk, by=instructor)
    learner = trainees[0]
    Standing.objects.create(learner=learner, competency="boyle", state="ready")
    turns = iter([0, 1] * 3)

    def deed():
        if next(turns):
            return actions.start_check(learner=learner, competency=boyle)
        try:
            return deeds.take_back(appointment_id=draft.pk, by=instructor, why="Too much swell.")
        except Refused as refusal:
            return str(refusal)

    all_at_once(deed)
    draft.refresh_from_db()
    held_under_it = "more time for this check" in Sitting.objects.get().accommodation
    assert held_under_it is (draft.taken_back_at is None)


def test_a_round_sent_by_six_at_once_is_written_once(instructor, trainees, boyle):
    pairs = [(learner, "oral") for learner in trainees]

    def deed():
        return actions.sign_off_round(signatures=pairs, competency=boyle, by=instructor, why="Seen today.")

    assert sorted(len(done.written) for done in all_at_once(deed)) == [0, 0, 0, 0, 0, 3]
    assert DecisionRecord.objects.count() == 3
