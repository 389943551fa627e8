"""A line of a worked solution set on paper, from the MathML in which it is kept (pressure/formula.py)."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any
from xml.etree import ElementTree

from course.papers.typeset import SIZE, Document, Style

Draw = Callable[[float, float], None]
_SMALL = 0.72


@dataclass(frozen=True, slots=True)
class Box:
    """A part of a formula: its width, how far it goes above and below its base line, how to draw it."""

    width: float
    above: float
    below: float
    draw: Draw


@dataclass(frozen=True, slots=True)
class Formula:
    """A whole line, as a block of a document."""

    box: Box
    indent: float
    height: float

    def draw(self, document: Document, x: float, y: float) -> None:
        self.box.draw(x + self.indent, y + 2 + self.box.above)


def formula(document: Document, line: Mapping[str, Any], indent: float, size: float = SIZE) -> Formula:
    """The line, made smaller where it would be wider than the page."""
    root = ElementTree.fromstring(line["mathml"])  # noqa: S314 (our own formula)
    box = _box(document, root, size)
    room = document.width - indent
    if box.width > room:
        box = _box(document, root, size * room / box.width)
    return Formula(box, indent, box.above + box.below + 4)


def _box(document: Document, node: ElementTree.Element, size: float) -> Box:
    children = list(node)
    match node.tag:
        case "mfrac":
            return _fraction(document, *(_box(document, one, size * 0.92) for one in children), size=size)
        case "msub":
            base, below = _box(document, children[0], size), _box(document, children[1], size * _SMALL)
            return _side_by_side([base, _lowered(below, size * 0.22)])
        case "mi":
            return _word(document, node.text or "", "I", size)
        case "mo":
            return _word(document, node.text or "", "", size, around=size * 0.22)
        case "mn" | "mtext":
            return _word(document, node.text or "", "", size)
    return _side_by_side([_box(document, one, size) for one in children])


def _word(document: Document, text: str, style: Style, size: float, around: float = 0.0) -> Box:
    around = 0.0 if text in "()" else around

    def draw(x: float, y: float) -> None:
        document.write([(text, style)], x + around, y, size)

    return Box(document.span(text, style, size) + 2 * around, size * 0.78, size * 0.24, draw)


def _lowered(box: Box, by: float) -> Box:
    return Box(box.width, box.above - by, box.below + by, lambda x, y: box.draw(x, y + by))


def _side_by_side(boxes: Sequence[Box]) -> Box:
    def draw(x: float, y: float) -> None:
        for box in boxes:
            box.draw(x, y)
            x += box.width

    above, below = (max((getattr(box, side) for box in boxes), default=0.0) for side in ("above", "below"))
    return Box(sum(box.width for box in boxes), above, below, draw)


def _fraction(document: Document, top: Box, bottom: Box, *, size: float) -> Box:
    wide, axis, air = max(top.width, bottom.width) + 4, size * 0.28, 1.5

    def draw(x: float, y: float) -> None:
        document.line(x + 1, y - axis, x + wide - 1)
        top.draw(x + (wide - top.width) / 2, y - axis - air - top.below)
        bottom.draw(x + (wide - bottom.width) / 2, y - axis + air + bottom.above)

    return Box(wide, axis + air + top.above + top.below, bottom.above + bottom.below + air - axis, draw)
