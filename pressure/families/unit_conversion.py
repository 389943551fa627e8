"""A pressure is known in one unit; what is it in another?"""

from __future__ import annotations

from collections.abc import Mapping

from pressure.constants import FRESH_FT_PER_ATM, SEA_FT_PER_ATM, SURFACE_PSI
from pressure.formula import Symbol, equation, given, result
from pressure.problem import (
    Asked,
    Axis,
    Facts,
    Family,
    Given,
    Posed,
    Problem,
    Quantity,
    Step,
    System,
    WorkedExample,
)
from pressure.slips import Misstep, slip
from pressure.units import FACTORS, exact, shown

_SCENES = (
    "A maker's sheet gives {value}. What is that in {unit}?",
    "The log of the chamber on the work barge notes a rise of {value}. What is that in {unit}?",
    "A test certificate reads {value}, and the panel is marked in {unit}. What is it in {unit}?",
)
# One atmosphere in each unit as the trade has it; what the exact units make of it is accepted beside it.
_ATMOSPHERE: Mapping[str, float] = {
    "atm": 1.0,
    "psi": SURFACE_PSI.value,
    "bar": 1.013,
    "mbar": 1013.0,
    "kPa": 101.3,
    "mmHg": 760.0,
    "inHg": 29.92,
    "fsw": SEA_FT_PER_ATM.value,
    "ffw": FRESH_FT_PER_ATM.value,
    "msw": 10.13,
}
_GRAINS: Mapping[str, float] = {
    "atm": 0.4,
    "psi": 5.0,
    "bar": 0.5,
    "mbar": 50.0,
    "kPa": 50.0,
    "mmHg": 25.0,
    "inHg": 1.0,
    "fsw": 4.0,
    "ffw": 4.0,
    "msw": 2.0,
}
"""The steps in which a given pressure is drawn."""
_BARS = {"bar": 1.0, "mbar": 1000.0, "kPa": 100.0, "msw": 10.0}
"""What one bar is, for those who take it for one atmosphere."""
_WATERS = {"fsw": ("fresh-for-salt", 34.0), "ffw": ("salt-for-fresh", 33.0)}
_MENDS = {
    "fresh-for-salt": "34 is for fresh water. It takes 33 ft of sea water to weigh one atmosphere.",
    "salt-for-fresh": "33 is for sea water. It takes 34 ft of fresh water to weigh one atmosphere.",
}


def _pairs(text: str) -> tuple[tuple[str, str], ...]:
    return tuple([(first, second) for first, _, second in (pair.partition(">") for pair in text.split())])


_PAIRS: Mapping[System, tuple[tuple[str, str], ...]] = {
    "us": _pairs(
        "psi>atm psi>bar psi>kPa psi>mmHg atm>psi bar>psi kPa>psi mmHg>psi inHg>psi fsw>psi psi>fsw fsw>atm "
        "atm>fsw fsw>msw fsw>kPa ffw>psi psi>ffw bar>fsw"
    ),
    "metric": _pairs(
        "bar>atm bar>mmHg bar>psi atm>bar atm>kPa kPa>atm kPa>mmHg mmHg>kPa mmHg>mbar psi>bar msw>bar "
        "bar>msw msw>kPa msw>atm atm>msw msw>psi psi>msw msw>fsw fsw>bar"
    ),
}


def _factors(first: str, second: str) -> tuple[float, float]:
    """How many of ``second`` make one of ``first``: by the atmosphere named, and exactly."""
    return _ATMOSPHERE[second] / _ATMOSPHERE[first], FACTORS[first] / FACTORS[second]


def pose(system: System, facts: Facts) -> Posed:
    first, second = _PAIRS[system][int(facts["pair"])]
    value = round(facts["grains"] * _GRAINS[first], 6)
    factors = _factors(first, second)
    told = [f"{exact(_ATMOSPHERE[unit])} {unit}" for unit in (first, second) if unit != "atm"]
    return Posed(
        situation=_SCENES[int(facts["scene"])].format(value=shown(value, first, given=True), unit=second),
        convention=f"Take one atmosphere as {' and as '.join(told)}.",
        givens=(Given("P₁", "pressure given", Quantity(value, first)),),
        asked=Asked("P₂", "the same pressure", "pressure", second, only=True),
        accepted=tuple([value * factor for factor in factors]),
        missteps=(
            *_factor_slips(value, second, factors),
            *_bar_slip(first, second, value),
            *_water_slips(first, second, value),
        ),
        sense=_sense(first, second, factors[0]),
    )


def _sense(first: str, second: str, factor: float) -> str:
    small, large = (second, first) if factor > 1 else (first, second)
    return f"It takes more {small} than {large} to say the same pressure, for one {small} is less."


