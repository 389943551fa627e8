"""A narrow and a wide vessel joined at the foot: one liquid, one pressure at one level.

Facts: ``narrow`` and ``wide`` (labels), ``times`` (how many times wider the one is), ``side`` (the label of
the height, or of the push on the narrow one), ``jack`` 1 where both carry pistons, and ``same``, a line.
"""

from __future__ import annotations

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import arrow, box, finish, label, line, span

_TOP, _FOOT = 62.0, 150.0


def draw(facts: Facts) -> Sketch:
    start, end = 100.0, 124.0
    left, right = 164.0, 164.0 + min(24.0 * float(facts["times"]), 140.0)
    jack = bool(facts["jack"])
    parts = (
        box("fig-water", start, _TOP, end - start, _FOOT - _TOP),
        box("fig-water", left, _TOP, right - left, _FOOT - _TOP),
        box("fig-water", start, _FOOT - 1, right - start, 17),
        line(
            f"M{start:g} 40V{_FOOT + 16:g}H{right:.4g}V40M{end:g} 40V{_FOOT:g}H{left:g}V40",
            wide=2,
        ),
        *(_pistons(start, end, left, right) if jack else _levels(start, end, left, right)),
        label(
            92 if jack else 82, (36 if jack else (_TOP + _FOOT) / 2), str(facts["side"]), facts, anchor="end"
        ),
        label(112, 16, str(facts["narrow"]), facts, anchor="middle"),
        label(max((left + right) / 2, 216), 16, str(facts["wide"]), facts, anchor="middle"),
        label(160, _FOOT + 34, str(facts["same"]), facts, anchor="middle"),
    )
    return finish("Two vessels joined at the foot", "".join(parts), _FOOT + 50, facts)


def _levels(start: float, end: float, left: float, right: float) -> tuple[str, ...]:
    return (
        line(f"M{start:g} {_TOP:g}H{end:g}M{left:g} {_TOP:g}H{right:.4g}", "fig-deep"),
        span(90, _TOP, 90, _FOOT),
    )


def _pistons(start: float, end: float, left: float, right: float) -> tuple[str, ...]:
    middle = (left + right) / 2
    return (
        box("fig-solid", start, _TOP - 8, end - start, 8),
        box("fig-solid", left, _TOP - 8, right - left, 8),
        arrow((start + end) / 2, 28, (start + end) / 2, _TOP - 10),
        arrow(middle, _TOP - 10, middle, 28),
    )


FIGURE = Drawing("joined", "column of water", draw)
