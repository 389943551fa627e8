"""The figures at hand: every module of this folder that ends in ``FIGURE = Drawing(...)``, by name."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from html import escape
from importlib import import_module
from pkgutil import iter_modules
from types import MappingProxyType

from pressure.figures.drawing import Drawing, Facts, svg


@cache
def figures() -> Mapping[str, Drawing]:
    """Every figure by name, in the order of the names."""
    folder = import_module("pressure.figures")
    modules = [import_module(f"pressure.figures.{found.name}") for found in iter_modules(folder.__path__)]
    found = [module.FIGURE for module in modules if isinstance(getattr(module, "FIGURE", None), Drawing)]
    return MappingProxyType({each.name: each for each in sorted(found, key=lambda each: each.name)})


def of_topic(topic: str) -> tuple[str, ...]:
    """The names of the figures that serve a topic of the families."""
    return tuple([name for name, figure in figures().items() if figure.topic == topic])


def render(name: str, facts: Facts, words: str = "") -> str:
    """The figure as SVG whose text is escaped; a figure that is not known any more is its words alone.

    Without ``words`` the figure speaks for itself, if it can. Raises what the drawing raises for facts that
    it cannot draw (KeyError, ValueError).
    """
    figure = figures().get(name)
    if figure is None:
        return f'<p class="figure-words">{escape(words)}</p>'
    return svg(name, figure.draw(facts), words or figure.words(facts))
