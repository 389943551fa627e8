"""A competency that cannot be tested stops the site from starting."""

from dataclasses import replace

from quizzes.checks import faults, misfits, the_policy_suits_the_competencies
from quizzes.competencies import COMPETENCIES, Competency
from quizzes.policy import CONFIRMATION, DEFAULT


def test_the_competencies_of_the_course_can_be_tested():
    assert faults(COMPETENCIES) == []


def test_an_unknown_family_and_an_unknown_rule_are_named():
    odd = Competency("odd", "Odd", "", ("no-such-family",), tier="lenient")
    found = faults({"odd": odd})
    assert [error.id for error in found] == ["quizzes.E001", "quizzes.E002"]
    assert "no-such-family" in found[0].msg
    assert "lenient" in found[1].msg


def test_a_policy_whose_checks_are_too_short_for_their_kinds_is_named():
    assert the_policy_suits_the_competencies() == []
    short = replace(DEFAULT, confirmation=replace(CONFIRMATION, maximum=6))
    found = misfits(short)
    assert {error.id for error in found} == {"quizzes.E003"}
    assert "a check of at most 6 questions is too short" in found[0].msg
