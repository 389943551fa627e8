"""A question as it was written, with gaps, and as it is drawn: every combination of its slots is a draw."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache, partial
from itertools import product, zip_longest
from pathlib import Path

from course.lessons import inserts
from pressure.problem import Option, PosedChoice, PosedOrder, System

SYSTEMS: tuple[System, ...] = ("us", "metric")

Values = Mapping[str, str]
"""The text of each slot in one draw."""

NAME = re.compile(r"[a-z][a-z0-9_]*")
TAKEN = ("atmosphere", "unit", "convention")
"""Names that are inserts of one word, so that no slot may bear them."""

_GAP = re.compile(rf"\{{({NAME.pattern})\}}")

PosedQuestion = PosedChoice | PosedOrder


class Fault(Exception):
    """What is wrong with a question, and how to mend it."""


@dataclass(frozen=True, slots=True)
class Question:
    """One question with its gaps. ``options`` begin with the right one, or stand in the right order."""

    id: str
    line: int
    is_order: bool
    scene: str
    ask: str
    sense: str
    reason: tuple[str, ...]
    source: str
    options: tuple[Option, ...]
    draws: tuple[Values, ...]

    @property
    def texts(self) -> tuple[str, ...]:
        """Every text that has gaps to fill."""
        answers = [text for one in self.options for text in (one.text, one.why)]
        return (self.scene, self.ask, self.sense, *self.reason, *answers)

    def posed(self, draw: Values, system: System, caution: str = "") -> PosedQuestion:
        """One draw as a prompt. Raises UnknownInsert."""
        said = partial(fill, values=draw, system=system)
        options = tuple([replace(one, text=said(one.text), why=said(one.why)) for one in self.options])
        scene, ask, sense = said(self.scene), said(self.ask), said(self.sense)
        if self.is_order:
            return PosedOrder(
                situation=scene,
                convention="",
                givens=(),
                question=ask,
                items=options,
                sense=sense,
                caution=caution,
                item=self.id,
            )
        return PosedChoice(
            situation=scene,
            convention="",
            givens=(),
            question=ask,
            options=options,
            sense=sense,
            caution=caution,
            item=self.id,
        )

    def reasons(self, draw: Values, system: System) -> tuple[str, ...]:
        """The steps of reasoning in one draw. Raises UnknownInsert."""
        return tuple([fill(step, draw, system) for step in self.reason])


@dataclass(frozen=True, slots=True)
class Sheet:
    """A file of questions."""

    path: Path
    title: str
    competency: str
    edition: int
    questions: tuple[Question, ...]


def combinations(slots: Mapping[str, Sequence[str]], cases: Sequence[Values]) -> tuple[Values, ...]:
    """Every case with every combination of the slots; the last slot turns fastest."""
    return tuple(
        [
            {**case, **dict(zip(slots, texts, strict=True))}
            for case in cases or [{}]
            for texts in product(*slots.values())
        ]
    )


def gaps(text: str) -> set[str]:
    """The names that stand in braces, be they slots or inserts of one word."""
    return set(_GAP.findall(text))


def fill(text: str, values: Values, system: System) -> str:
    """The text with its gaps filled and its inserts computed. Raises UnknownInsert."""
    plain, named = _parts(text)[::2], _parts(text)[1::2]
    filled = [values.get(name, f"{{{name}}}") for name in named]
    return "".join([_computed(part, system) for pair in zip_longest(plain, filled) for part in pair if part])


@lru_cache(maxsize=4096)
def _parts(text: str) -> tuple[str, ...]:
    """Plain text and names of gaps in turn."""
    return tuple(_GAP.split(text))


@lru_cache(maxsize=4096)
def _computed(text: str, system: System) -> str:
    return inserts.fill(text, system)
