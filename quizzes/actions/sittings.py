"""Beginning to practise and to review; the locks, sittings and problems that checks share with them."""

from __future__ import annotations

import secrets
from collections.abc import Collection, Iterable
from datetime import datetime
from random import Random
from typing import TYPE_CHECKING, Any, cast

from django.db import transaction
from django.utils import timezone

from pressure import catalogue, record
from pressure.draw import draw
from pressure.mixing import mix
from pressure.problem import Problem, System
from quizzes.competencies import COMPETENCIES, Competency
from quizzes.errors import Refused
from quizzes.items import asked, item_of, paper_without
from quizzes.models import Attempt, Deal, Sitting, Standing
from quizzes.models.assignments import ever_asked, open_assignments
from quizzes.models.pauses import paused_items
from quizzes.papers import planned, shuffled
from quizzes.practice import IN_ANOTHER_UNIT, REMEMBERED, Answer, Choice, Help, choose
from quizzes.reviews import counted
from quizzes.standing import DECIDING, Purpose
from quizzes.subjects import WHOLE, paper_of

if TYPE_CHECKING:
    from quizzes.typing import Learner

_SEEDS = 2**40


def start_practice(*, learner: Learner, competency: Competency, now: datetime | None = None) -> Sitting:
    """Open practice, or go on with it; there is always one problem waiting afterwards.

    Raises Refused while a check of the same competency is open: its answers are explained when it ends.
    """
    return _start(learner, competency, Purpose.PRACTICE, now or timezone.now())


def start_review(*, learner: Learner, competency: Competency, now: datetime | None = None) -> Sitting:
    """Begin the review set that has come round, or go on with it. Raises Refused when none has."""
    now = now or timezone.now()
    with transaction.atomic():
        row = lock_standing(learner, competency.slug)
        if row.review_on is None or timezone.localdate(now) < row.review_on:
            raise Refused("No review has come round here. Practise as much as you like.")
        return _start(learner, competency, Purpose.REVIEW, now)


def lock_standing(learner: Learner, competency: str) -> Standing:
    """The learner's standing in the competency, made if need be and locked: one deed at a time."""
    rows = Standing.objects.select_for_update(of=("self",), no_key=True)
    try:
        return rows.get(learner=learner, competency=competency)
    except Standing.DoesNotExist:
        Standing.objects.bulk_create(
            [Standing(learner=learner, competency=competency)], ignore_conflicts=True
        )
        return rows.get(learner=learner, competency=competency)


def lock_standings(learner: Learner) -> dict[str, Standing]:
    """The learner's standing in every competency there is a row for, locked in one order."""
    rows = Standing.objects.select_for_update(of=("self",), no_key=True).order_by("pk")
    return {row.competency: row for row in rows.filter(learner=learner, competency__in=COMPETENCIES)}


def open_sitting(learner: Learner, competency: str, *purposes: Purpose) -> Sitting | None:
    """The sitting of one of these purposes that has not ended."""
    return Sitting.objects.filter(
        learner=learner, competency=competency, purpose__in=purposes, ended__isnull=True
    ).first()


def open_checks(learner: Learner, *subjects: str) -> list[Sitting]:
    """The checks of these subjects, or of any, that have not ended."""
    found = Sitting.objects.filter(learner=learner, purpose__in=DECIDING, ended__isnull=True)
    return list(found.filter(competency__in=subjects) if subjects else found)


def ask_next(
    sitting: Sitting, learner: Learner, now: datetime, after: int = 0, family: str | None = None
) -> Attempt:
    """Put the next problem, of ``family`` if one is owed.

    A check keeps its units to the end; practice follows the learner's choice. The first block of a check is
    marked as such: it is always finished, so it alone shows how hard a family is.
    """
    paused = paused_items()
    chosen = Choice(family, "", Help.NONE) if family else _choose(sitting, after, paused)
    system = cast("System", sitting.system if sitting.is_check else learner.system)
    problem = fresh(learner.deal_group, chosen.family, system, paused)
    mixed = mix(problem) if chosen.mixed else None
    problem = mixed or problem
    return Attempt.objects.create(
        sitting=sitting,
        learner=learner,
        number=after + 1,
        diagnostic=sitting.is_check and after < len(sitting.kinds),
        family=chosen.family,
        reason=IN_ANOTHER_UNIT if mixed else chosen.reason,
        help=chosen.help,
        edition=problem.edition,
        system=problem.system,
        seed=problem.seed,
        place=problem.number,
        shown=record.shown(problem),
        key=record.key(problem),
        asked_at=now,
    )


