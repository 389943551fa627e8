"""What the instructor chooses to put on the wall."""

from __future__ import annotations

from typing import Any

from django import forms

from pressure import catalogue
from quizzes.competencies import COMPETENCIES

SYSTEMS = {
    "us": "US customary (ft, psi, ft³)",
    "metric": "Metric of the trade (m, bar, L)",
    "si": "SI (m, kPa, m³)",
}


def _kinds() -> list[tuple[str, list[tuple[str, str]]]]:
    """Every family once, under the first competency it tests, in the order of the course; then the rest."""
    left = dict(catalogue.families())
    kinds = []
    for one in COMPETENCIES.values():
        mine = [(slug, left.pop(slug).title) for slug in one.families if slug in left]
        kinds.append((one.title, mine))
    rest = [(slug, family.title) for slug, family in left.items()]
    return [(title, mine) for title, mine in [*kinds, ("Others", rest)] if mine]


class PutUpForm(forms.Form):
    """A kind of problem and the units in which all see it; ``after`` is what the page saw on the wall."""

    family = forms.ChoiceField(
        label="Kind of problem",
        choices=_kinds,
        error_messages={
            "required": "Choose the kind of problem.",
            "invalid_choice": "There is no such kind of problem. Choose one from the list.",
        },
    )
    system = forms.ChoiceField(
        label="Units",
        choices=list(SYSTEMS.items()),
        help_text="All see the problem in these, whatever their own.",
        error_messages={
            "required": "Choose the units.",
            "invalid_choice": "There are no such units. Choose some from the list.",
        },
    )
    after = forms.IntegerField(widget=forms.HiddenInput, required=False, min_value=0)

    def clean_after(self) -> int:
        return self.cleaned_data["after"] or 0

    def clean(self) -> dict[str, Any]:
        """A family comes in some systems only; the sentence names them."""
        said = super().clean() or {}
        family, system = said.get("family"), said.get("system")
        if family and system:
            known = catalogue.family(family).systems
            if system not in known:
                names = " or ".join(SYSTEMS[one] for one in known)
                self.add_error("system", f"This kind comes in {names} only. Choose that, or another kind.")
        return said


def number(text: str) -> int:
    """A number of ours that came back in a form; 0, which is nobody's, for anything else."""
    return int(text) if text.isascii() and text.isdigit() and len(text) < 19 else 0
