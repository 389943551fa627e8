"""Simulated learners: they practise, are checked and slip as people do, through the real actions."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from random import Random
from typing import Any

from course.people.models import Person
from pressure.record import LETTERS
from pressure.slips import LABELS
from quizzes import actions, queries
from quizzes.competencies import Competency
from quizzes.models import Attempt, Sitting
from quizzes.policy import DEFAULT
from quizzes.standing import DECIDING, Purpose

_PATIENCE = 24
"""After so many practice answers in one evening a simulated learner has understood."""


@dataclass
class SimulatedLearner:
    """A person with habits: the misunderstandings that come easily to them, in order.

    All choices come from ``rng``; only the problems' own numbers differ from one demo to the next.
    """

    person: Person
    instructor: Person
    rng: Random
    habits: list[str] = field(init=False)

    def __post_init__(self) -> None:
        self.habits = list(LABELS)
        self.rng.shuffle(self.habits)

    def spend_evening(self, deed: str, competency: Competency, at: datetime) -> None:
        """One deed of a plan (see cast.PLANS), beginning at ``at``."""
        _Evening(self, competency, at).do(deed)

    def fill_in(self, attempt: Attempt, *, right: bool) -> dict[str, str]:
        """The form this learner sends: the answer, or what one of their slips leads to."""
        key = attempt.key
        match attempt.shown["task"]:
            case "table":
                wrong = int(self.rng.random() * len(key["cells"]))
                return {
                    f"answer-{at}": self._type(cell, right=right or at != wrong + 1)
                    for at, cell in enumerate(key["cells"], start=1)
                }
            case "choice":
                fit = [at for at, one in enumerate(key["options"]) if (one["name"] == key["right"]) == right]
                return {"answer": LETTERS[fit[int(self.rng.random() * len(fit))]]}
            case "ordering":
                return self._put_in_order(key, right=right)
        return {"answer": self._type(key, right=right)}

    def _type(self, cell: Mapping[str, Any], *, right: bool) -> str:
        value = cell["answer"] if right else self._mistaken(cell)
        digits = 3 + (self.rng.random() < 0.5)
        gap = "" if self.rng.random() < 0.2 else " "
        return f"{float(f'{value:.{digits}g}'):.6g}{gap}{cell['unit']}"

    @staticmethod
    def _put_in_order(key: Mapping[str, Any], *, right: bool) -> dict[str, str]:
        order = list(key["right"])
        if not right:
            order[0], order[1] = order[1], order[0]
        places = {name: place for place, name in enumerate(order, start=1)}
        return {
            f"place-{letter}": str(places[item["name"]])
            for letter, item in zip(LETTERS, key["options"], strict=False)
        }

    def _mistaken(self, key: Mapping[str, Any]) -> float:
        roll, slips = self.rng.random(), [slip for slip in key["slips"] if slip["low"] > 0]
        if roll < 0.1 or not slips:
            return float(key["answer"]) * 1.37
        known = sorted(
            slips, key=lambda slip: self.habits.index(slip["name"]) if slip["name"] in LABELS else 0
        )
        chosen = known[0] if roll < 0.8 else known[int(self.rng.random() * len(known))]
        return float(chosen["low"] + chosen["high"]) / 2


class _Evening:
    """One sitting down with the course, its clock moving on with each answer."""

    def __init__(self, learner: SimulatedLearner, competency: Competency, at: datetime) -> None:
        self.learner, self.competency, self.now = learner, competency, at
        self.rng = learner.rng

    def do(self, deed: str) -> None:
        deeds: Mapping[str, Callable[[], None]] = {
            "practise a while": self.practise_a_while,
            "practise until ready": self.practise_until_ready,
            "begin a check": self.begin_check,
            "pass a check": self.pass_check,
            "fail a check": self.fail_check,
            "confirm it": self.confirm,
            "look at it together": self.look_together,
        }
        deeds[deed]()

    def practise_a_while(self) -> None:
        """Some answers, never as many right in a row as would open the check."""
        streak = 0
        for _ in range(4 + int(self.rng.random() * 5)):
            streak = self._practise(
                right=streak < DEFAULT.in_a_row - 1 and self.rng.random() < 0.6, streak=streak
            )

    def practise_until_ready(self) -> None:
        """Slower at first, surer with every answer, until enough are right in a row."""
        streak, count = 0, 0
        while streak < DEFAULT.in_a_row:
            streak = self._practise(right=self.rng.random() < 0.5 + count / _PATIENCE, streak=streak)
            count += 1

    def begin_check(self) -> None:
        """Four answers, and the rest another day."""
        self._start_check()
        for right in (True, True, False, True):
            self._answer(*DECIDING, right=right)

    def pass_check(self) -> None:
        """At most two wrong, both early and never from below nought: the rule cannot but decide "met"."""
        sitting, wrong_left = self._start_check(), 2
        while sitting.ended is None:
            right = not wrong_left or not 0 <= sitting.score < 4 or self.rng.random() < 0.7
            wrong_left -= not right
            sitting = self._answer(*DECIDING, right=right).sitting

    def fail_check(self) -> None:
        """Wrong nearly twice in three, and never right often enough to be met."""
        sitting = self._start_check()
        while sitting.ended is None:
            sitting = self._answer(*DECIDING, right=self.rng.random() < 0.35).sitting

    def confirm(self) -> None:
        """The short check on a later day, without a fault."""
        sitting = self._start_check()
        while sitting.ended is None:
            sitting = self._answer(*DECIDING, right=True).sitting

    def look_together(self) -> None:
        actions.open_check_again(
            learner=self.learner.person,
            competency=self.competency,
            by=self.learner.instructor,
            why="Worked four of the missed questions together at the board; the ratio is clear now.",
            now=self.now,
        )

    def _start_check(self) -> Sitting:
        return actions.start_check(learner=self.learner.person, competency=self.competency, now=self.now)

    def _practise(self, *, right: bool, streak: int) -> int:
        actions.start_practice(learner=self.learner.person, competency=self.competency, now=self.now)
        return streak + 1 if self._answer(Purpose.PRACTICE, right=right).is_right else 0

    def _answer(self, *purposes: Purpose, right: bool) -> Attempt:
        attempt = queries.open_attempt(self.learner.person, self.competency.slug, *purposes)
        if attempt is None:
            raise LookupError(f"No problem waits for {self.learner.person} in {self.competency.slug}.")
        self.now += timedelta(seconds=40 + int(self.rng.random() * 110))
        form = self.learner.fill_in(attempt, right=right)
        return actions.answer(
            learner=self.learner.person, attempt_id=attempt.pk, form=form, now=self.now
        ).attempt
