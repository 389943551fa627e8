"""The lessons: each a folder on the shelf with a ``lesson.md``, found by looking, read once per process."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any

import frontmatter
import yaml

from course.lessons import manuscript
from course.lessons.errors import LessonError
from course.lessons.manuscript import Lesson, Part
from pressure.problem import System
from quizzes.competencies import COMPETENCIES

SHELF = Path(__file__).parent / "shelf"
SYSTEMS: tuple[System, ...] = ("us", "metric")
_LISTS = ("competencies", "aims", "sources")
_HEAD = {"title": str, "lead": str, "order": int, "hazard": bool} | dict.fromkeys(_LISTS, list)


def paths(shelf: Path = SHELF) -> list[Path]:
    """The file of every lesson; a folder without one still counts, so that its absence is noticed."""
    folders = (folder for folder in shelf.iterdir() if folder.is_dir() and folder.name[0] not in "._")
    return sorted(folder / "lesson.md" for folder in folders)


@cache
def lessons() -> Mapping[str, Lesson]:
    """Every lesson by slug, in the order of the course. Raises LessonError for the first that is faulty."""
    found = sorted((read(path) for path in paths()), key=lambda lesson: (lesson.order, lesson.slug))
    return MappingProxyType({lesson.slug: lesson for lesson in found})


def faults(shelf: Path = SHELF) -> Iterator[LessonError]:
    """What is wrong with the lessons on a shelf, the first fault of each."""
    for path in paths(shelf):
        try:
            read(path)
        except LessonError as error:
            yield error


def read(path: Path) -> Lesson:
    """The lesson in that file. Raises LessonError naming file and line."""
    if not re.fullmatch(r"[-\w]+", path.parent.name, re.ASCII):
        raise LessonError(path, 1, "The folder's name is the lesson's address: letters, digits and hyphens.")
    text = _text(path)
    head, body, skipped = _split(path, text)
    _check_head(path, text, head)
    parts = {system: manuscript.parts(path, body, skipped, system) for system in SYSTEMS}
    if head["hazard"] and not any(part.kind == "caution" for part in parts["us"]):
        line = _line_of(text, "hazard")
        raise LessonError(path, line, "A lesson on a hazard needs a caution: write one between ::: lines.")
    return _lesson(path.parent.name, head, parts)


def _lesson(slug: str, head: Mapping[str, Any], parts: Mapping[System, tuple[Part, ...]]) -> Lesson:
    lists = {name: tuple(str(entry) for entry in head[name]) for name in _LISTS}
    return Lesson(
        slug=slug,
        title=head["title"],
        lead=head["lead"],
        order=head["order"],
        hazard=head["hazard"],
        parts=MappingProxyType(dict(parts)),
        **lists,
    )


def _text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8")
    except FileNotFoundError:
        raise LessonError(path, 1, "The file is missing. A lesson's folder needs a lesson.md.") from None
    except UnicodeDecodeError:
        raise LessonError(path, 1, "The file is not UTF-8 text. Save it as UTF-8.") from None


def _split(path: Path, text: str) -> tuple[dict[str, Any], str, int]:
    """The head, the body, and how many lines stand before the body."""
    try:
        head, body = frontmatter.parse(text)
    except yaml.MarkedYAMLError as error:
        # The mark counts from nought, the opening dashes being its first line.
        line = error.problem_mark.line + 1 if error.problem_mark else 1
        raise LessonError(path, line, f"The head is not YAML: {error.problem}.") from None
    except yaml.YAMLError:
        raise LessonError(
            path, 1, "The head is not YAML: it holds a sign that YAML does not allow."
        ) from None
    if not head:
        raise LessonError(path, 1, "The head is missing: title, order and the rest between lines of ---.")
    return head, body, text.rstrip().removesuffix(body).count("\n")


def _check_head(path: Path, text: str, head: Mapping[str, Any]) -> None:
    for name in head:
        if name not in _HEAD:
            known = ", ".join(_HEAD)
            raise LessonError(path, _line_of(text, name), f"{name!r} is not known. Known are: {known}.")
    for name, kind in _HEAD.items():
        if name not in head:
            raise LessonError(path, 1, f"The head has no {name!r}.")
        # A yes or no is a whole number to Python, but not to a reader.
        if type(head[name]) is not kind:
            raise LessonError(path, _line_of(text, name), f"{name!r} must be {_SPOKEN[kind]}.")
    _check_competencies(path, text, head["competencies"])


_SPOKEN = {str: "text", int: "a whole number", bool: "true or false", list: "a list, an entry to a line"}


def _check_competencies(path: Path, text: str, named: Sequence[Any]) -> None:
    for slug in named:
        if slug not in COMPETENCIES:
            known = ", ".join(COMPETENCIES)
            line = _line_of(text, f"- {slug}", otherwise=_line_of(text, "competencies"))
            raise LessonError(path, line, f"There is no competency {slug!r}. There are: {known}.")


def _line_of(text: str, start: str, otherwise: int = 1) -> int:
    found = re.search(rf"^\s*{re.escape(start)}\b", text, re.MULTILINE)
    return text[: found.end()].count("\n") + 1 if found else otherwise
