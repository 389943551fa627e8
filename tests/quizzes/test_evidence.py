"""What a rule promises, computed a second way and against what is published.

W45 is A. Wald, "Sequential Tests of Statistical Hypotheses", Annals of Mathematical Statistics 16, 1945.
"""

from dataclasses import replace
from math import log
from random import Random

import numpy as np
import pytest
from scipy import optimize, stats

from quizzes import evidence
from quizzes.evidence import course_of, met_chance, met_within
from quizzes.rules import RULES, Rule

STANDARD, STRICTER = RULES["standard"], RULES["stricter"]


def chain(rule: Rule, right: float) -> tuple[list[int], np.ndarray]:
    """One question as a matrix over the scores; those at or past a limit stay where they are."""
    scores = list(range(rule.floor - rule.loss, rule.target + 1))
    step = np.zeros((len(scores), len(scores)))
    for row, score in enumerate(scores):
        if score <= rule.floor or score >= rule.target:
            step[row, row] = 1.0
            continue
        step[row, scores.index(score + 1)] += right
        step[row, scores.index(score - rule.loss)] += 1 - right
    return scores, step


def by_matrix_powers(rule: Rule, right: float, *, score: int = 0, asked: int = 0) -> float:
    """The chance of "met" by an independent calculation, from a score after so many questions."""
    scores, step = chain(rule, right)
    return float(np.linalg.matrix_power(step, rule.maximum - asked)[scores.index(score), -1])


def mean_by_matrix_powers(rule: Rule, right: float) -> float:
    """The mean length where nothing ends a check but a limit or the last question."""
    scores, step = chain(rule, right)
    between = [row for row, score in enumerate(scores) if rule.floor < score < rule.target]
    powers = [np.linalg.matrix_power(step, count) for count in range(rule.maximum)]
    return float(sum(power[scores.index(0), between].sum() for power in powers))


@pytest.mark.parametrize("rule", [STANDARD, STRICTER], ids=lambda rule: rule.name)
@pytest.mark.parametrize("right", [0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98])
def test_the_chance_of_met_agrees_with_matrix_powers(rule, right):
    assert met_chance(rule, right) == pytest.approx(by_matrix_powers(rule, right), abs=1e-12)


@pytest.mark.parametrize(
    ("rule", "right", "chance"),
    [(STANDARD, 0.6, 0.021), (STANDARD, 0.8, 0.498), (STANDARD, 0.9, 0.929), (STANDARD, 0.95, 0.993),
     (STRICTER, 0.7, 0.017), (STRICTER, 0.95, 0.918), (STRICTER, 0.98, 0.993)],
)  # fmt: skip
def test_the_chance_of_met_is_what_the_trainees_are_told(rule, right, chance):
    assert met_chance(rule, right) == pytest.approx(chance, abs=0.0015)


def test_without_a_lower_limit_the_chance_is_walds_exact_bound():
    # Wald 1945: with steps of +1 the boundary is met exactly, so the chance of ever reaching the target A is
    # rho**A, where rho solves p/rho + (1 - p) rho**w = 1; for w = 3 and p = .60, rho = .69141.
    endless = Rule("endless", "", target=10, loss=3, floor=-400, maximum=4000, rise=0)
    assert met_chance(endless, 0.6) == pytest.approx(0.69141**10, rel=2e-3)


AS_STUDIED = {"standard": STANDARD, "stricter": replace(STRICTER, maximum=39)}
"""The study behind the rules let the stricter one run to 39; no score between 34 and 39 can still be met."""


@pytest.mark.parametrize(
    ("name", "right", "met", "mean"),
    [("standard", 0.6, 0.021, 10.1), ("standard", 0.8, 0.498, 18.8), ("standard", 0.9, 0.929, 15.4),
     ("standard", 0.95, 0.993, 12.4), ("stricter", 0.7, 0.017, 9.4), ("stricter", 0.95, 0.918, 18.1),
     ("stricter", 0.98, 0.993, 15.0)],
)  # fmt: skip
def test_the_table_of_the_study_comes_out_of_matrices_and_stopping_early_only_shortens(
    name, right, met, mean
):
    assert by_matrix_powers(AS_STUDIED[name], right) == pytest.approx(met, abs=0.0006)
    assert mean_by_matrix_powers(AS_STUDIED[name], right) == pytest.approx(mean, abs=0.05)
    saved = mean - course_of(RULES[name], right).mean
    assert -0.05 <= saved <= 1.4  # the study: it saves 0.2 at .90 and 1.4 at .70, and changes no decision


