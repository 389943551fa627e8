"""The apparatus at hand: every module of ``kinds``, by name."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from types import MappingProxyType

from course.lessons.apparatus.contract import Apparatus, Bench, Slider, count
from pressure.problem import System


class BrokenApparatus(Exception):
    """A module of ``kinds`` does not keep its promises; the sentence says which."""


@cache
def apparatus() -> Mapping[str, Apparatus]:
    """Every apparatus by name. Raises BrokenApparatus for a module that holds none."""
    folder = import_module("course.lessons.apparatus.kinds")
    found: dict[str, Apparatus] = {}
    for module in iter_modules(folder.__path__):
        entry = getattr(import_module(f"{folder.__name__}.{module.name}"), "APPARATUS", None)
        if not isinstance(entry, Apparatus):
            raise BrokenApparatus(f"{module.name}.py does not end in APPARATUS = Apparatus(…).")
        found[entry.name] = entry
    return MappingProxyType(found)


@cache
def bench(name: str, system: System) -> Bench:
    """The apparatus of that name in US customary or metric units, its table computed once.

    Raises KeyError for an unknown name, BrokenApparatus for a table that does not fit the controls.
    """
    built = apparatus()[name].build(system)
    if len(built.rows) != count(built.slider, built.switches):
        raise BrokenApparatus(f"{name} has {len(built.rows)} rows, which do not fit its controls.")
    if not _evenly_stopped(built.slider):
        raise BrokenApparatus(f"The stops of {name} do not lie evenly from 0 to {built.slider.top}.")
    return built


def _evenly_stopped(slider: Slider) -> bool:
    """Whether links laid out evenly stand where the slider has their positions, to half a step."""
    gap = slider.top / (len(slider.stops) - 1)
    return all(abs(stop.at - n * gap) <= 0.5 for n, stop in enumerate(slider.stops))
