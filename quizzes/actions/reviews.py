"""Reviewing an answer: what its learner doubts about it, and what somebody else rules on it."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from django.db import transaction
from django.db.models import QuerySet
from django.utils import timezone

from quizzes.actions.decisions import allow
from quizzes.actions.recounts import recount
from quizzes.actions.sittings import lock_standing
from quizzes.actions.tallying import follow_ruling
from quizzes.errors import Refused
from quizzes.models import Attempt, Doubt, Doubted, Ruling, Standing, journal
from quizzes.reviews import Ruled

if TYPE_CHECKING:
    from quizzes.typing import Learner

LONGEST = 300
"""Characters that a learner may write about an answer."""

_LONGEST_WHY = 400


def doubt(
    *, learner: Learner, attempt_id: int, doubted: str, said: str, now: datetime | None = None
) -> Doubt:
    """Keep what the learner says about an answer of their own that has been explained to them.

    Raises Attempt.DoesNotExist for another's, and Refused with a sentence otherwise. Sent twice it is kept
    once.
    """
    plain = _plain(said)
    if doubted not in Doubted.values:
        raise Refused("Choose what is the matter: the question, or what you meant.")
    if not plain:
        raise Refused("Say in a few words what is wrong with the question, or what you meant.")
    if len(plain) > LONGEST:
        raise Refused(f"Keep it to {LONGEST} characters; it is {len(plain)} now.")
    with transaction.atomic():
        attempt, _ = _locked(_found().get(pk=attempt_id, learner=learner))
        kept = Doubt.objects.filter(attempt=attempt).first()
        if kept and (kept.doubted, kept.said) == (doubted, plain):
            return kept
        _may_doubt(attempt, kept)
        now = now or timezone.now()
        entry = Doubt.objects.create(attempt=attempt, learner=learner, doubted=doubted, said=plain, at=now)
        details = {"doubted": doubted, "said": plain}
        journal.write(actor=learner, verb="answer doubted", subject=attempt, details=details, at=now)
    return entry


def _may_doubt(attempt: Attempt, kept: Doubt | None) -> None:
    if not attempt.is_answered or (attempt.sitting.is_check and not attempt.sitting.ended):
        raise Refused("You can say this once the answer is explained to you; in a check, when it has ended.")
    if kept:
        raise Refused("You have written about this answer already. That stands, and your instructor sees it.")
    if attempt.ruled:
        raise Refused(
            f"This answer was {attempt.ruling_in_words}. If you doubt that, speak to your instructor."
        )


def rule_on(
    *, attempt_id: int, ruled: str, by: Learner, why: str, seen: int, now: datetime | None = None
) -> Ruling:
    """Rule on an answer, doubted or not, and decide anew whatever rested on it, all in one transaction.

    ``seen`` is how many rulings there were when it was looked at: whoever comes second is told, and looks
    again; the same ruling sent twice is kept once. Raises Attempt.DoesNotExist, and Refused without a
    reason, for oneself, and where there is nothing to change.
    """
    now, why = now or timezone.now(), why.strip()[:_LONGEST_WHY]
    with transaction.atomic():
        attempt, row = _locked(_found().get(pk=attempt_id))
        allow(attempt.learner, by, why)
        last = attempt.rulings.last()
        if last and (last.number, last.ruled, last.by_key, last.why) == (seen + 1, ruled, by.pk, why):
            return last
        _may_rule(attempt, last, ruled, seen)
        was, attempt.ruled = attempt.counts, ruled
        ruling = Ruling.objects.create(
            attempt=attempt, number=seen + 1, ruled=ruled, at=now, by_key=by.pk, by_name=str(by), why=why
        )
        Attempt.objects.filter(pk=attempt.pk).note_ruling(Ruled(ruled))
        details = {"why": why, "marked": attempt.verdict, "counted": was, "counts": attempt.counts}
        verb = f"answer {Ruled(ruled).in_words.split(',')[0]}"
        journal.write(actor=by, verb=verb, subject=attempt, details=details, at=now)
        if attempt.counts != was:
            recount(attempt, was, ruling, row, by, now)
            follow_ruling(attempt)
    return ruling


def _may_rule(attempt: Attempt, last: Ruling | None, ruled: str, seen: int) -> None:
    if ruled not in list(Ruled):
        raise Refused("Choose what becomes of the answer.")
    if not attempt.is_answered:
        raise Refused("Nothing is answered here yet, so there is nothing to rule on.")
    if (last.number if last else 0) != seen:
        said = f"{last.by_name} ruled in the meantime: {last.get_ruled_display()}. " if last else ""
        raise Refused(f"{said}Look at it again before you rule.")
    if last and last.ruled == ruled:
        raise Refused(f"It is {last.get_ruled_display()} already.")
    if ruled == Ruled.RIGHT and attempt.is_right:
        raise Refused("It was marked right. Leave it as it is, or set it aside.")


def _found() -> QuerySet[Attempt]:
    return Attempt.objects.select_related("sitting", "learner")


def _locked(found: Attempt) -> tuple[Attempt, Standing]:
    """The attempt as it reads once its standing is locked: one deed at a time."""
    row = lock_standing(found.learner, found.sitting.competency)
    return _found().get(pk=found.pk), row


def _plain(said: str) -> str:
    """One line of text: no line ends, nothing that does not print or turns the direction of writing."""
    return "".join(sign for sign in " ".join(said.split()) if sign.isprintable())
