"""The drawings of problems on paper: their shapes as vector paths, their words in the document's own font.

What the style sheet says of the classes of pressure/figures is said here once more for black on white.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from io import BytesIO
from typing import Any
from xml.etree import ElementTree

from course.papers.typeset import Document
from pressure.figures.catalogue import figures, render

_SVG = "{http://www.w3.org/2000/svg}"
_INKS: Mapping[str, Mapping[str, str]] = {
    "fig-line": {"fill": "none", "stroke": "#000000"},
    "fig-deep": {"fill": "none", "stroke": "#000000"},
    "fig-face": {"fill": "#ffffff", "stroke": "#000000"},
    "fig-water": {"fill": "#dddddd", "stroke": "none"},
    "fig-solid": {"fill": "#000000", "stroke": "none"},
    "fig-tip": {"fill": "#000000", "stroke": "none"},
}
_WIDEST, _HIGHEST = 230.0, 160.0


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing: its shapes as SVG, and its words as (x, y, size, anchor, text, over shapes)."""

    shapes: bytes
    words: tuple[tuple[float, float, float, str, str, bool], ...]
    view: tuple[float, float, float, float]
    scale: float
    height: float

    def draw(self, document: Document, x: float, y: float) -> None:
        left, top, wide, high = self.view
        x += (document.width - wide * self.scale) / 2
        document.pdf.image(BytesIO(self.shapes), x, y + 4, wide * self.scale, high * self.scale)
        for at, level, size, anchor, text, over in self.words:
            size *= self.scale
            span = document.span(text, "", size)
            start = x + (at - left) * self.scale - span * {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor]
            middle = y + 4 + (level - top) * self.scale
            if over:  # the words stay legible where a needle lies under them
                document.pdf.set_fill_color(255)
                document.pdf.rect(start - 1, middle - size / 2, span + 2, size, style="F")
            document.write([(text, "")], start, middle + size * 0.36, size)


def picture_of(figure: Mapping[str, Any] | None) -> Picture | None:
    """The drawing of a stored prompt; None where there is none, or none that is known any more."""
    if not figure or figure["name"] not in figures():
        return None
    root = ElementTree.fromstring(render(figure["name"], figure["facts"], figure["words"]))  # noqa: S314 (our own drawing)
    left, top, wide, high = (float(part) for part in root.attrib["viewBox"].split())
    words = tuple(_words_of(each) for each in root.iter(f"{_SVG}text"))
    for child in list(root):
        if child.tag in (f"{_SVG}text", f"{_SVG}title", f"{_SVG}desc"):
            root.remove(child)
    root.set("xmlns", _SVG.strip("{}"))
    for shape in root.iter():
        shape.tag = shape.tag.removeprefix(_SVG)
        shape.attrib.update(_INKS.get(shape.attrib.pop("class", ""), {}))
    scale = min(_WIDEST / wide, _HIGHEST / high, 0.85)
    shapes = ElementTree.tostring(root)
    return Picture(shapes, words, (left, top, wide, high), scale, high * scale + 8)


def _words_of(text: ElementTree.Element) -> tuple[float, float, float, str, str, bool]:
    get = text.attrib.get
    return (
        float(get("x", "0")),
        float(get("y", "0")),
        float(get("font-size", "14")),
        get("text-anchor", "middle"),
        "".join(text.itertext()),
        "fig-halo" in get("class", ""),
    )
