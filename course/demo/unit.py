"""Builds the demo: the dive unit's people, then their evenings with the course in the order they happened."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from random import Random

from django.contrib.auth.hashers import make_password
from django.db import transaction
from django.utils import timezone

from course.demo.appointments import set_checks
from course.demo.cast import (
    ADMINISTRATOR,
    DOMAIN,
    LONG_AGO,
    OFFICER,
    PASSWORD,
    PLANS,
    QUICK,
    TROUPES,
    Part,
    Troupe,
)
from course.demo.doubts import raise_doubts
from course.demo.factories import CohortFactory, PersonFactory
from course.demo.learners import SimulatedLearner
from course.people.models import Person, Role
from quizzes.competencies import COMPETENCIES, Competency

_SEED = "Orrowmouth"


@dataclass(frozen=True, slots=True)
class Session:
    """One evening: who, in what, doing what, when."""

    at: datetime
    learner: SimulatedLearner
    competency: Competency
    deed: str


def strangers() -> bool:
    """Whether anyone is here who is not of the demo."""
    return Person.objects.exclude(email__endswith=f"@{DOMAIN}").exists()


def build(*, quick: bool = False) -> None:
    """Everything or nothing: one transaction, which is also what makes it fast."""
    with transaction.atomic():
        now = timezone.now()
        password = make_password(PASSWORD)
        PersonFactory.create(name=OFFICER, role=Role.OFFICER, password=password)
        PersonFactory.create(name=ADMINISTRATOR, role=Role.ADMINISTRATOR, password=password)
        sessions: list[Session] = []
        for troupe in TROUPES:
            sessions.extend(_enter(troupe, password, now, quick))
        for session in sorted(sessions, key=lambda session: session.at):
            session.learner.spend_evening(session.deed, session.competency, session.at)
        set_checks(now)
        raise_doubts(now)


def _enter(troupe: Troupe, password: str, now: datetime, quick: bool) -> Iterator[Session]:
    """Make the cohort and its people; what they will do on their evenings is handed back."""
    started = now - timedelta(days=troupe.days_ago)
    parts = troupe.parts[:QUICK] if quick else troupe.parts
    instructor = PersonFactory.create(
        name=troupe.instructor, role=Role.INSTRUCTOR, system=troupe.system, password=password
    )
    trainees = [
        PersonFactory.create(name=part.name, system=troupe.system, password=password) for part in parts
    ]
    CohortFactory.create(
        name=troupe.name,
        started=timezone.localdate(started),
        trainees=trainees,
        instructors=[instructor],
    )
    Person.objects.filter(pk__in=[person.pk for person in (instructor, *trainees)]).update(joined=started)
    for person, part in zip(trainees, parts, strict=True):
        learner = SimulatedLearner(person, instructor, Random(f"{_SEED} {part.name}"))  # noqa: S311 (not a secret)
        yield from _evenings(learner, troupe, part, now)


def _evenings(learner: SimulatedLearner, troupe: Troupe, part: Part, now: datetime) -> Iterator[Session]:
    """The part's plans on the calendar: an evening every other day, topic after topic."""
    for topic, competency in enumerate(tuple(COMPETENCIES.values())[: troupe.reached]):
        plan = part.but.get(competency.slug, "met")
        days_ago = LONG_AGO.get(plan, troupe.first_topic - topic * troupe.between)
        for evening, deed in enumerate(PLANS[plan]):
            yield Session(
                _evening(now, days_ago - 2 * evening, topic, learner.rng), learner, competency, deed
            )


def _evening(now: datetime, days_ago: int, topic: int, rng: Random) -> datetime:
    """Some minutes after six, seven or eight on the site's clock, never today."""
    day = timezone.localdate(now) - timedelta(days=max(days_ago, 1))
    return timezone.make_aware(datetime.combine(day, time(18 + topic % 3, int(rng.random() * 15))))