def _choose(sitting: Sitting, after: int, paused: Collection[str]) -> Choice:
    """Practice chooses what an instructor asks for, else by need, of what is not paused; everything else
    deals the families it began with in shuffled blocks, without help.
    """
    if sitting.purpose != Purpose.PRACTICE:
        return Choice(planned(sitting.seed, sitting.asks, after), "", Help.NONE)
    families = asked(COMPETENCIES[sitting.competency].families, paused)
    latest = sitting.attempts.filter(answered_at__isnull=False).order_by("-number")
    # That nothing was ever asked of the learner, which is the rule, is learnt without another query.
    fields = (ever_asked(sitting.learner_id), "family", "slip_label", "verdict", "ruled")
    rows = list(latest.values_list(*fields)[:REMEMBERED])
    counting = ((family, label, counted(*given)) for _, family, label, *given in reversed(rows))
    history = [Answer(family, verdict == "right", label) for family, label, verdict in counting if verdict]
    levels = {slug: catalogue.family(slug).level for slug in families}
    wishes = open_assignments([sitting.learner_id], families) if not rows or rows[0][0] else []
    dealt = shuffled(Random(sitting.seed), families)  # noqa: S311 (a deal, not a secret)
    return choose(dealt, history, levels, {one.family: one.label for one in wishes})


def _start(learner: Learner, competency: Competency, purpose: Purpose, now: datetime) -> Sitting:
    with transaction.atomic():
        lock_standing(learner, competency.slug)
        if open_checks(learner, competency.slug, WHOLE):
            raise Refused("Your check is open. Finish it first; practice opens again when it ends.")
        sitting = open_sitting(learner, competency.slug, purpose)
        if sitting is None:
            sitting = begin(learner, competency, purpose, now)
        if not sitting.attempts.filter(answered_at__isnull=True).exists():
            ask_next(sitting, learner, now)
    return sitting


def begin(
    learner: Learner, competency: Competency, purpose: Purpose, now: datetime, **in_force: Any
) -> Sitting:
    """A new sitting; ``in_force`` is what a check is held under. Raises Refused where all is paused."""
    system = cast("System", learner.system)
    paper = paper_without(paper_of(competency.slug), paused_items())
    if not paper:
        raise Refused(
            f"Every kind of problem of {competency.title} is paused for now, so there is nothing to ask. "
            "Your instructor can say when it is taken up again."
        )
    _lay_out_deals(learner, competency.families, system)
    return Sitting.objects.create(
        learner=learner,
        competency=competency.slug,
        purpose=purpose,
        system=system,
        seed=secrets.randbelow(_SEEDS),
        paper=[] if purpose is Purpose.PRACTICE else list(paper.items()),
        began=now,
        **in_force,
    )


def _lay_out_deals(learner: Learner, families: Iterable[str], system: System) -> None:
    """A place to begin in each family, so that no answer of the sitting has to make one."""
    group = learner.deal_group
    Deal.objects.bulk_create(
        [
            Deal(group=group, family=family, system=system, next_seed=secrets.randbelow(_SEEDS))
            for family in families
        ],
        ignore_conflicts=True,
    )


def fresh(group: str, family: str, system: System, paused: Collection[str] | None = None) -> Problem:
    """Numbers that nobody in the group has had, while any are left. A paused question is passed over."""
    paused = paused_items() if paused is None else paused
    problem = draw(family, take_seeds(group, family, system)[0], system)
    while item_of(family, problem.item) in paused and problem.item:
        problem = draw(family, take_seeds(group, family, system)[0], system)
    return problem


def take_seeds(group: str, family: str, system: System, count: int = 1) -> range:
    """So many seeds of a family that nobody in the group has had, in the caller's transaction.

    A group begins at a place of its own, which nobody can foresee.
    """
    deals = Deal.objects.select_for_update(of=("self",), no_key=True)
    deal, _ = deals.get_or_create(
        group=group,
        family=family,
        system=system,
        defaults={"next_seed": secrets.randbelow(_SEEDS)},
    )
    Deal.objects.filter(pk=deal.pk).update(next_seed=deal.next_seed + count)
    return range(deal.next_seed, deal.next_seed + count)
