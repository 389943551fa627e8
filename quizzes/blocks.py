"""First blocks of checks that were finished, read from the attempts: what every item statistic rests on.

Only those of the check that a competency is met by. The short checks and that of the whole course are for
people who have met it, among whom every question looks alike; see quizzes/statistics/flags.py.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from datetime import datetime
from itertools import groupby
from typing import Any, NamedTuple

from django.db.models import Min, QuerySet

from quizzes.models import Attempt, CountedBlock, Sitting
from quizzes.models.attempt import counts_as
from quizzes.reviews import counted
from quizzes.standing import Purpose
from quizzes.statistics.keeping import LONGEST, Answer, draw_class
from quizzes.subjects import kinds_of, paper_of


class Block(NamedTuple):
    """One first block: whose, of which sitting, its answers that count, and when it was finished."""

    person: int
    sitting: int
    answers: list[Answer]
    finished: datetime


Firsts = Mapping[tuple[int, str], tuple[bool, datetime]]
"""(person, family) → whether the first answer in practice was right, and when it was given."""


def block_of(sitting: Sitting) -> Block | None:
    """The block of a sitting; None unless it is a check whose block is finished."""
    if sitting.purpose != Purpose.CHECK:
        return None
    rows = list(_rows(_diagnostic().filter(sitting=sitting)))
    families = [row[2] for row in rows]
    if len(rows) < len(sitting.kinds):
        return None
    mine = Attempt.objects.filter(learner=sitting.learner_id, family__in=families)
    return _block(rows, first_in_practice(mine))


def finished_blocks(families: Collection[str] | None = None) -> list[Block]:
    """Every finished block, or those that hold one of the families, in the order counted.

    What was never counted comes last, in the order of its last answers.
    """
    sittings = Sitting.objects.filter(purpose=Purpose.CHECK)
    attempts, practised = _diagnostic(), Attempt.objects.all()
    if families is not None:
        holding = Attempt.objects.filter(diagnostic=True, family__in=families).values("sitting")
        sittings, attempts = sittings.filter(pk__in=holding), attempts.filter(sitting__in=holding)
        practised = practised.filter(family__in=families)
    sizes = {
        pk: len(kinds_of(dict(paper) or paper_of(slug)))
        for pk, slug, paper in sittings.values_list("pk", "competency", "paper")
    }
    firsts = first_in_practice(practised)
    grouped = (list(rows) for _, rows in groupby(_rows(attempts), key=lambda row: row[0]))
    found = [_block(rows, firsts) for rows in grouped if len(rows) >= sizes[rows[0][0]]]
    places = dict(CountedBlock.objects.values_list("sitting", "pk"))
    return sorted(found, key=lambda one: (one.sitting not in places, places.get(one.sitting, one.finished)))


def first_in_practice(attempts: QuerySet[Attempt]) -> Firsts:
    """The first answer in practice of each person to each family, among these attempts."""
    answered = attempts.filter(sitting__purpose=Purpose.PRACTICE, answered_at__isnull=False)
    first = answered.order_by().values("learner", "family").annotate(first=Min("pk")).values("first")
    rows = Attempt.objects.filter(pk__in=first).values_list(
        "learner", "family", "verdict", "ruled", "answered_at"
    )
    return {
        (person, family): (came_to == "right", at)
        for person, family, verdict, ruled, at in rows
        if (came_to := counted(verdict, ruled)) and at
    }


_Row = tuple[Any, ...]
_FIELDS = (
    *("sitting", "learner", "family", "counted", "slip", "slip_label"),
    *("asked_at", "answered_at", "system", "shown__item", "shown__facts"),
)


def _diagnostic() -> QuerySet[Attempt]:
    return Attempt.objects.filter(
        diagnostic=True, answered_at__isnull=False, sitting__purpose=Purpose.CHECK
    ).annotate(counted=counts_as())


def _rows(attempts: QuerySet[Attempt]) -> Iterator[_Row]:
    return attempts.order_by("sitting", "number").values_list(*_FIELDS).iterator(chunk_size=2000)


def _block(rows: list[_Row], firsts: Firsts) -> Block:
    """An answer that was set aside is as if it had not been asked."""
    sitting, person, finished = rows[0][0], rows[0][1], max(row[7] for row in rows)
    answers = [_answer(row, firsts.get((person, row[2])), finished) for row in rows if row[3]]
    return Block(person, sitting, answers, finished)


def _answer(row: _Row, first: tuple[bool, datetime] | None, finished: datetime) -> Answer:
    """What was entered from paper has no time of its own: it was asked and answered at one moment."""
    _, _, family, verdict, slip, label, asked, answered, system, item, facts = row
    took = (answered - asked).total_seconds()
    right = verdict == "right"
    return Answer(
        family=family,
        question=item or "",
        right=right,
        chosen="" if right else slip,
        label="" if right else label,
        seconds=min(round(took), LONGEST) if took > 0 else None,
        draw=draw_class({"system": system, "item": item, "facts": facts}),
        before=first[0] if first and first[1] <= finished else None,
    )
