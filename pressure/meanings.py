"""What a wrong number would have meant at work: one sentence, told after marking beside what mends it.

Each sentence follows from the stored prompt alone and from the laws, under the convention that the prompt
names. Where nothing true and useful can be said there is none.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cached_property
from types import MappingProxyType
from typing import Any

from pressure.laws.boyle import density_after, pressure_after, volume_after
from pressure.laws.charles import absolute_temperature
from pressure.laws.dalton import partial_pressure, total_for
from pressure.laws.hydrostatics import gauge
from pressure.laws.supply import over_bottom
from pressure.units import FACTORS, shown
from pressure.waters import ALLOWED, LAKE, LAKE_SENTENCE, Convention

_DEEPEST = {"ft": 1000.0, "m": 300.0}
"""Deeper than this a depth means nothing to a diver, and none is named."""
_BEARABLE = {"°F": (-60.0, 400.0), "°C": (-50.0, 200.0)}
"""What a temperature at work may be; beyond it none is named."""
_ZERO = {"°F": 460.0, "°C": 273.0}
_NAMED: tuple[Convention, ...] = tuple(one for allowed in ALLOWED.values() for one in allowed)


class Case:
    """A wrong number against its problem. Arithmetic is in the problem's own unit, words in the asked one."""

    def __init__(self, prompt: Mapping[str, Any], answer: float, value: float) -> None:
        self.prompt, self.asked = prompt, prompt["asked"]
        self.unit: str = prompt.get("mixed") or self.asked["unit"]
        factor = FACTORS[self.asked["unit"]] / FACTORS[self.unit]
        self.value, self.answer = value * factor, answer * factor
        self.told, self.due = (self._in_asked(number) for number in (value, answer))

    def _in_asked(self, number: float) -> str:
        return shown(number, self.asked["unit"], self.asked["kind"])

    def part(self, number: float) -> str:
        """A number of the problem's own unit, said in the asked one."""
        return self._in_asked(number * FACTORS[self.unit] / FACTORS[self.asked["unit"]])

    @cached_property
    def givens(self) -> Mapping[str, Mapping[str, Any]]:
        return {one["symbol"]: one for one in self.prompt["givens"]}

    def __getitem__(self, symbol: str) -> float:
        return float(self.givens[symbol]["value"])

    def text(self, symbol: str) -> str:
        return str(self.givens[symbol]["text"])

    def depth(self, symbol: str) -> float:
        """A given depth; what is not given is the surface."""
        return self[symbol] if symbol in self.givens else 0.0

    def like(self, symbol: str, number: float) -> str:
        """A number said as the given of that symbol is."""
        return shown(number, self.givens[symbol]["unit"], self.givens[symbol]["kind"])

    @cached_property
    def water(self) -> Convention:
        """The convention that the prompt names; where it names no water, the sea of its system."""
        told, system = self.prompt["convention"], self.prompt["system"]
        if LAKE_SENTENCE[system] in told:
            return LAKE[system][0]
        return next((one for one in _NAMED if one.sentence in told), ALLOWED[system, "sea"][0])

    @property
    def surface(self) -> float:
        return self["P_air"] if "P_air" in self.givens else self.water.surface

    @property
    def bottom(self) -> str:
        """The symbol of the depth that the question is about."""
        return "D" if "D" in self.givens else "D₂"

    def atmospheres(self, symbol: str) -> float:
        """Absolute pressure at the depth of that given, as a multiple of the surface pressure."""
        return self.water.atmospheres(self.depth(symbol))

    def would_be_at(self, depth: float) -> str:
        """Where the wrong number would have been right."""
        unit, nought = self.water.depth_unit, self.water.column / 200
        here = self.text(self.bottom) if self.bottom in self.givens else "the surface"
        there = shown(depth, unit) if depth >= nought else "the surface"
        if not -nought < depth <= _DEEPEST[unit] or shown(depth, unit) == shown(
            self.depth(self.bottom), unit
        ):
            return ""
        return f"{self.told} would be so at {there}, not at {here}." if there != here else ""


def meaning(prompt: Mapping[str, Any], answer: float, value: float) -> str:
    """What ``value`` would have meant where ``answer`` is right, both in the asked unit; often nothing.

    ``prompt`` is the stored form of record.shown for a problem that asks for one number.
    """
    say = _SAYINGS.get(prompt["family"])
    if say is None or value <= 0.0:
        return ""
    case = Case(prompt, answer, value)
    return say(case) if case.told != case.due else ""


