"""A wall with pressure on both sides, as sections draw it: arrows of one scale, and its bulge.

Columns: ``apex`` (where the curve of the wall points to) and ``lean`` (how far the arrows on it have moved),
``left_arrow`` and ``right_arrow``, ``even`` (the length both share), ``left_more`` and ``right_more``.
"""

from __future__ import annotations

from math import copysign, sqrt

from course.lessons.apparatus import parts
from course.lessons.apparatus.parts import shown as there
from course.lessons.apparatus.parts import told
from pressure.figures.drawing import text

WIDE, HIGH, TOP, FOOT = 320, 232, 28.0, 196.0
"""The size of a picture, and the heights between which the section lies; below it stands what gives."""
ATMOSPHERE = 46.0
"""The length of an arrow for one atmosphere, head and all."""
BULGE = 26.0
"""How far a wall bulges where the difference is the whole range of depths."""


def arrows(left: float, right: float, surface: float) -> dict[str, str]:
    """Lengths of the two arrows without their heads, the length both share, and what each has more."""
    lengths = [ATMOSPHERE * pressure / surface for pressure in (left, right)]
    even = min(lengths)
    return {
        "left_arrow": f"{lengths[0] - 8:.1f}",
        "right_arrow": f"{lengths[1] - 8:.1f}",
        "even": f"{even:.1f}",
        "left_more": f"{lengths[0] - even:.1f}",
        "right_more": f"{lengths[1] - even:.1f}",
    }


def bulging(more_left: float, most: float) -> float:
    """How far a wall bulges to the right where the left side presses so much more.

    By the root of the difference, so that it shows near the surface; it is no measure.
    """
    return copysign(BULGE * sqrt(abs(more_left) / most), more_left)


def bent(wall: float, bulge: float) -> dict[str, str]:
    """The columns of a wall that stands at ``wall`` and bulges so far."""
    return {"apex": f"{wall + 2 * bulge:.1f}", "lean": f"{0.85 * bulge:.1f}"}


def bow(x: float, top: float, foot: float) -> str:
    """The rest of a path from (x, top): the wall down to (x, foot), as a form."""
    return f"Q{{apex}} {(top + foot) / 2:g} {x:g} {foot:g}"


def wall(path: str) -> str:
    """The wall that gives; from the moment it does it is filled and has another colour."""
    harmed = there("gives", f'<path class="fig-harm" d="{path}" stroke-width="4"/>')
    return f'<path class="fig-line" d="{path}" stroke-width="3.5"/>{harmed}'


def pressing(x: float, *heights: float) -> str:
    """Arrows on the wall at ``x`` from both sides, at each height."""
    both = [pushing(x - 5, y, "left") + pushing(x + 5, y, "right", turn=180) for y in heights]
    return leaning("".join(both))


def leaning(drawn: str) -> str:
    """Parts that move with the wall."""
    return f'<g transform="translate({{lean}} 0)">{drawn}</g>'


def pushing(x: float, y: float, side: str, *, turn: int = 0) -> str:
    """An arrow with its point at (x, y), as long as the pressure of that side; what is more is thick."""
    arrow = parts.push(x, y, f"{side}_arrow", turn=turn)
    more = f'<path class="fig-deep" d="M-{{even}} 0h-{{{side}_more}}" stroke-width="6"/>'
    return f'{arrow}<g transform="translate({x:g} {y:g}) rotate({turn})">{more}</g>'


def stopper(x: float, y: float) -> str:
    """A cross over a passage, there while it is shut."""
    cross = f'<path class="fig-line" d="M{x - 8:g} {y - 8:g}l16 16m0 -16l-16 16" stroke-width="3"/>'
    return there("shut", cross)


def names(*placed: tuple[float, float, str]) -> str:
    """What is what: (x, y, word) each."""
    return "".join(text(x, y, word, size=12) for x, y, word in placed)


def pressures(form: str, *places: tuple[float, float]) -> str:
    """A pressure written at each place."""
    return "".join(told(x, y, form, anchor="middle", size=13, bold=True) for x, y in places)


def banner() -> str:
    """What gives, below the section; in a frame from the moment it gives."""
    frame = '<rect class="fig-harm" x="6" y="203" width="308" height="26" rx="3" stroke-width="2"/>'
    return there("gives", frame) + pressures("{banner}", (WIDE / 2, 216.5))
