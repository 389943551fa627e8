"""What was asked, answered and decided stays as it was written."""

import pytest
from django.db import IntegrityError, transaction

from quizzes import actions
from quizzes.models import Attempt, DecisionRecord, JournalLine, Sitting, Standing, journal
from quizzes.models.appendonly import WrittenOnce
from quizzes.models.attempt import AnsweredOnce
from tests.quizzes.conftest import NOON, give, waiting


@pytest.fixture
def answered(learner, boyle):
    sitting = actions.start_practice(learner=learner, competency=boyle, now=NOON)
    give(sitting, "+")
    return sitting.attempts.get(number=1)


def test_an_answered_attempt_cannot_be_changed_or_removed(answered):
    assert Attempt.objects.filter(pk=answered.pk).update(verdict="wrong") == 0
    with pytest.raises(AnsweredOnce):
        answered.save()
    with pytest.raises(AnsweredOnce):
        answered.delete()
    with pytest.raises(AnsweredOnce):
        Attempt.objects.all().delete()


def test_an_attempt_is_marked_from_what_it_stores(answered, monkeypatch):
    # The family may be gone or changed years later; the stored key still rebuilds the marking.
    key = answered.marking_key
    assert key.low <= key.answer <= key.high
    assert {slip.name for slip in key.slips} == {slip["name"] for slip in answered.key["slips"]}


def test_what_is_shown_before_marking_holds_no_key(learner, boyle):
    attempt = waiting(actions.start_practice(learner=learner, competency=boyle))
    assert not {"answer", "low", "high", "slips", "steps", "sense"} & set(attempt.shown)


def test_journal_lines_and_decisions_are_written_once(learner):
    line = journal.write(actor=learner, verb="test")
    for change in (line.save, line.delete, JournalLine.objects.all().delete):
        with pytest.raises(WrittenOnce):
            change()
    with pytest.raises(WrittenOnce):
        JournalLine.objects.update(verb="other")
    with pytest.raises(WrittenOnce):
        DecisionRecord.objects.all().delete()


def test_a_journal_line_keeps_the_name_of_the_day(learner):
    line = journal.write(actor=learner, verb="test", subject=learner)
    learner.name = "Somebody Else"
    learner.save()
    line.refresh_from_db()
    assert (line.actor_name, line.subject_name) == ("Mara Quill", "Mara Quill")


def test_the_database_keeps_one_open_sitting_and_one_open_attempt(learner, boyle):
    sitting = actions.start_practice(learner=learner, competency=boyle)
    attempt = waiting(sitting)
    with pytest.raises(IntegrityError), transaction.atomic():
        Sitting.objects.create(
            learner=learner, competency="boyle", purpose="practice", system="us", seed=1, began=NOON
        )
    attempt.pk, attempt.number, attempt._state.adding = None, 2, True
    with pytest.raises(IntegrityError), transaction.atomic():
        attempt.save()


def test_the_database_refuses_a_met_standing_without_a_day(learner):
    with pytest.raises(IntegrityError), transaction.atomic():
        Standing.objects.create(learner=learner, competency="boyle", state="met")