def _pressure(case: Case) -> str:
    air = case.surface if case.asked["kind"] == "absolute" else 0.0
    if case.value < air:
        return f"No water has so little: the air alone presses with {shown(air, case.unit)}."
    return case.would_be_at(gauge(case.value, air) / case.water.gradient)


def _depth(case: Case) -> str:
    symbol = "P_g" if "P_g" in case.givens else "P_abs"
    air = 0.0 if symbol == "P_g" else case.surface
    if case.value > _DEEPEST[case.unit]:
        return ""
    there = case.like(symbol, air + case.water.gauge(case.value))
    return f"At {case.told} the pressure is {there}, not {case.text(symbol)}."


def _sea(case: Case) -> str:
    """A reading without a depth, told as the depth in the sea where it belongs."""
    to_water = FACTORS[case.unit] / FACTORS[case.water.pressure_unit]
    air = case.water.surface if case.asked["kind"] == "absolute" else 0.0
    depths = [gauge(number * to_water, air) / case.water.gradient for number in (case.value, case.answer)]
    unit = case.water.depth_unit
    if not 0.0 < depths[0] <= _DEEPEST[unit] or not 0.0 < depths[1] <= _DEEPEST[unit]:
        return ""
    wrong, right = (shown(depth, unit) for depth in depths)
    return f"In the sea {case.told} is the pressure at {wrong}; the right one is that at {right}."


def _volume(case: Case) -> str:
    first = "V₁"
    pressure = pressure_after(case.atmospheres("D₁"), case[first], case.value)
    if pressure < 1.0 - 1e-9:
        return f"That air would take up {case.told} only under less than it bears at the surface."
    return case.would_be_at((pressure - 1.0) * case.water.column)


def _depth_of_volume(case: Case) -> str:
    first, last = ("V_full", "V_res") if "V_full" in case.givens else ("V₁", "V₂")
    there = volume_after(case[first], case.atmospheres("D₁"), case.water.atmospheres(case.value))
    return f"At {case.told} the air would take up {case.like(last, there)}, not {case.text(last)}."


def _density(case: Case) -> str:
    return case.would_be_at((case.value / density_after(case["ρ₁"], 1.0, 1.0) - 1.0) * case.water.column)


def _ata(case: Case, unit: str, depth: float) -> float:
    """Absolute pressure at a depth: in ata the surface counts one, whatever its psi."""
    return case.water.atmospheres(depth) if unit == "atm" else case.water.absolute(depth)


def _partial(case: Case) -> str:
    share = case["F_O2" if "oxygen" in case.asked["meaning"] else "F_N2"] / 100
    air = _ata(case, case.unit, 0.0)
    deeper = total_for(case.value, share) - air
    return case.would_be_at(deeper / (_ata(case, case.unit, 1.0) - air)) if deeper >= 0.0 else ""


def _limit(case: Case) -> str:
    limit = case.givens["p_O2"]
    there = partial_pressure(case["F_O2"] / 100, _ata(case, limit["unit"], case.value))
    beyond = " That is beyond the limit." if case.value > case.answer else ""
    return f"At {case.told} the oxygen presses with {case.like('p_O2', there)}, not {limit['text']}.{beyond}"


def _equivalent(case: Case) -> str:
    if case.asked["symbol"] == "F":
        there = case.like("F_s", case.value * case.atmospheres("D"))
        deep, due = case.text("D"), case.text("F_s")
        return f"At {deep} {case.told} would press like {there} in surface air, not {due}."
    return case.would_be_at((case.value / case["F"] - 1.0) * case.water.column)


def _over_bottom(case: Case) -> str:
    if "P_over" not in case.givens:
        return f"You would have counted on {case.told} above the bottom where there is {case.due}."
    water = case.water.gauge(case["D"])
    left = over_bottom(case.value, water)
    if left <= 0.0:
        return f"The water at {case.text('D')} presses with {case.part(water)}: no air would reach the diver."
    return f"That would leave {case.like('P_over', left)} over the bottom, not {case.text('P_over')}."


def _between(case: Case) -> str:
    between = abs(case.depth("D₁") - case.depth("D₂"))
    as_much = between * case.value / case.answer
    return (
        f"{case.told} would be the difference over {case.like('D₁', as_much)} of water, not over "
        f"{case.like('D₁', between)}."
    )


