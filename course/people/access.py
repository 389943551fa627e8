"""Who may do what: the permission table, and the gates through which another's record is reached.

Outside one's scope a person, cohort or attempt does not exist: every gate raises Http404 with the same
empty answer that a number never given out would get.
"""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum
from functools import wraps
from typing import Any, Concatenate, ParamSpec

from django.contrib.auth.models import AbstractBaseUser, AnonymousUser
from django.db.models import QuerySet
from django.http import Http404, HttpRequest, HttpResponseBase

from course.people.http import PersonRequest
from course.people.models import Cohort, Person, Role

Anyone = AbstractBaseUser | AnonymousUser | Person
P = ParamSpec("P")


class Reach(Enum):
    """Whose things a deed may touch."""

    NOBODY = "nobody"
    OWN_COHORTS = "own cohorts"
    EVERYBODY = "everybody"


class Deed(Enum):
    """What somebody may do about others. Everyone may learn, practise, be checked and read their own."""

    READ_RECORDS = "read others' attempts and competency"
    DECIDE = "lift a hold, set aside an answer, sign off"
    SUPERVISE = "open supervised checks, set accommodations"
    SET_CHECKS = "set checks for a time, and look over what they ask"
    TEACH = "put a problem before a class and read how it answered"
    ASSIGN = "read which slips a cohort makes, ask those who made one to practise it"
    PAPERS = "print paper checks, enter what was written on them"
    PAUSE = "pause a question or a kind of problem, for everybody"
    EXPORT = "export competency records"
    MANAGE_PEOPLE = "keep the roster: people, roles and cohorts"


_NO, _OWN, _ALL = Reach.NOBODY, Reach.OWN_COHORTS, Reach.EVERYBODY

RIGHTS: dict[Deed, dict[Role, Reach]] = {
    Deed.READ_RECORDS: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _OWN, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _NO,
    },
    Deed.DECIDE: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _OWN, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _NO,
    },
    Deed.SUPERVISE: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _OWN, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _NO,
    },
    Deed.SET_CHECKS: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _OWN, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _NO,
    },
    Deed.TEACH: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _OWN, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _NO,
    },
    Deed.ASSIGN: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _OWN, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _NO,
    },
    Deed.PAPERS: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _OWN, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _NO,
    },
    # A question belongs to no cohort: whoever teaches may take a faulty one out for all, with a reason.
    Deed.PAUSE: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _ALL, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _NO,
    },
    Deed.EXPORT: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _OWN, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _NO,
    },
    Deed.MANAGE_PEOPLE: {
        Role.TRAINEE: _NO, Role.INSTRUCTOR: _NO, Role.OFFICER: _ALL, Role.ADMINISTRATOR: _ALL,
    },
}  # fmt: skip


_ABOUT_OTHERS = (Deed.READ_RECORDS, Deed.DECIDE, Deed.SUPERVISE, Deed.PAPERS, Deed.SET_CHECKS, Deed.ASSIGN)


def reach(person: Anyone, deed: Deed) -> Reach:
    """How far this person's right to the deed goes."""
    if not isinstance(person, Person) or not person.is_active:
        return Reach.NOBODY
    return RIGHTS[deed][Role(person.role)]


def may_open_desk(person: Anyone) -> bool:
    return reach(person, Deed.READ_RECORDS) is not Reach.NOBODY


def may_open_office(person: Anyone) -> bool:
    return reach(person, Deed.MANAGE_PEOPLE) is not Reach.NOBODY


def cohorts_for(person: Anyone, deed: Deed) -> QuerySet[Cohort]:
    """The cohorts within this person's reach for the deed."""
    if not isinstance(person, Person):
        return Cohort.objects.none()
    match reach(person, deed):
        case Reach.EVERYBODY:
            return Cohort.objects.all()
        case Reach.OWN_COHORTS:
            return Cohort.objects.filter(instructors=person)
        case _:
            return Cohort.objects.none()


def people_for(person: Anyone, deed: Deed) -> QuerySet[Person]:
    """The people within this person's reach for the deed.

    Nobody reads or decides their own record from a desk: a running check would show its verdicts there,
    and nobody signs off themselves or gives themselves time. One's own record is on one's own pages.
    """
    if not isinstance(person, Person):
        return Person.objects.none()
    match reach(person, deed):
        case Reach.EVERYBODY:
            found = Person.objects.all()
        case Reach.OWN_COHORTS:
            # A subquery rather than a join: someone in two of my cohorts is one person.
            mine = cohorts_for(person, deed)
            found = Person.objects.filter(
                pk__in=Cohort.trainees.through.objects.filter(cohort__in=mine).values("person_id")
            )
        case _:
            return Person.objects.none()
    return found.exclude(pk=person.pk) if deed in _ABOUT_OTHERS else found


def cohort_or_404(person: Anyone, deed: Deed, pk: int) -> Cohort:
    """Gate to one cohort."""
    try:
        return cohorts_for(person, deed).get(pk=pk)
    except Cohort.DoesNotExist:
        raise Http404 from None


def cohorts_of(person: Anyone) -> QuerySet[Cohort]:
    """The cohorts this person learns in."""
    return Cohort.objects.filter(trainees=person) if isinstance(person, Person) else Cohort.objects.none()


def own_cohort_or_404(person: Anyone, pk: int) -> Cohort:
    """Gate to one cohort for those who learn in it."""
    try:
        return cohorts_of(person).get(pk=pk)
    except Cohort.DoesNotExist:
        raise Http404 from None


def person_or_404(person: Anyone, deed: Deed, pk: int) -> Person:
    """Gate to one person's record."""
    try:
        return people_for(person, deed).get(pk=pk)
    except Person.DoesNotExist:
        raise Http404 from None


def needs(
    deed: Deed,
) -> Callable[
    [Callable[Concatenate[PersonRequest, P], HttpResponseBase]],
    Callable[Concatenate[HttpRequest, P], HttpResponseBase],
]:
    """Close a page to whoever has no reach at all for the deed: to them it does not exist."""

    def close(
        view: Callable[Concatenate[PersonRequest, P], HttpResponseBase],
    ) -> Callable[Concatenate[HttpRequest, P], HttpResponseBase]:
        @wraps(view)
        def gated(request: Any, /, *args: P.args, **kwargs: P.kwargs) -> HttpResponseBase:
            if reach(request.user, deed) is Reach.NOBODY:
                raise Http404
            return view(request, *args, **kwargs)

        return gated

    return close
