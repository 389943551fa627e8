"""A competency that cannot be tested stops the site from starting."""

from quizzes.checks import faults
from quizzes.competencies import COMPETENCIES, Competency


def test_the_competencies_of_the_course_can_be_tested():
    assert faults(COMPETENCIES) == []


def test_an_unknown_family_and_an_unknown_rule_are_named():
    odd = Competency("odd", "Odd", "", ("no-such-family",), tier="lenient")
    found = faults({"odd": odd})
    assert [error.id for error in found] == ["quizzes.E001", "quizzes.E002"]
    assert "no-such-family" in found[0].msg
    assert "lenient" in found[1].msg
