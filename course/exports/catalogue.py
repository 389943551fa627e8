"""Finds the exports: every module of this package that is not part of the frame ends in ``EXPORT``."""

from __future__ import annotations

import pkgutil
from collections.abc import Mapping
from functools import cache
from importlib import import_module
from types import MappingProxyType

import course.exports as package
from course.exports.contract import Export

_FRAME = {"apps", "catalogue", "contract", "csvfile", "forms", "urls", "views"}


@cache
def exports() -> Mapping[str, Export]:
    """Every export by slug, in the order of their module names.

    Raises LookupError for a module without ``EXPORT`` and ValueError for a slug given twice.
    """
    found: dict[str, Export] = {}
    for module in pkgutil.iter_modules(package.__path__):
        if module.name in _FRAME:
            continue
        export = getattr(import_module(f"{package.__name__}.{module.name}"), "EXPORT", None)
        if not isinstance(export, Export):
            raise LookupError(f"course/exports/{module.name}.py does not end in EXPORT = Export(...).")
        if export.slug in found:
            raise ValueError(f"Two exports are called {export.slug}.")
        found[export.slug] = export
    return MappingProxyType(found)
