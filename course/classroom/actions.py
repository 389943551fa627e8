"""Every write of the classroom: one transaction each, safe to send twice and from two windows.

The cohort is locked before its problem, and the problem before an answer to it or a deal.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from django.db import transaction
from django.db.models import F, QuerySet
from django.utils import timezone

from course.classroom.models import Answer, Showing, Stage
from course.people.models import Cohort, Person
from pressure import record
from pressure.marking import Unjudged, judge
from pressure.problem import System
from pressure.remarks import told_more
from quizzes.actions.sittings import fresh
from quizzes.errors import Refused
from quizzes.models import journal

_MOVES = {
    Stage.OPEN: {Stage.CLOSED},
    Stage.CLOSED: {Stage.OPEN, Stage.SPREAD},
    Stage.SPREAD: set[Stage](),
}
"""From where to where; taking down is always open."""
_ELSEWHERE = "The wall had moved on in another window, so nothing was changed. It stands as you see it now."


def put_up(
    *, cohort: Cohort, family: str, system: System, by: Person, after: int, now: datetime | None = None
) -> Showing:
    """Put fresh numbers of the family on the wall, from the cohort's own deal; what was there comes down.

    ``after`` is the showing that the page saw there, or 0: sent twice, one problem is put up. Raises Refused
    where the wall had moved on, or the cohort is closed.
    """
    now = now or timezone.now()
    with transaction.atomic():
        locked = Cohort.objects.select_for_update(of=("self",), no_key=True).get(pk=cohort.pk)
        if locked.closed:
            raise Refused("This cohort is closed; nothing more is put before it.")
        before = _for_update().filter(cohort=locked).exclude(stage=Stage.DOWN).first()
        if (before.pk if before else 0) != after:
            raise Refused(_ELSEWHERE)
        if before:
            _take_down(before, by, now)
        problem = fresh(locked.group, family, system)
        showing = Showing.objects.create(
            cohort=locked,
            by=by,
            family=family,
            edition=problem.edition,
            system=problem.system,
            seed=problem.seed,
            place=problem.number,
            shown=record.shown(problem),
            key=record.key(problem),
            members=locked.trainees.count(),
            put_up_at=now,
        )
        journal.write(actor=by, verb="problem put on the wall", subject=showing, at=now)
    return showing


def move(*, cohort: Cohort, showing_id: int, to: Stage, by: Person, now: datetime | None = None) -> Showing:
    """Close the problem, open it again, show the answers, or take it down. Twice changes nothing.

    Raises Refused where the problem is not on the wall any more, or cannot go there from where it is.
    """
    now = now or timezone.now()
    with transaction.atomic():
        showing = _locked(cohort, showing_id)
        if showing.stage == to:
            return showing
        if showing.stage == Stage.DOWN:
            raise Refused(_ELSEWHERE)
        if to is Stage.DOWN:
            _take_down(showing, by, now)
            return showing
        if to not in _MOVES[Stage(showing.stage)]:
            raise Refused(_ELSEWHERE)
        showing.stage = to
        if to is not Stage.SPREAD:
            showing.closed_at = now if to is Stage.CLOSED else None
        showing.save(update_fields=["stage", "closed_at"])
        journal.write(actor=by, verb=f"problem on the wall: {to.label}", subject=showing, at=now)
    return showing


def show_step(*, cohort: Cohort, showing_id: int, number: int) -> Showing:
    """Show the solution as far as this step, one further than now at most; nothing shown is taken back.

    Raises Refused before the answers are shown, and where the problem is not on the wall any more.
    """
    with transaction.atomic():
        showing = _locked(cohort, showing_id)
        if not showing.is_spread:
            raise Refused(_ELSEWHERE)
        if number == showing.steps + 1 and number <= len(showing.key["steps"]):
            showing.steps = number
            showing.save(update_fields=["steps"])
    return showing


def answer(
    *,
    learner: Person,
    cohort: Cohort,
    showing_id: int,
    form: Mapping[str, str],
    now: datetime | None = None,
) -> Unjudged | None:
    """Keep the learner's answer (fields of pressure/marking.py) in place of an earlier one.

    Text that cannot be read is handed back with a sentence and changes nothing. Raises Refused once the
    problem is closed or gone.
    """
    now = now or timezone.now()
    with transaction.atomic():
        showing = _locked(cohort, showing_id)
        if not showing.is_open:
            raise Refused("That problem was closed before your answer arrived. Nothing was changed.")
        judged = judge(form, showing.marking_key)
        if isinstance(judged, Unjudged):
            return judged
        told = told_more(judged, showing.shown, showing.key)
        fields = {
            "typed": told.typed,
            "understood": told.understood,
            "verdict": told.verdict,
            "slip": told.slip,
            "slip_label": told.label,
            "mend": told.mend,
            "at": now,
        }
        if not Answer.objects.filter(showing=showing, learner=learner).update(**fields):
            Answer.objects.create(showing=showing, learner=learner, first_at=now, **fields)
            Showing.objects.filter(pk=showing.pk).update(answered=F("answered") + 1)
    return None


def _for_update() -> QuerySet[Showing]:
    return Showing.objects.select_for_update(of=("self",), no_key=True)


def _locked(cohort: Cohort, showing_id: int) -> Showing:
    try:
        return _for_update().get(pk=showing_id, cohort=cohort)
    except Showing.DoesNotExist:
        raise Refused(_ELSEWHERE) from None


def _take_down(showing: Showing, by: Person, now: datetime) -> None:
    showing.closed_at = showing.closed_at or now
    showing.stage, showing.down_at = Stage.DOWN, now
    showing.save(update_fields=["stage", "closed_at", "down_at"])
    journal.write(actor=by, verb="problem taken off the wall", subject=showing, at=now)
