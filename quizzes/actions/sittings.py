"""Beginning to practise, to review and to be checked; putting the next problem."""

from __future__ import annotations

import secrets
from datetime import datetime
from random import Random
from typing import TYPE_CHECKING, cast

from django.db import transaction
from django.utils import timezone

from pressure import record
from pressure.draw import draw
from pressure.problem import Problem, System
from quizzes.competencies import COMPETENCIES, Competency
from quizzes.errors import Refused
from quizzes.models import Attempt, Deal, Sitting, Standing, journal
from quizzes.models.policy import in_force
from quizzes.papers import family_at, shuffled
from quizzes.policy import Policy
from quizzes.practice import REMEMBERED, Answer, Choice, Help, choose
from quizzes.rules import Rule
from quizzes.standing import DECIDING, Purpose

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


def start_check(*, learner: Learner, competency: Competency, now: datetime | None = None) -> Sitting:
    """Begin the check that is open, or go on with one begun before. Raises Refused while it is shut."""
    now = now or timezone.now()
    with transaction.atomic():
        row = lock_standing(learner, competency.slug)
        sitting = open_sitting(learner, competency.slug, *DECIDING)
        if sitting is not None:
            return sitting
        policy = in_force()
        opening = row.opening(policy, timezone.localdate(now))
        if opening.purpose is None:
            raise Refused(opening.shut_because)
        rule = rule_of(policy, opening.purpose, competency, row.holds)
        sitting = _begin(learner, competency, opening.purpose, now, rule=rule, policy=policy.edition)
        ask_next(sitting, learner, now)
        details = {"rule": rule.as_record(), "policy": policy.edition}
        journal.write(
            actor=learner, verb=f"{opening.purpose} begun", subject=sitting, details=details, at=now
        )
    return sitting


def rule_of(policy: Policy, purpose: Purpose, competency: Competency, holds: int) -> Rule:
    """The rule that decides a sitting of that purpose."""
    return policy.rule_for(competency, holds) if purpose is Purpose.CHECK else policy.confirmation


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


def open_sitting(learner: Learner, competency: str, *purposes: Purpose) -> Sitting | None:
    """The sitting of one of these purposes that has not ended."""
    return Sitting.objects.filter(
        learner=learner, competency=competency, purpose__in=purposes, ended__isnull=True
    ).first()


def ask_next(
    sitting: Sitting, learner: Learner, now: datetime, after: int = 0, family: str | None = None
) -> Attempt:
    """Put the next problem, of ``family`` if one is owed.

    A check keeps its units to the end; practice follows the learner's choice.
    """
    chosen = Choice(family, "", Help.NONE) if family else _choose(sitting, after)
    system = cast("System", sitting.system if sitting.is_check else learner.system)
    problem = _fresh(learner, chosen.family, system)
    return Attempt.objects.create(
        sitting=sitting,
        learner=learner,
        number=after + 1,
        family=chosen.family,
        reason=chosen.reason,
        help=chosen.help,
        edition=problem.edition,
        system=problem.system,
        seed=problem.seed,
        place=problem.number,
        shown=record.shown(problem),
        key=record.key(problem),
        asked_at=now,
    )


def _choose(sitting: Sitting, after: int) -> Choice:
    """Practice chooses by need; everything else deals its families in shuffled blocks, without help."""
    families = COMPETENCIES[sitting.competency].families
    if sitting.purpose != Purpose.PRACTICE:
        return Choice(family_at(sitting.seed, families, after), "", Help.NONE)
    latest = sitting.attempts.filter(answered_at__isnull=False).order_by("-number")
    rows = latest.values_list("family", "verdict", "slip_label")[:REMEMBERED]
    history = [Answer(family, verdict == "right", label) for family, verdict, label in reversed(rows)]
    return choose(shuffled(Random(sitting.seed), families), history)  # noqa: S311 (a deal, not a secret)


def _start(learner: Learner, competency: Competency, purpose: Purpose, now: datetime) -> Sitting:
    with transaction.atomic():
        lock_standing(learner, competency.slug)
        if open_sitting(learner, competency.slug, *DECIDING):
            raise Refused("Your check is open. Finish it first; practice opens again when it ends.")
        sitting = open_sitting(learner, competency.slug, purpose)
        if sitting is None:
            sitting = _begin(learner, competency, purpose, now)
        if not sitting.attempts.filter(answered_at__isnull=True).exists():
            ask_next(sitting, learner, now)
    return sitting


def _begin(
    learner: Learner,
    competency: Competency,
    purpose: Purpose,
    now: datetime,
    *,
    rule: Rule | None = None,
    policy: int = 1,
) -> Sitting:
    return Sitting.objects.create(
        learner=learner,
        competency=competency.slug,
        purpose=purpose,
        system=learner.system,
        seed=secrets.randbelow(_SEEDS),
        rule=rule.as_record() if rule else {},
        policy=policy,
        began=now,
    )


def _fresh(learner: Learner, family: str, system: System) -> Problem:
    """Numbers that nobody in the learner's group has had, while any are left.

    A group begins at a place of its own, which nobody can foresee.
    """
    deals = Deal.objects.select_for_update(of=("self",), no_key=True)
    deal, _ = deals.get_or_create(
        group=learner.deal_group,
        family=family,
        system=system,
        defaults={"next_seed": secrets.randbelow(_SEEDS)},
    )
    problem = draw(family, deal.next_seed, system)
    Deal.objects.filter(pk=deal.pk).update(next_seed=deal.next_seed + 1)
    return problem
