"""The mixed form of a problem: the same question with its answer wanted in another unit of the trade.

The answer, its slips and their bands are turned exactly, by the factors of units.py; the prompt says the
factor to six figures and takes no other unit. A mixed form must be as fit to be asked as any draw.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from pressure import catalogue
from pressure import constants as c
from pressure.formula import Number, Symbol, computed, equation, result
from pressure.problem import Asked, Posed, Problem, Step
from pressure.slips import Misstep, slip
from pressure.units import FACTORS, exact, rounded, shown, unit_text

OTHER: Mapping[str, str] = MappingProxyType(
    {
        "psi": "bar",
        "bar": "psi",
        "kPa": "psi",
        "mmHg": "kPa",
        "atm": "kPa",
        "ft": "m",
        "m": "ft",
        "ft3": "L",
        "L": "ft3",
        "in3": "mL",
        "mL": "in3",
        "lb": "kg",
        "kg": "lb",
        "ft3/min": "L/min",
        "L/min": "ft3/min",
        "lb/ft3": "g/L",
        "g/L": "lb/ft3",
        "%": "ppm",
    }
)
"""The unit that a problem's own is mixed with: what the other half of the trade reads on its dials."""

_FOUNDED_ON: Mapping[str, tuple[c.Constant, ...]] = {
    "psi": (c.POUND, c.INCH, c.GRAVITY),
    "bar": (c.BAR,),
    "mmHg": (c.MERCURY, c.GRAVITY),
    "atm": (c.ATMOSPHERE,),
    "ft": (c.FOOT,),
    "ft3": (c.FOOT,),
    "in3": (c.INCH,),
    "lb": (c.POUND,),
    "kN": (c.GRAVITY,),
    "ft3/min": (c.FOOT,),
    "lb/ft3": (c.POUND, c.FOOT),
}
OF_THE_UNIT = ("not-converted", "inverted-factor")
"""The slips of the last step, that which turns the unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mixed(Problem):
    """A problem in its mixed form; ``plain`` is the one it was made of."""

    plain: Problem


def other_unit(asked: Asked) -> str:
    """The unit to mix in; empty where the asked one has no other, or where it is the very question."""
    if asked.only:
        return ""
    if asked.unit == "lb" and "force" in asked.meaning:
        return "kN"
    return OTHER.get(asked.unit, "")


def plain(problem: Problem) -> Problem:
    """The problem in its own unit, whichever form it is given in."""
    return problem.plain if isinstance(problem, Mixed) else problem


def solve(problem: Problem) -> tuple[Step, ...]:
    """The worked solution; that of a mixed form ends in one step more, which turns the unit."""
    steps = catalogue.solve(plain(problem))
    if not isinstance(problem, Mixed):
        return steps
    return *steps, Change(problem.plain.asked).step(problem.plain)


class Change:
    """From the unit of ``asked`` to its other."""

    def __init__(self, asked: Asked) -> None:
        self.asked, self.old, self.new = asked, asked.unit, other_unit(asked)
        self.factor = FACTORS[self.old] / FACTORS[self.new]
        self.many = max(self.factor, 1 / self.factor)
        self.small, self.large = (self.new, self.old) if self.factor > 1 else (self.old, self.new)

    @property
    def told(self) -> str:
        """How many of the smaller unit make one of the larger: ``1 bar is 14.5038 psi``."""
        return f"1 {self._named(self.large)} is {self._digits} {self._named(self.small)}"

    def _named(self, unit: str) -> str:
        return unit_text(unit, "absolute" if unit == "atm" else None)

    @property
    def _digits(self) -> str:
        return exact(float(rounded(self.many, 6)))

    def turned(self, values: tuple[float, ...]) -> tuple[float, ...]:
        return tuple([value * self.factor for value in values])

    def slips(self, posed: Posed) -> Iterator[Misstep]:
        old, new, answers = self._named(self.old), unit_text(self.new), posed.accepted
        yield slip(
            "not-converted",
            f"That is the figure in {old}. Turn it into {new}: {self.told}.",
            *answers,
        )
        yield slip(
            "inverted-factor",
            f"{{typed}} has the factor upside down: {self.told}, so it takes "
            f"{'more' if self.factor > 1 else 'fewer'} {new} than {old} to say the same.",
            *[value / self.factor for value in answers],
        )

    def misstep(self, misstep: Misstep) -> Misstep:
        """A slip on the way, turned with the unit: its sentence speaks of the number before that."""
        name, label, mend, values = misstep
        before = shown(values[0], self.old)
        said = mend.replace("{typed}", before)
        lead = f"{{typed}} is about {before}, turned into {unit_text(self.new)}. "
        return name, label, lead + said, self.turned(values)

    def step(self, problem: Problem) -> Step:
        letter, kind = self.asked.symbol[0], self.asked.kind
        first, last = Symbol(letter, unit_text(self.old)), Symbol(letter, unit_text(self.new))
        per = Symbol("k", f"{unit_text(self.small)}/{unit_text(self.large)}")
        before = computed(problem.answer.value, self.old, kind, figures=4)
        number = Number(self._digits, per.below)
        up = self.factor > 1
        return Step(
            f"{'Multiply' if up else 'Divide'} to turn it into {unit_text(self.new)}: {self.told} "
            f"({self._sources()}).",
            equation(last, first * per if up else first / per),
            equation(last, before * number if up else before / number),
            result(last, problem.answer.value * self.factor, self.new, kind),
        )

    def _sources(self) -> str:
        founded = [one for unit in (self.old, self.new) for one in _FOUNDED_ON.get(unit, ())]
        named: dict[str, list[str]] = {}
        for one in dict.fromkeys(founded):
            named.setdefault(one.source, []).append(one.name)
        said = "; ".join(f"{' and '.join(names)}: {source}" for source, names in named.items())
        return said or "by definition"
