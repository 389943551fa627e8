"""Item statistics against published results and scipy.

LSAT is section 6 of the Law School Admission Test, 1,000 people and 5 items: R. D. Bock and M. Lieberman,
Psychometrika 35 (1970) 179, as patterns of right (1) and wrong (0); results as printed by ``descript`` of the
R package ltm. N98 is R. G. Newcombe, Statistics in Medicine 17 (1998) 857 and 873, recalled from memory.
"""

from collections import Counter
from random import Random

import numpy as np
import pytest
from scipy import stats

from quizzes.statistics import distributions
from quizzes.statistics.draws import unevenness
from quizzes.statistics.drift import ALARM, Drift, answers_to_alarm, watch
from quizzes.statistics.items import describe, discrimination, rating, times
from quizzes.statistics.reliability import reliability
from quizzes.statistics.shares import Share, answers_to_see, clustered, difference
from quizzes.statistics.tallies import Response, Split, Tally, tally

LSAT = {
    "00000": 3, "00001": 6, "00010": 2, "00011": 11, "00100": 1, "00101": 1, "00110": 3, "00111": 4,
    "01000": 1, "01001": 8, "01011": 16, "01101": 3, "01110": 2, "01111": 15, "10000": 10, "10001": 29,
    "10010": 14, "10011": 81, "10100": 3, "10101": 28, "10110": 15, "10111": 80, "11000": 16, "11001": 56,
    "11010": 21, "11011": 173, "11100": 11, "11101": 61, "11110": 28, "11111": 298,
}  # fmt: skip
PEOPLE = [pattern for pattern, count in LSAT.items() for _ in range(count)]


@pytest.fixture(scope="module")
def lsat():
    return tally(
        [
            Response(person, person, f"Q{place}", mark == "1")
            for person, pattern in enumerate(PEOPLE)
            for place, mark in enumerate(pattern, start=1)
        ]
    )


def rests(*rows, size=6):
    """(right among the others, right answers, wrong answers) → the counts of a tally."""
    return {(size, rest): Split(right, wrong) for rest, right, wrong in rows}


@pytest.mark.parametrize(
    ("item", "right", "r", "without"),
    [("Q1", 0.924, 0.1128, 0.2754), ("Q2", 0.709, 0.1532, 0.2376), ("Q3", 0.553, 0.1728, 0.2168),
     ("Q4", 0.763, 0.1444, 0.2459), ("Q5", 0.870, 0.1216, 0.2663)],
)  # fmt: skip
def test_the_published_figures_of_the_admission_test_come_out(lsat, item, right, r, without):
    found = describe(lsat[item])
    assert found.right.value == pytest.approx(right, abs=5e-5)
    assert found.discrimination.value == pytest.approx(r, abs=5e-5)
    assert reliability(lsat).without[item] == pytest.approx(without, abs=5e-5)


def test_the_published_alpha_of_the_admission_test_comes_out(lsat):
    found = reliability(lsat)
    assert found.alpha.value == pytest.approx(0.2950, abs=5e-5)
    assert found.weakening == []
    totals = Counter(pattern.count("1") for pattern in PEOPLE)
    assert [totals[score] for score in range(6)] == [3, 20, 85, 237, 357, 298]  # as published
    spread = np.std([pattern.count("1") for pattern in PEOPLE], ddof=1)
    assert found.error == pytest.approx(spread * (1 - found.alpha.value) ** 0.5)


def test_the_interval_of_alpha_is_feldts(lsat):
    alpha = reliability(lsat).alpha
    upper, lower = (stats.f.ppf(part, 999, 999 * 4) for part in (0.975, 0.025))
    assert alpha.low == pytest.approx(1 - (1 - alpha.value) * upper, abs=1e-9)
    assert alpha.high == pytest.approx(1 - (1 - alpha.value) * lower, abs=1e-9)


def test_alpha_is_withheld_where_there_is_none(lsat):
    assert reliability({"alone": lsat["Q1"]}) is None
    assert reliability({"a": Tally(rests((0, 3, 0), size=2)), "b": Tally(rests((0, 3, 1), size=2))}) is None
    assert reliability({"a": Tally(rests((1, 9, 0), size=2)), "b": Tally(rests((1, 9, 0), size=2))}) is None


def test_the_item_rest_correlation_and_its_interval_are_scipys(lsat):
    marks = np.array([[int(mark) for mark in pattern] for pattern in PEOPLE])
    expected = stats.pearsonr(marks[:, 2], marks.sum(axis=1) - marks[:, 2])
    found = describe(lsat["Q3"]).discrimination
    assert found.value == pytest.approx(expected.statistic)
    assert (found.low, found.high) == pytest.approx(expected.confidence_interval(0.95))


