"""Where a learner stands in practice, in one plain sentence. Pure, and it certifies nothing."""

from __future__ import annotations

from collections.abc import Sequence

from quizzes.practice import Answer
from quizzes.standing import Opening

LATEST = 10
"""How many of the latest answers the sentence is about."""

_CAVEAT = "This says where you stand and certifies nothing."


def rate(latest: Sequence[Answer]) -> str:
    """How the latest answers went: ``7 of the last 10 right, 4 of them without help``; empty before any."""
    if not latest:
        return ""
    right = sum(one.is_right for one in latest)
    alone = sum(one.is_right and one.is_unaided for one in latest)
    of = f"the last {LATEST}" if len(latest) >= LATEST else f"{len(latest)}"
    if not right:
        return f"none of {of} right"
    if alone == right:
        return f"{right} of {of} right, without help"
    return f"{right} of {of} right, {alone or 'none'} of them without help"


def readiness(latest: Sequence[Answer], opening: Opening) -> str:
    """The sentence of the practice page; ``latest`` are the last answers in practice and review."""
    said = rate(latest)
    begun = f"You got {said}." if said else "You have not practised this yet."
    return " ".join(filter(None, (begun, opening.shut_because, _CAVEAT)))
