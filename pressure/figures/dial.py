"""A plain dial with its needle on one of its marks, to be read.

Facts: ``top`` and ``step`` of the numbering, ``fine`` marks to a step, ``at`` the mark the needle stands on,
counted from nought, and the ``unit``.
"""

from __future__ import annotations

from functools import cache

from pressure.figures.dials import Dial, dial
from pressure.figures.drawing import Drawing, Facts, Sketch, text

_VIEW = (-92.0, -92.0, 184.0, 184.0)


@cache
def _face(top: float, step: float, fine: int, unit: str) -> tuple[Dial, str, str]:
    """The dial, what lies under its needle and what lies over it: the same for every reading."""
    face = dial("dial", "Gauge", unit=unit, top=top, step=step, fine=fine)
    marks = "".join(
        f'<path class="fig-line" d="M{mark.x1:g} {mark.y1:g}L{mark.x2:g} {mark.y2:g}" '
        f'stroke-width="{2 if mark.label else 1}"/>'
        for mark in face.marks
    )
    labels = "".join(text(mark.x, mark.y, mark.label) for mark in face.marks if mark.label)
    under = f'<circle class="fig-face" r="90" stroke-width="1.5"/>{marks}{text(0, 66, unit, muted=True)}'
    return face, under, labels.replace("<text", '<text class="fig-halo"')


def draw(facts: Facts) -> Sketch:
    """Raises ValueError when the needle would stand off the dial."""
    top, step, fine = float(facts["top"]), float(facts["step"]), int(facts["fine"])
    unit = str(facts["unit"])
    face, under, labels = _face(top, step, fine, unit)
    turn = face.turn(float(facts["at"]) * step / fine)
    needle = f'<path class="fig-solid" transform="rotate({turn:.2f})" d="M-3.2 16L-1 -70H1L3.2 16Z"/>'
    hub = '<circle class="fig-solid" r="6"/>'
    return Sketch(f"Gauge dial from 0 to {top:g} {unit}", _VIEW, f"{under}{needle}{hub}{labels}")


FIGURE = Drawing("dial", "gauge and absolute", draw)
