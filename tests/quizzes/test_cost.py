"""The number of queries does not grow with the length of a check or of a life."""

from django.db import connection
from django.test.utils import CaptureQueriesContext

from quizzes import actions
from tests.quizzes.conftest import NOON, give, right_text, waiting


def queries_for(learner, sitting):
    attempt = waiting(sitting)
    typed = right_text(attempt)
    with CaptureQueriesContext(
        connection,
    ) as captured:
        actions.answer(learner=learner, attempt_id=attempt.pk, form={"answer": typed}, now=NOON)
    return len(captured)


def test_a_practice_answer_costs_the_same_at_the_second_and_the_two_hundredth(learner, boyle):
    sitting = actions.start_practice(learner=learner, competency=boyle, now=NOON)
    give(sitting, "++++")
    early = queries_for(learner, sitting)
    give(sitting, "+-" * 100)
    assert queries_for(learner, sitting) == early <= 12


def test_a_check_answer_costs_the_same_at_question_three_and_question_twenty(ready, boyle):
    sitting = actions.start_check(learner=ready, competency=boyle, now=NOON)
    give(sitting, "++")
    early = queries_for(ready, sitting)
    give(sitting, "++++-+++-+++-++++"[:16])
    assert queries_for(ready, sitting) == early <= 13
