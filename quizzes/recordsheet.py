"""One's own record as a sheet to read and to print: each competency, how it was decided, who signed."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from quizzes.models import DecisionRecord, Standing
from quizzes.models.competency import Decided

_SET = (Decided.MET, Decided.RENEWED, Decided.GRANTED)
"""What a competency that is met rests on; a confirmation comes on top and has a date of its own."""


@dataclass(frozen=True, slots=True)
class Line:
    """One competency: its standing, the latest decision it rests on, and the parts signed off."""

    standing: Standing
    rests_on: DecisionRecord | None
    signed: tuple[DecisionRecord, ...]


def _as_they_stand(decisions: Iterable[DecisionRecord]) -> list[DecisionRecord]:
    """Each check as it was last decided, in the place of its day; the latest first."""
    latest: dict[tuple[int, str, int], DecisionRecord] = {}
    for one in decisions:
        latest.setdefault((one.sitting_id or 0, one.competency, 0 if one.sitting_id else one.pk), one)
    return sorted(latest.values(), key=lambda one: one.moment, reverse=True)


def lines(standings: Mapping[str, Standing], decisions: Iterable[DecisionRecord]) -> list[Line]:
    """A line for each competency; ``decisions`` come latest first.

    What was signed off before a competency was revoked or reopened still stands: it was seen.
    """
    rests_on: dict[str, DecisionRecord] = {}
    signed: dict[str, list[DecisionRecord]] = defaultdict(list)
    for decision in _as_they_stand(decisions):
        if decision.decided in _SET:
            rests_on.setdefault(decision.competency, decision)
        elif decision.decided == Decided.SIGNED:
            signed[decision.competency].append(decision)
    return [
        Line(row, rests_on.get(slug) if row.met_on else None, tuple(signed[slug]))
        for slug, row in standings.items()
    ]
