"""Gas at its depths: Boyle's law, lungs, and whatever else is a volume on a line from the surface down."""

from __future__ import annotations

from typing import NamedTuple

from pressure.figures.layouts.laid import Laid, fraction
from pressure.figures.told import Told, Value
from pressure.problem import TableKey
from pressure.units import exact

_LINE = "A line hangs down from the surface with the gas at each depth, drawn to one scale of"
_EXCHANGED = ("V_air", "V_free", "V_lost", "V_out")


class Stop(NamedTuple):
    """The gas at one depth; without a ``depth`` it is at the surface."""

    depth: Value | None
    size: float
    label: str = ""
    under: str = ""
    room: float = 0.0
    part: float = 0.0
    moved: str = ""


def boyle(told: Told) -> Laid:
    symbols = {each.symbol for each in told.values}
    if isinstance(told.problem.key, TableKey) and "P" in symbols:
        return _table(told)
    if "ρ₁" in symbols:
        return _density(told)
    if symbols.intersection(_EXCHANGED):
        return exchanged(told)
    return _stretches(told) if "V₀" in symbols else between(told)


def lungs(told: Told) -> Laid:
    symbols = {each.symbol for each in told.values}
    if "Δh" in symbols:
        return _torn(told)
    return (exchanged if "V_out" in symbols else between)(told, "lungs")


def stops(told: Told, found: list[Stop], words: str, shape: str = "bar") -> Laid:
    """The stops from the surface down, as the drawing ``stops`` takes them."""
    deepest = max([each.depth.number for each in found if each.depth], default=1.0) or 1.0
    facts: dict[str, float | str] = {"count": len(found), "shape": shape}
    for n, each in enumerate(sorted(found, key=_depth)):
        facts[f"{n}:mark"] = each.depth.label if each.depth and each.depth.symbol else ""
        facts[f"{n}:at"] = fraction(_depth(each) / deepest)
        facts[f"{n}:size"] = fraction(each.size)
        more: dict[str, float | str] = {
            "label": each.label,
            "under": each.under,
            "moved": each.moved,
            "room": fraction(each.room),
            "part": fraction(each.part),
        }
        facts |= {f"{n}:{name}": value for name, value in more.items() if value}
    return Laid("stops", facts, words)


def _on_the_line(found: list[Stop], more: str = "") -> str:
    at_surface = "" if all(each.depth for each in found) else " The first is at the surface."
    return f"{_LINE} volume{more}.{at_surface}"


def _depth(stop: Stop) -> float:
    return stop.depth.number if stop.depth else 0.0


def room_at(told: Told, depth: Value | None) -> float:
    """The room that a fixed amount of gas takes, one at the surface."""
    named = told.named
    return named.surface / named.absolute(depth.number if depth else 0.0)


def between(told: Told, shape: str = "bar", more: tuple[str, ...] = ("Δp", "G", "L")) -> Laid:
    """The same gas at two depths, the surface among them where the problem names only one."""
    first, last = told.take("D₁"), told.take("D₂", "D")
    before, after = told.label("V₁", "V_full"), told.label("V₂", "V_res")
    room = _room_of_a_box(told, first)
    found = [
        Stop(first, room_at(told, first), before, room=room),
        Stop(
            last,
            room_at(told, last),
            after,
            under=told.label(*more),
            room=room_at(told, last) if room else 0.0,
        ),
    ]
    return stops(told, found, _on_the_line(found), shape)


def _room_of_a_box(told: Told, first: Value | None) -> float:
    """The room in an open box that is not full at first, on the scale of ``room_at``; nothing for a bag."""
    box = next(
        (each for each in told.values if each.symbol == "V₂" and each.meaning.startswith("room")), None
    )
    return room_at(told, first) * box.number / told.number("V₁", 1.0) if box else 0.0


def exchanged(told: Told, shape: str = "bar") -> Laid:
    """A space of one size at two depths, with the air that came in or went out between them."""
    first, last = told.take("D₁"), told.take("D₂", "D")
    box, held = told.take("V_box"), told.take("V₁")
    share = held.number / box.number if box and held else 1.0
    grown = share * room_at(told, last) / room_at(told, first)
    found = [
        Stop(first, share, held.label if held else told.label("V"), box.label if box else "", room=1.0),
        Stop(last, grown, moved=told.label(*_EXCHANGED), room=1.0),
    ]
    way = "let in" if grown < 1 else "lost"
    return stops(told, found, _on_the_line(found, f"; broken lines show the air that is {way}"), shape)


def _table(told: Told) -> Laid:
    found = [Stop(None, 1.0, told.label("V₁"))]
    while depth := told.take("D"):
        found.append(Stop(depth, room_at(told, depth), told.label("V"), told.label("P")))
    return stops(told, found, _on_the_line(found))


def _density(told: Told) -> Laid:
    depth = told.take("D")
    found = [Stop(None, 1.0, told.label("ρ₁")), Stop(depth, room_at(told, depth), told.label("ρ₂"))]
    return stops(told, found, _on_the_line(found, ": the denser, the less room the same gas takes"))


def _stretches(told: Told) -> Laid:
    """Three stretches of water, each with a bar as long as the volume changes in it."""
    foot, named = told.named.depth_unit, told.named
    top, long, step = (told.facts[f"{name}_{foot}"] for name in ("top", "length", "apart"))
    ends = [(top + n * step, top + n * step + long) for n in range(3)]
    changes = [1 / named.absolute(upper) - 1 / named.absolute(lower) for upper, lower in ends]
    labels = [f"{exact(upper) if upper else 'surface'} to {exact(lower)} {foot}" for upper, lower in ends]
    facts: dict[str, float | str] = {"count": 3, "shape": "bar"}
    for n, words in enumerate(labels):
        facts |= {f"{n}:mark": "", f"{n}:at": fraction((ends[n][0] + long / 2) / ends[2][1])}
        facts |= {f"{n}:size": fraction(changes[n] / changes[0]), f"{n}:label": words}
    facts["asked"] = labels[2 if told.facts["asks_least"] else 0]
    words = (
        f"Three stretches on a line let down from the surface: {', '.join(labels)}. A bar at each is as long "
    )
    return Laid(
        "stops", facts, f"{words}as the volume changes there, longest at the top, shortest at the foot."
    )


def _torn(told: Told) -> Laid:
    """Full lungs at a depth and a little above it, where they can stretch no further."""
    low, rise = told.take("D"), told.take("Δh")
    high = low._replace(number=max(low.number - rise.number, 0.0), symbol="") if low and rise else None
    found = [Stop(low, 1.0), Stop(high, 1.0, told.label("Δp"), rise.label if rise else "")]
    return stops(
        told, found, "Full lungs at the depth of the breath and above it: they stretch no further.", "lungs"
    )