@pytest.mark.parametrize("right", [0.5, 0.6, 0.7, 0.9, 0.95])
def test_walds_approximations_hold_the_exact_figures_between_them(right):
    """W45: with t of p t + (1-p) t**-w = 1 the chance is (1 - t**-B) / (t**A - t**-B), the mean length
    (A chance - B (1 - chance)) / (p - w (1-p)), if the limits are met exactly. A step of -3 passes the lower
    one by two at most, so the truth lies between B and B + 2."""
    endless = Rule("endless", "", target=10, loss=3, floor=-6, maximum=3000, rise=0)
    course = course_of(endless, right)
    t = root(right, 3)
    chances = [(1 - t**-b) / (t**10 - t**-b) for b in (6, 8)]
    drift = right - 3 * (1 - right)
    lengths = sorted((10 * course.met - b * (1 - course.met)) / drift for b in (6, 8))
    assert min(chances) <= course.met <= max(chances)
    assert lengths[0] - 1e-6 <= course.mean <= lengths[1] + 1e-6


def root(right, loss):
    """The other solution of p t + (1-p) t**-w = 1 beside 1."""
    low, high = (1 + 1e-9, 4.0) if right < loss / (loss + 1) else (0.01, 1 - 1e-9)
    return optimize.brentq(lambda t: right * t + (1 - right) * t**-loss - 1, low, high)


PUBLISHED = {
    0.02: 0.964,
    0.04: 0.769,
    0.06: 0.506,
    0.08: 0.291,
    0.10: 0.155,
    0.12: 0.079,
    0.14: 0.039,
    0.16: 0.020,
}


@pytest.mark.parametrize(("rate", "low"), PUBLISHED.items())
def test_a_published_worked_example_of_the_truncated_test_comes_out(rate, low):
    """gsDesign (R), article "Binomial SPRT", safety monitoring: 4 % against 10 %, alpha .04, beta .2, 4 to 75
    patients; the column "low rate" of its table of operating characteristics.

    Its weights 1 and -14.2, lower line 24.3 and upper 46.4 give in whole numbers the limits it tells: no
    event in 25 patients, 1 in 40; or 4 in up to 14, 5 in up to 29. "Right" is a patient without the event.
    """
    gain, loss = log(0.96 / 0.90), log(0.10 / 0.04)
    assert [loss / gain, log(0.96 / 0.2) / gain, log(0.8 / 0.04) / gain] == pytest.approx(
        [14.2, 24.3, 46.4], abs=0.05
    )
    plan = Rule("published", "", target=25, loss=14, floor=-46, maximum=75, rise=0)
    assert met_chance(plan, 1 - rate, first=4) == pytest.approx(low, abs=6e-4)


@pytest.mark.parametrize("rule", [STANDARD, STRICTER, RULES["course"]], ids=lambda rule: rule.name)
@pytest.mark.parametrize("right", [0.6, 0.8, 0.95])
@pytest.mark.parametrize("first", [2, 8, 14])
def test_a_first_block_that_is_always_finished_agrees_with_the_binomial_and_matrices(rule, right, first):
    met = 0.0
    for wrong in range(first + 1):
        score, chance = first - wrong * (rule.loss + 1), stats.binom.pmf(wrong, first, 1 - right)
        if score >= rule.target:
            met += chance
        elif score > rule.floor:
            met += chance * by_matrix_powers(rule, right, score=score, asked=first)
    assert met_chance(rule, right, first) == pytest.approx(met, abs=1e-12)


def simulated(rule, right, tries, rng):
    """Shares met and mean lengths by playing checks out, with no algebra in common with the recursion."""
    met = length = 0
    for _ in range(tries):
        score = count = 0
        while rule.floor < score < rule.target and score + rule.maximum - count >= rule.target:
            score += 1 if rng.random() < right else -rule.loss
            count += 1
        met, length = met + (score >= rule.target), length + count
    return met / tries, length / tries


@pytest.mark.parametrize(("rule", "right"), [(STANDARD, 0.6), (STANDARD, 0.9), (STRICTER, 0.95)])
def test_chance_and_mean_agree_with_checks_played_out(rule, right):
    tries = 20_000
    met, length = simulated(rule, right, tries, Random(11))
    course = course_of(rule, right)
    assert met == pytest.approx(course.met, abs=4 * (course.met * (1 - course.met) / tries) ** 0.5 + 1e-4)
    assert length == pytest.approx(course.mean, abs=0.2)


@pytest.mark.parametrize("right", [0.5, 0.7, 0.95])
def test_a_check_ends_once_and_within_the_maximum(right):
    course = course_of(STANDARD, right)
    assert sum(course.ends) == pytest.approx(1.0, abs=1e-12)
    assert len(course.ends) == STANDARD.maximum + 1
    assert course.percentile(0.5) <= course.percentile(0.95) <= STANDARD.maximum


@pytest.mark.parametrize(
    ("rule", "right", "ever"), [(STANDARD, 0.60, 0.039), (STRICTER, 0.70, 0.028), (STANDARD, 0.70, 0.389)]
)
def test_the_chance_of_ever_being_met_is_what_is_told(rule, right, ever):
    assert met_within(rule, right) == pytest.approx(ever, abs=0.001)


