"""What a diver is supplied with, warm and cold gas, mixtures, and what floats."""

from __future__ import annotations

from pressure.figures.layouts.gas import Stop, between, room_at, stops
from pressure.figures.layouts.laid import Laid, fraction
from pressure.figures.told import Told, Value
from pressure.waters import HEAVINESS, Water

_WATERS: tuple[Water, Water] = ("sea", "fresh")


def supply(told: Told) -> Laid:
    symbols = {each.symbol for each in told.values}
    if "P_over" in symbols:
        return _over_bottom(told)
    return _cylinder(told) if symbols & {"P₁", "P_g"} else _free_air(told)


def _over_bottom(told: Told) -> Laid:
    depth, over, whole = told.take("D"), told.label("P_over"), told.take("P_s")
    below = told.named.gauge(depth.number) if depth else 0.0
    share = fraction(min(below / (whole.number if whole else 1.0), 1.0))
    facts: dict[str, float | str] = {
        "count": 2,
        "0:share": share,
        "0:label": f"at {depth.label}" if depth else "",
        "1:share": fraction(1 - share),
        "1:label": over,
        "spans": 1,
        "0:from": 0.0,
        "0:to": 1.0,
        "0:span": whole.label if whole else "",
    }
    words = (
        "A bar is the supply's gauge pressure: first the water's pressure at the bottom, then what is over."
    )
    return Laid("split", facts, words)


def _cylinder(told: Told) -> Laid:
    high, low = told.take("P₁", "P_g"), told.take("P_r", "P₂")
    marks = sorted([each for each in (high, low) if each], key=_number, reverse=True)
    is_rated = low is not None and low.meaning.startswith("rated")
    facts: dict[str, float | str] = {
        "full": low.number if low and is_rated else 0.0,
        "high": high.number if high else 0.0,
        "low": low.number if low and not is_rated else 0.0,
        "count": len(marks),
        "room": ", ".join([each for each in (told.label("V"), told.label("N")) if each]),
        "depth": told.label("D"),
    }
    for n, each in enumerate(marks):
        facts |= {f"{n}:level": each.number, f"{n}:label": each.label}
    words = "A cylinder is filled to its gauge pressure"
    return Laid(
        "cylinder", facts, f"{words}, and a hose leads down to the diver." if facts["depth"] else f"{words}."
    )


def _number(value: Value) -> float:
    return value.number


def _free_air(told: Told) -> Laid:
    depth = told.take("D")
    divers = told.label("N")
    found = [
        Stop(None, 1.0, told.label("Q", "V")),
        Stop(depth, room_at(told, depth), told.label("C", "t"), divers),
    ]
    words = "The free air is drawn at the surface and, pressed together, at depth, to one scale of volume."
    return stops(told, found, words)


def temperature(told: Told) -> Laid:
    first, last, cold, warm = (
        told.take("V₁", "P_g1"),
        told.take("V₂", "P_g2"),
        told.take("t₁"),
        told.take("t₂"),
    )
    pairs = [(first, cold), (last, warm)]
    bags = {n: gas.number for n, (gas, _) in enumerate(pairs) if gas and gas.symbol.startswith("V")}
    facts: dict[str, float | str] = {}
    hottest = max([each.number for each in (cold, warm) if each], default=0.0)
    for n, (gas, heat) in enumerate(pairs):
        facts[f"{n}:over"] = gas.label if gas else ""
        facts[f"{n}:under"] = heat.label if heat else ""
        facts[f"{n}:warm"] = 0.85 if heat and heat.number == hottest else 0.35
        facts[f"{n}:size"] = fraction(bags[n] / max(bags.values())) if bags else 0.0
    if first and first.meaning.endswith("surface"):
        facts |= {"0:below": "surface", "1:below": told.label("D")}
    ends = "warmer" if warm and warm.number == hottest else "colder"
    return Laid("warmth", facts, f"Gas before and after, each with its thermometer; afterwards it is {ends}.")


def mixtures(told: Told) -> Laid:
    return _trace(told) if any(each.symbol == "F_s" for each in told.values) else _parts(told)


def _trace(told: Told) -> Laid:
    """The same partial pressure in a long bar at depth and a short one at the surface."""
    depth = told.take("D")
    total = 1 / room_at(told, depth)
    surface, deep = told.take("F_s"), told.take("F")
    found = [
        Stop(None, 1.0, surface.label if surface else "", part=0.03),
        Stop(depth, total, deep.label if deep else "", part=0.03),
    ]
    words = (
        "Bars at the surface and at depth are as long as the absolute pressures. The same trace is marked in "
        "both: it presses as much, and is a greater share of the short bar. It is drawn wider than it is."
    )
    return stops(told, found, words)


def _parts(told: Told) -> Laid:
    """The absolute pressure at depth, split by the shares of the gases."""
    oxygen, nitrogen = told.take("F_O2"), told.take("F_N2")
    share = fraction(oxygen.number / 100 if oxygen else 1 - nitrogen.number / 100 if nitrogen else 1.0)
    partial, depth = told.take("p", "p_O2"), told.take("D")
    of_nitrogen = partial is not None and "nitrogen" in partial.meaning
    facts: dict[str, float | str] = {
        "count": 2,
        "0:share": share,
        "0:label": oxygen.label if oxygen else "oxygen",
        "1:share": fraction(1 - share),
        "1:label": nitrogen.label if nitrogen else "the rest",
        "spans": 2,
        "0:from": share if of_nitrogen else 0.0,
        "0:to": 1.0 if of_nitrogen else share,
        "0:span": partial.label if partial else "",
        "1:from": 0.0,
        "1:to": 1.0,
        "1:span": f"all the pressure at {depth.label}" if depth else "all the pressure",
    }
    return Laid("split", facts, "A bar is the absolute pressure at depth, split by the shares of its gases.")


def buoyancy(told: Told) -> Laid:
    return _weighed(told) if any(each.symbol == "W" for each in told.values) else between(told)


def _weighed(told: Told) -> Laid:
    """Weight down and upthrust up; in both waters where the problem compares them."""
    weight, room = told.take("W"), told.take("V")
    heavy = weight.number if weight else 0.0
    pushes = [HEAVINESS[told.problem.system, each].value * (room.number if room else 0.0) for each in _WATERS]
    bag = any(each.symbol == "V_s" for each in told.values)
    net = told.take("W_w")
    here = pushes[_WATERS.index(told.water)]
    if net or bag:
        ups = [("upthrust", here), *([("lift bag", heavy - here)] if bag else [])]
    else:
        ups = [(f"in {each} water", push) for each, push in zip(_WATERS, pushes, strict=True)]
    downs = [(weight.label if weight else "weight", heavy), *([(net.label, heavy - here)] if net else [])]
    greatest = max(force for _, force in (*ups, *downs)) or 1.0
    facts: dict[str, float | str] = {"body": room.label if room else "", "ups": len(ups), "downs": len(downs)}
    for way, arrows in (("up", ups), ("down", downs)):
        for n, (words, force) in enumerate(arrows):
            facts |= {f"{way}:{n}": fraction(abs(force) / greatest), f"{way}:{n}:label": words}
    words = (
        "A body under water: its weight draws it down and the upthrust bears it up, in arrows drawn to scale."
    )
    return Laid("forces", facts, words)
