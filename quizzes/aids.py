"""What stands beside a problem: help before the answer, and after a slip the step that it departed from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import chain, count, islice
from typing import TYPE_CHECKING, Any, cast

from pressure import record
from pressure.answer import Marked, mark
from pressure.draw import draw
from pressure.mixed import OF_THE_UNIT
from pressure.problem import System, TableKey
from pressure.slips import step_of
from quizzes.items import item_of
from quizzes.models.pauses import paused_items
from quizzes.practice import Help, hints, shown_steps

if TYPE_CHECKING:
    from quizzes.models import Attempt

_ELSEWHERE = 7919  # a prime, so that the example lies far along the walk
_STRETCH = 500
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


@dataclass(frozen=True, slots=True)
class Mended:
    """The step of the solution that a slip departed from: which it is, the step, what is right after it."""

    number: int
    step: Mapping[str, Any]
    answer: str


def mended(attempt: Attempt) -> Mended | None:
    """The step to do again after a slip; None where the solution has none, or nothing slipped."""
    if attempt.verdict != "slip" or attempt.shown["task"] not in _WITH_STEPS:
        return None
    steps, cell = attempt.key["steps"], _cell_of(attempt)
    if cell is not None:
        return _ending_in(steps, attempt.key["cells"][cell]["answer_text"])
    if attempt.shown.get("mixed") and attempt.slip not in OF_THE_UNIT:
        steps = steps[:-1]  # it went wrong before the unit was turned
    place = step_of(steps, attempt.slip)
    return None if place is None else Mended(place + 1, steps[place], attempt.key["answer_text"])


def _cell_of(attempt: Attempt) -> int | None:
    """Which cell of a table the slip is in; None for a problem that is no table."""
    key = attempt.marking_key
    if not isinstance(key, TableKey):
        return None
    typed = attempt.typed.split("; ")
    marked = [mark(text, cell) for text, cell in zip(typed, key.cells, strict=True)]
    return next(
        n for n, one in enumerate(marked) if isinstance(one, Marked) and one.slip_name == attempt.slip
    )


def _ending_in(steps: Sequence[Mapping[str, Any]], answer: str) -> Mended | None:
    """The step whose result is the answer of one cell."""
    number = answer.split()[0]
    ending = [n for n, one in enumerate(steps) if one["result"] and number in one["result"]["words"].split()]
    return Mended(ending[0] + 1, steps[ending[0]], answer) if ending else None


def _example(attempt: Attempt) -> Mapping[str, Any]:
    """Other numbers, or another question: the same one in another scene has the same answer.

    Not one that is paused, as long as there is another within a long stretch of the walk.
    """
    item = attempt.shown.get("item", "")
    seeds = count(attempt.seed + _ELSEWHERE)
    drawn = (draw(attempt.family, seed, cast("System", attempt.system)) for seed in seeds)
    fit = (one for one in drawn if one.number != attempt.place and not (item and one.item == item))
    problem = next(fit)
    if item:
        paused = paused_items()
        near = chain([problem], islice(fit, _STRETCH))
        problem = next((one for one in near if item_of(one.family, one.item) not in paused), problem)
    return {"shown": record.shown(problem), "key": record.key(problem)}