def test_blocks_of_two_lengths_are_correlated_within_their_length():
    rng = np.random.default_rng(5)
    rows = [(4, rest, rng.random() < 0.3 + rest / 6) for rest in rng.integers(0, 4, 60)]
    rows += [(9, rest, rng.random() < 0.1 + rest / 12) for rest in rng.integers(0, 9, 60)]
    counts = Counter(rows)
    kept = {(n, rest): Split(counts[n, rest, True], counts[n, rest, False]) for n, rest, _ in rows}
    size, rest, right = np.array(rows, dtype=float).T
    # The partial correlation, by its formula from the three plain ones.
    xy, xz, yz = (
        np.corrcoef(one, other)[0, 1] for one, other in ((right, rest), (right, size), (rest, size))
    )
    partial = (xy - xz * yz) / np.sqrt((1 - xz**2) * (1 - yz**2))
    assert discrimination(kept | {(7, 0): Split(0, 0)}) == discrimination(kept)
    assert discrimination(kept).value == pytest.approx(partial)
    assert np.arctanh(discrimination(kept).high) - np.arctanh(partial) == pytest.approx(1.959964 / 116**0.5)


@pytest.mark.parametrize(
    "counts",
    [{}, rests((2, 1, 1), (3, 1, 0)), rests((0, 20, 0), (3, 20, 0)), rests((2, 20, 20))],
    ids=["no answers", "three answers", "all right", "all rests alike"],
)
def test_no_correlation_is_given_where_none_can_be_told(counts):
    assert discrimination(counts) is None


def test_a_perfect_correlation_stays_within_one():
    found = discrimination(rests((5, 20, 0), (0, 0, 20)))
    assert found.low <= found.value <= found.high <= 1
    assert [rating(r) for r in (0.4, 0.3, 0.2, 0.0)] == ["very good", "good", "marginal", "poor"]
    assert "key" in rating(-0.01)


@pytest.mark.parametrize(
    ("hits", "of", "low", "high"),
    [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611), (1, 29, 0.0061, 0.1718)],
)
def test_wilsons_interval_is_the_published_one(hits, of, low, high):  # N98, table I
    share = Share(hits, of)
    assert (share.low, share.high) == pytest.approx((low, high), abs=5e-5)
    expected = stats.binomtest(hits, of).proportion_ci(method="wilson")
    assert (share.low, share.high) == pytest.approx((expected.low, expected.high), abs=1e-12)


def test_a_share_of_nothing_is_refused():
    for hits, of in ((0, 0), (3, 2), (-1, 2)):
        with pytest.raises(ValueError, match="not a share"):
            Share(hits, of)


def test_the_interval_of_a_difference_is_the_published_one():  # N98, 56/70 less 48/80, method 10
    found = difference(Share(56, 70), Share(48, 80))
    assert (found.value, found.low, found.high) == pytest.approx((0.2, 0.0524, 0.3339), abs=5e-5)


def test_shares_of_people_with_several_answers_cover_the_truth_as_often_as_they_say():
    rng, covered, naive, tries = np.random.default_rng(3), 0, 0, 600
    for _ in range(tries):
        given = rng.integers(4, 20, 16)
        made = rng.binomial(given, rng.beta(1.5, 3.5, 16))  # 0.3 on average, correlated 1/6 within a person
        found = clustered([(int(hits), int(of)) for hits, of in zip(made, given, strict=True)])
        plain = Share(found.hits, found.of)
        covered += found.low <= 0.3 <= found.high
        naive += plain.low <= 0.3 <= plain.high
    assert naive / tries < 0.88
    assert covered / tries == pytest.approx(0.95, abs=0.03)


def test_people_who_do_not_differ_are_taken_as_so_many_answers_or_people():
    assert clustered([(1, 4)] * 10) == Share(10, 40)
    assert clustered([(0, 5)] * 10 + [(0, 0)]) == Share(0, 50, weight=10.0)


def test_so_many_wrong_answers_show_a_rare_slip():  # ln 0.05 / ln(1 - q)
    assert [answers_to_see(share) for share in (0.02, 0.05, 0.10, 0.20)] == [149, 59, 29, 14]


@pytest.mark.parametrize("freedom", [1, 2, 3, 10, 39, 200])
def test_tails_and_quantiles_are_scipys(freedom):
    for x in (0.01, 1.0, 3.84, 30.0, 400.0):
        assert distributions.chi_square_tail(x, freedom) == pytest.approx(stats.chi2.sf(x, freedom), rel=1e-9)
    for other in (1, 4, 50, 3996):
        for part in (0.025, 0.5, 0.975):
            found = distributions.f_quantile(part, freedom, other)
            assert found == pytest.approx(stats.f.ppf(part, freedom, other), rel=1e-6)


