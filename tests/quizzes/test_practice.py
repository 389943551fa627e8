"""What comes next in practice, why, and how much of the way is shown."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizzes.practice import Answer, Help, choose, help_for, hints, shown_steps

FAMILIES = ("one", "two", "three")
RIGHT = [Answer(family, True) for family in FAMILIES]
STEPS = [
    {
        "why": f"Why {n}.",
        "relation": f"R{n}",
        "substitution": f"S{n}",
        "result": {"words": f"x equals {n}1 psi"},
    }
    for n in (1, 2, 3)
]
KEY = {"answer_text": "31 psi", "steps": STEPS}


def test_what_was_never_asked_comes_first():
    assert choose(FAMILIES, [Answer("one", False)]).family == "two"
    assert choose(FAMILIES, []).reason.startswith("New")


def test_what_went_wrong_comes_again_with_its_slip_named():
    chosen = choose(
        FAMILIES, [*RIGHT, Answer("two", False, "the atmosphere was left out"), Answer("three", True)]
    )
    assert chosen.family == "two"
    assert chosen.reason == "Again, because last time the atmosphere was left out."


def test_what_went_wrong_just_now_waits_for_another_in_between():
    assert choose(FAMILIES, [*RIGHT, Answer("two", False)]).family == "one"


def test_when_all_is_right_the_one_asked_longest_ago_is_mixed_in():
    assert choose(FAMILIES, [*RIGHT, Answer("one", True)]).family == "two"


@given(st.lists(st.builds(Answer, st.sampled_from(FAMILIES), st.booleans()), max_size=40))
def test_a_family_is_asked_twice_running_only_when_there_is_no_other(history):
    chosen = choose(FAMILIES, history)
    assert chosen.family in FAMILIES
    assert not history or chosen.family != history[-1].family


def test_a_single_family_is_asked_again_at_once():
    assert choose(("one",), [Answer("one", False)]).family == "one"


LEVELS = {"one": 1, "two": 2, "three": 3}
HARD_FIRST = ("three", "two", "one")


def answered(*said):
    """Answers like "one+", "two-"."""
    return [Answer(one[:-1], one[-1] == "+") for one in said]


def test_plain_kinds_come_first_and_harder_ones_once_the_plain_went_right():
    assert choose(HARD_FIRST, [], LEVELS).family == "one"
    chosen = choose(HARD_FIRST, answered("one+"), LEVELS)
    assert chosen.family == "two"
    assert chosen.reason == "New, and harder: two steps at once, or the question turned round."
    assert choose(HARD_FIRST, answered("one+", "two-"), LEVELS).family == "one"


def test_a_plain_kind_that_went_wrong_is_asked_again_before_anything_harder():
    chosen = choose(HARD_FIRST, answered("one-"), LEVELS)
    assert (chosen.family, chosen.reason) == ("one", "Again, because last time it went wrong.")


def test_of_what_went_wrong_the_plainest_comes_back_first():
    history = answered("one+", "two+", "three-", "two-", "one-", "three+")
    assert choose(HARD_FIRST, history, LEVELS).family == "one"


def test_harder_kinds_are_mixed_in_as_the_row_grows():
    kinds, history = ("one", "extra", "two", "three"), answered("two+", "three+", "one-", "extra+", "one+")
    asked = []
    for _ in range(5):
        asked.append(choose(kinds, history, LEVELS))
        history.append(Answer(asked[-1].family, True))
    assert [one.family for one in asked] == ["extra", "two", "one", "extra", "three"]
    assert (
        asked[1].reason
        == "Harder, because 3 in a row went right: two steps at once, or the question turned round."
    )
    assert asked[4].reason == "Harder, because 6 in a row went right: several steps at once."
    assert asked[2].reason == "Mixed in, so that it stays."


@given(
    st.lists(st.builds(Answer, st.sampled_from(FAMILIES), st.booleans()), max_size=40),
    st.dictionaries(st.sampled_from(FAMILIES), st.integers(1, 3)),
)
def test_whatever_the_levels_no_harder_kind_is_new_while_a_plainer_one_stands_wrong(history, levels):
    chosen = choose(FAMILIES, history, levels)
    last = {answer.family: answer.is_right for answer in history}
    if chosen.family not in last:
        level = levels.get(chosen.family, 1)
        assert all(last.get(one) for one in FAMILIES if levels.get(one, 1) < level)


@given(st.lists(st.builds(Answer, st.sampled_from(FAMILIES), st.booleans()), max_size=40))
def test_another_unit_is_wanted_only_without_help_and_after_two_right_answers_of_that_kind(history):
    chosen = choose(FAMILIES, history)
    own = [answer.is_right for answer in history if answer.family == chosen.family]
    if chosen.mixed:
        assert chosen.help is Help.NONE
        assert own[-2:] == [True, True]


def test_the_mixed_form_takes_turns_with_the_plain_one():
    mixed = [choose(("one",), answered(*["one+"] * right)).mixed for right in range(7)]
    assert mixed == [False, False, False, False, True, False, True]


@pytest.mark.parametrize(
    ("marks", "stage"),
    [
        ("", 0),
        ("+", 1),
        ("++", 2),
        ("+++", 3),
        ("+++++", 3),
        ("-", 0),
        ("+++-", 3),
        ("+++--", 2),
        ("+++-+-", 3),
    ],
)
def test_help_fades_with_right_answers_and_comes_back_after_two_misses(marks, stage):
    assert help_for("one", [Answer("one", mark == "+") for mark in marks]) == stage


def test_the_stages_show_less_and_less_and_never_the_last_result():
    shown = [shown_steps(KEY, stage) for stage in (Help.ALL_BUT_THE_END, Help.FIRST_STEP, Help.NONE)]
    assert [len(steps) for steps in shown] == [3, 1, 0]
    assert all(step["result"] != STEPS[-1]["result"] for steps in shown for step in steps)


def test_a_step_that_already_holds_the_answer_ends_what_is_shown():
    shown = shown_steps(KEY | {"answer_text": "21 psi"}, Help.ALL_BUT_THE_END)
    assert [step["result"] for step in shown] == [STEPS[0]["result"], None]


def test_a_solution_of_one_step_shows_its_relation_alone():
    for stage in (Help.ALL_BUT_THE_END, Help.FIRST_STEP):
        assert shown_steps(KEY | {"steps": STEPS[:1]}, stage) == [
            {"why": "Why 1.", "relation": "R1", "substitution": None, "result": None}
        ]


def test_hints_open_one_step_at_a_time_without_a_number():
    assert [step["relation"] for step in hints(STEPS, 2)] == ["R1", "R2"]
    assert all(step["result"] is None for step in hints(STEPS, 3))
