"""The questions of a lesson as one family of problems, and its place among the others."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import frontmatter
import yaml

from course.lessons import proofs
from course.lessons.scenarios import SYSTEMS, PosedQuestion, Sheet
from pressure import catalogue
from pressure.cautions import STANDARD
from pressure.problem import Axis, Facts, Family, Problem, Step, System, WorkedExample
from quizzes import competencies

TOPIC = "questions"


def enlist(shelf: Path) -> None:
    """Hand the families of a shelf down, each with the competency it tests. Twice counts once."""
    for sheet, family in banks(shelf):
        catalogue.enlist([family])
        competencies.enlist(sheet.competency, family.slug)


@cache
def banks(shelf: Path) -> tuple[tuple[Sheet, Family], ...]:
    """Each sound file of questions and its family, read once. Of a faulty one the system check tells."""
    read = [proofs.read(path) for path in proofs.paths(shelf)]
    return tuple([(sheet, family_of(sheet)) for sheet, faults in read if sheet and not faults])


def family_of(sheet: Sheet) -> Family:
    """The family: one axis, a place on it for every combination of every question."""
    places = [(question, draw) for question in sheet.questions for draw in question.draws]
    caution = STANDARD if _is_hazard(sheet.path.with_name("lesson.md")) else ""

    @cache  # all texts of a system at its first draw, since a walk looks at each of them anyway
    def posed(system: System) -> tuple[PosedQuestion, ...]:
        return tuple([question.posed(draw, system, caution) for question, draw in places])

    def pose(system: System, facts: Facts) -> PosedQuestion:
        return posed(system)[int(facts["place"])]

    def solve(problem: Problem) -> tuple[Step, ...]:
        question, draw = places[int(problem.facts["place"])]
        return tuple([Step(reason) for reason in question.reasons(draw, problem.system)])

    return Family(
        slug=f"{sheet.path.parent.name}-questions",
        edition=sheet.edition,
        title=sheet.title,
        topic=TOPIC,
        axes=dict.fromkeys(SYSTEMS, (Axis("place", tuple(map(float, range(len(places))))),)),
        pose=pose,
        solve=solve,
        examples=tuple(_examples(sheet)),
    )


def _is_hazard(lesson: Path) -> bool:
    """Whether the lesson says so. One that cannot be read counts as a hazard: it costs a sentence."""
    try:
        return frontmatter.load(str(lesson)).get("hazard") is not False
    except (OSError, UnicodeDecodeError, yaml.YAMLError):
        return True


def _examples(sheet: Sheet) -> Iterator[WorkedExample]:
    place = 0
    for question in sheet.questions:
        answer = tuple([item.name for item in question.options]) if question.is_order else "right"
        yield WorkedExample("us", {"place": float(place)}, answer, question.source)
        place += len(question.draws)
