"""Proof-reading: what is wrong with a file of questions once every draw of it is written out."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path

from course.lessons import questions
from course.lessons.errors import LessonError
from course.lessons.inserts import UnknownInsert
from course.lessons.scenarios import SYSTEMS, Fault, PosedQuestion, Question, Sheet
from pressure.problem import Option, PosedChoice

FEWEST_DRAWS = 60
_FEWEST_QUESTIONS = 2
_MOST_ORDERS = 2
_UNTIDY = re.compile(r"  | [,.;:?]|[,.;:?][,.;:]|[.?] [a-z]")


def paths(shelf: Path) -> list[Path]:
    """Every file of questions on a shelf."""
    return sorted(shelf.glob("[!._]*/questions.toml"))


def read(path: Path) -> tuple[Sheet | None, list[LessonError]]:
    """A file of questions and what is wrong with it, a fault for each question."""
    sheet, found = questions.read(path)
    if sheet and not found:
        found = list(_faults_of(sheet))
    return sheet, found


def faults(shelf: Path) -> Iterator[LessonError]:
    """What is wrong with the questions on a shelf, in each file and between the files."""
    labels: dict[str, str] = {}
    for path in paths(shelf):
        sheet, found = read(path)
        yield from found
        for question in sheet.questions if sheet else ():
            if (name := _other_label(question, labels)) is not None:
                sentence = f"{name!r} has the label “{labels[name]}” elsewhere. Use it here too."
                yield LessonError(path, question.line, f"Question {question.id!r}: {sentence}")


def _other_label(question: Question, labels: dict[str, str]) -> str | None:
    """The first name that is labelled otherwise than before; ``labels`` grows from question to question."""
    for one in question.options:
        if one.label and labels.setdefault(one.name, one.label) != one.label:
            return one.name
    return None


def _faults_of(sheet: Sheet) -> Iterator[LessonError]:
    if (draws := sum(len(question.draws) for question in sheet.questions)) < FEWEST_DRAWS:
        sentence = f"The questions make {draws} draws. At least {FEWEST_DRAWS} are needed: add some."
        yield LessonError(sheet.path, 1, sentence)
    if len(sheet.questions) < _FEWEST_QUESTIONS:
        yield LessonError(
            sheet.path, 1, "The file needs a second question, to serve as the example beside one."
        )
    ids = Counter(question.id for question in sheet.questions)
    orders, scenes = 0, set[tuple[str, str]]()
    for at, question in enumerate(sheet.questions):
        orders += question.is_order
        try:
            if ids[question.id] > 1:
                raise Fault("Another question has this id. Give each its own.")
            if question.is_order and (at == 0 or orders > _MOST_ORDERS):
                raise Fault("An order is never the first question, and at most two of a file are orders.")
            _check_draws(question, scenes)
        except (Fault, UnknownInsert) as fault:
            yield LessonError(sheet.path, question.line, f"Question {question.id!r}: {fault}")


def _check_draws(question: Question, scenes: set[tuple[str, str]]) -> None:
    """Raises Fault or UnknownInsert. ``scenes`` grows from question to question."""
    for system in SYSTEMS:
        for draw in question.draws:
            posed = question.posed(draw, system)
            if (system, posed.situation) in scenes:
                raise Fault(
                    f"The scene “{posed.situation}” comes twice. Every slot must change what the scene says."
                )
            scenes.add((system, posed.situation))
            options = posed.options if isinstance(posed, PosedChoice) else posed.items
            _check_stops([posed.situation, posed.sense, *question.reasons(draw, system)], options)
            _check_words(posed, options)
            if isinstance(posed, PosedChoice):
                _check_lengths(options)


def _check_stops(sentences: Sequence[str], options: Sequence[Option]) -> None:
    for text in (*sentences, *[one.why for one in options]):
        if not text.endswith("."):
            raise Fault(f"“{text}” does not end in a full stop.")
        _check_tidy(text)


def _check_words(posed: PosedQuestion, options: Sequence[Option]) -> None:
    if not posed.question.endswith(("?", ".")):
        raise Fault(f"“{posed.question}” ends neither in a question mark nor in a full stop.")
    for text in (posed.question, *[one.text for one in options]):
        _check_tidy(text)
    if len({one.text for one in options}) < len(options):
        raise Fault(f"Two options read alike in the scene “{posed.situation}”")


def _check_tidy(text: str) -> None:
    if text[0].islower():
        raise Fault(f"“{text}” begins with a small letter.")
    if found := _UNTIDY.search(text):
        raise Fault(f"“{text}” holds “{found[0]}”. Look at its spaces, stops and capitals.")


def _check_lengths(options: Sequence[Option]) -> None:
    right, *wrong = options
    # A letter or two more is allowed: were the longest never right, it could be struck out unread.
    if len(right.text) > 1.1 * max(len(one.text) for one in wrong):
        raise Fault(f"The right option “{right.text}” is much the longest, which gives it away.")
    if len({one.text.endswith(".") for one in options}) > 1:
        raise Fault("Some options end in a full stop and some do not. Let them agree.")
