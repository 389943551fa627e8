"""Who there is: people, their role, the cohorts they learn in or teach."""

from __future__ import annotations

from typing import Any, ClassVar

from django.contrib.auth.base_user import AbstractBaseUser, BaseUserManager
from django.contrib.auth.models import PermissionsMixin
from django.db import models
from django.db.models.functions import Lower
from django.utils.functional import cached_property


class Role(models.TextChoices):
    """What a person answers for. Anyone may also learn; the table of rights is in access.py."""

    TRAINEE = "trainee", "Trainee"
    INSTRUCTOR = "instructor", "Instructor"
    OFFICER = "officer", "Training officer"
    ADMINISTRATOR = "administrator", "Administrator"


class PersonManager(BaseUserManager["Person"]):
    """Makes people; addresses are kept in lower case so that one address is one person."""

    def create_user(self, email: str, password: str | None = None, **fields: Any) -> Person:
        """A new person. Raises ValueError without an address; without a password nobody can sign in."""
        if not email:
            raise ValueError("A person needs an e-mail address.")
        person = self.model(email=email.strip().lower(), **fields)
        person.set_password(password)
        person.save(using=self._db)
        return person

    def create_superuser(self, email: str, password: str | None = None, **fields: Any) -> Person:
        """The first administrator, made on the command line."""
        fields.setdefault("name", email)
        return self.create_user(
            email, password, **fields | {"role": Role.ADMINISTRATOR, "is_superuser": True}
        )

    def get_by_natural_key(self, username: str | None) -> Person:
        return self.get(email=(username or "").strip().lower())


class Person(AbstractBaseUser, PermissionsMixin):
    """Somebody who signs in with an e-mail address. Never deleted: records point here."""

    email = models.EmailField("e-mail address", unique=True)
    name = models.CharField("full name", max_length=120)
    role = models.CharField(max_length=16, choices=Role, default=Role.TRAINEE)
    system = models.CharField(
        "units", max_length=8, choices=[("us", "US customary"), ("metric", "Metric")], default="us"
    )
    is_active = models.BooleanField("may sign in", default=True)
    joined = models.DateTimeField(auto_now_add=True)

    objects: ClassVar[PersonManager] = PersonManager()

    USERNAME_FIELD = "email"
    EMAIL_FIELD = "email"
    REQUIRED_FIELDS: ClassVar[list[str]] = ["name"]

    class Meta:
        ordering = ["name", "pk"]
        verbose_name_plural = "people"
        constraints = [
            models.UniqueConstraint(Lower("email"), name="one_person_per_address"),
            models.CheckConstraint(condition=models.Q(role__in=Role.values), name="known_role"),
        ]

    def __str__(self) -> str:
        return self.name

    @property
    def is_staff(self) -> bool:
        return self.role == Role.ADMINISTRATOR

    @cached_property
    def code_groups(self) -> list[str]:
        """Every cohort as the records name it: a code for supervised checks is good for one of them."""
        return [group_of(pk) for pk in self.cohorts.values_list("pk", flat=True)]

    @cached_property
    def deal_group(self) -> str:
        """Whom fresh numbers are shared out among: the latest open cohort, or the person alone."""
        cohort = self.cohorts.order_by("closed", "-started", "-pk").values_list("pk", flat=True).first()
        return group_of(cohort) if cohort else f"person {self.pk}"


def group_of(cohort: int) -> str:
    """A cohort as the records name it, which know nothing of cohorts."""
    return f"cohort {cohort}"


class Cohort(models.Model):
    """People who learn together, and the instructors who answer for them."""

    name = models.CharField(max_length=80, unique=True)
    trainees = models.ManyToManyField(Person, related_name="cohorts", blank=True)
    instructors = models.ManyToManyField(Person, related_name="teaches", blank=True)
    closed = models.BooleanField(default=False, help_text="A closed cohort stays readable.")
    started = models.DateField()

    class Meta:
        ordering = ["-started", "name"]

    def __str__(self) -> str:
        return self.name

    @property
    def group(self) -> str:
        return group_of(self.pk)
