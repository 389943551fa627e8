"""What an instructor writes for many trainees at once: signatures, and what goes on after holds."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta
from typing import Any

from django import forms
from django.utils import timezone

from course.signing.tables import OTHER, PARTS

_BACK = timedelta(days=366)


class SignForm(forms.Form):
    """Whose parts were seen, when, and what is said of them."""

    sign = forms.MultipleChoiceField(
        label="Trainees and parts",
        error_messages={
            "required": "Tick at least one box.",
            "invalid_choice": "Somebody ticked is not in this cohort any more. Tick again.",
        },
    )
    other = forms.CharField(
        label="Name of the other part",
        max_length=60,
        required=False,
        help_text="Only where you tick the third column.",
    )
    seen_on = forms.DateField(
        label="Day you saw it",
        input_formats=["%Y-%m-%d"],
        widget=forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d"),
        error_messages={
            "required": "Give the day.",
            "invalid": "Write the day like 2026-12-03.",
        },
    )
    remark = forms.CharField(
        label="Remark",
        max_length=340,
        help_text="What was shown and by what standard. It is kept with each signature, with your name.",
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={
            "required": "Say what you saw; it is kept with the record.",
            "max_length": "Keep the remark to 340 characters; it is %(show_value)d now.",
        },
    )

    def __init__(self, boxes: Iterable[str], data: Any = None) -> None:
        super().__init__(data, initial={"seen_on": timezone.localdate()})
        sign: Any = self.fields["sign"]
        sign.choices = [(one, one) for one in boxes]

    def clean_seen_on(self) -> date:
        day: date = self.cleaned_data["seen_on"]
        today = timezone.localdate()
        if day > today:
            raise forms.ValidationError("That day is still to come. Sign off what you have seen.")
        if day < today - _BACK:
            raise forms.ValidationError("That is more than a year ago. Look at the year.")
        return day

    def clean(self) -> None:
        said = self.cleaned_data
        ticked = any(one.endswith(f":{OTHER}") for one in said.get("sign", []))
        if ticked and not said.get("other"):
            self.add_error("other", "Say which part the third column stands for.")

    @property
    def why(self) -> str:
        """The reason as it is kept: the day, then the remark."""
        day: date = self.cleaned_data["seen_on"]
        return f"Seen on {day.day} {day:%B %Y}. {self.cleaned_data['remark'].strip()}"

    def part(self, name: str) -> str:
        """The part as it is kept."""
        return str(self.cleaned_data["other"]).strip() if name == OTHER else name

    @property
    def signatures(self) -> list[tuple[int, str]]:
        """Pairs of a trainee's key and a part, as ticked."""
        pairs = [one.split(":") for one in self.cleaned_data["sign"]]
        return [(int(pk), self.part(name)) for pk, name in pairs if name in PARTS]


class ReleaseForm(forms.Form):
    """Which held checks go on, how, and why."""

    held = forms.MultipleChoiceField(
        label="Held checks",
        error_messages={
            "required": "Tick at least one held check.",
            "invalid_choice": "One of the ticked is not held any more. Tick again.",
        },
    )
    what = forms.ChoiceField(
        label="What to do",
        choices=[
            ("rest", "Waive the rest: practice still opens the check"),
            ("practice", "Waive the practice: the rest still counts"),
            ("open", "Open the check now, without either"),
        ],
        widget=forms.RadioSelect,
        error_messages={"required": "Choose what to do.", "invalid_choice": "Choose what to do."},
    )
    why = forms.CharField(
        label="Reason",
        max_length=400,
        help_text="It is kept with each record, with your name.",
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={
            "required": "Give the reason; it is kept with the record.",
            "max_length": "Keep the reason to 400 characters; it is %(show_value)d now.",
        },
    )

    def __init__(self, boxes: Iterable[str], data: Any = None) -> None:
        super().__init__(data)
        held: Any = self.fields["held"]
        held.choices = [(one, one) for one in boxes]

    @property
    def in_words(self) -> str:
        """What was chosen, as the page to confirm says it."""
        choices: Any = self.fields["what"]
        return str(dict(choices.choices)[self.cleaned_data["what"]])
