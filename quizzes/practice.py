"""What to practise next, and with how much help: by need, told in a line. Pure.

Worked examples come first and fade as answers come right (Renkl et al. 2002; Barbieri et al. 2023);
families are mixed, and one that went wrong comes back after another was asked.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import IntEnum
from typing import Any

REMEMBERED = 60
"""How many of the latest practice answers the choice looks at."""


@dataclass(frozen=True, slots=True)
class Answer:
    """One practice answer, as far as the choice needs it. ``label`` is that of the slip, if known."""

    family: str
    is_right: bool
    label: str = ""


class Help(IntEnum):
    """How much of the way is shown before the answer."""

    EXAMPLE = 0
    ALL_BUT_THE_END = 1
    FIRST_STEP = 2
    NONE = 3


@dataclass(frozen=True, slots=True)
class Choice:
    """The family to ask, why, and the help that goes with it."""

    family: str
    reason: str
    help: Help


def choose(families: Sequence[str], history: Sequence[Answer]) -> Choice:
    """The next family by need; ``history`` is in the order answered, the latest last.

    First what was never asked, then what last went wrong (unless it was asked just now), then what was
    asked longest ago.
    """
    last = {answer.family: (place, answer) for place, answer in enumerate(history)}
    unseen = [family for family in families if family not in last]
    if unseen:
        return _chosen(unseen[0], "New: you have not met this kind of problem yet.", history)
    by_age = sorted(families, key=lambda family: last[family][0])
    waiting = [family for family in by_age if not last[family][1].is_right]
    just_now = history[-1].family
    again = next((family for family in waiting if family != just_now or len(families) == 1), None)
    if again:
        label = last[again][1].label
        why = f"last time {label}" if label else "last time it went wrong"
        return _chosen(again, f"Again, because {why}.", history)
    oldest = next((family for family in by_age if family != just_now), by_age[0])
    return _chosen(oldest, "Mixed in, so that it stays.", history)


def help_for(family: str, history: Sequence[Answer]) -> Help:
    """The stage of help: one less with every right answer, one more after two misses in a row."""
    stage, misses = 0, 0
    for answer in history:
        if answer.family != family:
            continue
        misses = 0 if answer.is_right else misses + 1
        if answer.is_right:
            stage = min(stage + 1, Help.NONE)
        elif misses == 2:
            stage, misses = max(stage - 1, Help.EXAMPLE), 0
    return Help(stage)


def _chosen(family: str, reason: str, history: Sequence[Answer]) -> Choice:
    return Choice(family, reason, help_for(family, history))


Step = Mapping[str, Any]


def shown_steps(key: Mapping[str, Any], help_: Help) -> list[Step]:
    """The steps of a stored solution that the stage shows before the answer.

    Never the last result, and nothing beyond the step in which an answer first stands.
    """
    steps = key["steps"]
    if help_ is Help.ALL_BUT_THE_END:
        return _up_to_an_answer([*steps[:-1], _relation_only(steps[-1])], key)
    if help_ is Help.FIRST_STEP:
        return _up_to_an_answer([steps[0] if len(steps) > 1 else _relation_only(steps[0])], key)
    return []


def _up_to_an_answer(steps: Sequence[Step], key: Mapping[str, Any]) -> list[Step]:
    answers = {cell["answer_text"].split()[0] for cell in key.get("cells", [key])}
    shown: list[Step] = []
    for step in steps:
        if step["result"] and answers & set(step["result"]["words"].split()):
            return [*shown, _relation_only(step)]
        shown.append(step)
    return shown


def hints(steps: Sequence[Step], taken: int) -> list[Step]:
    """The hints taken so far: for each step why it is taken and its relation, without a number."""
    return [_relation_only(step) for step in steps[:taken]]


def _relation_only(step: Step) -> Step:
    return {"why": step["why"], "relation": step["relation"], "substitution": None, "result": None}
