"""System checks: every lesson can be read and trains what exists, every question can be asked."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from django.core.checks import CheckMessage, Error, register

from course.lessons import glossary, proofs
from course.lessons.library import SHELF, faults, paths


@register()
def lessons_can_be_read(**_: Any) -> list[CheckMessage]:
    return faulty(SHELF)


@register()
def questions_can_be_asked(**_: Any) -> list[CheckMessage]:
    return faulty_questions(SHELF)


@register()
def terms_can_be_read(**_: Any) -> list[CheckMessage]:
    return faulty_glossary(glossary.GLOSSARY)


def faulty(shelf: Path) -> list[CheckMessage]:
    """What is wrong with the lessons on a shelf, an error for each."""
    hint = "DEVELOPERS.md says how a lesson is written."
    return [Error(str(fault), hint=hint, id="lessons.E001") for fault in faults(shelf)]


def faulty_questions(shelf: Path) -> list[CheckMessage]:
    """What is wrong with the questions beside the lessons, an error for each."""
    hint = "Until it is mended no question of this file is asked. DEVELOPERS.md says how one is written."
    return [Error(str(fault), hint=hint, id="lessons.E002") for fault in proofs.faults(shelf)]


def faulty_glossary(path: Path) -> list[CheckMessage]:
    """What is wrong with the terms, an error for each."""
    hint = "The head of course/lessons/glossary.py says how a term is written."
    lessons = [lesson.parent.name for lesson in paths(SHELF)]
    return [Error(str(fault), hint=hint, id="lessons.E003") for fault in glossary.read(path, lessons)[1]]
