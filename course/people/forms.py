"""What the people pages take in."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from django import forms
from django.contrib.auth.forms import (
    AuthenticationForm,
    PasswordResetForm,
    UsernameField,
)
from django.utils import timezone

from course.people.models import Cohort, Person, Role
from course.people.roster import TAKEN_ADDRESS, TAKEN_NAME, CohortEntry, PersonEntry, roles_in_gift

WRITE_ADDRESS = {"required": "Write the e-mail address.", "invalid": "Write it like name@example.org."}
SYSTEMS = Person._meta.get_field("system").choices or []


class SignInForm(AuthenticationForm):
    """An address and a password; never says which of the two was wrong."""

    username = UsernameField(
        label="E-mail address",
        widget=forms.EmailInput(attrs={"autofocus": True, "autocomplete": "username"}),
        error_messages=WRITE_ADDRESS,
    )
    error_messages = {
        "invalid_login": "That address and password do not go together. Check both, or set a new password.",
        "inactive": "That address and password do not go together. Check both, or set a new password.",
    }

    def clean_username(self) -> str:
        return str(self.cleaned_data["username"]).strip().lower()


class ForgottenForm(PasswordResetForm):
    """Sends a one-time link, also to people who were added and have no password yet."""

    email = forms.EmailField(
        label="E-mail address",
        max_length=254,
        widget=forms.EmailInput(attrs={"autocomplete": "email"}),
        error_messages=WRITE_ADDRESS,
    )

    def get_users(self, email: str) -> Iterable[Person]:
        return Person.objects.filter(email=email.strip().lower(), is_active=True)


class UnitsForm(forms.Form):
    """The system of units in which problems are set."""

    system = forms.ChoiceField(
        label="Units of your problems",
        choices=SYSTEMS,
        widget=forms.RadioSelect,
        help_text="A problem that is already waiting keeps its units.",
    )


class PersonForm(forms.Form):
    """One line of the roster. Offers only the roles that the actor may give."""

    name = forms.CharField(
        label="Full name", max_length=120, error_messages={"required": "Write the full name."}
    )
    email = forms.EmailField(
        label="E-mail address",
        max_length=254,
        help_text="Used to sign in.",
        widget=forms.EmailInput(attrs={"autocomplete": "off"}),
        error_messages=WRITE_ADDRESS,
    )
    role = forms.ChoiceField(label="Role")
    learns_in = forms.ModelMultipleChoiceField(
        Cohort.objects.all(), label="Learns in", required=False, widget=forms.CheckboxSelectMultiple
    )
    teaches = forms.ModelMultipleChoiceField(
        Cohort.objects.all(), label="Teaches", required=False, widget=forms.CheckboxSelectMultiple
    )
    is_active = forms.BooleanField(label="May sign in", required=False, initial=True)

    def __init__(self, *args: Any, actor: Person, person: Person | None = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.person = person
        roles = roles_in_gift(actor)
        if person is not None and person.pk == actor.pk:
            roles = [Role(person.role)]
            self.fields["role"].help_text = "Nobody changes their own role."
            del self.fields["is_active"]
        self.fields["role"].choices = [(role.value, role.label) for role in roles]  # type: ignore[attr-defined]  # a ChoiceField

    def clean_email(self) -> str:
        email = str(self.cleaned_data["email"]).strip().lower()
        others = Person.objects.exclude(pk=self.person.pk) if self.person else Person.objects.all()
        if others.filter(email=email).exists():
            raise forms.ValidationError(TAKEN_ADDRESS)
        return email

    def clean(self) -> dict[str, Any]:
        given = self.cleaned_data
        if given.get("role") == Role.TRAINEE and given.get("teaches"):
            self.add_error("teaches", "A trainee teaches no cohort. Choose another role or clear these.")
        return given

    def entry(self) -> PersonEntry:
        given = self.cleaned_data
        return PersonEntry(
            name=given["name"],
            email=given["email"],
            role=Role(given["role"]),
            is_active=given.get("is_active", True),
            learns_in=given["learns_in"],
            teaches=given["teaches"],
        )


def initial_of(person: Person) -> dict[str, Any]:
    """The person's entry as the form first shows it."""
    return {
        "name": person.name,
        "email": person.email,
        "role": person.role,
        "is_active": person.is_active,
        "learns_in": list(person.cohorts.values_list("pk", flat=True)),
        "teaches": list(person.teaches.values_list("pk", flat=True)),
    }


class CohortForm(forms.ModelForm):  # type: ignore[type-arg]  # Django's own takes no argument when it runs
    """A cohort's name and dates; who is in it is said with each person."""

    class Meta:
        model = Cohort
        fields = ["name", "started", "closed"]
        widgets = {"started": forms.DateInput(format="%Y-%m-%d", attrs={"type": "date"})}
        labels = {"name": "Name", "started": "Started on", "closed": "Closed"}
        error_messages = {
            "name": {"unique": TAKEN_NAME, "required": "Write a name for the cohort."},
            "started": {"required": "Write the day it started, like 2026-03-02."},
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance.pk is None:
            self.initial.setdefault("started", timezone.localdate())
            del self.fields["closed"]

    def entry(self) -> CohortEntry:
        given = self.cleaned_data
        return CohortEntry(name=given["name"], started=given["started"], closed=given.get("closed", False))
