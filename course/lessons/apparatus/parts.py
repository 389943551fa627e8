"""Parts of pictures that apparatus share, as markup with forms (see ``moving``). Lengths in drawing units."""

from __future__ import annotations

from pressure.figures.dials import Dial
from pressure.figures.drawing import text


def dial(face: Dial, needle: str, *, x: float = 92, y: float = 92) -> str:
    """A dial round (x, y) whose needle turns by the column ``needle``, in degrees."""
    band = f'<path class="fig-band" d="{face.band}" stroke-width="14"/>' if face.band else ""
    dots = "".join(f'<circle class="fig-solid" cx="{cx}" cy="{cy}" r="2.6"/>' for cx, cy in face.dots)
    marks = "".join(
        f'<path class="fig-line" d="M{mark.x1} {mark.y1}L{mark.x2} {mark.y2}" '
        f'stroke-width="{2 if mark.label else 1}"/>'
        for mark in face.marks
    )
    labels = "".join(text(mark.x, mark.y, mark.label) for mark in face.marks if mark.label)
    labels = labels.replace("<text", '<text class="fig-halo"')
    return (
        f'<g transform="translate({x:g} {y:g})"><circle class="fig-face" r="90" stroke-width="1.5"/>'
        f"{band}{dots}{marks}{text(0, 66, face.unit, muted=True)}"
        f'<g transform="rotate({{{needle}}})"><path class="fig-solid" d="M-3.2 16L-1 -70H1L3.2 16Z"/></g>'
        f'<circle class="fig-solid" r="6"/>{labels}</g>'
    )


def told(x: float, y: float, form: str, *, anchor: str = "start", size: int = 14, bold: bool = False) -> str:
    """A line of text that moves, its middle at height ``y``; ``form`` must be plain text with names."""
    weight = ' font-weight="700"' if bold else ""
    return (
        f'<text x="{x:g}" y="{y:g}" font-size="{size}" text-anchor="{anchor}"{weight} '
        f'dominant-baseline="central" text="{form}"></text>'
    )


def push(x: float, y: float, length: str, *, turn: int = 0, kind: str = "fig-tip") -> str:
    """An arrow whose point stays at (x, y) and whose tail is ``length`` long (a column); it points right.

    ``turn`` turns it clockwise, in degrees; 90 points down. A length of "0" leaves the head alone: set the
    column to "0" and use ``shown`` to take it away.
    """
    return (
        f'<g transform="translate({x:g} {y:g}) rotate({turn})"><path class="{kind}" d="M0 0l-9 -5v10z"/>'
        f'<path class="fig-line" d="M-8 0h-{{{length}}}" stroke-width="2"/></g>'
    )


def rise(length: str, *, down: bool = False) -> str:
    """An arrow from the origin straight up, or down, ``length`` long (a column)."""
    way, turn = ("v", 180) if down else ("v-", 0)
    head = '<path class="fig-tip" d="M0 -9l6 10h-12z"/>'
    return (
        f'<path class="fig-line" d="M0 0{way}{{{length}}}" stroke-width="2.5"/>'
        f'<g transform="rotate({turn}) translate(0 -{{{length}}})">{head}</g>'
    )


def shown(column: str, parts: str) -> str:
    """Parts that are there or not: the column holds "inline" or "none"."""
    return f'<g display="{{{column}}}">{parts}</g>'
