"""What to practise next, and with how much help: by need, told in a line. Pure.

Worked examples come first and fade as answers come right (Renkl et al. 2002; Barbieri et al. 2023);
families are mixed, plain before harder, and one that went wrong comes back after another was asked.
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
    """One practice answer, as far as the choice needs it. ``label`` is that of the slip, if known.

    ``is_unaided`` says that nothing of the way was shown before it and no hint was taken.
    """

    family: str
    is_right: bool
    label: str = ""
    is_unaided: bool = True


class Help(IntEnum):
    """How much of the way is shown before the answer."""

    EXAMPLE = 0
    ALL_BUT_THE_END = 1
    FIRST_STEP = 2
    NONE = 3


@dataclass(frozen=True, slots=True)
class Choice:
    """The family to ask, why, and the help that goes with it; ``mixed`` wants it in another unit."""

    family: str
    reason: str
    help: Help
    mixed: bool = False


IN_ANOTHER_UNIT = "Harder: this kind goes well, so the answer is wanted in another unit."
"""The reason of a mixed form. Whether a problem has one is known only when it is drawn."""

_LONGEST_REASON = 300
_NEW = "New: you have not met this kind of problem yet."
_HARDER = {2: "two steps at once, or the question turned round", 3: "several steps at once"}
_STEADY = (3, 6)
"""So many right in a row let in what is one level harder, and two."""


def choose(
    families: Sequence[str],
    history: Sequence[Answer],
    levels: Mapping[str, int] | None = None,
    assigned: Mapping[str, str] | None = None,
) -> Choice:
    """The next family by need; ``history`` is in the order answered, the latest last.

    Before all else what is ``assigned``: families that an instructor asks for, the oldest first, each with
    the slip that is the reason. Then what was never asked, plain before harder, and a harder one only once
    all that is plainer went right; then what last went wrong; then what was asked longest ago, harder as
    more come right in a row. Neither of the first nor of the third what was asked just now. ``levels`` are
    those of the families; what it does not name is plain.
    """
    wanted = _wanted(families, history, assigned or {})
    if wanted:
        return wanted
    level = {family: (levels or {}).get(family, 1) for family in families}
    last = {answer.family: (place, answer) for place, answer in enumerate(history)}
    new = _new(families, level, last)
    if new:
        harder = level[new] > min(level.values())
        why = f"New, and harder: {_HARDER[level[new]]}." if harder else _NEW
        return _chosen(new, why, history)
    just_now = history[-1].family
    met = sorted((one for one in families if one in last), key=lambda one: (level[one], last[one][0]))
    waiting = [one for one in met if not last[one][1].is_right]
    again = next((one for one in waiting if one != just_now or len(met) == 1), None)
    if again:
        label = last[again][1].label
        why = f"last time {label}" if label else "last time it went wrong"
        return _chosen(again, f"Again, because {why}.", history)
    return _mixed_in([one for one in met if one != just_now] or met, level, history)


def _wanted(families: Sequence[str], history: Sequence[Answer], assigned: Mapping[str, str]) -> Choice | None:
    """The first that an instructor asks for, in its own unit, with the help that is due."""
    just_now = history[-1].family if history and len(families) > 1 else ""
    for family, slip in assigned.items():
        if family in families and family != just_now:
            reason = f"Your instructor asks for this: {slip}."
            return Choice(family, reason[:_LONGEST_REASON], help_for(family, history))
    return None


def _new(
    families: Sequence[str], level: Mapping[str, int], last: Mapping[str, tuple[int, Answer]]
) -> str | None:
    """The plainest that was never asked, if all that is plainer still went right the last time."""
    new = min((one for one in families if one not in last), key=lambda one: level[one], default=None)
    if new is None:
        return None
    plainer = [one for one in families if level[one] < level[new]]
    return new if all(last[one][1].is_right for one in plainer) else None


def _mixed_in(met: Sequence[str], level: Mapping[str, int], history: Sequence[Answer]) -> Choice:
    """What was asked longest ago, of the levels that the answers right in a row let in."""
    row = _in_a_row(history)
    plain = min(level.values())
    highest = plain + sum(row >= enough for enough in _STEADY)
    places = {answer.family: place for place, answer in enumerate(history)}
    let_in = [one for one in met if level[one] <= highest] or met
    oldest = min(let_in, key=lambda one: places[one])
    if plain < level[oldest] <= highest:
        return _chosen(
            oldest, f"Harder, because {row} in a row went right: {_HARDER[level[oldest]]}.", history
        )
    return _chosen(oldest, "Mixed in, so that it stays.", history)


def _in_a_row(history: Sequence[Answer]) -> int:
    """How many were right at the end, one after another."""
    return next((row for row, answer in enumerate(reversed(history)) if not answer.is_right), len(history))


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
    """With the help due; every second time that a kind goes well without any, in another unit.

    Only practice mixes units. A check has one fixed blueprint: its families, each in the form that its
    statistics and the rule's error rates are about.
    """
    help_ = help_for(family, history)
    row = _in_a_row([answer for answer in history if answer.family == family])
    return Choice(family, reason, help_, mixed=help_ is Help.NONE and row >= 2 and row % 2 == 0)


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


def across(practised: Mapping[str, Sequence[Answer]], begun: Sequence[str]) -> str:
    """The competency to practise next when all are mixed; ``begun`` is in the order of the course.

    ``practised`` holds the answers in each, the latest first, and the competencies likewise. First what last
    went wrong, then what was begun and never answered, then what was left alone longest; the one of just now
    only where there is no other.
    """
    just_now = next(iter(practised), None)
    others = [slug for slug in begun if slug != just_now] or list(begun)
    oldest = [slug for slug in reversed(list(practised)) if slug in others]
    missed = [slug for slug in oldest if not practised[slug][0].is_right]
    never = [slug for slug in others if slug not in practised]
    return [*missed, *never, *oldest][0]
