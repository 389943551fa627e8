"""Who is certified: simulated trainees through the site's own deeds, and very many through its rule alone."""

import os
from math import exp, log
from random import Random

import pytest
from scipy.stats import beta

from quizzes.competencies import COMPETENCIES
from quizzes.evidence import averaged, lifetime_bound, met_chance, wobbling
from quizzes.papers import planned
from quizzes.policy import CONFIRMATION
from quizzes.rules import RULES, Outcome, decide
from tests.benchmarks.trainees import Trainee, in_a_jump, smoothly, steady, with_bad_days

pytestmark = [pytest.mark.benchmark, pytest.mark.django_db]

MANY = int(os.environ.get("TRAINEES", "8"))
"""Trainees of each sort who go through the database; figures for the record are taken with TRAINEES=200."""
THRONG = 20_000
"""Trainees of each sort who are decided on by the site's rule on answers dealt in its blocks."""
RULE = RULES["standard"]
BOUND = 0.048


def interval(hits, of, level=0.99):
    """Clopper and Pearson, Biometrika 26 (1934)."""
    low = beta.ppf((1 - level) / 2, hits, of - hits + 1) if hits else 0.0
    high = beta.ppf((1 + level) / 2, hits + 1, of - hits) if hits < of else 1.0
    return low, high


@pytest.fixture
def report(say):
    def told(name, hits, of, beside=""):
        low, high = interval(hits, of)
        say(f"{name}: {hits} of {of}, {100 * low:.1f} to {100 * high:.1f} % {beside}")
        return low, high

    return told


def many(chance_of, do):
    """The outcome of each of MANY trainees, each with chances of their own."""
    found = []
    for number in range(MANY):
        rng = Random(f"trainee {number}")
        found.append(do(Trainee(chance_of(rng), rng)))
    return found


KINDS = COMPETENCIES["gauge-absolute"].families


def is_met(rule, rng, share):
    """One try by the rule on a paper as it is dealt, a few questions at a time until it is decided."""
    seed, answers = int(rng.random() * 2**40), []
    while len(answers) < rule.maximum:
        places = range(len(answers), min(len(answers) + 5, rule.maximum))
        answers += [(planned(seed, {"": KINDS}, place), rng.random() < share) for place in places]
        if (outcome := decide(rule, KINDS, answers).outcome) is not Outcome.UNDECIDED:
            return outcome is Outcome.MET
    return False


def throng(certified):
    """How many of very many trainees are certified; each has a generator of their own."""
    return sum(certified(Random(f"throng {number}")) for number in range(THRONG))


def day(rng, middle, spread):
    """The chance of a right answer on one day: its log-odds are normal round the middle."""
    return 1 / (1 + exp(-rng.gauss(middle, spread)))


def test_of_twenty_thousand_stuck_at_six_in_ten_fewer_than_the_bound_are_ever_met(report):
    met = throng(lambda rng: any(is_met(RULE.after(holds), rng, 0.6) for holds in range(6)))
    _, high = report("throng stuck at 0.60, six tries: met", met, THRONG, "(proof bound 4.8 %)")
    assert high <= BOUND


def test_of_twenty_thousand_with_bad_days_fewer_than_four_in_a_hundred_are_confirmed(report):
    """Three tries, each on a day of its own, and the confirmation on another."""
    middle = log(0.6 / 0.4)

    def certified(rng):
        met = any(is_met(RULE.after(holds), rng, day(rng, middle, 0.5)) for holds in range(3))
        return met and is_met(CONFIRMATION, rng, day(rng, middle, 0.5))

    hits = throng(certified)
    _, high = report("throng with bad days, three tries and confirmation: met", hits, THRONG, "(asked 4 %)")
    assert high <= 0.04


def test_of_twenty_thousand_at_nineteen_in_twenty_nearly_all_are_met_at_once(report):
    met = throng(lambda rng: is_met(RULE, rng, 0.95))
    low, _ = report("throng steady at 0.95, first try: met", met, THRONG, "(asked 99 %)")
    assert low >= 0.99


def test_who_is_stuck_at_six_in_ten_is_hardly_ever_met_however_often_they_try(report):
    met = many(lambda rng: steady(0.6), lambda trainee: trainee.try_until_met(6) > 0)
    low, _ = report("stuck at 0.60, six tries: met", sum(met), MANY, "(proof bound 4.8 %)")
    assert low <= lifetime_bound(RULE, 0.6) <= BOUND


def test_who_is_stuck_at_seven_in_ten_is_told_apart_by_the_exact_figure(report):
    met = many(lambda rng: steady(0.7), lambda trainee: trainee.try_until_met(1) > 0)
    exact = met_chance(RULE, 0.7, first=2)
    low, high = report("stuck at 0.70, first try: met", sum(met), MANY, f"(exactly {100 * exact:.1f} %)")
    assert low <= exact <= high


def test_who_commands_it_is_met_at_the_first_try_in_a_dozen_questions(report, say):
    lengths = []

    def first_try(trainee):
        met = trainee.try_until_met(1) > 0
        lengths.extend(trainee.lengths)
        return met

    met = many(lambda rng: steady(0.95), first_try)
    _, high = report("steady at 0.95, first try: met", sum(met), MANY, "(asked 99 %)")
    mean = sum(lengths) / len(lengths)
    say(f"  questions to a check: {mean:.1f} on average (asked 13 at most)")
    assert high >= 0.99 <= met_chance(RULE, 0.95, first=2)
    assert mean <= 13 + 3 * 4 / MANY**0.5  # four questions' spread, three standard errors


def test_bad_days_are_caught_by_the_confirmation_on_another_day(report):
    exact = averaged(CONFIRMATION, wobbling(0.6, 0.5))

    def certified(trainee):
        return trainee.try_until_met(3) > 0 and trainee.confirm()

    met = many(lambda rng: with_bad_days(0.6, 0.5, rng), certified)
    low, _ = report("0.60 with bad days of 0.5 logit, three tries and confirmation: met", sum(met), MANY)
    assert low <= 0.04
    assert exact < 0.35


@pytest.mark.parametrize(
    ("name", "chance"),
    [("smoothly", smoothly(0.5, 0.97, 6)), ("in a jump", in_a_jump(0.5, 0.97, 6))],
)
def test_who_learns_is_met_in_the_end(report, name, chance):
    met = many(lambda rng: chance, lambda trainee: trainee.try_until_met(6) > 0)
    low, high = report(f"learning {name}, six tries: met", sum(met), MANY)
    assert high >= 0.98
    assert low >= 0.5
