"""What a figure is: a name and a way to draw facts as SVG, with a title and words beside it.

Parts carry the classes of the style sheet (``fig-line``, ``fig-water`` …) and presentation attributes only:
a strict content policy serves no style attribute.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from html import escape
from zlib import crc32

Facts = Mapping[str, float | str]


@dataclass(frozen=True, slots=True)
class Sketch:
    """What was drawn: its title as plain text, the view box, and the parts as SVG whose text is escaped."""

    title: str
    view: tuple[float, float, float, float]
    parts: str


def _no_words(facts: Facts) -> str:
    return ""


@dataclass(frozen=True, slots=True)
class Drawing:
    """A kind of figure and the topic it serves. A module of this folder ends in ``FIGURE = Drawing(...)``.

    ``words`` say what facts show, for a figure that is not part of a problem and brings no words along.
    """

    name: str
    topic: str
    draw: Callable[[Facts], Sketch]
    words: Callable[[Facts], str] = _no_words


def svg(name: str, sketch: Sketch, words: str, width: int = 320) -> str:
    """The sketch as one accessible image; ``words`` say what it shows. The ids follow from the content."""
    mark = f"{name}-{crc32(f'{sketch.title}{sketch.parts}{words}'.encode()):08x}"
    left, top, wide, high = sketch.view
    return (
        f'<svg class="figure" xmlns="http://www.w3.org/2000/svg" width="{width}" '
        f'height="{width * high / wide:.0f}" viewBox="{left:g} {top:g} {wide:g} {high:g}" role="img" '
        f'aria-labelledby="{mark}-title {mark}-desc">'
        f'<title id="{mark}-title">{escape(sketch.title)}</title>'
        f'<desc id="{mark}-desc">{escape(words)}</desc>{sketch.parts}</svg>'
    )


def text(
    x: float, y: float, words: str, *, anchor: str = "middle", size: int = 14, muted: bool = False
) -> str:
    """A line of text, escaped, its middle at height ``y``."""
    kind = ' class="fig-text-muted"' if muted else ""
    return (
        f'<text{kind} x="{x:g}" y="{y:g}" font-size="{size}" text-anchor="{anchor}" '
        f'dominant-baseline="central">{escape(words)}</text>'
    )
