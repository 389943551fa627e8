"""A document set on sheets of paper: text in fonts that travel with it, blocks that stay together, heads.

Lengths are points. The fonts are DejaVu's, which matplotlib brings along; they hold every sign the trade
writes, and each document embeds what it uses. Black on white throughout: what is grey is never needed.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cache
from pathlib import Path
from typing import Literal, Protocol

from fpdf import FPDF
from matplotlib import get_data_path

Style = Literal["", "B", "I"]
Piece = tuple[str, Style]
"""Words in one style: regular, bold or italic."""

SIZE = 9.5
LEADING = 1.42
MARGIN = 50.0
_HEAD, _FOOT = 34.0, 30.0
_FONTS: dict[Style, str] = {
    "": "DejaVuSans.ttf",
    "B": "DejaVuSans-Bold.ttf",
    "I": "DejaVuSans-Oblique.ttf",
}


class Block(Protocol):
    """Something of a known height that draws itself with its top left corner at a place."""

    @property
    def height(self) -> float: ...

    def draw(self, document: Document, x: float, y: float) -> None: ...


@dataclass(frozen=True, slots=True)
class Lines:
    """Text broken into lines."""

    lines: tuple[tuple[Piece, ...], ...]
    size: float
    indent: float
    height: float

    def draw(self, document: Document, x: float, y: float) -> None:
        for number, line in enumerate(self.lines):
            document.write(line, x + self.indent, y + (number + 0.78) * self.size * LEADING, self.size)


@dataclass(frozen=True, slots=True)
class Gap:
    """Room between blocks, or to write in."""

    height: float

    def draw(self, document: Document, x: float, y: float) -> None:
        return


@dataclass(frozen=True, slots=True)
class Stroke:
    """A level line over the whole width."""

    height: float = 8.0

    def draw(self, document: Document, x: float, y: float) -> None:
        document.line(x, y + self.height / 2, x + document.width)


class Document:
    """A PDF that grows by whole parts, each beginning on a page of its own with its own count of pages."""

    def __init__(self, sheet: str, title: str, at: datetime) -> None:
        self.pdf = FPDF(unit="pt", format=sheet)
        self.pdf.set_auto_page_break(False)
        self.pdf.set_title(title)
        self.pdf.set_lang("en")
        self.pdf.set_creator("Pressure Course")
        self.pdf.set_creation_date(at)
        for style, file in _FONTS.items():
            self.pdf.add_font("body", style, Path(get_data_path(), "fonts", "ttf", file))
        self.width = self.pdf.w - 2 * MARGIN
        self.room = self.pdf.h - 2 * MARGIN - _HEAD - _FOOT
        self._wide = cache(self._measure)

    def add(
        self, groups: Iterable[Sequence[Block]], *, head: Sequence[Piece], corner: str, foot: str
    ) -> None:
        """A part: ``head`` and, large, ``corner`` stand over every page, ``foot`` under it."""
        pages = list(_paged(groups, self.room))
        for number, page in enumerate(pages, start=1):
            self.pdf.add_page()
            self._dress(head, corner, f"Page {number} of {len(pages)}", foot)
            y = MARGIN + _HEAD
            for block in page:
                block.draw(self, MARGIN, y)
                y += block.height

    def _dress(self, head: Sequence[Piece], corner: str, count: str, foot: str) -> None:
        self.write(head, MARGIN, MARGIN + 10, SIZE)
        self.write([(count, "")], MARGIN, MARGIN + 22, 8)
        right = MARGIN + self.width
        self.write([(corner, "B")], right - self.span(corner, "B", 17), MARGIN + 15, 17)
        self.line(MARGIN, MARGIN + 27, right)
        bottom = self.pdf.h - MARGIN - _FOOT + 8
        self.line(MARGIN, bottom, right)
        self.text([(foot, "")], size=7.5).draw(self, MARGIN, bottom + 3)

    def text(self, pieces: Sequence[Piece], *, size: float = SIZE, indent: float = 0.0) -> Lines:
        """The pieces as one paragraph within the width that the indent leaves."""
        lines = tuple(self._broken(pieces, self.width - indent, size))
        return Lines(lines, size, indent, len(lines) * size * LEADING)

    def _broken(self, pieces: Sequence[Piece], room: float, size: float) -> Iterator[tuple[Piece, ...]]:
        line: list[Piece] = []
        used = 0.0
        for word, style in _words(pieces):
            wide = self.span(word, style, size)
            if line and used + self.span(word.rstrip(), style, size) > room:
                yield _joined(line)
                line, used = [], 0.0
            line.append((word, style))
            used += wide
        if line:
            yield _joined(line)

    def write(self, pieces: Sequence[Piece], x: float, baseline: float, size: float) -> float:
        """The pieces one after another on a line; where they end."""
        for words, style in pieces:
            self.pdf.set_font("body", style, size)
            self.pdf.text(x, baseline, words)
            x += self.span(words, style, size)
        return x

    def line(self, x: float, y: float, to: float, wide: float = 0.6) -> None:
        self.pdf.set_line_width(wide)
        self.pdf.line(x, y, to, y)

    def span(self, words: str, style: Style, size: float) -> float:
        """How wide words are set."""
        return self._wide(words, style) * size / 10

    def _measure(self, words: str, style: Style) -> float:
        self.pdf.set_font("body", style, 10)
        return float(self.pdf.get_string_width(words))

    def bytes(self) -> bytes:
        return bytes(self.pdf.output())


def _words(pieces: Sequence[Piece]) -> Iterator[Piece]:
    """Each word with the gap after it. A no-break space does not part words."""
    for text, style in pieces:
        parts = text.split(" ")
        for number, part in enumerate(parts):
            word = part + (" " if number < len(parts) - 1 else "")
            if word:
                yield word, style


def _joined(line: Sequence[Piece]) -> tuple[Piece, ...]:
    """Neighbours of one style as one piece."""
    joined: list[Piece] = []
    for word, style in line:
        if joined and joined[-1][1] == style:
            joined[-1] = (joined[-1][0] + word, style)
        else:
            joined.append((word, style))
    return tuple(joined)


def _paged(groups: Iterable[Sequence[Block]], room: float) -> Iterator[list[Block]]:
    """Groups laid on pages. A group stays together unless it is higher than a page."""
    page: list[Block] = []
    used = 0.0
    for group in groups:
        high = sum(block.height for block in group)
        for block in [*group] if high > room else [_Together(tuple(group), high)]:
            if page and used + block.height > room:
                yield page
                page, used = [], 0.0
            page.append(block)
            used += block.height
    if page:
        yield page


@dataclass(frozen=True, slots=True)
class _Together:
    """Blocks one under another."""

    blocks: tuple[Block, ...]
    height: float

    def draw(self, document: Document, x: float, y: float) -> None:
        for block in self.blocks:
            block.draw(document, x, y)
            y += block.height
