"""Every write: one function per deed, one transaction each, safe to send twice.

Locks are always taken in one order, the standing and then the deal of the family asked next, so that two
tabs, two workers or a practice beside a check never wait for each other in a circle. An answered attempt
is its own line of record; every other deed adds a line to the journal.
"""

from __future__ import annotations

import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, cast

from django.db import transaction
from django.utils import timezone

from pressure import record
from pressure.draw import draw
from pressure.marking import Judged, Unjudged, judge
from pressure.problem import Problem, System
from quizzes import rules, standing
from quizzes.competencies import COMPETENCIES, Competency
from quizzes.errors import Refused
from quizzes.models import Attempt, Deal, DecisionRecord, Sitting, Standing, journal
from quizzes.models.attempt import Purpose
from quizzes.papers import family_at

if TYPE_CHECKING:
    from quizzes.typing import Learner

_SEEDS = 2**40


@dataclass(frozen=True, slots=True)
class Answered:
    """What came of posting an answer: the attempt as it now stands, or why it could not be judged.

    ``counted`` is False when the attempt had been answered before: the first answer stands.
    """

    attempt: Attempt
    trouble: Unjudged | None = None
    counted: bool = True


def start_practice(*, learner: Learner, competency: Competency, now: datetime | None = None) -> Sitting:
    """Open practice, or go on with it; there is always one problem waiting afterwards.

    Raises Refused while a check of the same competency is open: its answers are explained when it ends.
    """
    now = now or timezone.now()
    with transaction.atomic():
        _lock_standing(learner, competency.slug)
        if _open_sitting(learner, competency.slug, Purpose.CHECK):
            raise Refused("Your check is open. Finish it first; practice opens again when it ends.")
        sitting = _open_sitting(learner, competency.slug, Purpose.PRACTICE)
        if sitting is None:
            sitting = _begin(learner, competency, Purpose.PRACTICE, now)
        if not sitting.attempts.filter(answered_at__isnull=True).exists():
            _ask_next(sitting, learner, now)
    return sitting


def start_check(*, learner: Learner, competency: Competency, now: datetime | None = None) -> Sitting:
    """Begin the check, or go on with the one that is open. Raises Refused while it is shut."""
    now = now or timezone.now()
    with transaction.atomic():
        row = _lock_standing(learner, competency.slug)
        sitting = _open_sitting(learner, competency.slug, Purpose.CHECK)
        if sitting is not None:
            return sitting
        if row.shut_because:
            raise Refused(row.shut_because)
        rule = rules.RULES[competency.tier].after(row.holds)
        sitting = _begin(learner, competency, Purpose.CHECK, now, rule=rule)
        _ask_next(sitting, learner, now)
        journal.write(
            actor=learner, verb="check begun", subject=sitting, details={"rule": rule.as_record()}, at=now
        )
    return sitting


def answer(
    *, learner: Learner, attempt_id: int, form: Mapping[str, str], now: datetime | None = None
) -> Answered:
    """Judge a form (fields of pressure/marking.py) and put the next problem, in practice and check alike.

    Text that cannot be read is handed back with a sentence and counts as nothing. Raises
    Attempt.DoesNotExist for an attempt that is not the learner's own.
    """
    now = now or timezone.now()
    with transaction.atomic():
        found = Attempt.objects.only("sitting__competency").select_related("sitting")
        competency = COMPETENCIES[found.get(pk=attempt_id, learner=learner).sitting.competency]
        row = _lock_standing(learner, competency.slug)
        attempt = Attempt.objects.select_related("sitting").get(pk=attempt_id)
        if attempt.is_answered:
            return Answered(attempt, counted=False)
        judged = judge(form, attempt.marking_key)
        if isinstance(judged, Unjudged):
            return Answered(attempt, trouble=judged)
        _write_answer(attempt, judged, now)
        if attempt.sitting.is_check:
            _after_check_answer(attempt, row, competency, learner, now)
        else:
            _after_practice_answer(attempt, row, now)
            _ask_next(attempt.sitting, learner, now, after=attempt.number)
    return Answered(attempt)


def open_check_again(
    *, learner: Learner, competency: Competency, by: Learner, why: str, now: datetime | None = None
) -> DecisionRecord:
    """An instructor opens a check that waits for them; the mark to reach stays as high as the holds made it.

    Raises Refused without a reason, for oneself, or where nothing waits.
    """
    now = now or timezone.now()
    if not why.strip():
        raise Refused("Give the reason for opening the check again; it is kept with the record.")
    if by.pk == learner.pk:
        raise Refused("Nobody opens their own check again; another instructor has to.")
    with transaction.atomic():
        row = _lock_standing(learner, competency.slug)
        if not row.waits:
            raise Refused("This check does not wait for an instructor.")
        Standing.objects.filter(pk=row.pk).update(waits=False, moved_at=now)
        decision = DecisionRecord.objects.create(
            learner=learner, competency=competency.slug, decided="opened", at=now,
            by_key=by.pk, by_name=str(by), why=why.strip(),
        )  # fmt: skip
        journal.write(
            actor=by, verb="check opened again", subject=decision, details={"why": why.strip()}, at=now
        )
    return decision


