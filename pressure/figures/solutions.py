"""The drawing that goes with a worked solution: the problem's own numbers at the places where they belong.

It holds the answer, so it is for after marking only. Every number written is a given or an answer of the
problem; what else the model or a law says is used for lengths alone.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from pressure.figures.layouts import gas, spaces, water, work
from pressure.figures.layouts.laid import Laid
from pressure.figures.told import Told
from pressure.problem import Figure, Problem

LAYOUTS: Mapping[str, Callable[[Told], Laid | None]] = MappingProxyType(
    {
        "Boyle": gas.boyle,
        "air spaces": spaces.differences,
        "buoyancy": work.buoyancy,
        "column of water": water.column,
        "depth": water.depth,
        "gauge and absolute": water.gauge,
        "lungs": gas.lungs,
        "mechanism": spaces.mechanism,
        "mixtures": work.mixtures,
        "supply": work.supply,
        "temperature": work.temperature,
    }
)
"""How each topic is laid out. A topic that is not here shows its values in a list."""


def figure_for(problem: Problem, topic: str) -> Figure | None:
    """The figure of a solved problem of that topic; None where there is nothing to lay out or to list.

    ``facts`` hold the drawing's places and labels, ``words`` say the same for a voice.
    """
    layout, told = LAYOUTS.get(topic), Told(problem)
    laid = layout(told) if layout else None
    if laid is None:
        if not told.values:
            return None
        laid = Laid("values", {"title": "Given and found"}, "Given and found.")
    facts = {"asked": told.asked, "rest": told.rest, **laid.facts}
    return Figure(laid.name, facts, f"{laid.words} {told.words}".rstrip())
