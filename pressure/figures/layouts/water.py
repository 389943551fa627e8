"""Columns of water, pressure growing with depth, and the parts of an absolute pressure."""

from __future__ import annotations

from pressure.figures.layouts.laid import Laid, fraction
from pressure.figures.told import Told, Value
from pressure.units import FACTORS

_ATMOSPHERE = "atmosphere"


def depth(told: Told) -> Laid:
    """The atmosphere on top and the water's pressure under it."""
    named, air = told.named, told.take("P_air")
    surface = _turned(air, named.pressure_unit) if air else named.surface
    below = named.gauge(told.number("D"))
    gauge = told.label("P_g")
    facts: dict[str, float | str] = {
        "air": fraction(surface / (surface + below)),
        "depth": told.label("D"),
        "over": air.label if air else _ATMOSPHERE,
        "under": gauge or told.label("P_abs"),
        "water": told.water,
        "is_gauge": float(bool(gauge)),
    }
    measured = "the water alone" if gauge else "both together"
    words = (
        f"Under {told.water} water the pressure is drawn as a width: the atmosphere's stays the same all the "
        f"way down, the water's grows with depth. At the foot {measured} is measured."
    )
    return Laid("wedge", facts, words)


def _turned(value: Value, unit: str) -> float:
    return value.number * FACTORS[value.unit] / FACTORS[unit]


def gauge(told: Told) -> Laid:
    """The absolute pressure as a bar of the atmosphere and what the gauge shows; or one pressure twice."""
    total, part = told.take("P_abs"), told.take("P_g")
    if total is None:
        return _converted(told)
    shown = part.number * FACTORS[part.unit] if part else _on_the_dial(told)
    share = fraction(1 - shown / (total.number * FACTORS[total.unit]))
    facts: dict[str, float | str] = {
        "count": 2,
        "0:share": share,
        "0:label": _ATMOSPHERE,
        "1:share": fraction(1 - share),
        "1:label": part.label if part else "what the dial shows",
        "spans": 1,
        "0:from": 0.0,
        "0:to": 1.0,
        "0:span": total.label,
    }
    return Laid(
        "split", facts, "A bar is the absolute pressure: first the atmosphere, then what a gauge shows."
    )


def _on_the_dial(told: Told) -> float:
    """The pressure that the dial of the prompt shows, in pascals."""
    figure = told.problem.figure
    if figure is None:
        return 0.0
    face = {name: float(figure.facts[name]) for name in ("at", "step", "fine")}
    return face["at"] * face["step"] / face["fine"] * FACTORS[str(figure.facts["unit"])]


def _converted(told: Told) -> Laid:
    facts: dict[str, float | str] = {
        "count": 1,
        "0:share": 1.0,
        "0:label": told.label("P₁"),
        "spans": 1,
        "0:from": 0.0,
        "0:to": 1.0,
        "0:span": told.label("P₂"),
    }
    return Laid("split", facts, "One bar is measured twice: the same pressure in two units.")


def column(told: Told) -> Laid:
    symbols = {each.symbol for each in told.values}
    if "A₁" in symbols:
        return _joined(told)
    if "F" in symbols:
        return _face(told)
    return (_tube if "P₁" in symbols else _standing)(told)


def _standing(told: Told) -> Laid:
    liquid = told.label("ρ") or f"{told.water} water"
    facts: dict[str, float | str] = {
        "height": told.label("h"),
        "area": told.label("A"),
        "liquid": liquid,
        "found": told.label("W", "P_g"),
    }
    return Laid("standing", facts, "A straight column stands on its foot and presses on it.")


def _tube(told: Told) -> Laid:
    facts: dict[str, float | str] = {
        "height": told.label("h"),
        "inner": told.label("P₂"),
        "outer": told.label("P₁"),
    }
    words = (
        "A tube stands in water. The stronger air presses on the water outside and holds a column up in it."
    )
    return Laid("tube", facts, words)


def _face(told: Told) -> Laid:
    """A face between water and air; the arrows are gauge pressures, since the atmosphere is on both sides."""
    named, inside = told.named, told.take("P_in")
    deep = named.gauge(told.number("D"))
    within = _turned(inside, named.pressure_unit) if inside else 0.0
    greater = max(deep, within)
    facts: dict[str, float | str] = {
        "inside": "air behind it",
        "outside": f"{told.water} water",
        "in_label": inside.label if inside else "the atmosphere only",
        "out_label": told.label("D"),
        "in": fraction(within / greater),
        "out": fraction(deep / greater),
        "net": told.label("F"),
    }
    words = "Water presses on a face from one side and air from the other, with arrows as long as the gauge "
    return Laid("wall", facts, f"{words}pressures. What is left pushes the face towards the air.")


def _joined(told: Told) -> Laid:
    times = told.number("A₂", 3.0) / told.number("A₁", 1.0)
    push = told.label("F₁")
    facts: dict[str, float | str] = {
        "narrow": told.label("A₁"),
        "wide": told.label("A₂"),
        "times": times,
        "side": push or told.label("h"),
        "jack": float(bool(push)),
        "same": "the same pressure under both",
    }
    words = (
        "A narrow and a wide vessel are joined at the foot: at one level the pressure is the same under both."
    )
    if push:
        words += (
            " The push on the narrow piston comes out greater on the wide one, by the ratio of the areas."
        )
    return Laid("joined", facts, words)
