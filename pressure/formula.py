"""What is written on the board: a small tree of symbols and numbers, as MathML and as words.

Source of the notation: W3C, MathML Core. Units stand in ``mtext``; all text is escaped.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass
from html import escape

from pressure.problem import Line
from pressure.units import Mark, exact, rounded, unit_text

_SPOKEN_UNITS = {"ft": "feet", "m": "metres", "L": "litres", "ft3": "cubic feet", "atm": "atmospheres"}


class Term(ABC):
    """Anything that stands in a formula. ``compound`` terms are fenced inside a product or a difference."""

    compound = False

    @abstractmethod
    def mathml(self) -> str: ...

    @abstractmethod
    def words(self) -> str: ...

    def __add__(self, other: Term) -> Chain:
        return Chain(self, "+", "plus", other, compound=True)

    def __sub__(self, other: Term) -> Chain:
        return Chain(self, "−", "minus", _fenced(other), compound=True)

    def __mul__(self, other: Term) -> Chain:
        return Chain(_fenced(self), "×", "times", _fenced(other))

    def __truediv__(self, other: Term) -> Fraction:
        return Fraction(self, other)


@dataclass(frozen=True, slots=True)
class Symbol(Term):
    """A letter with what stands below it: ``Symbol("P", "abs", "absolute")`` is said "P absolute"."""

    letter: str
    below: str = ""
    spoken: str = ""

    def mathml(self) -> str:
        letter = f"<mi>{escape(self.letter)}</mi>"
        if not self.below:
            return letter
        tag = "mn" if self.below.isdigit() else "mtext"
        return f"<msub>{letter}<{tag}>{escape(self.below)}</{tag}></msub>"

    def words(self) -> str:
        return f"{self.letter} {self.spoken or self.below}".strip()


@dataclass(frozen=True, slots=True)
class Number(Term):
    """A number as it is shown, with its unit. ``unit`` may be empty."""

    text: str
    unit: str = ""
    kind: Mark | None = None

    def mathml(self) -> str:
        number = f"<mn>{escape(self.text)}</mn>"
        if not self.unit:
            return number
        return (
            f"<mrow>{number}<mtext>\N{NO-BREAK SPACE}{escape(unit_text(self.unit, self.kind))}</mtext></mrow>"
        )

    def words(self) -> str:
        if not self.unit:
            return self.text
        unit = _SPOKEN_UNITS.get(self.unit, unit_text(self.unit))
        return f"{self.text} {unit}" + (f" {self.kind}" if self.kind in ("gauge", "absolute") else "")


def given(value: float, unit: str = "", kind: Mark | None = None) -> Number:
    """A given number, exactly as the prompt has it."""
    return Number(exact(value), unit, kind)


def computed(value: float, unit: str = "", kind: Mark | None = None, *, figures: int = 3) -> Number:
    """A computed number, to three significant figures; one more on the way, unless it is short itself."""
    text = rounded(value, figures)
    if figures > 3 and _is_whole(text, value):
        text = exact(float(text))
    return Number(text, unit, kind)


def _is_whole(text: str, value: float) -> bool:
    """Whether the figures shown are the whole number."""
    return abs(float(text) - value) <= 1e-9 * abs(value)


@dataclass(frozen=True, slots=True)
class Chain(Term):
    """Two terms with a sign between them."""

    left: Term
    sign: str
    spoken: str
    right: Term
    compound: bool = False

    def mathml(self) -> str:
        return f"<mrow>{self.left.mathml()}<mo>{self.sign}</mo>{self.right.mathml()}</mrow>"

    def words(self) -> str:
        return f"{self.left.words()} {self.spoken} {self.right.words()}"


@dataclass(frozen=True, slots=True)
class Fenced(Term):
    """A term in brackets."""

    inside: Term

    def mathml(self) -> str:
        return f"<mrow><mo>(</mo>{self.inside.mathml()}<mo>)</mo></mrow>"

    def words(self) -> str:
        return f"open bracket {self.inside.words()} close bracket"


@dataclass(frozen=True, slots=True)
class Fraction(Term):
    """One term over another. Compound ends are spoken in brackets, since a voice draws no bar."""

    top: Term
    bottom: Term

    def mathml(self) -> str:
        return f"<mfrac>{self.top.mathml()}{self.bottom.mathml()}</mfrac>"

    def words(self) -> str:
        return f"{_fenced(self.top).words()} over {_fenced(self.bottom).words()}"


def _fenced(term: Term) -> Term:
    return Fenced(term) if term.compound else term


def equation(left: Term, *right: Term, about: bool = False) -> Line:
    """``left = right``, or ``left ≈ right`` when ``about`` says that the number is rounded."""
    sign, spoken = ("≈", "is about") if about else ("=", "equals")
    mathml = "".join(f"<mo>{sign}</mo>{term.mathml()}" for term in right)
    words = "".join(f" {spoken} {term.words()}" for term in right)
    return Line(f'<math display="block"><mrow>{left.mathml()}{mathml}</mrow></math>', left.words() + words)


def result(left: Term, value: float, unit: str, kind: Mark | None = None, *, figures: int = 3) -> Line:
    """The line a step ends in: ``left = value``, with ≈ where the figures shown are not the whole number."""
    number = computed(value, unit, kind, figures=figures)
    return equation(left, number, about=not _is_whole(number.text, value))
