"""When a check has shown enough: Wald's sequential probability ratio test in whole numbers. Pure.

A right answer adds one, a wrong answer takes ``loss``; the score that reaches the target meets the
competency, the score that falls to the floor holds it (A. Wald, "Sequential Tests of Statistical
Hypotheses", Annals of Mathematical Statistics 16, 1945). Two conditions stand beside the score: each
family is asked once before anything is decided, and a family answered wrong is answered right again.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from enum import StrEnum
from types import MappingProxyType
from typing import Any


@dataclass(frozen=True, slots=True)
class Rule:
    """The numbers of a rule as they are kept with every decision.

    Raises ValueError for numbers that cannot decide: a maximum the score cannot reach exactly is one.
    """

    name: str
    edition: str
    target: int
    loss: int
    floor: int
    maximum: int
    rise: int

    def __post_init__(self) -> None:
        if self.target < 1 or self.loss < 1 or self.rise < 0 or self.floor >= 0:
            raise ValueError(
                "A rule needs a target, a loss and a rise that are not negative, and a floor below 0."
            )
        if self.maximum < self.target:
            raise ValueError(
                f"The maximum of {self.maximum} questions cannot reach a target of {self.target}."
            )

    def after(self, holds: int) -> Rule:
        """The rule for the try after so many holds: the target rises, the length keeps its proportion."""
        if not holds:
            return self
        target = self.target + self.rise * holds
        return replace(self, target=target, maximum=self.maximum * target // self.target)

    @property
    def in_words(self) -> str:
        """The rule as a trainee is told it."""
        ends = (
            "it is held. After a hold you practise and start again at nought, and the mark to reach has "
            f"risen by {self.rise}."
            if self.rise
            else "it is open for practice again."
        )
        return (
            f"A right answer adds one, a wrong answer takes {self.loss}. Reach {self.target} and the "
            "competency is met; a kind of question answered wrong must be answered right again. Fall to "
            f"minus {-self.floor}, or use up {self.maximum} questions, and {ends}"
        )

    def as_record(self) -> dict[str, Any]:
        return asdict(self)

    @classmethod
    def from_record(cls, record: Mapping[str, Any]) -> Rule:
        return cls(**record)


RULES: Mapping[str, Rule] = MappingProxyType(
    {
        "standard": Rule("standard", "2026-1", target=10, loss=3, floor=-6, maximum=30, rise=2),
        "stricter": Rule("stricter", "2026-1", target=13, loss=6, floor=-9, maximum=39, rise=3),
    }
)


class Outcome(StrEnum):
    """What the answers so far come to."""

    UNDECIDED = "undecided"
    MET = "met"
    HELD = "held"


@dataclass(frozen=True, slots=True)
class Decision:
    """The outcome, the score it rests on, and why, in a sentence."""

    outcome: Outcome
    score: int
    why: str


def decide(rule: Rule, families: Sequence[str], answers: Sequence[tuple[str, bool]]) -> Decision:
    """What ``answers`` (family, right) in the order given come to under the rule.

    Answers after the point of decision do not change it.
    """
    score = 0
    last: dict[str, bool] = {}
    decision = Decision(Outcome.UNDECIDED, 0, "No question answered yet.")
    for count, (family, right) in enumerate(answers, start=1):
        score += 1 if right else -rule.loss
        last[family] = right
        decision = _weigh(rule, score, count, seen=len(last) >= len(set(families)), mended=all(last.values()))
        if decision.outcome is not Outcome.UNDECIDED:
            return decision
    return decision


def owed(rule: Rule, answers: Sequence[tuple[str, bool]], score: int) -> str | None:
    """The family that alone keeps a check from being met: asked next, since the score has been reached."""
    if score < rule.target:
        return None
    last = dict(answers)
    return next((family for family, right in last.items() if not right), None)


def _weigh(rule: Rule, score: int, count: int, *, seen: bool, mended: bool) -> Decision:
    if not seen:
        return Decision(Outcome.UNDECIDED, score, "Not every kind of question has been asked yet.")
    if score >= rule.target and mended:
        return Decision(
            Outcome.MET, score, f"The score reached {score}; the mark to reach was {rule.target}."
        )
    if score <= rule.floor:
        return Decision(Outcome.HELD, score, f"The score fell to {score}; the lower limit was {rule.floor}.")
    left = rule.maximum - count
    if left <= 0 and score >= rule.target:
        return Decision(
            Outcome.HELD, score, f"In {count} questions a kind answered wrong was not answered right again."
        )
    if left <= 0:
        return Decision(
            Outcome.HELD, score, f"{count} questions were answered without reaching {rule.target}."
        )
    if score + left < rule.target:
        return Decision(
            Outcome.HELD,
            score,
            f"From {score}, the {left} questions left could no longer reach {rule.target}.",
        )
    return Decision(Outcome.UNDECIDED, score, "More answers are needed.")
