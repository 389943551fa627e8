"""What a learner writes beyond answers."""

from __future__ import annotations

from django import forms

from quizzes.actions.reviews import LONGEST
from quizzes.models import Doubted


class DoubtForm(forms.Form):
    """What is the matter with an answer, and a few words about it; the deed itself says what it refuses."""

    doubted = forms.ChoiceField(
        label="What is the matter?",
        choices=Doubted.choices,
        widget=forms.RadioSelect,
        error_messages={"required": "Choose one.", "invalid_choice": "Choose one of the two."},
    )
    said = forms.CharField(
        label="In a few words",
        max_length=LONGEST,
        help_text=f"What is wrong with the question, or what you meant. At most {LONGEST} characters.",
        widget=forms.Textarea(attrs={"rows": 3}),
        error_messages={
            "required": "Say in a few words what is wrong with the question, or what you meant.",
            "max_length": f"Keep it to {LONGEST} characters; it is %(show_value)d now.",
        },
    )
