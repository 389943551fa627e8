"""Makes people and cohorts; the demo and the tests use the same."""

# mypy: disable-error-code="no-untyped-call,untyped-decorator"
# factory_boy declares few of its types.
from __future__ import annotations

from typing import Any

from django.contrib.auth.hashers import UNUSABLE_PASSWORD_PREFIX
from django.utils import timezone
from django.utils.text import slugify
from factory.declarations import LazyAttribute, LazyFunction, Sequence
from factory.django import DjangoModelFactory
from factory.helpers import post_generation

from course.demo.cast import DOMAIN
from course.people.models import Cohort, Person, Role


def address(name: str) -> str:
    """The demo's address for a name: ``wren.talcott@orrowmouth.example``."""
    return f"{slugify(name).replace('-', '.')}@{DOMAIN}"


class PersonFactory(DjangoModelFactory[Person]):
    """Somebody who cannot sign in by password unless a hash is given."""

    class Meta:
        model = Person

    name = Sequence(lambda number: f"Diver Number {number}")
    email = LazyAttribute(lambda person: address(person.name))
    role = Role.TRAINEE
    password = UNUSABLE_PASSWORD_PREFIX


class CohortFactory(DjangoModelFactory[Cohort]):
    """A cohort; ``trainees`` and ``instructors`` are put into it."""

    class Meta:
        model = Cohort
        skip_postgeneration_save = True

    name = Sequence(lambda number: f"Cohort {number}")
    started = LazyFunction(timezone.localdate)

    @post_generation
    def trainees(self: Any, create: bool, extracted: list[Person] | None) -> None:
        self.trainees.set(extracted or [])

    @post_generation
    def instructors(self: Any, create: bool, extracted: list[Person] | None) -> None:
        self.instructors.set(extracted or [])
