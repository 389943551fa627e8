"""What the slates read."""

from __future__ import annotations

from typing import Any, NamedTuple

from django.db import connection
from django.db.models import Count
from django.http import Http404

from course.classroom.models import Answer, Showing, Stage
from course.classroom.spread import Spread, spread
from course.people.access import Deed, Reach, reach
from course.people.models import Cohort, Person


class State(NamedTuple):
    """How a wall stands; the first is None where nothing is on it."""

    showing: int | None
    stage: str | None
    steps: int | None
    answered: int | None
    members: int | None

    @property
    def moved(self) -> str:
        """Differs whenever a hand slate has something new to show."""
        return f"{self.showing}-{self.stage}-{self.steps}" if self.showing else "bare"

    @property
    def counted(self) -> str:
        """Differs whenever the wall slate has."""
        return f"{self.moved}-{self.answered}"


# By hand, since every slate asks it every two seconds: put into words by the ORM it costs a hundred times as
# much. Whose cohorts they are must agree with access.py; tests/test_who_may_open_what.py holds both to it.
_STATE = (
    'SELECT s."id", s."stage", s."steps", s."answered", s."members" FROM "people_cohort" c '
    'LEFT JOIN "classroom_showing" s ON s."cohort_id" = c."id" AND s."stage" <> \'down\' WHERE c."id" = %s'
)
_LEARNS = (
    ' AND EXISTS (SELECT 1 FROM "people_cohort_trainees" p '
    'WHERE p."cohort_id" = c."id" AND p."person_id" = %s)'
)
_TEACHES = _LEARNS.replace("trainees", "instructors")


def state_for_hand_or_404(person: Person, pk: int) -> State:
    """How the wall of a cohort stands for somebody who learns in it: gate and all in one query."""
    return _state(_STATE + _LEARNS, [pk, person.pk])


def state_for_wall_or_404(person: Person, pk: int) -> State:
    """The same for somebody who may put a problem before it."""
    match reach(person, Deed.TEACH):
        case Reach.EVERYBODY:
            return _state(_STATE, [pk])
        case Reach.OWN_COHORTS:
            return _state(_STATE + _TEACHES, [pk, person.pk])
        case _:
            raise Http404


def _state(sql: str, values: list[int]) -> State:
    with connection.cursor() as cursor:
        cursor.execute(sql, values)
        row = cursor.fetchone()
    if row is None:
        raise Http404
    return State(*row)


def state_of(showing: Showing | None) -> State:
    """The same of a showing that is at hand."""
    if showing is None:
        return State(None, None, None, None, None)
    return State(showing.pk, showing.stage, showing.steps, showing.answered, showing.members)


def on_the_wall(cohort: Cohort) -> Showing | None:
    """The problem on the cohort's wall slate, key and all."""
    return cohort.showings.exclude(stage=Stage.DOWN).first()


def answer_of(showing: Showing, learner: Person) -> Answer | None:
    """The learner's answer as it stands."""
    return showing.answers.filter(learner=learner).first()


def spread_of(showing: Showing) -> Spread:
    """How the answers fall out; holds no name."""
    rows = showing.answers.order_by().values_list("verdict", "slip_label").annotate(Count("pk"))
    return spread(list(rows), showing.members, showing.key["answer_text"])


def solved(showing: Showing | None) -> dict[str, Any]:
    """What a slate may show of the key: nothing before the answers are shown, then the steps so far."""
    if showing is None or not showing.is_spread:
        return {}
    steps, so_far = showing.key["steps"], showing.steps
    return {
        "spread": spread_of(showing),
        "steps": steps[:so_far],
        "steps_in_all": len(steps),
        "next_step": so_far + 1 if so_far < len(steps) else None,
        "finished": so_far == len(steps),
    }
