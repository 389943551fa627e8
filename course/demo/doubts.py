"""Three trainees of the demo doubt an answer of a check: one has been ruled on, two wait in the queue."""

from __future__ import annotations

from datetime import datetime, timedelta

from quizzes import actions
from quizzes.models import Attempt
from quizzes.reviews import Ruled

_SAID = (
    ("meant", "I worked with 10 m to the bar, as we do on the boat; the rest of my sum was right."),
    ("question", "It does not say whether the depth is that of the diver or of the sea bed."),
    ("meant", "I wrote the pressure of the water alone and thought that this was asked."),
)
_RULED = "The prompt names the convention, and the sum does not follow it."


def raise_doubts(now: datetime) -> None:
    """About the latest answers that went wrong by a slip in checks that ended, of three trainees."""
    wrong = Attempt.objects.filter(verdict="slip", sitting__purpose="check", sitting__ended__isnull=False)
    latest: dict[int, Attempt] = {}
    for attempt in wrong.select_related("learner").defer("shown", "key").order_by("-answered_at", "-pk"):
        latest.setdefault(attempt.learner_id, attempt)
        if len(latest) == len(_SAID):
            break
    for hours, (attempt, (doubted, said)) in enumerate(zip(latest.values(), _SAID, strict=False), start=1):
        actions.doubt(
            learner=attempt.learner,
            attempt_id=attempt.pk,
            doubted=doubted,
            said=said,
            now=now - timedelta(hours=20 + hours),
        )
    _rule_on_the_last(list(latest.values()), now)


def _rule_on_the_last(doubted: list[Attempt], now: datetime) -> None:
    for attempt in doubted[2:]:
        cohort = attempt.learner.cohorts.get()
        actions.rule_on(
            attempt_id=attempt.pk, ruled=Ruled.LEFT, by=cohort.instructors.get(), why=_RULED, seen=0, now=now
        )
