"""Every write of the room: one transaction each, a line in the journal, safe to send twice."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.db import transaction
from django.utils import timezone

from course.appointments.calendar import has_begun
from course.appointments.models import Appointment
from course.people.access import Deed, people_for
from course.people.models import Cohort, Person
from quizzes.errors import Refused
from quizzes.models import journal


@dataclass(frozen=True, slots=True)
class Plan:
    """What a draft says; ``people`` is empty where it is for the whole cohort."""

    whole_cohort: bool
    people: Sequence[Person]
    subjects: Sequence[str]
    opens_at: datetime
    closes_at: datetime
    only: bool = False
    supervised: bool = False
    extra_time_percent: int = 0
    note: str = ""

    @property
    def fields(self) -> dict[str, Any]:
        said = {name: getattr(self, name) for name in self.__dataclass_fields__ if name != "people"}
        return said | {"subjects": list(self.subjects)}


def draft(*, cohort: Cohort, by: Person, plan: Plan, now: datetime | None = None) -> Appointment:
    """Write it down. Nobody is told anything before it is sent."""
    now = now or timezone.now()
    with transaction.atomic():
        one = Appointment.objects.create(
            cohort=cohort, by_key=by.pk, by_name=str(by), made_at=now, **plan.fields
        )
        one.people.set(plan.people)
    return one


def change(*, appointment_id: int, by: Person, plan: Plan) -> Appointment:
    """Write a draft anew; whoever changed it last has set it. Raises Refused once it is sent."""
    with transaction.atomic():
        one = _locked(appointment_id)
        _refuse_sent(one)
        for name, value in plan.fields.items():
            setattr(one, name, value)
        one.by_key, one.by_name = by.pk, str(by)
        one.save()
        one.people.set(plan.people)
    return one


def discard(*, appointment_id: int) -> None:
    """Throw a draft away; gone already is well. Raises Refused once it is sent."""
    with transaction.atomic():
        one = Appointment.objects.select_for_update(of=("self",)).filter(pk=appointment_id).first()
        if one:
            _refuse_sent(one)
            one.delete()


def send(*, appointment_id: int, by: Person, now: datetime | None = None) -> Appointment:
    """Send a draft: from now on it shows to those it is for. Twice is once.

    Raises Refused where its window is over, or nobody it is for is in reach of ``by`` any more.
    """
    now = now or timezone.now()
    with transaction.atomic():
        one = _locked(appointment_id)
        if one.sent_at:
            return one
        if one.closes_at <= now:
            raise Refused("Its time is over already. Change the draft, then send it.")
        who = set_for(one, by)
        if not who:
            raise Refused("Nobody is left whom this check could be set for. Change the draft, then send it.")
        one.people.set(who)
        one.sent_at, one.by_key, one.by_name = now, by.pk, str(by)
        one.save(update_fields=["sent_at", "by_key", "by_name"])
        journal.write(actor=by, verb="check set", subject=one, details=_details(one, who), at=now)
    return one


def take_back(*, appointment_id: int, by: Person, why: str, now: datetime | None = None) -> Appointment:
    """Let it hold no more, while nobody has begun; twice changes nothing.

    Raises Refused without a reason, for a draft, and once anybody has begun a check in its window.
    """
    now, why = now or timezone.now(), why.strip()[:400]
    with transaction.atomic():
        one = _locked(appointment_id)
        if one.taken_back_at:
            return one
        if one.is_draft:
            raise Refused("It was not sent yet. Discard the draft instead.")
        if not why:
            raise Refused("Give the reason; those it was set for read it.")
        if has_begun(one):
            raise Refused("Somebody has begun, so it stays. What they began is on the list below.")
        one.taken_back_at, one.taken_back_by, one.taken_back_why = now, str(by), why
        one.save(update_fields=["taken_back_at", "taken_back_by", "taken_back_why"])
        journal.write(actor=by, verb="set check taken back", subject=one, details={"why": why}, at=now)
    return one


def set_for(one: Appointment, by: Person) -> list[Person]:
    """Whom a draft would be sent to by this person: of the cohort, within reach, never themselves."""
    found = people_for(by, Deed.SET_CHECKS).filter(cohorts=one.cohort_id)
    return list(found if one.whole_cohort else found.filter(appointments=one))


def plan_of(one: Appointment) -> dict[str, Any]:
    """What a draft says, as the form begins with it."""
    return {name: getattr(one, name) for name in Plan.__dataclass_fields__ if name != "people"}


def _locked(appointment_id: int) -> Appointment:
    return Appointment.objects.select_for_update(of=("self",), no_key=True).get(pk=appointment_id)


def _refuse_sent(one: Appointment) -> None:
    if one.sent_at:
        raise Refused("It was sent, so it stays as it is. Take it back, or set another.")


def _details(one: Appointment, who: Sequence[Person]) -> dict[str, Any]:
    return {
        "people": [person.pk for person in who],
        "subjects": one.subjects,
        "opens": one.opens_at.isoformat(),
        "closes": one.closes_at.isoformat(),
        "only then": one.only,
        "supervised": one.supervised,
        "extra time": one.extra_time_percent,
    }
