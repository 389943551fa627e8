"""What the course owes: every competency taught, shown at work and asked about; every lesson whole."""

import re

import pytest

from course.lessons import library, proofs
from pressure.cautions import STANDARD
from quizzes.competencies import COMPETENCIES

EVERY_LESSON = pytest.mark.parametrize("lesson", library.lessons().values(), ids=library.lessons())
EVERY_COMPETENCY = pytest.mark.parametrize("competency", COMPETENCIES.values(), ids=COMPETENCIES)
MODULES = 14
IS_REVIEW = "review"
QUESTIONS = {
    f"{path.parent.name}-questions": len(proofs.read(path)[0].questions)
    for path in proofs.paths(library.SHELF)
}
"""How many questions each authored family holds, by its slug."""


def teaching(competency):
    """The lessons that prepare for it, the review apart: that one names them all."""
    found = library.lessons().values()
    return [one for one in found if competency.slug in one.competencies and one.slug != IS_REVIEW]


def examples(lesson):
    return [part.settings["family"] for part in lesson.parts["us"] if part.kind == "example"]


@EVERY_COMPETENCY
def test_every_competency_has_a_lesson_and_a_worked_example_of_its_own(competency):
    lessons = teaching(competency)
    assert lessons
    assert {family for one in lessons for family in examples(one)} & set(competency.families)


@EVERY_COMPETENCY
def test_every_competency_has_two_families_or_eight_questions(competency):
    asked = {slug: count for slug, count in QUESTIONS.items() if slug in competency.families}
    numbers = [slug for slug in competency.families if slug not in asked]
    assert len(numbers) >= 2 or sum(asked.values()) >= 8


@EVERY_LESSON
def test_a_lesson_on_a_hazard_asks_at_least_a_dozen_questions(lesson):
    if lesson.hazard and lesson.slug != IS_REVIEW:
        assert QUESTIONS[f"{lesson.slug}-questions"] >= 12


def test_the_course_is_the_fourteen_modules_in_their_order():
    lessons = list(library.lessons().values())
    assert len(lessons) == MODULES
    assert [lesson.order for lesson in lessons] == sorted({lesson.order for lesson in lessons})
    assert lessons[-1].slug == IS_REVIEW


@EVERY_LESSON
def test_every_lesson_has_all_its_parts(lesson):
    assert lesson.aims
    assert lesson.sources
    headings = {section.title for section in lesson.sections}
    assert {"The slips people make", "In short"} <= headings
    if lesson.slug != IS_REVIEW:
        assert lesson.apparatus
        assert len(examples(lesson)) >= 2


@EVERY_LESSON
def test_a_page_on_a_hazard_carries_the_usual_caution(lesson):
    cautions = [part for part in lesson.parts["us"] if part.kind == "caution"]
    assert bool(cautions) or not lesson.hazard
    assert "a training aid" in STANDARD.lower()


@EVERY_LESSON
def test_sentences_are_short_and_a_paragraph_holds_one_idea(lesson):
    """Reading level: plain words at a length that a tired reader takes in; twenty words are a usual limit."""
    text = " ".join(part.html for part in lesson.parts["us"] if part.kind == "prose")
    paragraphs = [re.sub(r"<[^>]+>", "", one) for one in re.findall(r"<p>(.*?)</p>", text, re.S)]
    sentences = [one for each in paragraphs for one in re.split(r"(?<=[.?!])\s+(?=[A-Z])", each) if one]
    lengths = [len(one.split()) for one in sentences]
    assert sum(lengths) / len(lengths) <= 15
    assert max(len(one.split()) for one in paragraphs) <= 90
