"""Two windows, forty phones, a close in the middle: one problem on the wall, one answer from each."""

from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

import pytest
from django.db import connection

from course.classroom import actions
from course.classroom.models import Answer, Showing, Stage
from quizzes.errors import Refused
from quizzes.models import JournalLine
from tests.course.classroom.conftest import Class, right, slip, wrong

pytestmark = pytest.mark.django_db(transaction=True)
AT_ONCE = 6


def all_at_once(*deeds):
    """Run the deeds in threads that set off together, each with a connection of its own."""
    together = Barrier(len(deeds))

    def run(deed):
        try:
            together.wait(timeout=20)
            return deed()
        except Refused as refusal:
            return str(refusal)
        finally:
            connection.close()

    with ThreadPoolExecutor(len(deeds)) as pool:
        return list(pool.map(run, deeds))


def test_a_problem_put_up_from_six_windows_at_once_is_put_up_once(transactional_db):
    room = Class()
    all_at_once(*[room.put_up] * AT_ONCE)
    assert Showing.objects.count() == 1
    assert JournalLine.objects.count() == 1


def test_the_same_answer_sent_by_six_at_once_is_kept_once(transactional_db):
    room = Class()
    form = right(room.put_up())
    all_at_once(*[lambda: room.answer(0, form)] * AT_ONCE)
    assert Answer.objects.get().verdict == "right"
    assert room.showing.answered == 1


def test_different_answers_from_six_windows_leave_one_whole_answer(transactional_db):
    room = Class()
    showing = room.put_up()
    forms = [right(showing), slip(showing), wrong(showing)] * 2
    all_at_once(*[lambda form=form: room.answer(0, form) for form in forms])
    kept = Answer.objects.get()
    expected = {"right": right, "slip": slip, "wrong": wrong}[kept.verdict](showing)
    assert kept.typed == expected["answer"]
    assert room.showing.answered == 1


def test_forty_phones_at_once_are_all_kept_and_counted(transactional_db):
    room = Class(size=40)
    form = right(room.put_up())
    all_at_once(*[lambda n=n: room.answer(n, form) for n in range(40)])
    assert Answer.objects.count() == room.showing.answered == 40


def test_what_arrives_after_the_close_is_told_so_and_never_counted(transactional_db):
    room = Class(size=12)
    showing = room.put_up()
    form = right(showing)
    answers = [lambda n=n: room.answer(n, form) for n in range(12)]
    said = all_at_once(*answers[:6], lambda: room.move("closed"), *answers[6:])
    refused = [one for one in said if isinstance(one, str)]
    assert all("closed before your answer" in one for one in refused)
    assert Answer.objects.count() == room.showing.answered == 12 - len(refused)
    assert room.showing.stage == "closed"


def test_a_step_clicked_in_six_windows_at_once_is_one_step(transactional_db):
    room = Class()
    showing = room.put_up()
    room.move("closed", "spread")
    deed = {"cohort": room.cohort, "showing_id": showing.pk, "number": 1}
    all_at_once(*[lambda: actions.show_step(**deed)] * AT_ONCE)
    assert room.showing.steps == 1


def test_a_problem_closed_and_taken_down_at_once_ends_down(transactional_db):
    room = Class()
    deed = {"cohort": room.cohort, "showing_id": room.put_up().pk, "by": room.instructor}
    all_at_once(*[lambda to=to: actions.move(to=to, **deed) for to in (Stage.CLOSED, Stage.DOWN) * 3])
    assert [one.stage for one in Showing.objects.all()] == [Stage.DOWN]
