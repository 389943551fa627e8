"""What an instructor writes at the desk."""

from __future__ import annotations

from typing import Any

from django import forms

from quizzes.actions.accommodations import MOST_PERCENT
from quizzes.competencies import COMPETENCIES


class OpenCheckForm(forms.Form):
    """What to open or waive after a hold, and the reason, which is kept with the record.

    Where a check waits for the instructor there is nothing to choose.
    """

    what = forms.ChoiceField(
        label="What to do",
        choices=[
            ("rest", "Waive the rest: practice still opens the check"),
            ("practice", "Waive the practice: the rest still counts"),
            ("open", "Open the check now, without either"),
        ],
        widget=forms.RadioSelect,
        required=False,
        error_messages={"invalid_choice": "Choose what to waive."},
    )
    why = forms.CharField(
        label="Reason",
        max_length=400,
        required=False,  # the deed itself refuses an empty reason, in its own words
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={"max_length": "Keep the reason to 400 characters; it is %(show_value)d now."},
    )

    def __init__(self, competency: str, data: Any = None) -> None:
        super().__init__(data, auto_id=f"{competency}-%s", initial={"what": "rest"})
        self.competency = competency


class DecideForm(forms.Form):
    """A decision by hand, with its reason; the deeds themselves say what they refuse."""

    deed = forms.ChoiceField(
        label="What to decide",
        choices=[
            ("sign", "Sign off an oral or pool part"),
            ("open", "Open the check again"),
            ("grant", "Grant the competency without a check"),
            ("revoke", "Revoke the competency"),
            ("supervise", "Let the next check begin only with a code"),
        ],
        widget=forms.RadioSelect,
    )
    competency = forms.ChoiceField(
        label="Competency", choices=[(one.slug, one.title) for one in COMPETENCIES.values()]
    )
    part = forms.CharField(
        label="Part", max_length=60, required=False, help_text="Only to sign off: oral, pool or another part."
    )
    why = forms.CharField(
        label="Reason",
        max_length=400,
        help_text="It is kept with the record, with your name.",
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={"max_length": "Keep the reason to 400 characters; it is %(show_value)d now."},
    )


class AccommodationForm(forms.Form):
    """What a trainee's checks are held under from now on, with the reason."""

    extra_time_percent = forms.IntegerField(
        label="Extra time, per cent",
        min_value=0,
        max_value=MOST_PERCENT,
        initial=0,
        required=False,
        help_text="0 for none; 100 doubles the time. It counts where the policy sets a time limit.",
        widget=forms.TextInput(attrs={"inputmode": "numeric", "autocomplete": "off"}),
        error_messages={
            "invalid": "Write a whole number of per cent, such as 25.",
            "min_value": "Extra time is not negative; 0 gives none.",
            "max_value": f"Give at most {MOST_PERCENT} per cent, ten times the limit.",
        },
    )
    other = forms.CharField(
        label="Anything else, in words",
        max_length=400,
        required=False,
        help_text="For example: questions read aloud; larger print. Leave both empty to end what held.",
    )
    why = forms.CharField(
        label="Reason",
        max_length=400,
        help_text="It is kept with your name. Leave out what is medical; say what was asked for and agreed.",
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={"max_length": "Keep the reason to 400 characters; it is %(show_value)d now."},
    )

    def clean_extra_time_percent(self) -> int:
        return self.cleaned_data["extra_time_percent"] or 0
