"""What an instructor writes at the desk."""

from __future__ import annotations

from typing import Any

from django import forms


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
