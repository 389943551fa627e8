"""Curves drawn by matplotlib, remade as plain SVG parts in the classes of the style sheet.

matplotlib is imported when the first curve is drawn. Its own SVG holds style attributes and ids over which a
strict content policy or a second curve on the page would trip, so only strokes and texts are kept. Each curve
has a Figure of its own (never pyplot), which threads may draw side by side; equal curves are drawn once.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from html import escape
from io import StringIO
from typing import Any
from xml.etree import ElementTree

from pressure.figures.drawing import Sketch

_WIDE, _HIGH = 360.0, 270.0
_POINTS = 72.0  # to an inch
_SVG = "{http://www.w3.org/2000/svg}"
# Marker colours: what a stroke is, until it gets the class that the style sheet colours.
_STROKES = {
    "#0e4a5e": 'class="fig-deep" stroke-width="2.5"',
    "#13212b": 'class="fig-line" stroke-width="1"',
    "#5b6872": 'class="fig-line" stroke-width="0.5" stroke-opacity="0.35"',
}
_CURVE, _AXIS, _GRID = _STROKES


@dataclass(frozen=True, slots=True)
class Curve:
    """A line through points, with the ticks and names of its axes; equal content is drawn once."""

    title: str
    across: str
    up: str
    xs: tuple[float, ...]
    ys: tuple[float, ...]
    x_ticks: tuple[float, ...]
    y_ticks: tuple[float, ...]


@lru_cache(maxsize=512)
def sketch(curve: Curve) -> Sketch:
    """The curve as a sketch: the same bytes for the same content, whenever and wherever it is drawn."""
    root = ElementTree.fromstring(plot(curve))  # noqa: S314 (matplotlib's own output)
    return Sketch(curve.title, (0.0, 0.0, _WIDE, _HIGH), "".join(_parts(root)))


def plot(curve: Curve) -> str:
    """matplotlib's SVG of the curve."""
    figure = _new_figure()
    axes = figure.add_axes((0.15, 0.17, 0.81, 0.77))
    axes.plot(curve.xs, curve.ys, color=_CURVE)
    axes.set(xlabel=curve.across, ylabel=curve.up, xticks=curve.x_ticks, yticks=curve.y_ticks)
    axes.set_xlim(curve.x_ticks[0], curve.x_ticks[-1])
    axes.set_ylim(curve.y_ticks[0], curve.y_ticks[-1])
    axes.grid(True, color=_GRID)
    axes.tick_params(length=0, labelsize=12)
    for side in axes.spines.values():
        side.set_color(_AXIS)
    axes.xaxis.label.set_size(13)
    axes.yaxis.label.set_size(13)
    page = StringIO()
    figure.savefig(page, format="svg", metadata={"Date": None})
    return page.getvalue()


def _new_figure() -> Any:
    from matplotlib.figure import Figure

    _settle()
    return Figure(figsize=(_WIDE / _POINTS, _HIGH / _POINTS))


@cache
def _settle() -> None:
    """Text stays text, ids do not change. Set once for the process: a context would leak between threads."""
    from matplotlib import rcParams

    rcParams["svg.fonttype"] = "none"
    rcParams["svg.hashsalt"] = "pressure"


def _parts(root: ElementTree.Element) -> Iterator[str]:
    shapes = {path for defs in root.iter(f"{_SVG}defs") for path in defs.iter(f"{_SVG}path")}
    for element in root.iter():
        style = _style(element)
        kind = _STROKES.get(style.get("stroke", ""))
        if element.tag == f"{_SVG}path" and kind and element not in shapes:
            yield f'<path {kind} d="{" ".join(element.get("d", "").split())}"/>'
        elif element.tag == f"{_SVG}text":
            yield _text(element, style)


def _style(element: ElementTree.Element) -> dict[str, str]:
    pairs = (part.partition(":") for part in element.get("style", "").split(";"))
    return {name.strip(): value.strip() for name, _, value in pairs if value}


def _text(element: ElementTree.Element, style: dict[str, str]) -> str:
    place = "".join(
        f' {name}="{escape(element.get(name, ""))}"'
        for name in ("x", "y", "transform")
        if element.get(name) is not None
    )
    size = style.get("font-size", "12px").removesuffix("px")
    anchor = style.get("text-anchor", "start")
    return f'<text{place} font-size="{size}" text-anchor="{anchor}">{escape(element.text or "")}</text>'
