"""What an instructor writes at the desk."""

from __future__ import annotations

from typing import Any

from django import forms

from quizzes.competencies import COMPETENCIES


class OpenCheckForm(forms.Form):
    """The reason for opening a check again; it is kept with the record."""

    why = forms.CharField(
        label="Reason",
        max_length=400,
        required=False,  # the deed itself refuses an empty reason, in its own words
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={"max_length": "Keep the reason to 400 characters; it is %(show_value)d now."},
    )

    def __init__(self, competency: str, data: Any = None) -> None:
        super().__init__(data, auto_id=f"{competency}-%s")
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
