"""What was set for whom: the windows of one learner, and how far everybody is with one appointment."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from django.db.models import QuerySet
from django.utils import timezone

from course.appointments.models import Appointment
from course.people.models import Person
from quizzes.models import Sitting, Standing
from quizzes.standing import DECIDING
from quizzes.subjects import WHOLE, subject
from quizzes.windows import Window

_NOT_BEGUN = "not begun"


def windows_of(learner: int, lock: bool = False) -> list[Window]:
    """The windows of a learner, the one set last comes last; see ``quizzes.windows.Finder``.

    An appointment holds while the learner is in its cohort.
    """
    mine = Appointment.objects.filter(
        people=learner, cohort__trainees=learner, sent_at__isnull=False
    ).order_by("sent_at", "pk")
    if lock:
        mine = mine.select_for_update(of=("self",), no_key=True)
    found = list(mine)
    begun = _begun(found, [learner]).get(learner, [])
    return [_window(one, slug, begun) for one in found for slug in one.subjects]


def _window(one: Appointment, slug: str, begun: Iterable[Sitting]) -> Window:
    return Window(
        subject=slug,
        title=subject(slug).title,
        opens_at=timezone.localtime(one.opens_at),
        closes_at=timezone.localtime(one.closes_at),
        by_name=one.by_name,
        only=one.only,
        supervised=one.supervised,
        extra_time_percent=one.extra_time_percent,
        note=one.note,
        begun=_within(one, slug, begun) is not None,
        taken_back=one.taken_back_why,
    )


def _begun(appointments: Iterable[Appointment], learners: Iterable[int]) -> Mapping[int, list[Sitting]]:
    """The checks these learners began in any of the windows, by learner, latest first; one query at most."""
    found: dict[int, list[Sitting]] = defaultdict(list)
    starts = [one.binds_from for one in appointments]
    if starts:
        checks = Sitting.objects.filter(
            learner__in=learners, purpose__in=DECIDING, began__gte=min(starts)
        ).only("learner_id", "competency", "began", "ended", "outcome")
        for sitting in checks:
            found[sitting.learner_id].append(sitting)
    return found


def _within(one: Appointment, slug: str, sittings: Iterable[Sitting]) -> Sitting | None:
    """The latest check of the subject that was begun in the window."""
    opens, closes = one.binds_from, one.closes_at
    mine = (each for each in sittings if each.competency == slug)
    return next((each for each in mine if opens <= each.began < closes), None)


def has_begun(one: Appointment) -> bool:
    """Whether anybody it was set for began a check in its window."""
    begun = _begun([one], one.people.values_list("pk", flat=True))
    return any(_within(one, slug, mine) for mine in begun.values() for slug in one.subjects)


@dataclass(frozen=True, slots=True)
class Line:
    """How far one person is: for each subject its title and a word."""

    person: Person
    checks: tuple[tuple[str, str], ...]


def progress(one: Appointment, people: QuerySet[Person]) -> list[Line]:
    """A line for each of the people it is for: what they began, or where they stand. Three queries."""
    who = list(people)
    keys = [person.pk for person in who]
    begun = _begun([one], keys) if one.sent_at else {}
    states = _states(one, keys)
    return [
        Line(
            person,
            tuple(
                (
                    subject(slug).title,
                    _word(_within(one, slug, begun.get(person.pk, [])), states.get((person.pk, slug), "")),
                )
                for slug in one.subjects
            ),
        )
        for person in who
    ]


def _states(one: Appointment, learners: Iterable[int]) -> Mapping[tuple[int, str], str]:
    """In a word where each stands, by learner and competency; of the whole course there is no such word."""
    rows = Standing.objects.filter(learner__in=learners, competency__in=one.subjects).exclude(
        competency=WHOLE
    )
    return {(row.learner_id, row.competency): row.shown_state for row in rows}


def _word(sitting: Sitting | None, state: str) -> str:
    if sitting is None:
        return f"{_NOT_BEGUN}; {state}" if state else _NOT_BEGUN
    if sitting.ended is None:
        return f"under way since {_clock(sitting.began)}"
    return f"{sitting.outcome}, {_clock(sitting.ended)}"


def _clock(moment: datetime) -> str:
    local = timezone.localtime(moment)
    return f"{local.day} {local:%b, %H:%M}"
