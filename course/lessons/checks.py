"""A system check: every lesson on the shelf can be read, and trains competencies that exist."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from django.core.checks import CheckMessage, Error, register

from course.lessons.library import SHELF, faults


@register()
def lessons_can_be_read(**_: Any) -> list[CheckMessage]:
    return faulty(SHELF)


def faulty(shelf: Path) -> list[CheckMessage]:
    """What is wrong with the lessons on a shelf, an error for each."""
    hint = "DEVELOPERS.md says how a lesson is written."
    return [Error(str(fault), hint=hint, id="lessons.E001") for fault in faults(shelf)]
