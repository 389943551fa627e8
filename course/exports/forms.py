"""The choice of a cohort and a range of days."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from django import forms
from django.utils import timezone

from course.exports.contract import Scope
from course.people.access import Deed, cohorts_for
from course.people.models import Cohort, Person

_EARLIEST, _LATEST = date(2000, 1, 1), date(2100, 12, 31)
_HOW = "Write the day as year-month-day, for example 2026-01-31."


def _day(label: str, missing: str) -> forms.DateField:
    return forms.DateField(
        label=label,
        widget=forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d"),
        input_formats=["%Y-%m-%d"],
        error_messages={"required": f"{missing} {_HOW}", "invalid": f"That is not a day we can read. {_HOW}"},
    )


class ScopeForm(forms.Form):
    """What to put into the file. ``first`` and ``last`` are days in the site's time zone, both included."""

    cohort: forms.ModelChoiceField[Cohort] = forms.ModelChoiceField(
        queryset=Cohort.objects.none(),
        empty_label="Choose a cohort",
        error_messages={
            "required": "Choose the cohort whose records you want.",
            "invalid_choice": "That cohort is not one of yours. Choose one from the list.",
        },
    )
    first = _day("From", "Give the first day.")
    last = _day("To", "Give the last day.")

    def __init__(self, person: Person, data: Any = None) -> None:
        today = timezone.localdate()
        super().__init__(data, initial={"first": today - timedelta(days=365), "last": today})
        cohort = self.fields["cohort"]
        assert isinstance(cohort, forms.ModelChoiceField)  # noqa: S101 (tells the type checker, not the reader)
        cohort.queryset = cohorts_for(person, Deed.EXPORT)

    def clean_first(self) -> date:
        return self._within("first")

    def clean_last(self) -> date:
        return self._within("last")

    def _within(self, name: str) -> date:
        day: date = self.cleaned_data[name]
        if not _EARLIEST <= day <= _LATEST:
            raise forms.ValidationError(f"Give a day between the years {_EARLIEST.year} and {_LATEST.year}.")
        return day

    def clean(self) -> dict[str, Any]:
        chosen = super().clean() or {}
        first, last = chosen.get("first"), chosen.get("last")
        if first and last and last < first:
            self.add_error("last", "The last day comes before the first. Change one of the two.")
        return chosen

    @property
    def scope(self) -> Scope:
        """The choice, once the form is valid."""
        return Scope(**self.cleaned_data)
