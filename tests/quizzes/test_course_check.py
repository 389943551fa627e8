"""The check over the whole course: open when all is met, renews all or loses nothing, and asks all alike."""

from collections import Counter
from dataclasses import replace
from datetime import date, timedelta
from random import Random

import pytest
from django.urls import reverse
from hypothesis import given
from hypothesis import strategies as st

from course.demo.factories import PersonFactory
from quizzes import actions, evidence, queries
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.models import DecisionRecord, JournalLine, Sitting, Standing
from quizzes.papers import planned, shuffled
from quizzes.rules import RULES, Outcome, decide, owed
from quizzes.subjects import WHOLE, kind_in, kinds_of, paper_of, whole_course
from tests.quizzes.conftest import NOON, form_for, give, waiting

RULE = RULES["course"]
PAPER = {"one": ["a", "b", "c"], "two": ["d"], "three": ["e", "f"]}
LONG_AGO = date(2025, 1, 15)


@pytest.fixture
def everything(learner):
    """A learner who met and confirmed every competency, lapsed by now."""
    met = {"state": "met", "met_on": LONG_AGO, "confirmed_on": LONG_AGO, "due_on": date(2026, 1, 15)}
    Standing.objects.bulk_create(Standing(learner=learner, competency=slug, **met) for slug in COMPETENCIES)
    return learner


def begin(learner, *, days=0):
    return actions.start_course_check(learner=learner, now=NOON + timedelta(days=days))


def stands(learner):
    return {row.competency: row for row in Standing.objects.filter(learner=learner)}


@given(seed=st.integers(0, 2**40), block=st.integers(0, 30))
def test_each_block_asks_every_competency_once(seed, block):
    places = range(block * 3, block * 3 + 3)
    asked = [kind_in(PAPER, planned(seed, PAPER, place)) for place in places]
    assert sorted(asked) == sorted(PAPER)


@given(seed=st.integers(0, 2**40))
def test_the_families_of_a_competency_come_in_turn(seed):
    asked = [planned(seed, PAPER, place) for place in range(18)]
    assert Counter(asked) == {"a": 2, "b": 2, "c": 2, "d": 6, "e": 3, "f": 3}
    firsts = [one for one in asked if one in PAPER["one"]]
    assert sorted(firsts[:3]) == sorted(firsts[3:]) == PAPER["one"]


def test_the_order_of_the_competencies_differs_from_block_to_block():
    blocks = {
        tuple(kind_in(PAPER, planned(5, PAPER, at + place)) for place in range(3)) for at in range(0, 60, 3)
    }
    assert len(blocks) == 6


def test_a_family_of_two_competencies_is_asked_under_the_first_alone():
    paper = paper_of(WHOLE)
    families = [family for asked in paper.values() for family in asked]
    assert list(paper) == kinds_of(paper) == list(COMPETENCIES)
    assert len(families) == len(set(families))


def test_it_opens_only_when_every_competency_has_been_met(everything):
    Standing.objects.filter(learner=everything, competency="buoyancy").update(state="practising")
    with pytest.raises(Refused, match="Not met at present: Buoyancy"):
        begin(everything)
    Standing.objects.filter(learner=everything, competency="buoyancy").update(state="met")
    sitting = begin(everything)
    assert (sitting.purpose, sitting.decision_rule, sitting.title) == ("course", RULE, "The whole course")
    assert begin(everything) == sitting


def test_met_it_renews_every_competency_with_the_answers_about_it(everything):
    sitting = begin(everything)
    give(sitting, "+" * 20)
    sitting.refresh_from_db()
    renewed = DecisionRecord.objects.filter(decided="renewed")
    assert (sitting.outcome, renewed.count()) == ("met", len(COMPETENCIES))
    rested = [pk for entry in renewed for pk in entry.evidence]
    assert sorted(rested) == sorted(sitting.attempts.values_list("pk", flat=True))
    assert renewed.get(competency="boyle").why.startswith("Renewed by the course check.")
    rows = stands(everything)
    assert {rows[slug].due_on for slug in COMPETENCIES} == {date(2027, 3, 2)}
    assert {rows[slug].confirmed_on for slug in COMPETENCIES} == {LONG_AGO}
    assert (rows[WHOLE].state, rows[WHOLE].due_on) == ("ready", None)
    assert len(JournalLine.objects.first().details["renewed"]) == len(COMPETENCIES)


def test_held_it_loses_nothing_rests_a_night_and_asks_more_the_next_time(everything):
    before = {slug: (row.state, row.due_on) for slug, row in stands(everything).items()}
    sitting = begin(everything)
    give(sitting, "-" * len(COMPETENCIES))
    sitting.refresh_from_db()
    after = stands(everything)
    assert (sitting.outcome, after.pop(WHOLE).holds) == ("held", 1)
    assert {slug: (row.state, row.due_on) for slug, row in after.items()} == before
    with pytest.raises(Refused, match="rests until 3 March 2026"):
        begin(everything)
    assert begin(everything, days=1).decision_rule.target == 23


def test_the_rest_after_a_hold_of_the_course_check_may_be_waived_like_any_other(everything):
    give(begin(everything), "-" * len(COMPETENCIES))
    whole = {"learner": everything, "competency": whole_course(), "by": PersonFactory(), "now": NOON}
    entry = actions.waive(**whole, what="rest", why="The boat leaves tomorrow.")
    assert (entry.title, entry.part) == ("The whole course", "the rest after a hold")
    assert begin(everything).decision_rule.target == 23


