"""What a problem tells, ready to be written into a drawing: givens, then answers, each with its label.

A drawing takes each by its symbol, which is that of the worked solution. Whatever no drawing takes is listed
at its foot, so that a family with a symbol of its own is still shown whole.
"""

from __future__ import annotations

from typing import NamedTuple

from pressure.problem import Asked, Key, Problem, Quantity, TableKey
from pressure.units import shown, spoken
from pressure.waters import ALLOWED, Convention, Water

_LONGEST = 41
"""Letters of a line at the foot of a drawing."""


class Value(NamedTuple):
    """One number of a problem: its ``label`` for the drawing, its ``words`` for a voice."""

    symbol: str
    meaning: str
    number: float
    unit: str
    text: str
    words: str
    is_asked: bool

    @property
    def label(self) -> str:
        return f"{self.symbol} = {self.text}"

    @property
    def said(self) -> str:
        return f"{f'Found: {self.meaning}' if self.is_asked else self._raised}, {self.words}."

    @property
    def _raised(self) -> str:
        return f"{self.meaning[0].upper()}{self.meaning[1:]}"

    @property
    def line(self) -> str:
        """With its meaning where there is room for that."""
        told = f"{self._raised}: {self.text}"
        return told if len(told) <= _LONGEST else self.label


class Told:
    """The values of one problem, handed out once each."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.facts = problem.facts
        self.values = (
            *[_value(each.symbol, each.meaning, each.quantity, given=True) for each in problem.givens],
            *[_answer(key.asked, key.answer) for key in _keys(problem)],
        )
        self._left = list(self.values)

    @property
    def water(self) -> Water:
        said = self.problem.situation
        return "fresh" if "fresh water" in said and "sea water" not in said else "sea"

    @property
    def named(self) -> Convention:
        """The convention that the prompt names, for the scale of the drawing."""
        return ALLOWED[self.problem.system, self.water][0]

    def take(self, *symbols: str) -> Value | None:
        """The first value with one of the symbols that has not been taken; None where there is none."""
        for symbol in symbols:
            for each in self._left:
                if each.symbol == symbol:
                    self._left.remove(each)
                    return each
        return None

    def number(self, symbol: str, otherwise: float = 0.0) -> float:
        """The number with that symbol, which is not taken by this."""
        return next((each.number for each in self.values if each.symbol == symbol), otherwise)

    def label(self, *symbols: str) -> str:
        """The label of a value, now taken; empty where there is none."""
        found = self.take(*symbols)
        return found.label if found else ""

    def line(self, *symbols: str) -> str:
        """The same with its meaning, where there is room for that."""
        found = self.take(*symbols)
        return found.line if found else ""

    @property
    def rest(self) -> str:
        """Lines of the values that nothing took."""
        return "\n".join([each.line for each in self._left])

    @property
    def asked(self) -> str:
        """Both ways to write each answer, a line each: how a drawing knows what to set bold."""
        return "\n".join([way for each in self.values if each.is_asked for way in (each.label, each.line)])

    @property
    def words(self) -> str:
        """All values for a voice, those asked for last."""
        return " ".join([each.said for each in self.values])


def _keys(problem: Problem) -> tuple[Key, ...]:
    if isinstance(problem.key, TableKey):
        return problem.key.cells
    return (problem.key,) if isinstance(problem.key, Key) else ()


def _value(symbol: str, meaning: str, quantity: Quantity, *, given: bool) -> Value:
    value, unit, kind = quantity.value, quantity.unit, quantity.kind
    text, words = shown(value, unit, kind, given=given), spoken(value, unit, kind, given=given)
    return Value(symbol, meaning, value, unit, text, words, not given)


def _answer(asked: Asked, answer: float) -> Value:
    return _value(asked.symbol, asked.meaning, Quantity(answer, asked.unit, asked.kind), given=False)
