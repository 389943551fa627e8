"""Gas at one or more depths on a line let down from the surface: how much room it takes at each.

Facts: ``count`` stops and for each ``n`` of them ``n:mark`` (what is written at the line), ``n:at`` (the
depth, as a share of the deepest), ``n:size`` (the room its gas would take), and as wanted ``n:room`` (the
room there is; without it, as much as that), ``n:label``, ``n:under``, ``n:part`` (a part of the gas) and
``n:moved`` (the label of gas that was let in or lost, drawn in broken lines). Sizes share one scale.
``shape`` is "bar" or "lungs".
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from pressure.figures.drawing import Drawing, Facts, Sketch
from pressure.figures.parts import WIDE, apart, box, finish, label, line, width

_LINE, _LEFT, _WIDEST, _HIGH = 110.0, 124.0, 186.0, 22.0
_LUNG_WIDE = 78.0
_LUNGS = (
    "M-5 -26C-26 -34 -46 2 -45 34C-44 44 -14 38 -6 28ZM5 -26C26 -34 46 2 45 34C44 44 14 38 6 28Z"
    "M-4 -46V-30L-9 -20M4 -46V-30L9 -20"
)


@dataclass(frozen=True, slots=True)
class _Stop:
    mark: str
    at: float
    size: float
    room: float
    part: float
    label: str
    moved: str
    under: str


def _stops(facts: Facts) -> list[_Stop]:
    return [
        _Stop(
            str(facts[f"{n}:mark"]),
            float(facts[f"{n}:at"]),
            float(facts[f"{n}:size"]),
            float(facts.get(f"{n}:room", facts[f"{n}:size"])),
            float(facts.get(f"{n}:part", 0.0)),
            str(facts.get(f"{n}:label", "")),
            str(facts.get(f"{n}:moved", "")),
            str(facts.get(f"{n}:under", "")),
        )
        for n in range(int(facts["count"]))
    ]


def draw(facts: Facts) -> Sketch:
    stops, lungs = _stops(facts), facts.get("shape") == "lungs"
    gap = 104.0 if lungs else 72.0 if any(each.under for each in stops) else 56.0
    top, first = (54.0, 56.0) if lungs else (44.0, 40.0)
    deep = max(110.0, (len(stops) - 1) * gap)
    places = apart([top + (max(each.at * deep, first) if each.at else 0.0) for each in stops], gap)
    foot = places[-1] + (54 if lungs else 40 if stops[-1].under else 24)
    largest = max(max(each.size, each.room) for each in stops)
    water = box("fig-water", 0, top, WIDE, foot - top) + line(f"M0 {top:g}H{WIDE:g}", "fig-deep")
    rope = line(f"M{_LINE:g} {top:g}V{places[-1]:.4g}")
    surface = label(_LINE - 6, top - 11, "surface", facts, anchor="end")
    show = _lungs if lungs else _bar
    parts = [
        show(each, y, largest, facts) + _mark(each, y, facts) for each, y in zip(stops, places, strict=True)
    ]
    return finish("Gas at its depths", f"{water}{rope}{surface}{''.join(parts)}", foot + 4, facts)


def _mark(stop: _Stop, y: float, facts: Facts) -> str:
    if not stop.at:
        return ""
    return line(f"M{_LINE - 5:g} {y:.4g}h10", wide=1) + label(_LINE - 9, y, stop.mark, facts, anchor="end")


def _bar(stop: _Stop, y: float, largest: float, facts: Facts) -> str:
    size, room = (max(each / largest * _WIDEST, 3.0) for each in (stop.size, stop.room))
    top, inner = y - _HIGH / 2, min(size, room)
    parts = [box("fig-face", _LEFT, top, inner, _HIGH)]
    if abs(size - room) > 0.5:
        parts.append(
            line(
                f"M{_LEFT + inner:.4g} {top:.4g}H{_LEFT + max(size, room):.4g}v{_HIGH:g}H{_LEFT + inner:.4g}",
                dashed=True,
            )
        )
    if stop.part:
        parts.append(box("fig-solid", _LEFT, top, max(stop.part / largest * _WIDEST, 5.0), _HIGH))
    parts.append(label(_LEFT, top - 11, stop.label, facts))
    if stop.moved:
        x = min(_LEFT + inner, WIDE - 4 - width(stop.moved, facts))
        parts.append(label(x, top - 11, stop.moved, facts))
    if stop.under:
        parts.append(label(_LEFT, y + _HIGH / 2 + 12, stop.under, facts))
    return "".join(parts)


def _lungs(stop: _Stop, y: float, largest: float, facts: Facts) -> str:
    """Lungs whose drawn area goes by their volume."""
    inner, outer = sorted(0.85 * sqrt(each / largest) for each in (stop.size, stop.room))
    middle, beside = _LEFT + _LUNG_WIDE / 2, _LEFT + _LUNG_WIDE + 4
    parts = [_lobes(middle, y, inner, "fig-face")]
    if outer - inner > 0.01:
        parts.append(_lobes(middle, y, outer, "fig-line", ' stroke-dasharray="4 3"'))
    y = y if stop.at else y - 14  # clear of the water's edge
    parts.append(label(beside, y, stop.label or stop.moved, facts))
    if stop.under:
        parts.append(label(beside, y + 20, stop.under, facts))
    return "".join(parts)


def _lobes(x: float, y: float, scale: float, kind: str, more: str = "") -> str:
    return (
        f'<path class="{kind}" transform="translate({x:g} {y:.4g}) scale({scale:.3g})" d="{_LUNGS}" '
        f'stroke-width="1.5" vector-effect="non-scaling-stroke"{more}/>'
    )


FIGURE = Drawing("stops", "Boyle", draw)
