"""Every change to the roster: one function per deed, one transaction, one line in the journal.

Only an administrator makes or changes officers and administrators; nobody changes their own role or shuts
themselves out. Both hold here, whatever page or script calls.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from typing import Any

from django.contrib.auth.tokens import default_token_generator
from django.db import IntegrityError, transaction
from django.urls import reverse
from django.utils.encoding import force_bytes
from django.utils.http import urlsafe_base64_encode

from course.people.access import Deed, Reach, reach
from course.people.models import Cohort, Person, Role
from quizzes.errors import Refused
from quizzes.models import journal

KEPT_FOR_ADMINISTRATORS = frozenset({Role.OFFICER, Role.ADMINISTRATOR})
TAKEN_ADDRESS = "Somebody on the roster has this address. Find them by searching for it."
TAKEN_NAME = "There is a cohort of this name. Choose another."


@dataclass(frozen=True, slots=True, kw_only=True)
class PersonEntry:
    """What the roster says about one person."""

    name: str
    email: str
    role: Role
    is_active: bool = True
    learns_in: Iterable[Cohort] = ()
    teaches: Iterable[Cohort] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CohortEntry:
    """What the roster says about one cohort."""

    name: str
    started: date
    closed: bool = False


def roles_in_gift(actor: Person) -> list[Role]:
    """The roles this person may give."""
    if reach(actor, Deed.MANAGE_PEOPLE) is not Reach.EVERYBODY:
        return []
    kept = frozenset[Role]() if actor.role == Role.ADMINISTRATOR else KEPT_FOR_ADMINISTRATORS
    return [role for role in Role if role not in kept]


def may_change(actor: Person, person: Person) -> bool:
    """Whether the actor may change this entry of the roster."""
    return person.role in roles_in_gift(actor)


@transaction.atomic
def add_person(*, actor: Person, entry: PersonEntry) -> Person:
    """Add somebody who cannot sign in until a password is set. Raises Refused."""
    _refuse_unless(entry.role in roles_in_gift(actor), "Only an administrator gives that role.")
    with _one_of_a_kind(TAKEN_ADDRESS):
        person = Person.objects.create_user(
            entry.email, name=entry.name, role=entry.role, is_active=entry.is_active
        )
    _set_cohorts(person, entry)
    journal.write(actor=actor, verb="person added", subject=person, details=_written(person))
    return person


@transaction.atomic
def change_person(*, actor: Person, person: Person, entry: PersonEntry) -> Person:
    """Bring somebody's entry up to date; an entry that says nothing new writes nothing. Raises Refused."""
    person = Person.objects.select_for_update().get(pk=person.pk)
    _refuse_unless(may_change(actor, person), "Only an administrator changes this person.")
    if actor.pk == person.pk:
        _refuse_unless(entry.role == person.role, "Nobody changes their own role; ask an administrator.")
        _refuse_unless(entry.is_active, "Nobody shuts themselves out; ask an administrator.")
    else:
        _refuse_unless(entry.role in roles_in_gift(actor), "Only an administrator gives that role.")
    before = _written(person)
    person.name, person.email = entry.name, entry.email.strip().lower()
    person.role, person.is_active = entry.role, entry.is_active
    with _one_of_a_kind(TAKEN_ADDRESS):
        person.save(update_fields=["name", "email", "role", "is_active"])
    _set_cohorts(person, entry)
    _note_change(actor, "person changed", person, before, _written(person))
    return person


@transaction.atomic
def one_time_path(*, actor: Person, person: Person) -> str:
    """The path at which this person sets a password, good for one use. Raises Refused."""
    _refuse_unless(actor.pk != person.pk, "Change your own password under your name.")
    _refuse_unless(may_change(actor, person), "Only an administrator changes this person.")
    details = {"link": "a one-time link to set a password was made"}
    journal.write(actor=actor, verb="person changed", subject=person, details=details)
    key = urlsafe_base64_encode(force_bytes(person.pk))
    return reverse("people:password-set", args=[key, default_token_generator.make_token(person)])


@transaction.atomic
def add_cohort(*, actor: Person, entry: CohortEntry) -> Cohort:
    """Open a cohort. Raises Refused."""
    _refuse_unless(reach(actor, Deed.MANAGE_PEOPLE) is Reach.EVERYBODY, "The office keeps the cohorts.")
    with _one_of_a_kind(TAKEN_NAME):
        cohort = Cohort.objects.create(name=entry.name, started=entry.started, closed=entry.closed)
    journal.write(actor=actor, verb="cohort added", subject=cohort, details=_cohort_written(cohort))
    return cohort


@transaction.atomic
def change_cohort(*, actor: Person, cohort: Cohort, entry: CohortEntry) -> Cohort:
    """Rename, re-date, close or open a cohort again. Raises Refused."""
    _refuse_unless(reach(actor, Deed.MANAGE_PEOPLE) is Reach.EVERYBODY, "The office keeps the cohorts.")
    cohort = Cohort.objects.select_for_update().get(pk=cohort.pk)
    before = _cohort_written(cohort)
    cohort.name, cohort.started, cohort.closed = entry.name, entry.started, entry.closed
    with _one_of_a_kind(TAKEN_NAME):
        cohort.save(update_fields=["name", "started", "closed"])
    _note_change(actor, "cohort changed", cohort, before, _cohort_written(cohort))
    return cohort


def _refuse_unless(allowed: bool, sentence: str) -> None:
    if not allowed:
        raise Refused(sentence)


@contextmanager
def _one_of_a_kind(sentence: str) -> Iterator[None]:
    """The database has the last word, also when two write the same at once."""
    try:
        with transaction.atomic():
            yield
    except IntegrityError:
        raise Refused(sentence) from None


def _set_cohorts(person: Person, entry: PersonEntry) -> None:
    person.cohorts.set(entry.learns_in)
    person.teaches.set(entry.teaches)


def _written(person: Person) -> dict[str, Any]:
    return {
        "name": person.name,
        "email": person.email,
        "role": str(person.role),
        "may sign in": person.is_active,
        "learns in": sorted(person.cohorts.values_list("name", flat=True)),
        "teaches": sorted(person.teaches.values_list("name", flat=True)),
    }


def _cohort_written(cohort: Cohort) -> dict[str, Any]:
    return {"name": cohort.name, "started": cohort.started.isoformat(), "closed": cohort.closed}


def _note_change(
    actor: Person, verb: str, subject: Person | Cohort, before: dict[str, Any], after: dict[str, Any]
) -> None:
    changed = {key: [before[key], after[key]] for key in after if before[key] != after[key]}
    if changed:
        journal.write(actor=actor, verb=verb, subject=subject, details=changed)
