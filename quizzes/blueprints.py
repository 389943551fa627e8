"""How many questions a check on paper asks, and of which families. Pure.

A check on the screen stops when the rule has decided; a paper cannot, so its length is fixed when it is
printed. It is laid out in two parts:

1. as many questions as it takes to reach the mark without a fault, in the shuffled blocks of papers.py, but
   at least one whole block: answered right throughout, the paper meets the competency here;
2. a closing part long enough to make good one wrong answer (``loss`` to win back what it took, one for
   itself), and at least one whole block of its own, in which every kind comes once more: whatever was
   answered wrong in the first part can be answered right again.

The rule weighs the answers in the order printed, as it weighs them on the screen, and stops where it is
decided. Where the paper ends first, nothing is decided: the check stays open at the score reached and goes
on on the screen. To hold it there would hold two in five of those who are right nine times in ten, and to
begin afresh with another paper would give away the promise of the rule; going on changes neither.
"""

from __future__ import annotations

from collections.abc import Sequence

from quizzes.papers import family_at
from quizzes.rules import Rule
from quizzes.standing import Purpose


def first_part(rule: Rule, kinds: int) -> int:
    """How many questions of the first part."""
    return min(max(rule.target, kinds), rule.maximum)


def length(rule: Rule, kinds: int) -> int:
    """How many questions in all; never more than the rule would ask."""
    return min(first_part(rule, kinds) + max(rule.loss + 1, kinds), rule.maximum)


def lay_out(seed: int, families: Sequence[str], rule: Rule) -> list[str]:
    """The family of each question; the same for ever for the same seed."""
    first = first_part(rule, len(families))
    closing = length(rule, len(families)) - first
    return [
        *(family_at(seed, families, place) for place in range(first)),
        *(family_at(f"{seed}/closing", families, place) for place in range(closing)),
    ]


def told(rule: Rule, purpose: Purpose, count: int) -> str:
    """What decides a paper of so many questions, as the trainee is told it."""
    met, short = {
        Purpose.CONFIRMATION: ("is confirmed", "is open for practice again"),
        Purpose.REFRESHER: ("is renewed", "is open for practice again"),
    }.get(purpose, ("is met", "is held"))
    return (
        f"The {count} questions count in the order printed. A right answer adds one, a wrong answer takes "
        f"{rule.loss}. Reach {rule.target} and the competency {met}, once each kind of question has been "
        "asked and each kind answered wrong has been answered right again; what comes after that changes "
        f"nothing. Fall to minus {-rule.floor}, or so low that {rule.maximum} questions could not reach "
        f"{rule.target}, and it {short}. If the paper ends before either, it is undecided: nothing is held, "
        "and the check goes on on the screen from the score reached."
    )
