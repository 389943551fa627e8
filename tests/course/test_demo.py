"""The demo: every state to be seen, nothing lost by a second run, and no mixing with real people."""

from io import StringIO

import pytest
from django.core.management import CommandError, call_command
from django.test import TestCase
from django.urls import reverse
from django.utils import timezone

from course.demo.cast import DOMAIN, LONG_AGO, PASSWORD, PLANS, QUICK, TROUPES
from course.demo.factories import PersonFactory
from course.people.models import Cohort, Person
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, Doubt, Standing
from quizzes.standing import State


def run(*options):
    printed = StringIO()
    call_command("demo", *options, stdout=printed)
    return printed.getvalue()


class TestTheDemo(TestCase):
    """Built once, looked at several times."""

    @classmethod
    def setUpTestData(cls):
        cls.printed = run("--quick")

    def test_every_state_of_the_board_appears_and_somebody_waits(self):
        shown = {row.shown_state for row in Standing.objects.all()}
        trainees = Person.objects.filter(role="trainee").count()
        assert shown | {State.NOT_STARTED} == set(State)
        assert Standing.objects.count() < trainees * len(COMPETENCIES)
        assert Standing.objects.filter(waits=True).exists()

    def test_two_doubts_wait_and_one_was_ruled_on(self):
        assert sorted(Doubt.objects.values_list("attempt__ruled", flat=True)) == ["", "", "left"]

    def test_slips_are_many_and_each_trainees_attempts_follow_in_time(self):
        assert Attempt.objects.filter(verdict="slip").values("slip").distinct().count() >= 8
        for person in Person.objects.filter(role="trainee"):
            times = list(person.attempts.order_by("pk").values_list("asked_at", flat=True))
            assert times == sorted(times)

    def test_nothing_happens_later_than_now(self):
        assert Attempt.objects.latest("asked_at").asked_at < timezone.now()

    def test_every_cohort_has_a_check_before_it(self):
        for cohort in Cohort.objects.all():
            one = cohort.appointments.get()
            assert (one.state(timezone.now()), one.people.count()) == ("coming", cohort.trainees.count())

    def test_the_accounts_it_prints_can_sign_in(self):
        printed = [word for word in self.printed.split() if word.endswith(f"@{DOMAIN}")]
        assert len(printed) == Person.objects.count() == 2 * QUICK + 4
        assert PASSWORD in self.printed
        answer = self.client.post(reverse("people:sign-in"), {"username": printed[0], "password": PASSWORD})
        assert answer.status_code == 302

    def test_a_second_run_keeps_what_is_there(self):
        before = (Person.objects.count(), Attempt.objects.count())
        assert "kept as it is" in run()
        assert (Person.objects.count(), Attempt.objects.count()) == before


def test_it_refuses_a_database_that_holds_anyone_else(db):
    PersonFactory(email="mara@quay.example")
    with pytest.raises(CommandError, match="holds people who are not of the demo") as refusal:
        run()
    assert refusal.value.returncode == 1
    assert (Person.objects.count(), Cohort.objects.count()) == (1, 0)


def test_it_refuses_production(db, settings):
    settings.PRODUCTION = True
    with pytest.raises(CommandError, match="not built in production"):
        run()
    assert not Person.objects.exists()


def test_the_whole_cast_is_two_cohorts_of_twelve_with_known_plans():
    assert [len(troupe.parts) for troupe in TROUPES] == [12, 12]
    parts = [part for troupe in TROUPES for part in troupe.parts]
    assert {plan for part in parts for plan in part.but.values()} | {"met"} == set(PLANS)
    assert {slug for part in parts for slug in part.but} <= set(COMPETENCIES)
    assert set(LONG_AGO) < set(PLANS)
