"""Gas before and after its temperature changes: two vessels, each with its thermometer.

Facts: for each of the sides 0 and 1 ``n:over`` (the label of its gas), ``n:warm`` (how high the thermometer
stands, from nought to one), ``n:under`` (the temperature), ``n:below`` (where it is, or empty) and ``n:size``
(the room the gas takes as a share of the larger; nothing for a rigid cylinder).
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import WIDE, arrow, box, finish, label, line, width, within

_MIDDLES = (82.0, 238.0)
_TOP, _FOOT = 48.0, 142.0
_WIDEST = 80.0


def draw(facts: Facts) -> Sketch:
    sides = "".join(_side(n, middle, facts) for n, middle in enumerate(_MIDDLES)) + _gases(facts)
    lowest = _FOOT + 60 if facts.get("0:below") or facts.get("1:below") else _FOOT + 40
    return finish("Gas before and after", sides + arrow(146, 98, 174, 98), lowest, facts)


def _side(n: int, middle: float, facts: Facts) -> str:
    under, below = (str(facts.get(f"{n}:{name}", "")) for name in ("under", "below"))
    size = float(facts[f"{n}:size"])
    return "".join(
        (
            _thermometer(middle - 44, float(facts[f"{n}:warm"])),
            _bag(middle, size) if size else _bottle(middle + 14),
            label(middle, _FOOT + 24, under, facts, anchor="middle"),
            label(middle, _FOOT + 46, below, facts, anchor="middle"),
        )
    )


def _gases(facts: Facts) -> str:
    """What the gas is at, over each side; the second a line lower where both do not fit beside each other."""
    first, last = str(facts["0:over"]), str(facts["1:over"])
    if width(first, facts) + width(last, facts) > WIDE - 24:
        return label(8, 12, first, facts) + label(WIDE - 8, 32, last, facts, anchor="end")
    places = ((first, _MIDDLES[0]), (last, _MIDDLES[1]))
    return "".join(label(within(x, words, facts), 22, words, facts, anchor="middle") for words, x in places)


def _thermometer(x: float, warm: float) -> str:
    level = _FOOT - 16 - warm * (_FOOT - 24 - _TOP)
    return (
        box("fig-face", x - 5, _TOP, 10, _FOOT - 12 - _TOP, corner=5)
        + f'<circle class="fig-solid" cx="{x:g}" cy="{_FOOT - 8:g}" r="9"/>'
        + box("fig-solid", x - 2.5, level, 5, _FOOT - 10 - level)
    )


def _bottle(x: float) -> str:
    return box("fig-face", x - 20, _TOP + 12, 40, _FOOT - _TOP - 12, corner=10) + line(
        f"M{x - 7:g} {_TOP + 12:g}v-12h14v12"
    )


def _bag(middle: float, size: float) -> str:
    """As wide as its gas needs room."""
    return box("fig-face", middle - 22, _TOP + 20, max(_WIDEST * size, 4.0), 60)


FIGURE = Drawing("warmth", "temperature", draw)
