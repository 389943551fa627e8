"""Closed air spaces: the wall with the pressures on its two sides, from numbers or from the model."""

from __future__ import annotations

from pressure.airspaces import telling
from pressure.airspaces.circumstances import Circumstance
from pressure.airspaces.harmless import ALL
from pressure.airspaces.model import first_to_give, outcome, pressure_inside
from pressure.figures.layouts.gas import between, exchanged
from pressure.figures.layouts.laid import Laid, fraction
from pressure.figures.told import Told, Value

_ARROWS = "A wall with arrows on both sides as long as the absolute pressures."
_GREATER = {
    "outside": "greater outside",
    "inside": "greater inside",
    None: "the same on both sides",
}


def differences(told: Told) -> Laid:
    symbols = {each.symbol for each in told.values}
    if "V_free" in symbols:
        return exchanged(told)
    return between(told) if "V₂" in symbols else _wall(told)


def _wall(told: Told) -> Laid:
    """What the space was left at against where it is now."""
    first, last = told.take("D₁", "D"), told.take("D₂")
    cut = any("break" in each.meaning for each in told.values) or last is None
    inner, outer = (last, first) if cut else (first, last)
    pressed, left = (told.named.absolute(each.number if each else 0.0) for each in (outer, inner))
    greater = max(pressed, left)
    facts: dict[str, float | str] = {
        "inside": "gas in the helmet" if cut else "closed space",
        "outside": "water",
        "in_label": _at(inner, "as at"),
        "out_label": _at(outer, "at"),
        "in": fraction(left / greater),
        "out": fraction(pressed / greater),
        "way": "" if cut else "shut",
        "net": told.label("Δp"),
    }
    side = _GREATER["outside" if pressed > left else "inside"]
    return Laid("wall", facts, f"{_ARROWS} The pressure is {side}.")


def _at(depth: Value | None, word: str) -> str:
    return f"{word} {depth.label}" if depth else f"{word} the surface"


def mechanism(told: Told) -> Laid | None:
    """The space that the prompt speaks of at the end of the trip; nothing where it speaks of none."""
    found = [each for each in ALL if each.told in told.problem.situation]
    cases = [telling.case(told.problem.system, each, int(told.facts["trip"])) for each in found]
    of = next((each for each in cases if _is_the_trip(told, each)), None)
    if of is None:
        return None
    # Two circumstances may share their words; the trip says which of them is meant.
    others = [each for each in found if each.told != of.circumstance.told]
    hurt = first_to_give([of.circumstance, *others], of.trip, of.named) or of.circumstance
    inside, outside = pressure_inside(hurt, of.trip, of.named), of.named.absolute(of.trip.end)
    side, greater = outcome(hurt, of.trip, of.named).side, max(inside, outside)
    way = "shut" if side or hurt.shuts else "open"
    facts: dict[str, float | str] = {
        "inside": hurt.space.text,
        "outside": "",
        "in_label": "",
        "out_label": _at(told.take("D₂", "D"), "outside, at"),
        "in": fraction(inside / greater),
        "out": fraction(outside / greater),
        "way": way,
        "net": _GREATER[side],
    }
    return Laid("wall", facts, _said(hurt, way, _GREATER[side]))


def _is_the_trip(told: Told, of: telling.Case) -> bool:
    return telling.givens(of.trip, of.named.depth_unit) == told.problem.givens


def _said(hurt: Circumstance, way: str, greater: str) -> str:
    return f"{_ARROWS} Inside is {hurt.space.text}, and the way for gas is {way}. The pressure is {greater}."
