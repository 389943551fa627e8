"""Every deed, through the one function that does it."""

from datetime import date

import pytest

from course.demo.factories import CohortFactory
from quizzes import actions
from quizzes.errors import Refused
from quizzes.models import Attempt, DecisionRecord, JournalLine, Sitting, Standing
from tests.quizzes.conftest import NOON, give, right_text, waiting, wrong_text


def standing_of(learner):
    return Standing.objects.get(learner=learner, competency="boyle")


def check(learner, boyle):
    return actions.start_check(learner=learner, competency=boyle, now=NOON)


def test_starting_practice_twice_leaves_one_sitting_with_one_problem(learner, boyle):
    first = actions.start_practice(learner=learner, competency=boyle)
    assert actions.start_practice(learner=learner, competency=boyle) == first
    assert first.attempts.count() == 1


def test_a_practice_answer_is_marked_and_the_next_problem_waits(learner, boyle):
    sitting = actions.start_practice(learner=learner, competency=boyle)
    outcome = actions.answer(
        learner=learner, attempt_id=waiting(sitting).pk, form={"answer": right_text(waiting(sitting))}
    )
    assert outcome.attempt.verdict == "right"
    assert waiting(sitting).number == 2


def test_three_right_in_a_row_open_the_check_and_two_do_not(learner, boyle):
    sitting = actions.start_practice(learner=learner, competency=boyle)
    give(sitting, "++-++")
    assert standing_of(learner).state == "practising"
    with pytest.raises(Refused, match="1 to go"):
        actions.start_check(learner=learner, competency=boyle)
    give(sitting, "+")
    assert standing_of(learner).state == "ready"


def test_text_that_cannot_be_read_costs_nothing(learner, boyle):
    sitting = actions.start_practice(learner=learner, competency=boyle)
    give(sitting, "++")
    outcome = actions.answer(learner=learner, attempt_id=waiting(sitting).pk, form={"answer": "forty"})
    assert outcome.trouble
    assert not outcome.attempt.is_answered
    assert standing_of(learner).streak == 2


def test_a_known_slip_is_named_with_what_mends_it(learner, boyle):
    attempt = waiting(actions.start_practice(learner=learner, competency=boyle))
    slip = attempt.key["slips"][0]
    typed = f"{(slip['low'] + slip['high']) / 2:.6g} {attempt.key['unit']}"
    marked = actions.answer(learner=learner, attempt_id=attempt.pk, form={"answer": typed}).attempt
    assert (marked.verdict, marked.slip, marked.slip_label) == ("slip", slip["name"], slip["label"])
    assert marked.mend


def test_an_answer_sent_twice_counts_once_and_the_first_stands(learner, boyle):
    sitting = actions.start_practice(learner=learner, competency=boyle)
    attempt = waiting(sitting)
    actions.answer(learner=learner, attempt_id=attempt.pk, form={"answer": right_text(attempt)})
    again = actions.answer(learner=learner, attempt_id=attempt.pk, form={"answer": wrong_text(attempt)})
    assert not again.counted
    assert again.attempt.verdict == "right"
    assert standing_of(learner).practised == 1


def test_anothers_attempt_is_not_found(learner, stranger, boyle):
    attempt = waiting(actions.start_practice(learner=learner, competency=boyle))
    with pytest.raises(Attempt.DoesNotExist):
        actions.answer(learner=stranger, attempt_id=attempt.pk, form={"answer": "1 ft3"})


def test_the_numbers_do_not_come_again(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle), "+-" * 30)
    dealt = list(Attempt.objects.values_list("family", "place"))
    assert len(dealt) == len(set(dealt)) == 61


def test_ten_right_meet_the_competency_and_leave_a_record(ready, boyle):
    sitting = check(ready, boyle)
    give(sitting, "+" * 10)
    row, decision = standing_of(ready), DecisionRecord.objects.get()
    assert (row.state, row.met_on, row.due_on) == ("met", date(2026, 3, 2), date(2027, 3, 2))
    assert (decision.decided, decision.score, decision.rule["target"]) == ("met", 10, 10)
    assert decision.evidence == list(sitting.attempts.order_by("number").values_list("pk", flat=True))
    assert JournalLine.objects.first().verb == "check met"


def test_a_check_ends_with_the_answer_that_decides_it(ready, boyle):
    sitting = check(ready, boyle)
    give(sitting, "--")
    sitting.refresh_from_db()
    assert (sitting.outcome, sitting.score) == ("held", -6)
    assert not sitting.attempts.filter(answered_at__isnull=True).exists()


def test_after_a_hold_practice_opens_a_check_with_a_higher_mark(ready, boyle):
    give(check(ready, boyle), "--")
    with pytest.raises(Refused, match="3 to go"):
        actions.start_check(learner=ready, competency=boyle)
    give(actions.start_practice(learner=ready, competency=boyle), "+++")
    again = check(ready, boyle)
    assert (again.decision_rule.target, again.decision_rule.maximum, again.score) == (12, 36, 0)


def held_three_times(ready, boyle):
    for _ in range(3):
        give(actions.start_practice(learner=ready, competency=boyle), "+++")
        give(check(ready, boyle), "--")
    give(actions.start_practice(learner=ready, competency=boyle), "+++")


def test_a_third_hold_waits_for_an_instructor_who_gives_a_reason(ready, stranger, boyle):
    held_three_times(ready, boyle)
    with pytest.raises(Refused, match="instructor"):
        actions.start_check(learner=ready, competency=boyle)
    with pytest.raises(Refused, match="reason"):
        actions.open_check_again(learner=ready, competency=boyle, by=stranger, why=" ")
    with pytest.raises(Refused, match="their own"):
        actions.open_check_again(learner=ready, competency=boyle, by=ready, why="please")
    actions.open_check_again(
        learner=ready, competency=boyle, by=stranger, why="Worked through it at the quay."
    )
    assert check(ready, boyle).decision_rule.target == 16


def test_practice_is_shut_while_the_check_is_open(ready, boyle):
    check(ready, boyle)
    with pytest.raises(Refused, match="Finish it first"):
        actions.start_practice(learner=ready, competency=boyle)


def test_starting_a_check_twice_goes_on_with_the_same_question(ready, boyle):
    sitting = check(ready, boyle)
    assert check(ready, boyle) == sitting
    assert Sitting.objects.filter(purpose="check").count() == 1
    assert sitting.attempts.count() == 1


def test_a_check_keeps_its_units_when_the_learner_changes_theirs(ready, boyle):
    sitting = check(ready, boyle)
    ready.system = "metric"
    ready.save()
    give(sitting, "+")
    assert waiting(sitting).system == "us"


def test_a_met_competency_is_checked_again_only_when_it_falls_due(ready, boyle):
    give(check(ready, boyle), "+" * 10)
    Standing.objects.update(due_on=date(2999, 1, 1))
    with pytest.raises(Refused, match="falls due"):
        actions.start_check(learner=ready, competency=boyle)
    Standing.objects.update(due_on=date(2026, 4, 1))
    assert check(ready, boyle).decision_rule.target == 10


def test_no_two_trainees_of_a_cohort_meet_the_same_numbers(learner, stranger, boyle):
    CohortFactory(trainees=[learner, stranger])
    for person in (learner, stranger):
        give(actions.start_practice(learner=person, competency=boyle), "+-" * 15)
    dealt = list(Attempt.objects.values_list("family", "place"))
    assert len(dealt) == len(set(dealt)) == 62