def _lock_standing(learner: Learner, competency: str) -> Standing:
    """The learner's standing in the competency, made if need be and locked: one deed at a time."""
    rows = Standing.objects.select_for_update(of=("self",), no_key=True)
    try:
        row = rows.get(learner=learner, competency=competency)
    except Standing.DoesNotExist:
        Standing.objects.bulk_create(
            [Standing(learner=learner, competency=competency)], ignore_conflicts=True
        )
        row = rows.get(learner=learner, competency=competency)
    return row


def _open_sitting(learner: Learner, competency: str, purpose: Purpose) -> Sitting | None:
    return Sitting.objects.filter(
        learner=learner, competency=competency, purpose=purpose, ended__isnull=True
    ).first()


def _begin(
    learner: Learner,
    competency: Competency,
    purpose: Purpose,
    now: datetime,
    rule: rules.Rule | None = None,
) -> Sitting:
    return Sitting.objects.create(
        learner=learner, competency=competency.slug, purpose=purpose, system=learner.system,
        seed=secrets.randbelow(_SEEDS), rule=rule.as_record() if rule else {}, began=now,
    )  # fmt: skip


def _ask_next(sitting: Sitting, learner: Learner, now: datetime, after: int = 0) -> Attempt:
    """Put the next problem. A check keeps its units to the end; practice follows the learner's choice."""
    families = COMPETENCIES[sitting.competency].families
    family = family_at(sitting.seed, families, after)
    system = cast(System, sitting.system if sitting.is_check else learner.system)
    problem = _fresh(learner, family, system)
    return Attempt.objects.create(
        sitting=sitting, learner=learner, number=after + 1, family=family, edition=problem.edition,
        system=problem.system, seed=problem.seed, place=problem.number,
        shown=record.shown(problem), key=record.key(problem), asked_at=now,
    )  # fmt: skip


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


def _write_answer(attempt: Attempt, judged: Judged, now: datetime) -> None:
    fields = {
        "answered_at": now,
        "typed": judged.typed,
        "understood": judged.understood,
        "verdict": judged.verdict,
        "slip": judged.slip,
        "slip_label": judged.label,
        "mend": judged.mend,
    }
    Attempt.objects.filter(pk=attempt.pk).update(**fields)
    for name, value in fields.items():
        setattr(attempt, name, value)


def _after_practice_answer(attempt: Attempt, row: Standing, now: datetime) -> None:
    row.streak = row.streak + 1 if attempt.is_right else 0
    row.practised += 1
    row.practised_right += attempt.is_right
    row.state = standing.after_practice(standing.State(row.state), row.streak).value
    row.moved_at = now
    row.save(update_fields=["streak", "practised", "practised_right", "state", "moved_at"])


def _after_check_answer(
    attempt: Attempt, row: Standing, competency: Competency, learner: Learner, now: datetime
) -> None:
    sitting = attempt.sitting
    rows = sitting.attempts.filter(answered_at__isnull=False).order_by("number")
    answers = [(family, verdict == "right") for family, verdict in rows.values_list("family", "verdict")]
    decision = rules.decide(sitting.decision_rule, competency.families, answers)
    sitting.score, sitting.why = decision.score, decision.why
    if decision.outcome is rules.Outcome.UNDECIDED:
        sitting.save(update_fields=["score", "why"])
        _ask_next(sitting, learner, now, after=attempt.number)
        return
    sitting.outcome, sitting.ended = decision.outcome.value, now
    sitting.save(update_fields=["score", "why", "outcome", "ended"])
    _record_decision(sitting, row, now)


def _record_decision(sitting: Sitting, row: Standing, now: datetime) -> None:
    """Move the standing, append the entry and the journal line: one transaction with the last answer."""
    day = timezone.localdate(now)
    row.streak, row.moved_at = 0, now
    if sitting.outcome == rules.Outcome.MET:
        row.state, row.met_on, row.due_on = standing.State.MET.value, day, standing.POLICY.due_on(day)
        row.holds = 0
    else:
        row.state = standing.State.HELD.value
        row.holds += 1
        row.waits = standing.waits_after(row.holds)
    row.save()
    decision = DecisionRecord.objects.create(
        learner=sitting.learner, competency=sitting.competency, decided=sitting.outcome, at=now,
        due_on=row.due_on if sitting.outcome == rules.Outcome.MET else None,
        by_name="the rule", why=sitting.why, rule=sitting.rule, score=sitting.score, sitting=sitting,
        evidence=list(sitting.attempts.order_by("number").values_list("pk", flat=True)),
    )  # fmt: skip
    journal.write(
        actor=sitting.learner, verb=f"check {sitting.outcome}", subject=decision,
        details={"score": sitting.score, "sitting": sitting.pk}, at=now,
    )  # fmt: skip
