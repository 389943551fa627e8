"""Every deed, through the one function that does it."""

from datetime import date, timedelta
from random import Random

import pytest

from course.demo.factories import CohortFactory
from course.demo.learners import SimulatedLearner
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.models import Attempt, DecisionRecord, JournalLine, Sitting, Standing
from tests.quizzes.conftest import NOON, give, right_text, waiting, wrong_text


def standing_of(learner):
    return Standing.objects.get(learner=learner, competency="boyle")


def check(learner, boyle, *, days=0):
    return actions.start_check(learner=learner, competency=boyle, now=NOON + timedelta(days=days))


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


def test_after_a_hold_practice_and_a_night_open_a_check_with_a_higher_mark(ready, boyle):
    give(check(ready, boyle), "--")
    with pytest.raises(Refused, match="3 to go"):
        check(ready, boyle, days=1)
    give(actions.start_practice(learner=ready, competency=boyle), "+++")
    with pytest.raises(Refused, match="rests until 3 March 2026"):
        check(ready, boyle)
    again = check(ready, boyle, days=1)
    assert (again.decision_rule.target, again.decision_rule.maximum, again.score) == (12, 36, 0)


def held_three_times(ready, boyle):
    for day in range(3):
        give(actions.start_practice(learner=ready, competency=boyle), "+++")
        sitting = check(ready, boyle, days=day)
        give(sitting, "--", NOON + timedelta(days=day))
    give(actions.start_practice(learner=ready, competency=boyle), "+++")


def test_a_third_hold_waits_for_an_instructor_who_gives_a_reason(ready, stranger, boyle):
    held_three_times(ready, boyle)
    with pytest.raises(Refused, match="instructor"):
        check(ready, boyle, days=9)
    with pytest.raises(Refused, match="reason"):
        actions.open_check_again(learner=ready, competency=boyle, by=stranger, why=" ")
    with pytest.raises(Refused, match="their own"):
        actions.open_check_again(learner=ready, competency=boyle, by=ready, why="please")
    actions.open_check_again(
        learner=ready, competency=boyle, by=stranger, why="Worked through it at the quay."
    )
    assert check(ready, boyle, days=2).decision_rule.target == 16


def test_an_instructor_may_waive_the_rest_and_the_practice_after_a_hold(ready, stranger, boyle):
    with pytest.raises(Refused, match="not held"):
        actions.open_check_again(learner=ready, competency=boyle, by=stranger, why="No need.")
    give(check(ready, boyle), "--")
    actions.open_check_again(learner=ready, competency=boyle, by=stranger, why="A slip of the pen, seen.")
    assert check(ready, boyle).decision_rule.target == 12


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


def confirmed(ready, boyle, marks="+" * 6):
    give(check(ready, boyle), "+" * 10)
    sitting = check(ready, boyle, days=1)
    give(sitting, marks, NOON + timedelta(days=1))
    return sitting


def test_what_is_met_is_confirmed_on_another_day_by_a_short_check(ready, boyle):
    give(check(ready, boyle), "+" * 10)
    with pytest.raises(Refused, match="from 3 March 2026 on"):
        check(ready, boyle)
    sitting = check(ready, boyle, days=1)
    assert (sitting.purpose, sitting.decision_rule.target) == ("confirmation", 6)
    give(sitting, "+" * 6, NOON + timedelta(days=1))
    assert standing_of(ready).confirmed_on == date(2026, 3, 3)
    assert DecisionRecord.objects.first().decided == "confirmed"


def test_a_confirmation_that_fails_opens_the_competency_for_practice_and_is_no_hold(ready, boyle):
    confirmed(ready, boyle, "--")
    row = standing_of(ready)
    assert (row.state, row.holds, row.met_on, row.due_on) == ("practising", 0, None, None)
    assert DecisionRecord.objects.first().decided == "reopened"


def test_what_has_fallen_due_is_renewed_by_the_short_check(ready, boyle):
    confirmed(ready, boyle)
    with pytest.raises(Refused, match="falls due"):
        check(ready, boyle, days=200)
    sitting = check(ready, boyle, days=330)
    assert sitting.purpose == "refresher"
    give(sitting, "+" * 6, NOON + timedelta(days=330))
    assert standing_of(ready).due_on == date(2028, 1, 26)
    assert DecisionRecord.objects.first().decided == "renewed"


def test_a_review_set_comes_round_and_asks_each_family_once(ready, boyle):
    confirmed(ready, boyle)
    with pytest.raises(Refused, match="No review has come round"):
        actions.start_review(learner=ready, competency=boyle, now=NOON + timedelta(days=2))
    later = NOON + timedelta(days=8)
    sitting = actions.start_review(learner=ready, competency=boyle, now=later)
    give(sitting, "+-", later)
    row, families = standing_of(ready), sitting.attempts.values_list("family", flat=True)
    assert sorted(families) == ["depth-to-volume", "volume-on-ascent"]
    assert (row.reviews, row.review_on, row.state) == (1, later.date() + timedelta(weeks=4), "met")


def test_a_met_competency_can_be_revoked_and_then_waits_for_an_instructor(ready, stranger, boyle):
    confirmed(ready, boyle)
    actions.revoke(learner=ready, competency=boyle, by=stranger, why="The answers were not their own.")
    row = standing_of(ready)
    assert (row.state, row.waits, row.met_on) == ("held", True, None)
    assert DecisionRecord.objects.first().decided == "revoked"


def test_a_grant_needs_a_second_person_and_a_reason(ready, stranger, boyle):
    with pytest.raises(Refused, match="their own"):
        actions.grant(learner=ready, competency=boyle, by=ready, why="I know it.")
    actions.grant(learner=ready, competency=boyle, by=stranger, why="Certified elsewhere, papers seen.")
    assert standing_of(ready).state == "met"
    assert DecisionRecord.objects.first().by_name == "Otto Brandt"


def test_an_oral_or_pool_part_is_signed_off_beside_the_computed_ones(ready, stranger, boyle):
    with pytest.raises(Refused, match="which part"):
        actions.sign_off(learner=ready, competency=boyle, part=" ", by=stranger, why="Seen.")
    entry = actions.sign_off(
        learner=ready, competency=boyle, part="pool", by=stranger, why="Seen on 2 March."
    )
    assert (entry.decided, entry.part, standing_of(ready).state) == ("signed", "pool", "ready")


def test_no_two_trainees_of_a_cohort_meet_the_same_numbers(learner, stranger, boyle):
    CohortFactory(trainees=[learner, stranger])
    for person in (learner, stranger):
        give(actions.start_practice(learner=person, competency=boyle), "+-" * 15)
    dealt = list(Attempt.objects.values_list("family", "place"))
    assert len(dealt) == len(set(dealt)) == 62


def test_a_check_whose_score_is_reached_asks_for_what_is_owed(learner):
    Standing.objects.create(learner=learner, competency="boyle-at-work", state="ready", streak=3)
    sitting = check(learner, COMPETENCIES["boyle-at-work"])
    hand = SimulatedLearner(learner, learner, Random(3))
    for sign in "+++++++++-++++":
        attempt = waiting(sitting)
        form = hand.fill_in(attempt, right=sign == "+")
        actions.answer(learner=learner, attempt_id=attempt.pk, form=form, now=NOON)
    sitting.refresh_from_db()
    assert (sitting.score, sitting.ended) == (10, None)
    assert waiting(sitting).family == sitting.attempts.get(number=10).family
