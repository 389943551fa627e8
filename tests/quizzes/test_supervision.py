"""Supervised checks: no code, no start; a wrong code costs no mark; what is decided says who supervised."""

from dataclasses import replace
from datetime import timedelta

import pytest
from django.urls import reverse

from course.demo.factories import CohortFactory, PersonFactory
from quizzes import actions
from quizzes.errors import Refused
from quizzes.models import DecisionRecord, JournalLine, Sitting, Slot, Standing
from quizzes.policy import DEFAULT
from tests.quizzes.conftest import NOON, give

CHECK = reverse("quizzes:check", args=["boyle"])
START = reverse("quizzes:check-start", args=["boyle"])


@pytest.fixture
def teacher(db):
    return PersonFactory(name="Ada Fenwick")


@pytest.fixture
def cohort(ready):
    return CohortFactory(trainees=[ready], name="Slipway")


@pytest.fixture
def supervised(ready, teacher):
    policy = replace(DEFAULT, supervised=("boyle",))
    actions.set_policy(policy=policy, by=teacher, why="Agreed with the unit.")
    return ready


def open_slot(cohort, teacher, now=NOON):
    return actions.open_slot(group=cohort.group, group_name=cohort.name, by=teacher, now=now)


def start(learner, boyle, code, *, minutes=0):
    now = NOON + timedelta(minutes=minutes)
    return actions.start_check(learner=learner, competency=boyle, code=code, now=now)


def test_without_a_code_a_supervised_check_does_not_begin(supervised, boyle):
    with pytest.raises(Refused, match="Type the code that your instructor shows you"):
        start(supervised, boyle, "")
    assert not Sitting.objects.filter(purpose="check").exists()


def test_the_code_opens_it_and_the_record_says_who_supervised(supervised, cohort, teacher, boyle):
    slot, code = open_slot(cohort, teacher)
    sitting = start(supervised, boyle, f" {code.lower()} ", minutes=29)
    assert (sitting.slot, sitting.supervised_by) == (slot, "Ada Fenwick")
    give(sitting, "+" * 10)
    assert DecisionRecord.objects.get().supervised_by == "Ada Fenwick"
    begun = JournalLine.objects.get(verb="check begun")
    assert begun.details["supervised by"] == "Ada Fenwick"


def test_only_a_digest_of_the_code_is_kept_and_it_is_keyed(cohort, teacher, settings):
    slot, code = open_slot(cohort, teacher)
    plain = code.replace(" ", "")
    assert len(plain) == 8
    assert not set(plain) & set("0O1IL5S2Z8BUV")
    kept = str([list(Slot.objects.values()), list(JournalLine.objects.values())])
    assert plain not in kept
    assert code not in kept
    settings.SECRET_KEY = "another key"
    assert actions.supervision._digest(plain) != slot.digest


@pytest.mark.parametrize("minutes", [-1, 30, 500])
def test_a_code_is_good_for_its_minutes_and_no_longer(supervised, cohort, teacher, boyle, minutes):
    _, code = open_slot(cohort, teacher)
    with pytest.raises(Refused, match="That code opens nothing"):
        start(supervised, boyle, code, minutes=minutes)


def test_a_code_closed_or_of_another_cohort_or_ones_own_opens_nothing(supervised, cohort, teacher, boyle):
    slot, closed = open_slot(cohort, teacher)
    actions.close_slot(slot_id=slot.pk, group=cohort.group, by=teacher, now=NOON)
    _, elsewhere = open_slot(CohortFactory(), teacher)
    _, own = open_slot(cohort, supervised)
    for code in (closed, elsewhere, own):
        with pytest.raises(Refused, match="opens nothing"):
            start(supervised, boyle, code)


def test_five_wrong_codes_make_one_wait_even_for_the_right_one_and_cost_nothing(
    supervised, cohort, teacher, boyle
):
    _, code = open_slot(cohort, teacher)
    for _ in range(5):
        with pytest.raises(Refused, match="Nothing was counted"):
            start(supervised, boyle, "AAAA3333")
    with pytest.raises(Refused, match="Wait a quarter of an hour"):
        start(supervised, boyle, code, minutes=14)
    assert Standing.objects.get(learner=supervised, competency="boyle").state == "ready"
    assert start(supervised, boyle, code, minutes=15).supervised_by == "Ada Fenwick"


def test_an_instructor_may_ask_for_a_code_in_one_persons_next_check(ready, cohort, teacher, boyle):
    actions.require_supervision(learner=ready, competency=boyle, by=teacher, why="The last was odd.")
    with pytest.raises(Refused, match="supervised"):
        start(ready, boyle, "")
    with pytest.raises(Refused, match="needs a code already"):
        actions.require_supervision(learner=ready, competency=boyle, by=teacher, why="Again.")
    give(start(ready, boyle, open_slot(cohort, teacher)[1]), "+" * 10)
    confirmation = actions.start_check(learner=ready, competency=boyle, now=NOON + timedelta(days=1))
    assert (confirmation.purpose, confirmation.supervised_by) == ("confirmation", "")


@pytest.fixture
def site(client, supervised):
    client.force_login(supervised)
    return client


def test_the_page_asks_for_the_code_and_a_wrong_one_comes_back_as_typed(site):
    assert 'name="code"' in site.get(CHECK).text
    answer = site.post(START, {"code": "wrong <one>"})
    assert "That code opens nothing" in answer.text
    assert 'value="wrong &lt;one&gt;"' in answer.text
    assert 'aria-invalid="true"' in answer.text


def test_a_start_replayed_without_a_code_or_with_one_that_ran_out_begins_nothing(
    site, cohort, teacher, supervised
):
    _, code = open_slot(cohort, teacher)  # at NOON, long ago
    for form in ({}, {"code": ""}, {"code": code}):
        site.post(START, form)
    assert not Sitting.objects.filter(purpose="check").exists()


def test_going_on_with_a_supervised_check_needs_no_second_code(supervised, cohort, teacher, boyle):
    _, code = open_slot(cohort, teacher)
    sitting = start(supervised, boyle, code)
    assert start(supervised, boyle, "", minutes=300) == sitting
