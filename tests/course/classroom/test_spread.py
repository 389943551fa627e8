"""How the answers of a class are grouped: every answer in one group, and nobody forgotten."""

from hypothesis import given
from hypothesis import strategies as some

from course.classroom.spread import NONE, OTHER, spread

RIGHT = "29.4 psi"


def told(answers, members):
    return [(one.words, one.count) for one in spread(answers, members, RIGHT).groups]


def test_right_comes_first_then_the_slips_by_their_number_then_the_others():
    answers = [("slip", "b", 2), ("wrong", "", 4), ("right", "", 3), ("slip", "c", 5), ("slip", "a", 2)]
    assert told(answers, 18) == [
        (f"Right: {RIGHT}", 3),
        *[("c", 5), ("a", 2), ("b", 2)],
        (OTHER, 4),
        (NONE, 2),
    ]


def test_that_nobody_is_right_is_said_and_empty_groups_are_not():
    assert told([("slip", "a", 2)], 2) == [(f"Right: {RIGHT}", 0), ("a", 2)]


def test_a_slip_under_two_names_is_one_group():
    assert told([("slip", "a", 1), ("slip", "a", 2)], 3) == [(f"Right: {RIGHT}", 0), ("a", 3)]


def test_somebody_who_joined_later_counts_as_asked():
    assert spread([("right", "", 5)], 4, RIGHT).size == 5


@given(
    some.lists(some.tuples(some.sampled_from(["right", "slip", "wrong"]), some.text(), some.integers(0, 40))),
    some.integers(0, 60),
)
def test_the_groups_and_their_bars_add_up_to_the_class(answers, members):
    found = spread(answers, members, RIGHT)
    assert sum(one.count for one in found.groups) == found.size
    assert sum(one.count for one in found.groups if one.words != NONE) == sum(n for *_, n in answers)
    if found.size:
        assert abs(sum(one.width for one in found.groups) - 200) <= len(found.groups)
