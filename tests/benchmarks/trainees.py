"""Simulated trainees, certified by the site's own deeds: practice, check, hold, another try, confirmation.

Nothing of the product is copied here: every answer is a form posted to ``quizzes.actions.answer``, every
check begins by ``start_check``, and an instructor opens it again after the third hold. Only whether they
answer right is decided here.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from math import exp, log
from random import Random

from course.demo.factories import PersonFactory
from course.demo.learners import SimulatedLearner
from quizzes import actions, queries
from quizzes.competencies import COMPETENCIES
from quizzes.models import Sitting, Standing
from quizzes.standing import DECIDING, Purpose

BEGAN = datetime(2026, 3, 2, 9, tzinfo=UTC)


@dataclass
class Trainee:
    """One person in one competency. ``chance`` tells from (practised, day) how likely a right answer is."""

    chance: Callable[[int, int], float]
    rng: Random
    competency: str = "gauge-absolute"
    now: datetime = BEGAN
    asked: int = 0
    practised: int = 0
    day: int = 0
    lengths: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.person, self.instructor = PersonFactory(), PersonFactory(role="instructor")
        self.learner = SimulatedLearner(self.person, self.instructor, self.rng)

    @property
    def standing(self) -> Standing:
        return Standing.objects.get(learner=self.person, competency=self.competency)

    def practise(self) -> None:
        """Three right in a row, as a teacher at one's elbow brings them about."""
        self._sleep()
        practice = actions.start_practice(
            learner=self.person, competency=COMPETENCIES[self.competency], now=self.now
        )
        for _ in range(3):
            self._answer(Purpose.PRACTICE, right=True)
            self.practised += 1
        assert practice.learner == self.person

    def check(self) -> str:
        """One try, from the first question to its outcome: "met" or "held"."""
        began = self.asked
        sitting = self._begin()
        while sitting.ended is None:
            right = self.rng.random() < self.chance(self.practised, self.day)
            sitting = self._answer(*DECIDING, right=right)
        self.lengths.append(self.asked - began)
        return sitting.outcome

    def try_until_met(self, tries: int) -> int:
        """The number of the try that met it, or nought."""
        for attempt in range(1, tries + 1):
            self.practise()
            if self.check() == "met":
                return attempt
        return 0

    def confirm(self) -> bool:
        """The short check on another day."""
        self._sleep()
        return self.check() == "met"

    def _begin(self) -> Sitting:
        if self.standing.waits:
            actions.open_check_again(
                learner=self.person,
                competency=COMPETENCIES[self.competency],
                by=self.instructor,
                why="Looked at it together.",
                now=self.now,
            )
        return actions.start_check(
            learner=self.person, competency=COMPETENCIES[self.competency], now=self.now
        )

    def _sleep(self) -> None:
        self.day += 1
        self.now += timedelta(days=2)

    def _answer(self, *purposes: Purpose, right: bool) -> Sitting:
        attempt = queries.open_attempt(self.person, self.competency, *purposes)
        self.asked += 1
        self.now += timedelta(seconds=60)
        form = self.learner.fill_in(attempt, right=right)
        done = actions.answer(learner=self.person, attempt_id=attempt.pk, form=form, now=self.now)
        assert done.attempt.is_right == right
        return done.attempt.sitting


def steady(share: float) -> Callable[[int, int], float]:
    """The same chance for ever: a command of it, or a misunderstanding that stays."""
    return lambda practised, day: share


def smoothly(low: float, high: float, half_way: int) -> Callable[[int, int], float]:
    """Learning little by little with every problem practised."""
    return lambda practised, day: low + (high - low) / (1 + exp(-(practised - half_way) / 2))


def in_a_jump(low: float, high: float, at: int) -> Callable[[int, int], float]:
    """One insight, after so many problems practised."""
    return lambda practised, day: high if practised >= at else low


def with_bad_days(share: float, spread: float, rng: Random) -> Callable[[int, int], float]:
    """Good and bad days round a share: the log-odds of a day are normal, all its answers share it."""
    days: dict[int, float] = {}

    def on(practised: int, day: int) -> float:
        odds = days.setdefault(day, rng.gauss(log(share / (1 - share)), spread))
        return 1 / (1 + exp(-odds))

    return on
