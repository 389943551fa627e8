"""Pausing an item, so that it is not asked for the time being, and taking it up again."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from django.db import transaction
from django.utils import timezone

from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.items import asked, competencies_of, exists, item_of, questions_of, split, title_of
from quizzes.models import ItemPause, journal
from quizzes.models.pauses import paused_items
from quizzes.models.tallies import locked
from quizzes.statistics.drift import Drift

if TYPE_CHECKING:
    from quizzes.typing import Learner


def pause(*, item: str, by: Learner, why: str, now: datetime | None = None) -> ItemPause:
    """Ask the item no more. A check under way keeps the kinds of problem it began with.

    Raises Refused without a reason, for what does not exist or is paused already, and where nothing would
    be left to ask.
    """
    with transaction.atomic():
        paused = _prepare(item, why)
        if item in paused:
            raise Refused(f"“{title_of(item)}” is paused already.")
        _leave_something(item, paused | {item})
        return _append(item, True, by, why, now or timezone.now())


def take_up(*, item: str, by: Learner, why: str, now: datetime | None = None) -> ItemPause:
    """Ask the item again; the watch for drift begins anew. Raises Refused as ``pause`` does."""
    with transaction.atomic():
        if item not in _prepare(item, why):
            raise Refused(f"“{title_of(item)}” is not paused.")
        _watch_anew(item)
        return _append(item, False, by, why, now or timezone.now())


def _prepare(item: str, why: str) -> frozenset[str]:
    """What is paused now, with the competencies concerned locked: two people pause one after the other."""
    if not why.strip():
        raise Refused("Give the reason; it is kept in the journal.")
    if not exists(item):
        raise Refused("There is no such kind of problem and no such question.")
    family, _ = split(item)
    near = {one for slug in competencies_of(family) for one in COMPETENCIES[slug].families}
    locked({one: one for one in near | {family}} | {item: family})
    return paused_items()


def _leave_something(item: str, paused: frozenset[str]) -> None:
    family, question = split(item)
    if question and all(item_of(family, one) in paused for one in questions_of(family)):
        raise Refused(
            f"This is the last question of “{title_of(family)}” that is still asked. Pause the whole kind "
            "of problem instead."
        )
    for slug in competencies_of(family):
        if not asked(COMPETENCIES[slug].families, paused):
            raise Refused(
                f"This is the last kind of problem of {COMPETENCIES[slug].title} that is still asked: "
                "without it nobody could practise or be checked. Take up another one first."
            )


def _watch_anew(item: str) -> None:
    """Whoever takes an item up has looked at it, so an alarm that sounded is over."""
    row = locked({item: split(item)[0]})[item]
    row.drift_from = sum(sum(pair) for pair in row.rests.values())
    fresh = Drift()
    row.drift_score, row.drift_answers = fresh.score, fresh.answers
    row.drift_began, row.drift_alarm = fresh.began, fresh.alarm
    row.save()


def _append(item: str, paused: bool, by: Learner, why: str, now: datetime) -> ItemPause:
    entry = ItemPause.objects.create(
        item=item, paused=paused, at=now, by_key=by.pk, by_name=str(by), why=why.strip()[:400]
    )
    verb = "item paused" if paused else "item taken up again"
    journal.write(actor=by, verb=verb, subject=entry, details={"item": item, "why": why.strip()}, at=now)
    return entry
