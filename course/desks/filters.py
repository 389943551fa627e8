"""What a board is asked to show, and in what order: read from the address and written back into it.

A value that cannot be read is ignored, and a sentence says so.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any
from urllib.parse import urlencode

from django import forms

from course.lessons.library import lessons
from quizzes.competencies import COMPETENCIES
from quizzes.standing import State

NAME, IDLE = "name", "idle"
MOST_DAYS = 9999
_LESSON = "lesson:"


def word_of(state: State) -> str:
    """The state as an address says it."""
    return state.value.replace(" ", "-")


_STATES = {word_of(state): state for state in State}


@dataclass(frozen=True, slots=True)
class Wish:
    """Which columns, whose rows, in what order. ``within`` is a competency, a lesson, or nothing for all."""

    state: State | None = None
    within: str = ""
    idle: int | None = None
    sort: str = NAME
    backwards: bool = False

    @property
    def columns(self) -> tuple[str, ...]:
        return columns_of(self.within)

    @property
    def narrows(self) -> bool:
        return self.state is not None or bool(self.within) or self.idle is not None

    @property
    def order(self) -> str:
        """The order as an address says it; nothing for the usual one."""
        order = f"-{self.sort}" if self.backwards else self.sort
        return "" if order == NAME else order

    @property
    def address(self) -> str:
        """The wish as the query of an address; a lone question mark takes every wish back."""
        said = {
            "state": word_of(self.state) if self.state else "",
            "competency": self.within,
            "idle": "" if self.idle is None else self.idle,
            "sort": self.order,
        }
        return "?" + urlencode({name: value for name, value in said.items() if value != ""}, safe=":")

    def sorted_by(self, column: str) -> Wish:
        """The wish after its header is chosen: turned round where it was the order already.

        Idle days begin with the longest, names with A, states with those in most need.
        """
        turned = not self.backwards if column == self.sort else column == IDLE
        return replace(self, sort=column, backwards=turned)

    @property
    def in_words(self) -> str:
        """What was asked for, in one phrase: "held in Boyle's law, idle 14 days or more; sorted by name"."""
        return "; ".join([", ".join(self._conditions()), self._order()]).removeprefix("; ")

    def _conditions(self) -> Iterator[str]:
        where = _title_of(self.within)
        if self.state:
            yield f"{self.state.value} in {where or 'any competency'}"
        elif where:
            yield where
        if self.idle is not None:
            yield f"idle {self.idle} day{'' if self.idle == 1 else 's'} or more"

    def _order(self) -> str:
        if self.sort == NAME:
            return "sorted by name" + (", backwards" if self.backwards else "")
        if self.sort == IDLE:
            return "sorted by idle days, " + ("longest" if self.backwards else "shortest") + " first"
        first = "met" if self.backwards else "held"
        return f"sorted by {COMPETENCIES[self.sort].title}, {first} first"


def columns_of(within: str) -> tuple[str, ...]:
    """The competencies in a choice of the form: one, a lesson's, or all. Raises KeyError for another."""
    if not within:
        return tuple(COMPETENCIES)
    if within.startswith(_LESSON):
        return lessons()[within.removeprefix(_LESSON)].competencies
    return (COMPETENCIES[within].slug,)


def _title_of(within: str) -> str:
    if within.startswith(_LESSON):
        return f"the lesson “{lessons()[within.removeprefix(_LESSON)].title}”"
    return COMPETENCIES[within].title if within else ""


def _places() -> list[Any]:
    """Everything, a lesson's competencies, or one competency."""
    # A lesson that comes before every competency, or goes over all, has no column of its own.
    told = [(f"{_LESSON}{slug}", one.title) for slug, one in lessons().items() if one.competencies]
    alone = [(slug, one.title) for slug, one in COMPETENCIES.items()]
    return [("", "All"), ("Lessons", told), ("Competencies", alone)]


class BoardForm(forms.Form):
    """The choices above the board. It is never refused: what is wrong is said and left out."""

    state = forms.ChoiceField(
        label="State",
        required=False,
        choices=[("", "Any"), *((word, state.value) for word, state in _STATES.items())],
        error_messages={"invalid_choice": "The board knows no such state. Every state is shown."},
    )
    competency = forms.ChoiceField(
        label="Lesson or competency",
        required=False,
        choices=_places,
        error_messages={
            "invalid_choice": "The course has no such lesson or competency. Every competency is shown."
        },
    )
    idle = forms.IntegerField(
        label="Idle days, at least",
        required=False,
        min_value=0,
        max_value=MOST_DAYS,
        widget=forms.TextInput(attrs={"inputmode": "numeric", "autocomplete": "off", "maxlength": 64}),
        error_messages={
            "invalid": "Write whole days, such as 14. Everybody is shown.",
            "min_value": "Days idle are not negative. Everybody is shown.",
            "max_value": f"Give at most {MOST_DAYS} days. Everybody is shown.",
        },
    )
    sort = forms.CharField(required=False, widget=forms.HiddenInput)

    def __init__(self, query: Mapping[str, Any]) -> None:
        super().__init__(query, auto_id="board-%s")

    def clean_sort(self) -> str:
        order: str = self.cleaned_data["sort"]
        shown = columns_of(self.cleaned_data.get("competency", ""))
        if order and order.removeprefix("-") not in (NAME, IDLE, *shown):
            raise forms.ValidationError("The board has no such column to sort by. It is sorted by name.")
        return order

    @property
    def wish(self) -> Wish:
        """What could be read of it."""
        self.full_clean()
        said = self.cleaned_data
        order = said.get("sort") or NAME
        return Wish(
            state=_STATES.get(said.get("state", "")),
            within=said.get("competency", ""),
            idle=said.get("idle"),
            sort=order.removeprefix("-"),
            backwards=order.startswith("-"),
        )

    @property
    def faults(self) -> list[str]:
        """What could not be read of the fields that show, in sentences that name the field."""
        return [f"{field.label}: {error}" for field in self.visible_fields() for error in field.errors]