def _rise(case: Case) -> str:
    if case.value > case.answer:
        return f"You would have counted on a rise of {case.told}; {case.due} makes that over-pressure."
    return (
        f"A rise of {case.told} makes only {case.like('Δp', case['Δp'] * case.value / case.answer)} of "
        f"over-pressure, not {case.text('Δp')}."
    )


def _vent(case: Case) -> str:
    if case.value > case.answer:
        return ""
    return (
        f"With {case.told} let out, {case.part(case.answer - case.value)} too much would stay in the lungs."
    )


def _column(case: Case) -> str:
    height = case["h"] * case.value / case.answer
    if height > _DEEPEST[case.givens["h"]["unit"]]:
        return ""
    return f"{case.told} would be so under a column of {case.like('h', height)}, not of {case.text('h')}."


def _same(case: Case) -> str:
    return f"{case.told} is {case.like('P₁', case['P₁'] * case.value / case.answer)}, not {case.text('P₁')}."


def _warmth(case: Case) -> str:
    scale = case.givens["t₁"]["unit"]
    first, air = ("V₁", 0.0) if "V₁" in case.givens else ("P_g1", case.water.surface)
    before = absolute_temperature(case["t₁"], _ZERO[scale])
    degrees = before * (case.value + air) / (case[first] + air) - _ZERO[scale]
    coldest, warmest = _BEARABLE[scale]
    if not coldest < degrees < warmest:
        return ""
    return f"{case.told} would be so at {shown(round(degrees), scale, given=True)}, not at {case.text('t₂')}."


def _planned(sentence: str) -> Callable[[Case], str]:
    return lambda case: sentence.format(told=case.told, due=case.due)


def _short(sentence: str) -> Callable[[Case], str]:
    """For too little alone: more than is needed does no harm that can be named."""

    def say(case: Case) -> str:
        missing = case.answer - case.value
        return sentence.format(told=case.told, missing=case.part(missing)) if missing > 0.0 else ""

    return say


_AIR = _planned("You would have counted on {told} of air where there are {due}.")

_SAYINGS: Mapping[str, Callable[[Case], str]] = MappingProxyType(
    {
        **dict.fromkeys(("depth-to-gauge", "depth-to-absolute", "lake-pressure"), _pressure),
        **dict.fromkeys(("gauge-to-depth", "absolute-to-depth", "lake-depth"), _depth),
        **dict.fromkeys(("gauge-to-absolute", "absolute-to-gauge", "dial-reading"), _sea),
        **dict.fromkeys(("depth-to-volume", "between-depths", "volume-on-ascent"), _volume),
        **dict.fromkeys(("held-breath-down", "held-breath-up"), _volume),
        **dict.fromkeys(("depth-for-fraction", "spill-depth", "residual-volume-depth"), _depth_of_volume),
        **dict.fromkeys(("closed-space-difference", "helmet-supply-loss"), _between),
        **dict.fromkeys(("surface-equivalent", "contaminant-at-depth"), _equivalent),
        **dict.fromkeys(("column-pressure", "column-weight"), _column),
        **dict.fromkeys(("bell-cooling", "cylinder-heating"), _warmth),
        **dict.fromkeys(("cylinder-cooling", "receiver-temperature"), _warmth),
        **dict.fromkeys(("cylinder-content", "cylinder-endurance"), _AIR),
        "density-at-depth": _density,
        "partial-pressure": _partial,
        "depth-for-partial-pressure": _limit,
        "overbottom-pressure": _over_bottom,
        "overpressure-rise": _rise,
        "volume-to-vent": _vent,
        "unit-conversion": _same,
        "surface-rate": _planned("You would have planned with {told} for a diver who uses {due}."),
        "use-at-depth": _planned("You would have planned {told} of air for a dive that takes {due}."),
        "compressor-demand": _planned("You would have set up {told} of air for divers who take {due}."),
        "apparent-weight": _planned("You would have rigged for {told} where {due} hang on the hook."),
        "lift-bag-growth": _planned("You would have reckoned with {told} more lift where {due} come."),
        "suit-compression": _planned("You would have reckoned with {told} less lift where {due} go."),
        "lift-bag-fill": _short(
            "With {told} of surface air the load stays down: {missing} would be missing."
        ),
        "air-to-refill": _short("With {told} it would not be full: {missing} would be missing."),
        "air-to-restore": _short("With {told} it would not be as before: {missing} would be missing."),
    }
)
"""How each family's wrong numbers are told. A family that is not here says nothing."""
