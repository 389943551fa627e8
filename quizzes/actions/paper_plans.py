"""What is asked on paper: for each learner the check they come to next, and its questions, all different."""

from __future__ import annotations

import secrets
from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, cast

from django.db import transaction

from pressure import record
from pressure.draw import draw
from quizzes.actions.checks import rule_of
from quizzes.actions.sittings import fresh, take_seeds
from quizzes.blueprints import lay_out
from quizzes.competencies import Competency
from quizzes.errors import Refused
from quizzes.items import asked, item_of
from quizzes.models import Accommodation, Standing
from quizzes.models.pauses import paused_items
from quizzes.models.policy import in_force
from quizzes.rules import Rule
from quizzes.standing import Purpose, State

if TYPE_CHECKING:
    from pressure.problem import Problem, System
    from quizzes.typing import Learner

_SEEDS = 2**40

Question = Mapping[str, Any]
"""One problem as it is kept: ``shown`` and ``key``, the forms of pressure/record.py."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperCheck:
    """A check as it is printed: what it is for, the rule it was printed under, and what it asks.

    ``holds`` is how many holds the rule allows for, ``minutes`` the time allowed (0 is without limit).
    """

    competency: Competency
    purpose: Purpose
    holds: int
    rule: Rule
    policy: int
    minutes: int
    system: System
    seed: int
    families: Sequence[str]
    questions: Sequence[Question]


def plan_papers(
    *,
    competency: Competency,
    learners: Sequence[Learner],
    spares: int,
    group: str,
    system: System,
) -> list[PaperCheck]:
    """A check for each learner, in their units, and ``spares`` first checks for whoever comes.

    No two hold the same numbers, nor any that the group was dealt before, while there are others; what is
    paused is not asked. Raises Refused where all is paused.
    """
    paused = paused_items()
    competency = replace(competency, families=tuple(asked(competency.families, paused)))
    if not competency.families:
        raise Refused(f"Every kind of problem of {competency.title} is paused for now.")
    standings = {
        row.learner_id: row
        for row in Standing.objects.filter(learner__in=learners, competency=competency.slug)
    }
    plans = [
        (one.deal_group, _plan(competency, standings.get(one.pk), cast("System", one.system), _extra(one)))
        for one in learners
    ]
    plans += [(group, _plan(competency, None, system, 0)) for _ in range(spares)]
    return list(_dealt(plans, paused))


def _plan(competency: Competency, row: Standing | None, system: System, extra: int) -> PaperCheck:
    """The check that is open for the learner, or else the next that can be; not yet its questions."""
    policy = in_force()
    purpose, holds = Purpose.CHECK, row.holds if row else 0
    if row and row.state == State.MET:
        purpose, holds = (Purpose.REFRESHER if row.confirmed_on else Purpose.CONFIRMATION), 0
    return PaperCheck(
        competency=competency,
        purpose=purpose,
        holds=holds,
        rule=rule_of(policy, purpose, competency, holds),
        policy=policy.edition,
        minutes=policy.limit_for(competency.slug) * (100 + extra) // 100,
        system=system,
        seed=secrets.randbelow(_SEEDS),
        families=competency.families,
        questions=(),
    )


def _extra(learner: Learner) -> int:
    found = Accommodation.objects.filter(learner=learner).first()
    return found.extra_time_percent if found else 0


def _dealt(plans: Sequence[tuple[str, PaperCheck]], paused: Collection[str]) -> Iterator[PaperCheck]:
    """Each plan with its questions. Seeds are taken first and quickly; nothing is locked while drawing."""
    laid_out = [
        (plan, [(group, family, plan.system) for family in lay_out(plan.seed, plan.families, plan.rule)])
        for group, plan in plans
    ]
    needed = Counter(place for _, places in laid_out for place in places)
    seeds = {}
    for place, count in needed.items():
        with transaction.atomic():
            seeds[place] = iter(take_seeds(*place, count))
    for plan, places in laid_out:
        drawn = [_drawn(place, next(seeds[place]), paused) for place in places]
        yield replace(plan, questions=[{"shown": record.shown(one), "key": record.key(one)} for one in drawn])


def _drawn(place: tuple[str, str, System], seed: int, paused: Collection[str]) -> Problem:
    """The problem of a seed; the next of its family in place of a question that is paused."""
    group, family, system = place
    problem = draw(family, seed, system)
    if problem.item and item_of(family, problem.item) in paused:
        with transaction.atomic():
            return fresh(group, family, system, paused)
    return problem
