"""What to print, and what was written on a paper."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any

from django import forms
from django.db.models import QuerySet
from django.utils import timezone

from course.papers.models import Paper
from course.people.models import Person
from pressure.marking import Unjudged
from quizzes import queries
from quizzes.actions.papers import moment, read_answers, refusal
from quizzes.competencies import COMPETENCIES
from quizzes.sheets import fields_of

MOST = 60
_PLAIN = {"autocomplete": "off", "autocapitalize": "none", "spellcheck": "false"}


class PrintForm(forms.Form):
    """For whom, in what, on which sheet."""

    competency = forms.ChoiceField(
        label="Competency", choices=[(one.slug, one.title) for one in COMPETENCIES.values()]
    )
    trainees: forms.ModelMultipleChoiceField[Person] = forms.ModelMultipleChoiceField(
        queryset=Person.objects.none(),
        label="A paper with the name of",
        required=False,
        widget=forms.CheckboxSelectMultiple,
        error_messages={"invalid_choice": "Choose from the trainees in the list."},
    )
    spares = forms.IntegerField(
        label="Spare papers, without a name",
        min_value=0,
        max_value=MOST,
        initial=0,
        required=False,
        help_text="For a first check of whoever comes. Whoever was held before needs a paper with a name.",
        widget=forms.TextInput(attrs={"inputmode": "numeric", "autocomplete": "off"}),
        error_messages={
            "invalid": "Write a whole number of papers, such as 3.",
            "min_value": "The number of spare papers is not negative.",
            "max_value": f"Print at most {MOST} papers at a time.",
        },
    )
    system = forms.ChoiceField(
        label="Units of the spare papers", choices=[("us", "US customary"), ("metric", "Metric")]
    )
    sheet = forms.ChoiceField(label="Sheet", choices=[("A4", "A4"), ("Letter", "Letter")])

    def __init__(self, trainees: QuerySet[Person], system: str, data: Any = None) -> None:
        sheet = "Letter" if system == "us" else "A4"
        super().__init__(data, initial={"trainees": trainees, "system": system, "sheet": sheet})
        field = self.fields["trainees"]
        assert isinstance(field, forms.ModelMultipleChoiceField)  # noqa: S101 (tells the type checker, not the reader)
        field.queryset = trainees

    def clean_spares(self) -> int:
        return self.cleaned_data["spares"] or 0

    def clean(self) -> dict[str, Any]:
        said = super().clean() or {}
        if "spares" in said and "trainees" in said:
            count = said["spares"] + len(said["trainees"])
            if not count:
                self.add_error("trainees", "Choose at least one trainee, or ask for spare papers.")
            if count > MOST:
                self.add_error("spares", f"That is {count} papers. Print at most {MOST} at a time.")
        return said


class EntryForm(forms.Form):
    """The answers of one paper: a field for every blank on it, named after its question (``q3-answer``)."""

    trainee: forms.ModelChoiceField[Person] = forms.ModelChoiceField(
        queryset=Person.objects.none(),
        empty_label="Choose the trainee",
        error_messages={"required": "Say whose paper this is.", "invalid_choice": "Choose from the list."},
    )
    answered_on = forms.DateField(
        label="Day it was answered",
        input_formats=["%Y-%m-%d"],
        widget=forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d"),
        error_messages={
            "required": "Give the day. Write it as year-month-day, for example 2026-01-31.",
            "invalid": "That is not a day we can read. Write year-month-day, for example 2026-01-31.",
        },
    )
    watched_by = forms.CharField(
        label="Who watched while it was answered",
        max_length=120,
        required=False,
        help_text="As it stands on the paper; needed where the check is supervised.",
        widget=forms.TextInput(attrs={"autocomplete": "off"}),
    )

    def __init__(self, paper: Paper, trainees: QuerySet[Person], data: Any = None) -> None:
        super().__init__(data, initial={"answered_on": timezone.localdate()})
        self.paper, self.trainees = paper, trainees
        field = self.fields["trainee"]
        assert isinstance(field, forms.ModelChoiceField)  # noqa: S101 (tells the type checker, not the reader)
        field.queryset = trainees.filter(cohorts=paper.run.cohort)
        if paper.learner_id:
            del self.fields["trainee"]
        for number, question in enumerate(paper.questions, start=1):
            self.fields.update(_blanks(number, question["shown"]))

    @property
    def learner(self) -> Person | None:
        """Whose paper it is, once the form is clean; never anybody out of reach."""
        if self.paper.learner_id:
            return self.trainees.filter(pk=self.paper.learner_id).first()
        return self.cleaned_data.get("trainee")

    @property
    def shut(self) -> str:
        """Why the paper could not be entered today, before anything is typed; empty for a spare."""
        if self.is_bound or not self.paper.learner_id or self.learner is None:
            return ""
        return self._why_not(self.learner, timezone.localdate(), "somebody")

    @property
    def before(self) -> Iterator[forms.BoundField]:
        """The fields about the paper as a whole."""
        return (self[name] for name in ("trainee", "answered_on", "watched_by") if name in self.fields)

    @property
    def questions(self) -> Iterator[tuple[int, Mapping[str, Any], list[forms.BoundField]]]:
        """Each question: its number, what was shown, and its fields."""
        for number, question in enumerate(self.paper.questions, start=1):
            names = _blanks(number, question["shown"])
            yield number, question["shown"], [self[name] for name in names]

    @property
    def answers(self) -> list[dict[str, str]]:
        """What was typed, a form of pressure/marking.py for each question."""
        return [
            {name: self.cleaned_data.get(f"q{number}-{name}", "") for name in _names(question["shown"])}
            for number, question in enumerate(self.paper.questions, start=1)
        ]

    def clean_answered_on(self) -> date:
        day: date = self.cleaned_data["answered_on"]
        printed = timezone.localdate(self.paper.run.at)
        if day > timezone.localdate():
            raise forms.ValidationError("That day has not come yet.")
        if day < printed:
            raise forms.ValidationError(f"The paper was printed later, on {printed.day} {printed:%B %Y}.")
        return day

    def clean(self) -> dict[str, Any]:
        said = super().clean() or {}
        self.read = read_answers(self.paper.questions, self.answers)
        for number, judged in enumerate(self.read, start=1):
            if isinstance(judged, Unjudged):
                self.add_error(f"q{number}-{judged.field}", judged.sentence)
        if self.paper.learner_id and not self.learner:
            self.add_error(None, "The trainee of this paper is in none of your cohorts any more.")
        if self.learner and "answered_on" in said and "watched_by" in said:
            why_not = self._why_not(self.learner, said["answered_on"], said["watched_by"])
            if why_not:
                self.add_error(None, why_not)
        return said

    def _why_not(self, learner: Person, day: date, watched_by: str) -> str:
        subject = self.paper.run.competency
        began = moment(learner, subject, day, timezone.now())
        row = queries.standing_for(learner, subject)
        return refusal(self.paper.check_on_paper, row, learner, began, watched_by)


def _names(shown: Mapping[str, Any]) -> list[str]:
    return [field["name"] for field in fields_of(shown, {})]


def _blanks(number: int, shown: Mapping[str, Any]) -> dict[str, forms.CharField]:
    """A text field for every blank of a question, labelled as it is printed."""
    options = {one["letter"]: one["text"] for one in shown.get("options", ())}
    blanks = {}
    for field in fields_of(shown, {}):
        name, label = field["name"], field["label"]
        match shown["task"]:
            case "choice":
                label = f"letter, a to {max(options)}"
            case "ordering":
                label = f"place of {name.removeprefix('place-')}"
        blanks[f"q{number}-{name}"] = forms.CharField(
            label=f"Question {number}: {label}",
            required=False,
            max_length=200,
            widget=forms.TextInput(attrs=_PLAIN),
        )
    return blanks