def test_a_competency_answered_wrong_is_asked_again_before_the_course_is_met(everything):
    sitting = begin(everything)
    give(sitting, "-" + "+" * 23)
    while Sitting.objects.get(pk=sitting.pk).ended is None:
        give(sitting, "+")
    wrong, asks = sitting.attempts.get(number=1), sitting.asks
    about = [
        one for one in sitting.attempts.all() if kind_in(asks, one.family) == kind_in(asks, wrong.family)
    ]
    assert [about[0].is_right, about[-1].is_right] == [False, True]
    assert Sitting.objects.get(pk=sitting.pk).outcome == "met"


def test_what_is_owed_is_the_family_that_went_wrong(everything):
    sitting = begin(everything)
    give(sitting, "+" * 19)
    give(sitting, "-" + "+" * 5)
    sitting.refresh_from_db()
    assert (sitting.score, sitting.ended) == (20, None)
    assert waiting(sitting).family == sitting.attempts.get(number=20).family
    give(sitting, "+")
    assert Sitting.objects.get(pk=sitting.pk).outcome == "met"


def test_what_was_revoked_while_it_ran_is_not_renewed(everything):
    sitting, teacher = begin(everything), PersonFactory()
    give(sitting, "+" * 19)
    actions.revoke(learner=everything, competency=COMPETENCIES["boyle"], by=teacher, why="Not their own.")
    give(sitting, "+")
    assert stands(everything)["boyle"].state == "held"
    assert DecisionRecord.objects.filter(decided="renewed").count() == len(COMPETENCIES) - 1


def test_one_check_at_a_time_and_no_practice_beside_it(everything, boyle):
    sitting = begin(everything)
    with pytest.raises(Refused, match="Your check of The whole course is open"):
        actions.start_check(learner=everything, competency=boyle, now=NOON)
    with pytest.raises(Refused, match="Finish it first"):
        actions.start_practice(learner=everything, competency=boyle, now=NOON)
    Sitting.objects.filter(pk=sitting.pk).update(ended=NOON, outcome="held")
    actions.start_check(learner=everything, competency=boyle, now=NOON)
    with pytest.raises(Refused, match="Your check of Boyle's law is open"):
        begin(everything)


def test_boards_and_lists_of_competencies_do_not_see_the_row_of_the_whole_course(everything):
    give(begin(everything), "-" * len(COMPETENCIES))
    assert WHOLE in stands(everything)
    assert list(queries.standings_for(everything)) == list(COMPETENCIES)


def test_the_pages_tell_the_rule_ask_and_explain_the_end(client, everything):
    client.force_login(everything)
    url = reverse("quizzes:course-check")
    assert "every competency is renewed" in client.get(url).text
    assert url in client.get(reverse("quizzes:record")).text
    client.post(reverse("quizzes:course-check-start"))
    attempt = client.get(url).context["attempt"]
    form = form_for(attempt, right=True)
    answered = client.post(reverse("quizzes:answer", args=[attempt.pk]), form, follow=True)
    assert "Question 2" in answered.text
    give(attempt.sitting, "+" * 19)
    ended = client.get(reverse("quizzes:sitting", args=[attempt.sitting_id])).text
    assert "Every competency is renewed from that day" in ended
    assert "Renewed by the course check" in client.get(reverse("quizzes:record")).text


def played(chances, rng):
    """One course check of a trainee with these chances, by the real decision and the real order of asking."""
    kinds, answers, deck, decision = list(chances), [], [], decide(RULE, list(chances), [])
    while decision.outcome is Outcome.UNDECIDED:
        at = len(answers) % len(kinds)
        deck = shuffled(rng, kinds) if at == 0 else deck
        kind = owed(RULE, kinds, answers, decision.score) or deck[at]
        answers.append((kind, rng.random() < chances[kind]))
        decision = decide(RULE, kinds, answers)
    return decision.outcome is Outcome.MET, len(answers)


def shares(chances, tries=1500):
    games = [played(chances, rng) for rng in [Random(7)] for _ in range(tries)]
    return sum(met for met, _ in games) / tries, sum(asked for _, asked in games) / tries


@pytest.mark.parametrize("right", [0.7, 0.9, 0.95])
def test_what_the_rule_promises_agrees_with_checks_played_out(right):
    met, mean = shares(dict.fromkeys(COMPETENCIES, right))
    exact = evidence.course_of(RULE, right, len(COMPETENCIES))
    error = (exact.met * (1 - exact.met) / 1500) ** 0.5
    # The exact figure leaves out that what went wrong is answered right again, which can only lower it.
    assert exact.met - 0.06 - 3 * error <= met <= exact.met + 3 * error + 1e-3
    assert mean == pytest.approx(exact.mean, abs=1.5)


def test_it_promises_what_the_page_says():
    able, lost = (evidence.course_of(RULE, right, len(COMPETENCIES)) for right in (0.95, 0.7))
    assert able.met > 0.98
    assert able.mean < 27
    assert lost.met < 0.01
    assert evidence.lifetime_bound(RULE, 0.7) < 0.03


def test_one_competency_forgotten_altogether_is_never_met_and_half_forgotten_slips_through_at_times():
    sure = dict.fromkeys(COMPETENCIES, 0.97)
    assert shares(sure | {"buoyancy": 0.0}, 300)[0] == 0.0
    assert shares(sure | {"buoyancy": 0.3})[0] == pytest.approx(0.76, abs=0.05)


def test_it_may_be_supervised_and_timed_like_any_other(everything):
    policy = replace(actions.checks.in_force(), supervised=(WHOLE,), course_time_limit_minutes=90)
    actions.set_policy(policy=policy, by=everything, why="As agreed.")
    with pytest.raises(Refused, match="supervised"):
        begin(everything)
    policy = replace(policy, supervised=())
    actions.set_policy(policy=policy, by=everything, why="Eased.")
    assert begin(everything).ends_at == NOON + timedelta(minutes=90)
