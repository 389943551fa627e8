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
    """What is asked for: ``dimension`` is one of ``units.DIMENSIONS``; ``only`` if no other unit will do."""

    symbol: str
    meaning: str
    dimension: str
    unit: str
    kind: PressureKind | None = None
    only: bool = False


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
class TableKey:
    """Several numbers asked at once: right when every cell is."""

    cells: tuple[Key, ...]


@dataclass(frozen=True, slots=True)
class Option:
    """One of several things to choose or to put in order.

    ``name`` is the misunderstanding that a wrong choice shows (or, in an order, the thing itself);
    ``label`` says it in a few words; ``why`` says why it is right, wrong, or stands where it stands.
    """

    name: str
    text: str
    why: str
    label: str = ""


@dataclass(frozen=True, slots=True)
class ChoiceKey:
    """One choice: the options as the seed shuffled them, and the name of the one right one."""

    question: str
    options: tuple[Option, ...]
    right: str


@dataclass(frozen=True, slots=True)
class OrderKey:
    """Things to put in order: the items as the seed shuffled them, and their names in the right order."""

    question: str
    items: tuple[Option, ...]
    right: tuple[str, ...]


AnyKey = Key | TableKey | ChoiceKey | OrderKey


@dataclass(frozen=True, slots=True)
class Line:
    """One line on the board, as MathML and as words that say the same."""

    mathml: str
    words: str


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a worked solution: why, the relation, the numbers put in, what comes out.

    A step of reasoning without numbers has only its ``why``.
    """

    why: str
    relation: Line | None = None
    substitution: Line | None = None
    result: Line | None = None


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing that belongs to the prompt: its name in ``pressure/figures``, what it draws, and in words.

    ``words`` serve whoever cannot see it and say no more than the drawing does.
    """

    name: str
    facts: Mapping[str, float | str]
    words: str


Misstep = tuple[str, str, str, tuple[float, ...]]
"""A slip as a family states it: name, label, mending sentence, the values it leads to.

The values come under each convention that the prompt allows. The sentence may hold ``{typed}`` for the
trainee's own number with its unit.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Prompt:
    """What every kind of prompt says, before draw.py judges whether it is fit to be asked.

    ``item`` is the id of an authored question, empty for a prompt that is computed.
    """

    situation: str
    convention: str
    givens: tuple[Given, ...]
    sense: str
    caution: str = ""
    figure: Figure | None = None
    item: str = ""


@dataclass(frozen=True, slots=True)
class Cell:
    """One number asked for: ``accepted`` holds it under each convention allowed, the named one first."""

    asked: Asked
    accepted: tuple[float, ...]
    missteps: tuple[Misstep, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Posed(Prompt):
    """A prompt that asks for one number; the fields are those of a cell."""

    asked: Asked
    accepted: tuple[float, ...]
    missteps: tuple[Misstep, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedTable(Prompt):
    """A prompt that asks for several numbers."""

    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedChoice(Prompt):
    """A prompt with options, the right one first; the seed shuffles them."""

    question: str
    options: tuple[Option, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedOrder(Prompt):
    """A prompt with things to put in order, given in the right one; the seed shuffles them."""

    question: str
    items: tuple[Option, ...]


AnyPosed = Posed | PosedTable | PosedChoice | PosedOrder


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
    key: AnyKey
    sense: str
    caution: str
    figure: Figure | None = None
    item: str = ""

    @property
    def asked(self) -> Asked:
        """What a problem with one number asks for. Raises TypeError for another kind."""
        return self.number_key.asked

    @property
    def answer(self) -> Quantity:
        """The answer to a problem with one number. Raises TypeError for another kind."""
        key = self.number_key
        return Quantity(key.answer, key.asked.unit, key.asked.kind)

    @property
    def number_key(self) -> Key:
        if not isinstance(self.key, Key):
            raise TypeError(f"{self.family} does not ask for one number.")
        return self.key


@dataclass(frozen=True, slots=True)
class Axis:
    """The values one number of a draw may take."""

    name: str
    values: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class WorkedExample:
    """A published or customary result that the family must reproduce: facts in, answer out.

    The answer is a number, the numbers of a table, the name of the right option, or the names in order.
    """

    system: System
    facts: Facts
    answer: float | tuple[float, ...] | str | tuple[str, ...]
    source: str
    within: float = 0.005


@dataclass(frozen=True, slots=True, eq=False)
class Family:
    """A kind of problem. One file in ``pressure/families`` ends in ``FAMILY = Family(...)``.

    ``edition`` rises whenever the same facts would read or mark differently.
    ``pose`` is the fast path (floats only); ``solve`` writes the solution when it is read.
    ``level`` is 1 for a plain question, 2 for one turned round or of two steps, 3 for one of several.
    """

    slug: str
    edition: int
    title: str
    topic: str
    axes: Mapping[System, tuple[Axis, ...]]
    pose: Callable[[System, Facts], AnyPosed]
    solve: Callable[[Problem], tuple[Step, ...]]
    examples: tuple[WorkedExample, ...]
    level: int = 1

    @property
    def systems(self) -> tuple[System, ...]:
        return tuple(self.axes)