def test_the_lifetime_bound_lies_above_the_exact_chance():
    # Ville's inequality; the figures are rho**A / (1 - rho**r) with rho from W45.
    assert evidence.lifetime_bound(STANDARD, 0.6) == pytest.approx(0.0478, abs=5e-5)
    assert evidence.lifetime_bound(STRICTER, 0.7) == pytest.approx(0.0301, abs=5e-5)
    assert met_within(STANDARD, 0.6) < evidence.lifetime_bound(STANDARD, 0.6)


def test_whole_number_weights_test_exactly_the_pairs_of_chances_they_stand_for():
    # W45: weights +1 and -w are the log-likelihood ratio of p1 = p0 / rho against p0.
    for rule, p0, p1 in ((STANDARD, 0.6, 0.8678), (STANDARD, 0.5, 0.9196), (STRICTER, 0.7, 0.9528)):
        assert evidence.certain_of(rule, p0) == pytest.approx(p1, abs=5e-5)
        exact = evidence.certain_of(rule, p0)
        assert log((1 - p0) / (1 - exact)) / log(exact / p0) == pytest.approx(rule.loss, rel=1e-6)


def test_the_mean_length_lies_above_walds_bound():
    # W45: E0[N] >= ((1-a) ln((1-a)/b) + a ln(a/(1-b))) / KL(p0, p1), a and b the errors reached.
    p0, p1 = 0.6, 0.9
    a, b = met_chance(STANDARD, p0), 1 - met_chance(STANDARD, p1)
    divergence = p0 * log(p0 / p1) + (1 - p0) * log((1 - p0) / (1 - p1))
    bound = ((1 - a) * log((1 - a) / b) + a * log(a / (1 - b))) / divergence
    assert course_of(STANDARD, p0).mean >= bound > 7.9


def test_the_boundaries_of_a_published_sequential_test_come_out():
    # Engineering statistics handbook, sequential sampling plan for a proportion, p .01 and .10, alpha .05,
    # beta .10: h1 .939, h2 1.205, s .0397. Recalled from memory.
    p1, p2, alpha, beta = 0.01, 0.10, 0.05, 0.10
    k = log(p2 * (1 - p1) / (p1 * (1 - p2)))
    assert log((1 - alpha) / beta) / k == pytest.approx(0.939, abs=5e-4)
    assert log((1 - beta) / alpha) / k == pytest.approx(1.205, abs=5e-4)
    # The same test in our form, a "defective" counting as right: weights per answer, boundaries in answers.
    gain, loss = log(p2 / p1), log((1 - p1) / (1 - p2))
    assert log((1 - p1) / (1 - p2)) / k == pytest.approx(loss / (gain + loss))


def test_fixed_lengths_are_the_binomial_tail():
    for needed, length, right in ((8, 10, 0.6), (15, 20, 0.6), (18, 20, 0.9)):
        assert evidence.fixed_length(needed, length, right) == pytest.approx(
            stats.binom.sf(needed - 1, length, right)
        )


def test_five_in_a_row_is_what_the_closed_form_says():
    # The chance of no run of five within n answers obeys f(n) = f(n-1) - q p**5 f(n-6).
    p, none = 0.6, [1.0] * 5
    none.append(1 - p**5)
    while len(none) <= 30:
        none.append(none[-1] - (1 - p) * p**5 * none[-6])
    assert evidence.n_of_last_m(5, 5, p, 30) == pytest.approx(1 - none[30], abs=1e-12)


def test_eight_of_the_last_ten_lets_the_stuck_trainee_through_nearly_two_times_in_three():
    assert evidence.n_of_last_m(8, 10, 0.6, 30) == pytest.approx(0.644, abs=0.001)


def test_days_that_wobble_keep_their_average_and_weaken_the_rule():
    days = evidence.wobbling(0.6, 0.5)
    assert sum(right * weight for right, weight in days) == pytest.approx(0.6, abs=1e-6)
    assert evidence.averaged(STANDARD, days) > 3 * met_chance(STANDARD, 0.6)


def test_confirmation_on_another_day_brings_the_wobble_back_under_four_per_cent():
    days, held = evidence.wobbling(0.6, 0.5), 1.0
    for holds in range(3):
        held *= 1 - evidence.averaged(STANDARD.after(holds), days)
    confirmation = Rule("confirmation", "", target=6, loss=3, floor=-6, maximum=18, rise=0)
    assert 0.17 < 1 - held < 0.21
    assert (1 - held) * evidence.averaged(confirmation, days) < 0.04


def test_a_window_too_wide_to_compute_is_refused():
    with pytest.raises(ValueError, match="at most 12"):
        evidence.n_of_last_m(20, 30, 0.6, 40)
