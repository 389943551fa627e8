"""Turning a problem into its mixed form, if that is as fit to be asked as any draw."""

from __future__ import annotations

import re
from dataclasses import fields, replace

from pressure import catalogue
from pressure.draw import facts_at, flaws, key_of
from pressure.mixed import OF_THE_UNIT, Change, Mixed, other_unit
from pressure.problem import Posed, Problem
from pressure.units import unit_text

_SMALLEST = {"ft3": 1.0}
"""Below this nobody would choose the unit: a lungful in cubic feet. Elsewhere below 0.1."""


def mix(problem: Problem) -> Mixed | None:
    """The same numbers, asked for in the other unit; None where the problem has no such form.

    It has none if it asks for more than one number, if its unit has no other or is the very question, if
    the prompt does not name the unit in one place, or if slips, answer and givens could not be told apart.
    """
    family = catalogue.family(problem.family)
    posed = family.pose(problem.system, facts_at(family.axes[problem.system], problem.number))
    if not isinstance(posed, Posed) or not other_unit(posed.asked):
        return None
    mixed = _fit(posed, Change(posed.asked))
    if mixed is None:
        return None
    own = {field.name: getattr(problem, field.name) for field in fields(Problem)}
    turned = {"situation": mixed.situation, "convention": mixed.convention, "key": key_of(mixed)}
    return Mixed(**(own | turned), plain=problem)


def _fit(posed: Posed, change: Change) -> Posed | None:
    """The prompt in the other unit, if it can be said and be told apart from its slips and givens."""
    situation = _reworded(posed.situation, change)
    if situation is None or posed.accepted[0] * change.factor < _SMALLEST.get(change.new, 0.1):
        return None
    unconverted, inverted = change.slips(posed)
    # Feet for metres is the very change that is asked for here.
    kept = [one for one in posed.missteps if one[0] not in (*OF_THE_UNIT, "other-length-unit")]
    turned = replace(
        posed,
        situation=situation,
        convention=f"{posed.convention} {change.told}.".strip(),
        asked=replace(posed.asked, unit=change.new, only=True),
        accepted=change.turned(posed.accepted),
        missteps=(*[change.misstep(one) for one in kept], unconverted),
    )
    if any(flaws(turned)):
        return None
    whole = replace(turned, missteps=(*turned.missteps, inverted))
    return turned if any(flaws(whole)) else whole


def _reworded(situation: str, change: Change) -> str | None:
    """The situation with the asked unit changed, if it is named as such in just one place."""
    names = {unit_text(change.old), unit_text(change.old, change.asked.kind)}
    wanted = "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True))
    text, found = re.subn(rf"(?<=\bin )(?:{wanted})(?=[?.,;])", unit_text(change.new), situation)
    return text if found == 1 else None
