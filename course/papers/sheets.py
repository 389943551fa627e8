"""The papers of a run as one PDF, to be handed out. It holds what was shown and nothing of the key."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from html import unescape
from typing import Any

from course.papers.drawings import picture_of
from course.papers.models import Paper, Run
from course.papers.typeset import SIZE, Block, Document, Gap, Piece, Stroke
from quizzes.sheets import fields_of
from quizzes.templatetags.prompts import situation

CAUTION = (
    "A training aid, not a dive plan, a decompression schedule or medical advice. Local regulations, the "
    "employer's manual, the supervisor and a diving physician come first. In an emergency call the local "
    "emergency services."
)
HOW = (
    "Numbers: write the number and its unit, to three significant figures; round at the end. Choices: write "
    "one letter. Orders: give each line its place, 1 for the first. A question left blank, or an answer that "
    "nobody can read, counts as a wrong answer. The code above tells your paper from all others: no two have "
    "the same numbers."
)
_BLANK = "_" * 34


def papers_as_pdf(run: Run, papers: Sequence[Paper]) -> bytes:
    """Every paper of the run, each beginning on a page of its own."""
    document = Document(run.sheet, f"Paper checks: {run.title}, {run.cohort}", run.at)
    for paper in papers:
        document.add(
            _parts(document, paper),
            head=[
                (run.title, "B"),
                (f"  {paper.get_purpose_display()} on paper, {paper.name or 'spare'}", ""),
            ],
            corner=paper.spaced_code,
            foot=CAUTION,
        )
    return document.bytes()


def _parts(document: Document, paper: Paper) -> Iterator[list[Block]]:
    name = paper.name or _BLANK
    time = f"Time allowed: {paper.minutes} minutes." if paper.minutes else "No limit of time."
    yield [
        document.text([("Name: ", ""), (name, "B"), ("   Day: ______________", "")], size=SIZE + 1),
        Gap(6),
        document.text([("Watched by: ________________________   ", ""), (time, "")]),
        Gap(6),
        document.text([(paper.told, "")], size=SIZE - 1),
        Gap(4),
        document.text([(HOW, "")], size=SIZE - 1),
        Stroke(14),
    ]
    for number, question in enumerate(paper.questions, start=1):
        yield [
            *asked(document, number, question["shown"]),
            *_to_fill_in(document, question["shown"]),
            Gap(14),
        ]


def asked(document: Document, number: int, shown: Mapping[str, Any], *, drawn: bool = True) -> list[Block]:
    """A question as it was shown: its situation, drawing (unless it was seen already) and convention."""
    blocks: list[Block] = [document.text([(f"{number}.\N{NO-BREAK SPACE}", "B"), *_situation(shown)])]
    picture = picture_of(shown["figure"]) if drawn else None
    if picture:
        blocks.append(picture)
    elif shown["figure"] and drawn:
        blocks.append(document.text([(shown["figure"]["words"], "I")]))
    if shown["convention"]:
        blocks.append(document.text([(shown["convention"], "I")], size=SIZE - 0.5))
    return blocks


def _situation(shown: Mapping[str, Any]) -> list[Piece]:
    """The situation with its givens in bold, as on the page."""
    parts = re.split(r"</?strong>", situation(shown))
    return [(unescape(part), "B" if at % 2 else "") for at, part in enumerate(parts) if part]


def _to_fill_in(document: Document, shown: Mapping[str, Any]) -> Iterator[Block]:
    yield Gap(3)
    task, fields = shown["task"], fields_of(shown, {})
    if task in ("choice", "ordering"):
        yield document.text([(shown["question"], "B")])
        room = "" if task == "choice" else "____  "
        for option in shown["options"]:
            text: list[Piece] = [
                (room, ""),
                (f"{option['letter']}\N{NO-BREAK SPACE} ", "B"),
                (option["text"], ""),
            ]
            yield document.text(text, indent=14)
        if task == "choice":
            yield Gap(4)
            yield document.text([("Letter: ______", "")])
        return
    for field in fields:
        only = " (no other unit will do)" if field.get("only") else ""
        yield Gap(7)
        yield document.text([(f"{field['label']}{only}:  ", "B"), (_BLANK, "")])
