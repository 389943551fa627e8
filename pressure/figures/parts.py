"""Parts that the drawings beside worked solutions share: labels, arrows, brackets, the lines at the foot.

A label is ``symbol = number unit`` as in the solution, its subscript written ``P_abs``. What was asked for is
set bold; it stands in the fact ``asked``, one label a line. ``rest`` holds the labels without a place.
"""

from __future__ import annotations

import re
from html import escape
from math import hypot

from pressure.figures.drawing import Facts, Sketch

WIDE = 320.0
_LETTER, _BOLD = 7.5, 8.3  # of a label, on the average, in a wide typeface
_LINE = 20.0
_SUBSCRIPT = re.compile(r"_(\w+)(.?)")


def label(x: float, y: float, words: str, facts: Facts, *, anchor: str = "start", muted: bool = False) -> str:
    """A line of text, escaped, its middle at height ``y``; bold where it is what was asked for."""
    if not words:
        return ""
    bold = ' font-weight="700"' if is_asked(words, facts) else ""
    kind = ' class="fig-text-muted"' if muted else ""
    return (
        f'<text{kind} x="{x:g}" y="{y:g}" font-size="14" text-anchor="{anchor}"{bold} '
        f'dominant-baseline="central">{_set(words)}</text>'
    )


def is_asked(words: str, facts: Facts) -> bool:
    """Whether a label is, or ends in, what was asked for."""
    return any(words.endswith(each) for each in str(facts.get("asked", "")).split("\n") if each)


def _set(words: str) -> str:
    """Escaped, with what follows an underscore set as a subscript."""
    return _SUBSCRIPT.sub(r'<tspan dy="3" font-size="11">\1</tspan><tspan dy="-3">\2</tspan>', escape(words))


def width(words: str, facts: Facts) -> float:
    """About how wide a label is set."""
    return len(words) * (_BOLD if is_asked(words, facts) else _LETTER)


def within(x: float, words: str, facts: Facts) -> float:
    """The middle for a label that is wanted at ``x`` and must not leave the drawing."""
    half = width(words, facts) / 2 + 4
    return min(max(x, half), WIDE - half)


def line(path: str, kind: str = "fig-line", wide: float = 1.5, *, dashed: bool = False) -> str:
    dashes = ' stroke-dasharray="4 3"' if dashed else ""
    return f'<path class="{kind}" d="{path}" stroke-width="{wide:g}"{dashes}/>'


def box(kind: str, x: float, y: float, wide: float, high: float, *, corner: float = 0.0) -> str:
    rounded = f' rx="{corner:g}"' if corner else ""
    stroke = ' stroke-width="1.5"' if kind == "fig-face" else ""
    return (
        f'<rect class="{kind}" x="{x:g}" y="{y:g}" width="{wide:.4g}" height="{high:.4g}"{rounded}{stroke}/>'
    )


def arrow(x1: float, y1: float, x2: float, y2: float, wide: float = 2.0) -> str:
    """A straight arrow with its head at the second point; a very short one is its head alone."""
    long = hypot(x2 - x1, y2 - y1) or 1.0
    along, across = ((x2 - x1) / long, (y2 - y1) / long), (-(y2 - y1) / long, (x2 - x1) / long)
    head = min(9.0, long)
    neck = (x2 - head * along[0], y2 - head * along[1])
    sides = [(neck[0] + side * across[0], neck[1] + side * across[1]) for side in (4.5, -4.5)]
    tip = f"M{x2:.4g} {y2:.4g}" + "".join(f"L{x:.4g} {y:.4g}" for x, y in sides) + "Z"
    shaft = line(f"M{x1:.4g} {y1:.4g}L{neck[0]:.4g} {neck[1]:.4g}", wide=wide) if long > head else ""
    return f'{shaft}<path class="fig-tip" d="{tip}"/>'


def span(x1: float, y1: float, x2: float, y2: float) -> str:
    """A line between two end marks that tells how long something is, upright or level."""
    if x1 == x2:
        return line(f"M{x1 - 5:g} {y1:g}h10M{x1 - 5:g} {y2:.4g}h10M{x1:g} {y1:g}V{y2:.4g}", wide=1)
    return line(f"M{x1:.4g} {y1 - 5:g}v10M{x2:.4g} {y1 - 5:g}v10M{x1:.4g} {y1:g}H{x2:.4g}", wide=1)


def apart(places: list[float], gap: float) -> list[float]:
    """The places from the first to the last, pushed down where they lie closer than ``gap``."""
    found: list[float] = []
    for place in places:
        found.append(max(place, found[-1] + gap) if found else place)
    return found


def finish(title: str, parts: str, high: float, facts: Facts) -> Sketch:
    """The sketch with the labels that have no place of their own in lines at its foot."""
    rest = [each for each in str(facts.get("rest", "")).split("\n") if each]
    lines = [label(8, high + _LINE * (n + 0.5), each, facts) for n, each in enumerate(rest)]
    foot = high + _LINE * len(rest) + (4 if rest else 0)
    return Sketch(title, (0.0, 0.0, WIDE, foot), parts + "".join(lines))
