"""What an instructor writes to set a check, or to take one back."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

from django import forms
from django.db.models import QuerySet
from django.utils import timezone

from course.appointments.deeds import Plan
from course.people.models import Person
from quizzes.actions.accommodations import MOST_PERCENT
from quizzes.competencies import COMPETENCIES
from quizzes.subjects import WHOLE, whole_course

_AHEAD = timedelta(days=366)
_FORMAT = "%Y-%m-%dT%H:%M"


def _moment(label: str, help_text: str = "") -> forms.DateTimeField:
    return forms.DateTimeField(
        label=label,
        help_text=help_text,
        input_formats=[_FORMAT, "%Y-%m-%d %H:%M"],
        widget=forms.DateTimeInput(attrs={"type": "datetime-local"}, format=_FORMAT),
        error_messages={
            "required": "Give the day and the time.",
            "invalid": "Write the day and the time like 2026-12-03 09:00.",
        },
    )


class PlanForm(forms.Form):
    """For whom, what, when, and on what terms."""

    whole_cohort = forms.TypedChoiceField(
        label="For whom",
        choices=[
            ("yes", "Every trainee in the cohort when you send it"),
            ("no", "Only those chosen below"),
        ],
        coerce=lambda chosen: chosen == "yes",
        widget=forms.RadioSelect,
        error_messages={"required": "Say whether it is for all of them."},
    )
    people = forms.ModelMultipleChoiceField(
        Person.objects.none(), label="Trainees", required=False, widget=forms.CheckboxSelectMultiple
    )
    subjects = forms.MultipleChoiceField(
        label="What is checked",
        widget=forms.CheckboxSelectMultiple,
        help_text="Each competency has its own check; the course check goes over all of them at once.",
        error_messages={"required": "Choose a competency, or the whole course."},
    )
    opens_at = _moment("From")
    closes_at = _moment("Until", "A check begun by then goes on to its end.")
    only = forms.BooleanField(
        label="Only in this window",
        required=False,
        help_text="Before it the check is shut to them; who misses it waits until you set another.",
    )
    supervised = forms.BooleanField(
        label="Supervised",
        required=False,
        help_text="In the window it begins only with a code that you show.",
    )
    extra_time_percent = forms.IntegerField(
        label="Extra time for this check, per cent",
        min_value=0,
        max_value=MOST_PERCENT,
        required=False,
        help_text="0 for none; 100 doubles the time. Whoever has more by arrangement keeps it.",
        widget=forms.TextInput(attrs={"inputmode": "numeric", "autocomplete": "off"}),
        error_messages={
            "invalid": "Write a whole number of per cent, such as 25.",
            "min_value": "Extra time is not negative; 0 gives none.",
            "max_value": f"Give at most {MOST_PERCENT} per cent, ten times the limit.",
        },
    )
    note = forms.CharField(
        label="Note to the trainees",
        max_length=400,
        required=False,
        help_text="Where it is held, what to bring. They read it as you write it.",
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={"max_length": "Keep the note to 400 characters; it is %(show_value)d now."},
    )

    def __init__(self, people: QuerySet[Person], data: Any = None, initial: Any = None) -> None:
        super().__init__(data, initial=_first(initial))
        choices: Any = self.fields["people"]
        choices.queryset = people
        subjects: Any = self.fields["subjects"]
        one_by_one = [(one.slug, one.title) for one in COMPETENCIES.values()]
        subjects.choices = [*one_by_one, (WHOLE, whole_course().title)]

    def clean_extra_time_percent(self) -> int:
        return self.cleaned_data["extra_time_percent"] or 0

    def clean_subjects(self) -> list[str]:
        chosen: list[str] = self.cleaned_data["subjects"]
        if WHOLE in chosen and len(chosen) > 1:
            raise forms.ValidationError(
                "The check of the whole course has every competency in it. Choose it alone, or leave it out."
            )
        return chosen

    def clean(self) -> None:
        said = self.cleaned_data
        if said.get("whole_cohort") and said.get("people"):
            self.add_error(
                "people", "You chose every trainee above. Take the ticks away, or choose “Only those”."
            )
        if said.get("whole_cohort") is False and "people" in said and not said["people"]:
            self.add_error("people", "Tick at least one trainee.")
        if said.get("opens_at") and said.get("closes_at"):
            self._clean_window(said["opens_at"], said["closes_at"])

    def _clean_window(self, opens_at: datetime, closes_at: datetime) -> None:
        now = timezone.now()
        if closes_at <= opens_at:
            self.add_error("closes_at", "It ends before it begins. Give a later time.")
        elif closes_at <= now:
            self.add_error("closes_at", "That time is over. Give one to come.")
        elif closes_at > now + _AHEAD:
            self.add_error("closes_at", "That is more than a year ahead. Look at the year.")

    @property
    def plan(self) -> Plan:
        """What was written, once it is valid."""
        said = dict(self.cleaned_data)
        return Plan(**said | {"people": list(said["people"])})


def _first(initial: Any) -> dict[str, Any]:
    """What the form begins with: a draft, or an hour from the next whole one on."""
    if initial:
        return {**initial, "whole_cohort": "yes" if initial["whole_cohort"] else "no"}
    soon = timezone.localtime().replace(minute=0, second=0, microsecond=0) + timedelta(hours=1)
    return {
        "whole_cohort": "yes",
        "opens_at": soon,
        "closes_at": soon + timedelta(hours=1),
        "extra_time_percent": 0,
    }


class TakeBackForm(forms.Form):
    """Why a set check holds no more."""

    why = forms.CharField(
        label="Reason",
        max_length=400,
        required=False,  # the deed itself refuses an empty reason, in its own words
        help_text="Those it was set for read it.",
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={"max_length": "Keep the reason to 400 characters; it is %(show_value)d now."},
    )
