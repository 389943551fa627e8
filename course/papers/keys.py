"""The key to the papers of a run, as a PDF of its own: every answer worked out. It is never handed out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from django.utils import timezone

from course.papers.formulas import Formula, formula
from course.papers.models import Paper, Run
from course.papers.sheets import CAUTION, asked
from course.papers.typeset import SIZE, Block, Document, Gap, Piece, Stroke
from pressure.record import LETTERS
from pressure.units import rounded, unit_text

_GAP = 22.0


@dataclass(frozen=True, slots=True)
class _Row:
    """Formulas beside each other, on one base line."""

    formulas: tuple[Formula, ...]
    height: float

    def draw(self, document: Document, x: float, y: float) -> None:
        base = y + 2 + max((one.box.above for one in self.formulas), default=0.0)
        for one in self.formulas:
            one.box.draw(x + one.indent, base)


def key_as_pdf(run: Run, papers: Sequence[Paper]) -> bytes:
    """A list of the papers, then the key of each on pages of its own."""
    document = Document(run.sheet, f"Key to paper checks: {run.title}, {run.cohort}", run.at)
    document.add(
        _list_of(document, run, papers), head=[("Key, not to be handed out", "B")], corner="", foot=CAUTION
    )
    for paper in papers:
        document.add(
            _parts(document, paper),
            head=[("Key, not to be handed out", "B"), (f"  {run.title}, {paper.name or 'spare'}", "")],
            corner=paper.spaced_code,
            foot=CAUTION,
        )
    return document.bytes()


def _list_of(document: Document, run: Run, papers: Sequence[Paper]) -> Iterator[list[Block]]:
    day = timezone.localtime(run.at)
    yield [
        document.text([(f"{run.title}: papers for {run.cohort}", "B")], size=SIZE + 3),
        document.text([(f"Printed by {run.by_name}, {day.day} {day:%B %Y, %H:%M}.", "")]),
        Gap(8),
    ]
    for paper in papers:
        yield [document.text([(f"{paper.spaced_code}  ", "B"), (paper.name or "spare, without a name", "")])]


def _parts(document: Document, paper: Paper) -> Iterator[list[Block]]:
    for number, question in enumerate(paper.questions, start=1):
        shown, key = question["shown"], question["key"]
        yield [*asked(document, number, shown, drawn=False), *_answer(document, shown, key)]
        for at, step in enumerate(key["steps"], start=1):
            yield _step(document, at, step)
        yield [document.text([(key["sense"], "")], size=SIZE - 1, indent=14)] if key["sense"] else []
        if shown["caution"]:
            yield [document.text([("Caution. ", "B"), (shown["caution"], "")], size=SIZE - 1, indent=14)]
        yield [Stroke(16)]


def _answer(document: Document, shown: Mapping[str, Any], key: Mapping[str, Any]) -> Iterator[Block]:
    yield Gap(3)
    if "options" in key:
        yield from _options(document, shown, key)
        return
    for cell, one in zip(key.get("cells") or [key], shown.get("cells") or [shown.get("asked")], strict=True):
        unit = unit_text(cell["unit"])
        band = f"  accepted from {rounded(cell['low'], 4)} to {rounded(cell['high'], 4)} {unit}"
        yield document.text([(f"{one['text']}: ", ""), (cell["answer_text"], "B"), (band, "")])


def _options(document: Document, shown: Mapping[str, Any], key: Mapping[str, Any]) -> Iterator[Block]:
    """The right one first, or all in their order; each with why."""
    letters = {one["name"]: letter for letter, one in zip(LETTERS, key["options"], strict=False)}
    options = {one["name"]: one for one in key["options"]}
    yield document.text([(shown["question"], "")])
    names = key["right"] if isinstance(key["right"], list) else [key["right"]]
    for place, name in enumerate(names, start=1):
        one = options[name]
        which = f"{place}: {letters[name]}" if len(names) > 1 else letters[name]
        pieces: list[Piece] = [(f"{which}  {one['text']} ", "B"), (one["why"], "")]
        yield document.text(pieces, indent=14)


def _step(document: Document, number: int, step: Mapping[str, Any]) -> list[Block]:
    lines = [
        formula(document, step[part], 28) for part in ("relation", "substitution", "result") if step[part]
    ]
    why = document.text([(f"Step {number}. ", "B"), (step["why"], "")], size=SIZE - 0.5, indent=14)
    return [why, *_on_one_line(document, lines)]


def _on_one_line(document: Document, lines: Sequence[Formula]) -> list[Block]:
    """The formulas beside each other where there is room, otherwise under each other."""
    if not lines or sum(line.box.width + _GAP for line in lines) > document.width - 28:
        return list(lines)
    indent, placed = 28.0, []
    for line in lines:
        placed.append(Formula(line.box, indent, line.height))
        indent += line.box.width + _GAP
    above, below = (
        max((getattr(one.box, side) for one in placed), default=0.0) for side in ("above", "below")
    )
    return [_Row(tuple(placed), above + below + 4)]
