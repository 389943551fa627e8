"""Two tabs, a double click, a replayed request, two workers: one answer counts."""

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import timedelta
from threading import Barrier

import pytest
from django.db import connection

from course.demo.factories import CohortFactory, PersonFactory
from course.people.models import Person
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.models import Attempt, CodeTries, DecisionRecord, JournalLine, Sitting, Slot, Standing
from quizzes.policy import DEFAULT
from tests.quizzes.conftest import NOON, form_for, give, right_text, waiting

pytestmark = pytest.mark.django_db(transaction=True)
AT_ONCE = 6


@pytest.fixture
def learner(transactional_db):
    return Person.objects.create_user("mara@quay.example", name="Mara Quill")


def all_at_once(deed):
    """Run the deed in several threads that set off together; each has a connection of its own."""
    together = Barrier(AT_ONCE)

    def run(_):
        try:
            together.wait(timeout=20)
            return deed()
        finally:
            connection.close()

    with ThreadPoolExecutor(AT_ONCE) as pool:
        return list(pool.map(run, range(AT_ONCE)))


def test_the_same_answer_sent_by_six_at_once_counts_once(learner, boyle):
    attempt = waiting(actions.start_practice(learner=learner, competency=boyle, now=NOON))
    typed = right_text(attempt)
    outcomes = all_at_once(
        lambda: actions.answer(learner=learner, attempt_id=attempt.pk, form={"answer": typed})
    )
    assert [outcome.counted for outcome in outcomes].count(True) == 1
    assert Standing.objects.get().practised == 1
    assert Attempt.objects.filter(answered_at__isnull=True).count() == 1


def test_the_deciding_answer_sent_by_six_at_once_decides_once(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    sitting = actions.start_check(learner=learner, competency=boyle, now=NOON)
    give(sitting, "+" * 9)
    attempt = waiting(sitting)
    typed = right_text(attempt)
    all_at_once(lambda: actions.answer(learner=learner, attempt_id=attempt.pk, form={"answer": typed}))
    assert DecisionRecord.objects.get().score == 10
    assert sitting.attempts.count() == 10


def test_six_starts_at_once_open_one_sitting(learner, boyle):
    all_at_once(lambda: actions.start_practice(learner=learner, competency=boyle))
    assert Sitting.objects.count() == 1
    assert Attempt.objects.count() == 1


def refused(deed):
    """The deed, or the sentence with which it was refused."""

    def tried():
        try:
            return deed()
        except Refused as refusal:
            return str(refusal)

    return tried


def held(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    give(actions.start_check(learner=learner, competency=boyle, now=NOON), "--")


def test_six_waivers_at_once_leave_one_entry(learner, boyle):
    held(learner, boyle)
    by = PersonFactory()
    deed = {"learner": learner, "competency": boyle, "what": "rest", "by": by, "why": "Seen.", "now": NOON}
    all_at_once(refused(lambda: actions.waive(**deed)))
    assert DecisionRecord.objects.filter(decided="waived").count() == 1


def test_six_requests_for_a_code_at_once_leave_one_entry(learner, boyle):
    deed = {"learner": learner, "competency": boyle, "by": PersonFactory(), "why": "Seen."}
    all_at_once(refused(lambda: actions.require_supervision(**deed)))
    assert DecisionRecord.objects.filter(decided="supervise").count() == 1


def test_six_accommodations_at_once_are_all_kept(learner):
    by = PersonFactory()
    all_at_once(lambda: actions.set_accommodation(learner=learner, by=by, why="Agreed.", other="Aloud"))
    assert learner.accommodations.count() == JournalLine.objects.count() == 6


def test_a_slot_closed_by_six_at_once_is_closed_once(learner):
    cohort, by = CohortFactory(trainees=[learner]), PersonFactory()
    slot, _ = actions.open_slot(group=cohort.group, group_name=cohort.name, by=by)
    all_at_once(lambda: actions.close_slot(slot_id=slot.pk, group=cohort.group, by=by))
    assert JournalLine.objects.filter(verb="supervised slot closed").count() == 1


def test_six_codes_opened_at_once_all_differ(learner):
    cohort, by = CohortFactory(trainees=[learner]), PersonFactory()
    opened = all_at_once(lambda: actions.open_slot(group=cohort.group, group_name=cohort.name, by=by)[1])
    assert len(set(opened)) == Slot.objects.count() == 6


def test_wrong_codes_sent_by_six_at_once_are_counted_to_the_limit(learner, boyle):
    wrong = {"learner": learner, "competency": boyle, "code": "AAAA3333", "now": NOON}
    said = all_at_once(refused(lambda: actions.start_check(**wrong)))
    assert CodeTries.objects.get().wrong == 5
    assert sum("Wait a quarter of an hour" in one for one in said) == 1


def test_a_code_typed_in_six_tabs_at_once_opens_one_check(learner, boyle):
    cohort, by = CohortFactory(trainees=[learner]), PersonFactory()
    actions.set_policy(policy=replace(DEFAULT, supervised=("boyle",)), by=by, why="Agreed.")
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    _, code = actions.open_slot(group=cohort.group, group_name=cohort.name, by=by, now=NOON)
    start = {"learner": learner, "competency": boyle, "code": code, "now": NOON}
    all_at_once(lambda: actions.start_check(**start))
    assert Sitting.objects.get(purpose="check").supervised_by == by.name


def test_a_check_that_six_find_out_of_time_is_held_once(learner, boyle):
    policy = replace(DEFAULT, time_limit_minutes=40)
    actions.set_policy(policy=policy, by=learner, why="Agreed.")
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    attempt = waiting(actions.start_check(learner=learner, competency=boyle, now=NOON))
    form, late = {"answer": right_text(attempt)}, NOON + timedelta(hours=1)
    all_at_once(lambda: actions.answer(learner=learner, attempt_id=attempt.pk, form=form, now=late))
    assert DecisionRecord.objects.get().decided == "held"
    assert Standing.objects.get().holds == 1


@pytest.fixture
def everything(learner):
    met = {"state": "met", "met_on": NOON.date(), "confirmed_on": NOON.date(), "due_on": NOON.date()}
    Standing.objects.bulk_create(Standing(learner=learner, competency=slug, **met) for slug in COMPETENCIES)
    return learner


def test_the_answer_that_decides_the_course_sent_by_six_at_once_renews_each_competency_once(everything):
    sitting = actions.start_course_check(learner=everything, now=NOON)
    give(sitting, "+" * 19)
    attempt = waiting(sitting)
    form = form_for(attempt, right=True)
    all_at_once(lambda: actions.answer(learner=everything, attempt_id=attempt.pk, form=form, now=NOON))
    assert DecisionRecord.objects.filter(decided="renewed").count() == len(COMPETENCIES)
    assert DecisionRecord.objects.filter(decided="met").count() == 1


def test_a_course_check_and_a_short_check_begun_at_once_open_one_of_the_two(everything, boyle):
    turns = iter([True, False] * (AT_ONCE // 2))

    def begin():
        if next(turns):
            return actions.start_course_check(learner=everything, now=NOON)
        return actions.start_check(learner=everything, competency=boyle, now=NOON)

    all_at_once(refused(begin))
    assert Sitting.objects.filter(ended__isnull=True).count() == 1
