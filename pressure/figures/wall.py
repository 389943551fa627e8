"""A wall with gas on one side and what presses on it from the other: arrows as long as the pressures.

Facts: ``inside`` and ``outside`` (what is there), ``in_label`` and ``out_label``, ``in`` and ``out`` (the
pressures as shares of the greater), ``way`` ("open", "shut" or empty: the opening in the wall), and ``net``,
what is left across the wall.
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import WIDE, arrow, box, finish, label, line, within

_TOP, _FOOT, _MIDDLE, _THICK, _LONGEST = 50.0, 152.0, 160.0, 8.0, 120.0
_ROWS = (92.0, 114.0, 136.0)


def draw(facts: Facts) -> Sketch:
    inside, outside = float(facts["in"]), float(facts["out"])
    left, right = _MIDDLE - _THICK / 2, _MIDDLE + _THICK / 2
    net = str(facts["net"])
    parts = (
        box("fig-water", right, _TOP, WIDE - right, _FOOT - _TOP),
        *_wall(str(facts.get("way", "")), facts),
        *[arrow(left - 4 - _LONGEST * inside, y, left - 4, y) for y in _ROWS if inside > 0.02],
        *[arrow(right + 4 + _LONGEST * outside, y, right + 4, y) for y in _ROWS],
        *_names(facts),
        _rest(outside - inside),
        label(within(_MIDDLE, net, facts), _FOOT + 40, net, facts, anchor="middle"),
    )
    return finish("The two sides of a wall", "".join(parts), _FOOT + 56, facts)


def _names(facts: Facts) -> list[str]:
    """What is on either side; a long name of the left side has the first line to itself."""
    left, right = _MIDDLE / 2, (_MIDDLE + WIDE) / 2
    places = (
        ("inside", left, 16.0),
        ("outside", right, 16.0),
        ("in_label", left, 36.0),
        ("out_label", right, 36.0),
    )
    told = [(str(facts.get(name, "")), x, y) for name, x, y in places]
    return [label(within(x, words, facts), y, words, facts, anchor="middle") for words, x, y in told if words]


def _wall(way: str, facts: Facts) -> list[str]:
    left = _MIDDLE - _THICK / 2
    if not way:
        return [box("fig-solid", left, _TOP, _THICK, _FOOT - _TOP)]
    gap, end = _TOP + 6, _TOP + 24
    walls = [box("fig-solid", left, _TOP, _THICK, 6), box("fig-solid", left, end, _THICK, _FOOT - end)]
    if way == "open":
        return [*walls, label(left - 8, gap + 9, way, facts, anchor="end", muted=True)]
    stopper = line(f"M{left - 3:g} {gap + 2:g}l14 14m0 -14l-14 14", wide=2.5)
    return [*walls, stopper, label(left - 10, gap + 9, way, facts, anchor="end", muted=True)]


def _rest(over: float) -> str:
    """Which way the difference pushes, below the wall; an equals sign where there is none."""
    y = _FOOT + 18
    if abs(over) < 1e-6:
        return line(f"M{_MIDDLE - 8:g} {y - 4:g}h16m0 8h-16", wide=2)
    way = 1 if over < 0 else -1
    return arrow(_MIDDLE - 26 * way, y, _MIDDLE + 26 * way, y, wide=4)


FIGURE = Drawing("wall", "air spaces", draw)
