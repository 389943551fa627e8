"""The families at hand: whatever lies in the folder ``families``, and what is handed down at start-up."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from types import MappingProxyType, ModuleType

from pressure.errors import BrokenFamily, UnknownFamily
from pressure.problem import Family, Problem, Step

_ENLISTED: dict[str, Family] = {}


@cache
def families() -> Mapping[str, Family]:
    """Every family by slug, in the order of the slugs. Raises BrokenFamily for a file that holds none."""
    return MappingProxyType(dict(sorted({**_found(), **_ENLISTED}.items())))


def enlist(newcomers: Iterable[Family]) -> None:
    """Add families that are made elsewhere, such as the questions beside the lessons.

    The same family twice is counted once. Raises BrokenFamily when another bears its slug.
    """
    for family in newcomers:
        if families().get(family.slug, family) is not family:
            raise BrokenFamily(f"Two families share the slug {family.slug!r}.")
        _ENLISTED[family.slug] = family
        families.cache_clear()


@cache
def _found() -> Mapping[str, Family]:
    folder = import_module("pressure.families")
    names = sorted(found.name for found in iter_modules(folder.__path__))
    return gather(import_module(f"pressure.families.{name}") for name in names)


def gather(modules: Iterable[ModuleType]) -> Mapping[str, Family]:
    """The FAMILY of each module, by slug. Raises BrokenFamily when one is missing or two share a slug."""
    found: dict[str, Family] = {}
    homes: dict[str, str] = {}
    for module in modules:
        entry = getattr(module, "FAMILY", None)
        if not isinstance(entry, Family):
            raise BrokenFamily(f"{module.__name__} does not end in FAMILY = Family(…).")
        if entry.slug in found:
            raise BrokenFamily(f"{module.__name__} and {homes[entry.slug]} share the slug {entry.slug!r}.")
        found[entry.slug], homes[entry.slug] = entry, module.__name__
    return MappingProxyType(dict(sorted(found.items())))


def family(slug: str) -> Family:
    """The family of that slug. Raises UnknownFamily with the names there are."""
    try:
        return families()[slug]
    except KeyError:
        names = ", ".join(families())
        raise UnknownFamily(f"There is no family {slug!r}. The families are: {names}.") from None


def solve(problem: Problem) -> tuple[Step, ...]:
    """The worked solution, written by the problem's family."""
    return family(problem.family).solve(problem)
