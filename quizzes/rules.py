"""When a check has shown enough: Wald's sequential probability ratio test in whole numbers. Pure.

A right answer adds one, a wrong answer takes ``loss``; the score that reaches the target meets the
competency, the score that falls to the floor holds it (A. Wald, "Sequential Tests of Statistical
Hypotheses", Annals of Mathematical Statistics 16, 1945). Two conditions stand beside the score: the first
block, each kind of question once, is finished before anything is decided, and a kind answered wrong is
answered right again. The kinds are the families of a competency, or the competencies of the whole course.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from enum import StrEnum
from types import MappingProxyType
from typing import Any


@dataclass(frozen=True, slots=True)
class Rule:
    """The numbers of a rule as they are kept with every decision. Raises ValueError for what cannot decide.

    What is merely unwise, ``trouble`` says: a rule that was once in force must read back for ever.
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

    @property
    def trouble(self) -> str:
        """What is wrong with the maximum, in a sentence; empty where the score can reach the target there.

        With w wrong answers the target is reached after target + w(loss + 1) questions and after no other
        number, so only those are lengths that are ever used up.
        """
        if (self.maximum - self.target) % (self.loss + 1) == 0:
            return ""
        below = self.maximum - (self.maximum - self.target) % (self.loss + 1)
        turn = self.loss + 1
        return (
            f"In the {self.name} rule a score of {self.target} cannot be reached with question "
            f"{self.maximum}: each wrong answer costs {turn} questions more, so it is reached after "
            f"{self.target}, {self.target + turn}, {self.target + 2 * turn} … Make the maximum {below} or "
            f"{below + turn}."
        )

    def after(self, holds: int) -> Rule:
        """The rule for the try after so many holds: the target rises, and the length in proportion to it.

        The length is rounded up to one at which the score can reach the target.
        """
        if not holds:
            return self
        target, turn = self.target + self.rise * holds, self.loss + 1
        turns = -(target * (self.target - self.maximum) // (self.target * turn))  # rounded up
        return replace(self, target=target, maximum=target + turns * turn)

    @property
    def in_words(self) -> str:
        """The rule as a trainee is told it."""
        whole = self.name == "course"
        what = "every competency is renewed" if whole else "the competency is met"
        kind, each = ("a competency", "Each") if whole else ("a kind of question", "Each kind")
        return (
            f"A right answer adds one, a wrong answer takes {self.loss}. Reach {self.target} and {what}; "
            f"{kind} answered wrong must be answered right again. {each} is asked once before anything is "
            f"decided. Fall to minus {-self.floor}, or use up {self.maximum} questions, "
            f"and {self._on_a_hold}"
        )

    @property
    def _on_a_hold(self) -> str:
        if self.name == "course":
            return (
                "it is held: nothing is lost, you may try again another day, and the mark to reach has risen "
                f"by {self.rise}."
            )
        if self.rise:
            return (
                "it is held. After a hold you practise and start again at nought, and the mark to reach has "
                f"risen by {self.rise}."
            )
        return "it is open for practice again."

    def as_record(self) -> dict[str, Any]:
        return asdict(self)

    @classmethod
    def from_record(cls, record: Mapping[str, Any]) -> Rule:
        return cls(**record)


RULES: Mapping[str, Rule] = MappingProxyType(
    {
        "standard": Rule("standard", "2026-1", target=10, loss=3, floor=-6, maximum=30, rise=2),
        "stricter": Rule("stricter", "2026-2", target=13, loss=6, floor=-9, maximum=34, rise=3),
        "course": Rule("course", "2026-1", target=20, loss=4, floor=-8, maximum=50, rise=3),
    }
)
"""The course rule decides the check over the whole course, which renews what was met before."""


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


def decide(rule: Rule, kinds: Sequence[str], answers: Sequence[tuple[str, bool]]) -> Decision:
    """What ``answers`` (kind, right) in the order given come to under the rule.

    Answers after the point of decision do not change it.
    """
    score = 0
    last: dict[str, bool] = {}
    decision = Decision(Outcome.UNDECIDED, 0, "No question answered yet.")
    for count, (kind, right) in enumerate(answers, start=1):
        score += 1 if right else -rule.loss
        last[kind] = right
        decision = _weigh(rule, score, count, seen=len(last) >= len(set(kinds)), mended=all(last.values()))
        if decision.outcome is not Outcome.UNDECIDED:
            return decision
    return decision


def owed(rule: Rule, kinds: Sequence[str], answers: Sequence[tuple[str, bool]], score: int) -> str | None:
    """The kind that alone keeps a check from being met: asked next, since the score has been reached.

    None within the first block, which is dealt to its end.
    """
    last = dict(answers)
    if score < rule.target or len(last) < len(set(kinds)):
        return None
    return next((kind for kind, right in last.items() if not right), None)


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
