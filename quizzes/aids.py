"""What stands beside a practice problem before it is answered: an example, part of the way, hints taken."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, cast

from pressure import record
from pressure.draw import draw
from pressure.problem import System
from quizzes.practice import Help, hints, shown_steps

if TYPE_CHECKING:
    from quizzes.models import Attempt

_ELSEWHERE = 7919  # a prime, so that the example lies far along the walk
_WITH_STEPS = ("number", "table")


@dataclass(frozen=True, slots=True)
class Aid:
    """``example`` is another draw with its solution; ``steps`` are of this one, without their end."""

    example: Mapping[str, Any] | None
    steps: tuple[Mapping[str, Any], ...]
    hints: tuple[Mapping[str, Any], ...]
    more_hints: bool


def aid_for(attempt: Attempt) -> Aid:
    """The help that goes with the attempt; none in a check. No answer to the attempt is in it."""
    stage, steps = Help(attempt.help), attempt.key["steps"]
    worked = attempt.shown["task"] in _WITH_STEPS and not attempt.sitting.is_check
    example = _example(attempt) if stage is Help.EXAMPLE and not attempt.sitting.is_check else None
    return Aid(
        example=example,
        steps=tuple(shown_steps(attempt.key, stage)) if worked else (),
        hints=tuple(hints(steps, attempt.hints)) if worked else (),
        more_hints=worked and attempt.hints < len(steps),
    )


def _example(attempt: Attempt) -> Mapping[str, Any]:
    seed = attempt.seed + _ELSEWHERE
    problem = draw(attempt.family, seed, cast("System", attempt.system))
    if problem.number == attempt.place:
        problem = draw(attempt.family, seed + 1, cast("System", attempt.system))
    return {"shown": record.shown(problem), "key": record.key(problem)}
