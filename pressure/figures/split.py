"""A pressure as a bar that is split into its parts, each as long as it is strong.

Facts: ``count`` parts with ``n:share`` and ``n:label`` above; below, ``spans`` brackets with ``n:from``,
``n:to`` (shares of the bar) and ``n:span``, the label.
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import box, finish, label, line, span, width, within

_LEFT, _LONG, _HIGH = 14.0, 292.0, 34.0
_KINDS = ("fig-face", "fig-water")


def draw(facts: Facts) -> Sketch:
    top = 56.0
    bar = "".join(_parts(facts, top))
    brackets = "".join(_spans(facts, top + _HIGH + 14))
    high = top + _HIGH + 14 + 38 * int(facts.get("spans", 0))
    return finish("A pressure and its parts", bar + brackets, high, facts)


def _parts(facts: Facts, top: float) -> list[str]:
    """Each part with its label above it; a label that would run into the one before stands higher."""
    parts, at, taken = [], 0.0, 0.0
    for n in range(int(facts["count"])):
        share, words = float(facts[f"{n}:share"]), str(facts[f"{n}:label"])
        x, wide = _LEFT + at * _LONG, share * _LONG
        middle = within(x + wide / 2, words, facts)
        half = width(words, facts) / 2
        y = top - 15 if middle - half > taken else top - 40
        taken = middle + half + 6 if y == top - 15 else taken
        at += share
        parts.append(box(_KINDS[n % 2], x, top, wide, _HIGH))
        parts.append(line(f"M{x + wide / 2:.4g} {top + 6:g}V{y + 9:g}", wide=1))
        parts.append(label(middle, y, words, facts, anchor="middle"))
    parts.append(line(f"M{_LEFT:g} {top:g}h{_LONG:g}v{_HIGH:g}h{-_LONG:g}Z"))
    return parts


def _spans(facts: Facts, top: float) -> list[str]:
    parts = []
    for n in range(int(facts.get("spans", 0))):
        start, end = (_LEFT + float(facts[f"{n}:{edge}"]) * _LONG for edge in ("from", "to"))
        words, y = str(facts[f"{n}:span"]), top + 38 * n
        parts += [
            span(start, y, end, y),
            label(within((start + end) / 2, words, facts), y + 18, words, facts, anchor="middle"),
        ]
    return parts


FIGURE = Drawing("split", "gauge and absolute", draw)
