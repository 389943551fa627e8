"""A round: one decision by hand for many learners at once, in one transaction, safe to send twice."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import TYPE_CHECKING

from django.db import transaction
from django.utils import timezone

from quizzes.actions import decisions
from quizzes.competencies import Competency
from quizzes.errors import Refused
from quizzes.models import DecisionRecord, Standing
from quizzes.models.competency import Decided
from quizzes.subjects import WHOLE, subject

if TYPE_CHECKING:
    from quizzes.typing import Learner


@dataclass(slots=True)
class Round:
    """What came of it: the entries written, and for whom nothing was, with the sentence that says why."""

    written: list[DecisionRecord] = field(default_factory=list)
    left: list[tuple[Learner, str]] = field(default_factory=list)


def sign_off_round(
    *,
    signatures: Sequence[tuple[Learner, str]],
    competency: Competency,
    by: Learner,
    why: str,
    now: datetime | None = None,
) -> Round:
    """Sign off parts of one competency: pairs of a learner and a part.

    What the same person has signed off before in the same words stands, and is not written again. Raises
    Refused, with nothing written, for somebody who would sign off themselves or gives no reason.
    """
    now, done = now or timezone.now(), Round()
    with transaction.atomic():
        _lock([(learner, competency.slug) for learner, _ in signatures])
        for learner, part in signatures:
            decisions.allow(learner, by, why)
            if _is_signed(learner, competency, part, by, why):
                done.left.append((learner, f"You signed off the {part} part before, in these words."))
                continue
            done.written.append(
                decisions.sign_off(learner=learner, competency=competency, part=part, by=by, why=why, now=now)
            )
    return done


def release_round(
    *,
    held: Sequence[tuple[Learner, str]],
    what: str,
    by: Learner,
    why: str,
    now: datetime | None = None,
) -> Round:
    """Open held checks again ("open"), or waive the "rest" or the "practice" before the next try.

    ``held`` are pairs of a learner and a competency, or the whole course, by slug. Where nothing of the
    kind is held any more nothing is written for that pair. Raises Refused as ``sign_off_round`` does, and
    KeyError for anything else to do.
    """
    now, done = now or timezone.now(), Round()
    with transaction.atomic():
        _lock(held)
        for learner, slug in held:
            decisions.allow(learner, by, why)
            try:
                done.written.append(_release(learner, slug, what, by, why, now))
            except Refused as refusal:
                done.left.append((learner, str(refusal)))
    return done


def _release(learner: Learner, slug: str, what: str, by: Learner, why: str, now: datetime) -> DecisionRecord:
    about = subject(slug)
    if what == "open":
        return decisions.open_check_again(learner=learner, competency=about, by=by, why=why, now=now)
    return decisions.waive(learner=learner, competency=about, what=what, by=by, why=why, now=now)


def _lock(pairs: Sequence[tuple[Learner, str]]) -> None:
    """Every standing, made if need be, in the one order: the whole course first, then by key."""
    Standing.objects.bulk_create(
        [Standing(learner=learner, competency=slug) for learner, slug in pairs], ignore_conflicts=True
    )
    rows = Standing.objects.select_for_update(of=("self",), no_key=True).order_by("pk")
    learners = [learner.pk for learner, _ in pairs]
    slugs = {slug for _, slug in pairs}
    list(rows.filter(learner__in=learners, competency__in=slugs & {WHOLE}))
    list(rows.filter(learner__in=learners, competency__in=slugs - {WHOLE}))


def _is_signed(learner: Learner, competency: Competency, part: str, by: Learner, why: str) -> bool:
    return DecisionRecord.objects.filter(
        learner=learner,
        competency=competency.slug,
        decided=Decided.SIGNED,
        part__iexact=part.strip()[:60],
        by_key=by.pk,
        why=why.strip()[:400],
    ).exists()
