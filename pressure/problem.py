"""What a problem is: the one contract that families, pages and records share.

Everything here is immutable. Numbers are plain floats in the unit named beside them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal

System = Literal["us", "metric", "si"]
"""US customary (ft, psi, ft³), metric of the trade (m, bar, L), or SI (m, kPa, m³)."""

PressureKind = Literal["gauge", "absolute", "difference"]

Facts = Mapping[str, float]
"""The numbers of one draw, by name; names end in their unit (``depth_ft``)."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with its unit symbol and, for a pressure, what it is measured from."""

    value: float
    unit: str
    kind: PressureKind | None = None


@dataclass(frozen=True, slots=True)
class Given:
    """One number the prompt hands over, as shown and as computed with."""

    symbol: str
    meaning: str
    quantity: Quantity


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked for: ``dimension`` is "pressure", "length" or "volume"."""

    symbol: str
    meaning: str
    dimension: str
    unit: str
    kind: PressureKind | None = None


@dataclass(frozen=True, slots=True)
class Slip:
    """A known misunderstanding: the band of answers it leads to, in the asked unit, and what mends it."""

    name: str
    label: str
    mend: str
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Key:
    """All that marking needs. ``low`` to ``high`` is accepted, both ends included, in ``asked.unit``.

    The band runs from the lowest to the highest answer under the conventions that the prompt allows,
    widened by the rounding allowance.
    """

    asked: Asked
    answer: float
    low: float
    high: float
    slips: tuple[Slip, ...]


@dataclass(frozen=True, slots=True)
class Line:
    """One line on the board, as MathML and as words that say the same."""

    mathml: str
    words: str


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a worked solution: why, the relation, the numbers put in, what comes out."""

    why: str
    relation: Line
    substitution: Line
    result: Line


@dataclass(frozen=True, slots=True)
class Posed:
    """What a family makes of one set of facts, before draw.py judges whether it is fit to be asked.

    ``accepted`` holds the answer under each convention the prompt allows, the named one first;
    ``missteps`` holds for each slip its name, label, mending sentence and the values it leads to
    under those conventions. A mending sentence may hold ``{typed}`` for the trainee's own number.
    """

    situation: str
    convention: str
    givens: tuple[Given, ...]
    asked: Asked
    accepted: tuple[float, ...]
    missteps: tuple[tuple[str, str, str, tuple[float, ...]], ...]
    sense: str
    caution: str = ""


@dataclass(frozen=True, slots=True)
class Problem:
    """One drawn problem. ``number`` is its place in the family's grid: equal numbers, equal problem."""

    family: str
    edition: int
    seed: int
    system: System
    number: int
    facts: Facts
    situation: str
    convention: str
    givens: tuple[Given, ...]
    key: Key
    sense: str
    caution: str

    @property
    def asked(self) -> Asked:
        return self.key.asked

    @property
    def answer(self) -> Quantity:
        return Quantity(self.key.answer, self.key.asked.unit, self.key.asked.kind)


@dataclass(frozen=True, slots=True)
class Axis:
    """The values one number of a draw may take."""

    name: str
    values: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class WorkedExample:
    """A published or customary result that the family must reproduce: facts in, answer out."""

    system: System
    facts: Facts
    answer: float
    source: str
    within: float = 0.005


@dataclass(frozen=True, slots=True, eq=False)
class Family:
    """A kind of problem. One file in ``pressure/families`` ends in ``FAMILY = Family(...)``.

    ``edition`` rises whenever the same facts would read or mark differently.
    ``pose`` is the fast path (floats only); ``solve`` writes the solution when it is read.
    """

    slug: str
    edition: int
    title: str
    topic: str
    axes: Mapping[System, tuple[Axis, ...]]
    pose: Callable[[System, Facts], Posed]
    solve: Callable[[Problem], tuple[Step, ...]]
    examples: tuple[WorkedExample, ...]

    @property
    def systems(self) -> tuple[System, ...]:
        return tuple(self.axes)
