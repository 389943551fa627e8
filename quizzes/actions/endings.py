"""How a check ends: weighed after each answer, by the rule or because its time is over."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from quizzes import rules
from quizzes.actions.decisions import record_decision
from quizzes.actions.renewals import record_course_decision
from quizzes.actions.sittings import ask_next
from quizzes.models import Attempt, Sitting, Standing
from quizzes.reviews import counted
from quizzes.rules import Outcome
from quizzes.standing import Purpose
from quizzes.subjects import kind_in

if TYPE_CHECKING:
    from quizzes.typing import Learner


def weigh(attempt: Attempt, row: Standing, learner: Learner, now: datetime) -> None:
    """What the answers of the check come to now; a decision ends it, otherwise the next problem is put."""
    sitting = attempt.sitting
    families = _families_answered(sitting)
    paper, kinds = sitting.asks, sitting.kinds
    answers = [(kind_in(paper, family), right) for family, right in families]
    rule = sitting.decision_rule
    decision = rules.decide(rule, kinds, answers)
    sitting.score, sitting.why = decision.score, decision.why
    if decision.outcome is not Outcome.UNDECIDED:
        _end(sitting, row, decision.outcome, now)
        return
    sitting.save(update_fields=["score", "why"])
    kind = rules.owed(rule, kinds, answers, decision.score)
    # Of a competency that is owed, the family that last went wrong.
    owed = next((one for one, right in reversed(families) if not right and kind_in(paper, one) == kind), None)
    ask_next(sitting, learner, now, after=attempt.number, family=owed)


def end_out_of_time(sitting: Sitting, row: Standing, now: datetime) -> None:
    """End a check whose time is over: the mark was not reached, so it is held; what waits does not count.

    An answer ruled on since the last one came may have reached it.
    """
    rule, paper = sitting.decision_rule, sitting.asks
    answers = [(kind_in(paper, family), right) for family, right in _families_answered(sitting)]
    decision = rules.decide(rule, sitting.kinds, answers)
    sitting.score, sitting.why = decision.score, decision.why
    if decision.outcome is not Outcome.UNDECIDED:
        _end(sitting, row, decision.outcome, now)
        return
    sitting.why = (
        f"Out of time: when it was over the score stood at {sitting.score}; "
        f"the mark to reach was {rule.target}."
    )
    _end(sitting, row, Outcome.HELD, now)


def _end(sitting: Sitting, row: Standing, outcome: Outcome, now: datetime) -> None:
    sitting.outcome, sitting.ended = outcome.value, now
    sitting.save(update_fields=["score", "why", "outcome", "ended"])
    if sitting.purpose == Purpose.COURSE:
        record_course_decision(sitting, row, now)
    else:
        record_decision(sitting, row, now)


def _families_answered(sitting: Sitting) -> list[tuple[str, bool]]:
    rows = sitting.attempts.filter(answered_at__isnull=False).order_by("number")
    counting = (
        (family, counted(*given)) for family, *given in rows.values_list("family", "verdict", "ruled")
    )
    return [(family, verdict == "right") for family, verdict in counting if verdict]
