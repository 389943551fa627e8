"""A check that has ended, weighed again by the rule it was held under: as it counts, or as it would count."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from quizzes import rules
from quizzes.models import Attempt, Sitting
from quizzes.reviews import Ruled, counted, decided_as, ended
from quizzes.rules import Decision, Outcome
from quizzes.standing import Purpose
from quizzes.subjects import kind_in


class Given(NamedTuple):
    """One answer of the check: its kind, the verdict that was written, and the one that counts."""

    attempt: int
    kind: str
    verdict: str
    counts: str


@dataclass(frozen=True, slots=True)
class Weighed:
    """What a check comes to, the word of the record for it, and the answers that count."""

    decision: Decision
    decided: str
    counting: Sequence[Given]


def weigh_again(sitting: Sitting) -> Weighed:
    """What the check comes to with every ruling applied. One query."""
    return _weigh(sitting, _given(sitting))


def foresee(attempt: Attempt) -> Mapping[Ruled, Weighed]:
    """What the check of an answer would come to under each ruling on it; none where no check has ended."""
    sitting = attempt.sitting
    if not sitting.is_check or not sitting.ended:
        return {}
    given = _given(sitting)
    return {
        ruled: _weigh(
            sitting,
            [
                one._replace(counts=counted(one.verdict, ruled)) if one.attempt == attempt.pk else one
                for one in given
            ],
        )
        for ruled in Ruled
    }


def _given(sitting: Sitting) -> list[Given]:
    paper = sitting.asks
    answered = sitting.attempts.filter(answered_at__isnull=False).order_by("number")
    return [
        Given(pk, kind_in(paper, family), verdict, counted(verdict, ruled))
        for pk, family, verdict, ruled in answered.values_list("pk", "family", "verdict", "ruled")
    ]


def _weigh(sitting: Sitting, given: Sequence[Given]) -> Weighed:
    """A check that the verdicts as written had not decided was ended by its time."""
    rule, kinds = sitting.decision_rule, sitting.kinds
    written = rules.decide(rule, kinds, [(one.kind, one.verdict == "right") for one in given])
    counting = [one for one in given if one.counts]
    decision = ended(
        rules.decide(rule, kinds, [(one.kind, one.counts == "right") for one in counting]),
        out_of_time=written.outcome is Outcome.UNDECIDED,
        aside=len(counting) < len(given),
    )
    return Weighed(decision, decided_as(Purpose(sitting.purpose), decision.outcome), counting)
