"""The flags are raised past their limits and not on fewer answers; slips are ranked by frequency."""

import pytest

from quizzes.statistics.drift import watch
from quizzes.statistics.flags import LEAST, Case, Flag, Phase, findings
from quizzes.statistics.items import describe
from quizzes.statistics.ranking import ranked
from quizzes.statistics.shares import Share
from quizzes.statistics.tallies import Split, Tally

BEFORE, AFTER, MET = Phase.BEFORE_TEACHING, Phase.AFTER_TEACHING, Phase.ONCE_MET


def item(*rows, chosen=None):
    """(right among five others, right answers, wrong answers); wrong answers explained unless ``chosen``."""
    rests = {(6, rest): Split(right, wrong) for rest, right, wrong in rows}
    return describe(Tally(rests, chosen or {"inverted": sum(wrong for _, _, wrong in rows)}))


def flags(item, phase=AFTER, **more):
    return [found.flag for found in findings(Case(item, phase, **more))]


GOOD = item((2, 5, 25), (3, 30, 20), (5, 110, 10))
AGAINST = item((1, 30, 8), (4, 8, 30))
LEVEL = item((2, 50, 20), (3, 60, 24), (5, 100, 40))


def test_a_question_that_sorts_people_raises_no_flag():
    assert GOOD.discrimination.value > 0.3
    assert [flags(GOOD, phase) for phase in Phase] == [[], [], []]


def test_an_easy_question_after_teaching_is_a_success():
    assert flags(item((4, 280, 8), (5, 290, 2))) == [Flag.SORTS_POORLY]
    assert flags(item((4, 280, 8), (5, 290, 2)), MET) == []


def test_a_question_that_able_people_get_wrong_is_suspect():
    assert flags(AGAINST) == [Flag.SUSPECT]
    found = findings(Case(AGAINST))[0]
    assert "correlation −0." in found.why
    assert (found.answers, found.is_firm) == (76, False)


@pytest.mark.parametrize(
    ("phase", "expected"),
    [(BEFORE, []), (AFTER, [Flag.SUSPECT, Flag.TOO_HARD]), (MET, [Flag.SUSPECT, Flag.TOO_HARD])],
)
def test_a_question_that_hardly_anybody_gets_right_is_suspect_once_it_was_taught(phase, expected):
    few = item((2, 1, 30), (4, 4, 30))
    assert few.right.high < 0.30
    assert flags(few, phase) == expected


def test_a_question_that_most_get_wrong_after_teaching_is_too_hard():
    assert flags(item((2, 10, 28), (4, 25, 17))) == []  # 35 of 80: the upper limit is 0.55
    assert flags(item((2, 4, 34), (4, 24, 18))) == [Flag.TOO_HARD]


def test_unexplained_wrong_answers_want_thirty_of_them():
    assert flags(item((2, 5, 25), (4, 60, 6), chosen={"": 20, "inverted": 11})) == [Flag.UNEXPLAINED]
    assert flags(item((2, 5, 25), (4, 60, 6), chosen={"": 15, "inverted": 16})) == []
    assert flags(item((2, 5, 19), (4, 60, 5), chosen={"": 24})) == []


def test_a_question_tells_nothing_before_teaching_from_seventy_three_right_answers_on():
    assert flags(item((3, 40, 0), (4, 33, 0)), BEFORE) == [Flag.TELLS_NOTHING]
    assert flags(item((3, 40, 0), (4, 32, 0)), BEFORE) == []
    assert flags(item((3, 40, 0), (4, 33, 0)), AFTER) == []


def test_poor_sorting_wants_a_hundred_answers_and_people_who_differ():
    assert flags(LEVEL) == [Flag.SORTS_POORLY]
    assert flags(LEVEL, MET) == []
    assert flags(item((2, 17, 7), (3, 20, 8), (5, 33, 13))) == []  # 98 answers, r about 0


def test_poor_sorting_is_not_told_from_good_while_the_upper_limit_is_high():
    perhaps = item((2, 31, 29), (4, 40, 20))
    assert perhaps.discrimination.value < 0.20 < 0.30 < perhaps.discrimination.high
    assert flags(perhaps) == []


def test_a_flag_stands_firm_from_two_hundred_answers_on():
    assert findings(Case(LEVEL))[0].is_firm
    assert not findings(Case(item((2, 25, 10), (3, 30, 12), (5, 50, 20))))[0].is_firm


@pytest.mark.parametrize(
    ("before", "expected"),
    [(Share(34, 50), [Flag.TEACHING_IDLE]), (Share(30, 50), []), (Share(33, 49), []), (Share(48, 50), [])],
    ids=["gain of 4 points", "gain of 12", "49 on one side", "no room for a gain"],
)
def test_teaching_that_gains_less_than_ten_points_is_flagged(before, expected):
    taught = item((2, 5, 20), (3, 31, 8), (5, 36, 0))
    assert taught.right.value == 0.72
    assert flags(taught, before=before) == expected


def test_the_drift_alarm_is_a_flag_and_says_since_when():
    found = findings(Case(GOOD, drift=watch([True] * 50 + [False] * 8)))
    assert [one.flag for one in found] == [Flag.DRIFT]
    assert "since answer 51; the alarm sounded at answer 58" in found[0].why
    assert flags(GOOD, drift=watch([True] * 50 + [False] * 7)) == []


def test_no_flag_is_raised_on_fewer_answers_than_it_needs():
    assert flags(item((1, 14, 0), (5, 0, 15))) == []  # 29 answers against the rest
    assert flags(item((1, 14, 0), (5, 0, 16)))[0] == Flag.SUSPECT
    assert set(LEAST) == set(Flag)


def test_slips_are_ranked_by_how_many_people_surely_make_them():
    found = ranked(
        {
            "one of one": [(3, 3)],
            "ten of twelve": [(1, 6)] * 10 + [(0, 6)] * 2,
            "ten of twelve, oftener": [(4, 6)] * 10 + [(0, 6)] * 2,
            "nobody": [(0, 6)] * 12,
        }
    )
    assert [row.name for row in found] == ["ten of twelve, oftener", "ten of twelve", "one of one"]
    assert (found[0].people.hits, found[0].people.of) == (10, 12)
    assert (found[0].answers.hits, found[0].answers.of) == (40, 72)


def test_people_who_never_met_a_slip_do_not_thin_it_out():
    found = ranked({"inverted": [(1, 2), (0, 2), (0, 0), (0, 0)]})
    assert (found[0].people, found[0].answers.value) == (Share(1, 2), 0.25)
