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