def test_smokers_in_four_hospitals_differ_as_published():
    # J. L. Fleiss, Statistical Methods for Rates and Proportions (2nd ed. 1981), 139; the example of R's
    # prop.test, which prints X-squared = 12.6, df = 3, p-value = 0.005585.
    smokers = {"a": Split(83, 3), "b": Split(90, 3), "c": Split(129, 7), "d": Split(70, 12)}
    found = unevenness(smokers)
    assert (found.statistic, found.chance) == (
        pytest.approx(12.6, abs=0.005),
        pytest.approx(0.005585, abs=5e-7),
    )
    assert (found.classes, found.freedom, found.answers, found.is_drawn) == (4, 3, 397, False)
    assert found.dispersion == pytest.approx(4.2, abs=0.005)


def test_with_small_classes_the_chance_is_that_of_scipys_permutations():
    table = [(6, 0), (3, 3), (5, 1), (6, 0), (2, 4), (5, 1), (4, 2), (6, 0)]
    found = unevenness({str(place): Split(*row) for place, row in enumerate(table)})
    shuffled = stats.PermutationMethod(n_resamples=4000, rng=np.random.default_rng(2))
    assert found.is_drawn
    expected = stats.chi2_contingency(table, correction=False, method=shuffled)
    assert found.statistic == pytest.approx(expected.statistic)
    assert found.chance == pytest.approx(expected.pvalue, abs=0.03)


def test_equally_hard_draws_look_uneven_no_oftener_than_the_chance_says():
    rng = np.random.default_rng(8)
    tables = rng.binomial(6, 0.8, (120, 12))
    found = [unevenness({str(n): Split(int(k), 6 - int(k)) for n, k in enumerate(row)}) for row in tables]
    assert 0.02 < np.mean([one.chance <= 0.1 for one in found]) < 0.18  # 0.1, give or take three errors


def test_uneven_draws_of_a_family_are_found_and_one_class_is_not_compared():
    found = unevenness({"deep": Split(10, 30), "shallow": Split(38, 2), "none": Split(0, 0)})
    assert found.chance < 1e-6
    assert not found.is_worth_asking
    assert unevenness({"deep": Split(10, 30)}) is None
    assert unevenness({"deep": Split(10, 0), "shallow": Split(7, 0)}) is None


def test_times_are_numpys_quantiles():
    seconds = [3, 5, 5, 8, 13, 21, 34, 34, 90, 600]
    found = times(Counter(seconds))
    assert [found.lower, found.median, found.upper] == pytest.approx(np.quantile(seconds, [0.25, 0.5, 0.75]))
    assert times({}) is None


@pytest.mark.parametrize(
    ("right", "answers"), [(0.85, 16_700), (0.80, 1_060), (0.75, 211), (0.70, 89), (0.60, 38)]
)
def test_the_drift_alarm_waits_as_long_as_is_said(right, answers):
    step = np.zeros((ALARM, ALARM))
    for score in range(ALARM):
        step[score, max(0, score - 1)] += right
        if score + 3 < ALARM:
            step[score, score + 3] += 1 - right
    exact = np.linalg.solve(np.eye(ALARM) - step, np.ones(ALARM))[0]
    assert answers_to_alarm(right) == pytest.approx(exact)
    assert exact == pytest.approx(answers, rel=0.015)


def test_the_drift_alarm_waits_as_long_in_play():
    rng = Random(4)
    waits = [watch(rng.random() < 0.75 for _ in iter(int, 1)).alarm for _ in range(1500)]
    assert np.mean(waits) == pytest.approx(answers_to_alarm(0.75), abs=4 * np.std(waits) / 1500**0.5)
    with pytest.raises(ValueError, match="nothing sounds"):
        answers_to_alarm(1.0)


def test_the_alarm_is_the_same_carried_on_in_parts_and_by_window_functions():
    rng = Random(9)
    rights = [rng.random() < 0.9 for _ in range(400)] + [False] * 8
    at_once, parts = watch(rights), watch(rights[250:], watch(rights[:250]))
    assert at_once == parts == watch([True], parts)
    assert 400 < at_once.alarm <= 408
    sums = np.cumsum([-1 if right else 3 for right in rights])
    scores = sums - np.minimum(0, np.minimum.accumulate(sums))
    assert int(np.argmax(scores >= ALARM)) + 1 == at_once.alarm
    assert at_once.began == int(np.flatnonzero(scores[: at_once.alarm] == 0)[-1]) + 1
    assert watch([]) == Drift()


def test_only_a_persons_first_answer_to_an_item_counts():
    found = tally(
        [
            Response(1, 10, "a", False, "inverted", 31.4, "metric"), Response(1, 10, "b", True),
            Response(1, 11, "b", False), Response(1, 11, "a", True),
            Response(2, 12, "a", True, "", 20.0, "us"), Response(2, 12, "b", True),
        ]
    )  # fmt: skip
    assert found["a"] == Tally(
        rests={(2, 1): Split(1, 1)},
        chosen={"inverted": 1},
        seconds={31: 1, 20: 1},
        draws={"metric": Split(0, 1), "us": Split(1, 0)},
    )
    assert found["b"].split == Split(2, 0)