def _factor_slips(value: float, second: str, factors: tuple[float, float]) -> tuple[Misstep, ...]:
    missteps = (
        slip(
            "inverted-factor",
            "{typed} has the factor upside down. Divide by the unit you leave, multiply by the one you go "
            "to.",
            *[value / factor for factor in factors],
        ),
        slip(
            "atmosphere-added",
            "{typed} has an atmosphere added. Only the unit changes here; nothing is added.",
            *[value * factor + _ATMOSPHERE[second] for factor in factors],
        ),
    )
    if 0.09 < factors[0] < 0.11:  # ten times too much is then the number as it was
        return missteps
    mend = "The point slipped one place: {typed} is ten times too much."
    return *missteps, slip("decimal-point", mend, *[value * factor * 10 for factor in factors])


def _bar_slip(first: str, second: str, value: float) -> tuple[Misstep, ...]:
    """One bar taken for one atmosphere, where that makes a difference; else the number left as it was."""
    if (first in _BARS) == (second in _BARS):
        return (_left_as_it_was(value),)
    atmosphere = {**_ATMOSPHERE, **_BARS}
    taken = slip(
        "atm-for-bar",
        "A bar is a little less than an atmosphere: one atmosphere is 1.013 bar.",
        value * atmosphere[second] / atmosphere[first],
    )
    return (taken,) if {first, second} == {"bar", "atm"} else (taken, _left_as_it_was(value))


def _left_as_it_was(value: float) -> Misstep:
    return slip("not-converted", "{typed} is the number as it was. A new unit needs a new number.", value)


def _water_slips(first: str, second: str, value: float) -> tuple[Misstep, ...]:
    for unit in (first, second):
        if unit in _WATERS:
            name, column = _WATERS[unit]
            return (slip(name, _MENDS[name], _with(first, second, value, unit, column)),)
    if "psi" in (first, second) and not {"mmHg", "msw"} & {first, second}:
        mend = "33 is the feet of sea water to an atmosphere. In psi an atmosphere is 14.7."
        return (slip("depth-for-atmosphere", mend, _with(first, second, value, "psi", 33.0)),)
    return ()


def _with(first: str, second: str, value: float, unit: str, column: float) -> float:
    """The value converted with ``column`` for one atmosphere in ``unit``."""
    return (
        value
        * (column if unit == second else _ATMOSPHERE[second])
        / (column if unit == first else _ATMOSPHERE[first])
    )


def solve(problem: Problem) -> tuple[Step, ...]:
    first, second = _PAIRS[problem.system][int(problem.facts["pair"])]
    value = round(problem.facts["grains"] * _GRAINS[first], 6)
    before, after = Symbol("P", "1"), Symbol("P", "2")
    old, new = Symbol("a", "1", "of the first unit"), Symbol("a", "2", "of the second unit")
    return (
        Step(
            "One atmosphere is the bridge: divide by how many of the first unit it is, multiply by how "
            "many of the second.",
            equation(after, before * (new / old)),
            equation(
                after,
                given(value, first) * (given(_ATMOSPHERE[second], second) / given(_ATMOSPHERE[first], first)),
            ),
            result(after, problem.answer.value, second),
        ),
    )


def _axes(system: System) -> tuple[Axis, ...]:
    return (
        Axis("pair", tuple(map(float, range(len(_PAIRS[system]))))),
        Axis("grains", tuple(map(float, range(2, 61)))),
        Axis("scene", tuple(map(float, range(len(_SCENES))))),
    )


def _example(
    system: System, value: float, first: str, second: str, answer: float, source: str
) -> WorkedExample:
    pair = float(_PAIRS[system].index((first, second)))
    facts = {"pair": pair, "grains": value / _GRAINS[first], "scene": 0.0}
    return WorkedExample(system, facts, answer, source)


_CHEMISTRY = "OpenStax Chemistry 2e, §9.1"

FAMILY = Family(
    slug="unit-conversion",
    edition=2,  # from this one on only the asked unit is taken: the given pressure was an answer before
    title="From one unit of pressure into another",
    topic="gauge and absolute",
    axes={"us": _axes("us"), "metric": _axes("metric")},
    pose=pose,
    solve=solve,
    examples=(
        _example("us", 32, "psi", "kPa", 220.6, f"{_CHEMISTRY}, exercises, to two figures"),
        _example("us", 88.8, "atm", "psi", 1305, f"{_CHEMISTRY}, exercises"),
        _example(
            "us", 3000, "psi", "bar", 206.8, "arithmetic; OpenStax University Physics 1, §14.2, put right"
        ),
        _example("us", 132, "fsw", "atm", 4, "US Navy Diving Manual, ch. 12 (12-2): 132 fsw is 5 ata"),
        _example(
            "us",
            57,
            "ffw",
            "psi",
            24.6,
            "teaching sheet, undated (low authority): 57 ft of fresh water, 24.6 psi",
        ),
        _example("metric", 615, "mmHg", "kPa", 82.0, f"{_CHEMISTRY}, exercises"),
        _example("metric", 60, "msw", "bar", 6, "Scott et al., J Appl Physiol 130:1490, 2021: 60 m is 7 ata"),
    ),
)
