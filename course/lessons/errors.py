"""What can be the matter with a lesson."""

from __future__ import annotations

from pathlib import Path


class LessonError(Exception):
    """Something in a lesson's file cannot be used; the text names file and line and says how to mend it."""

    def __init__(self, path: Path, line: int, sentence: str) -> None:
        super().__init__(f"{path.parent.name}/{path.name}, line {line}: {sentence}")
        self.line = line
