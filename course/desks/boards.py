"""The cohort board: trainees down, competencies across, a state in every cell, sums in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from django.template.loader import render_to_string
from django.urls import reverse
from django.utils.html import format_html, format_html_join
from django.utils.safestring import SafeString, mark_safe

from course.people.models import Person
from quizzes import queries
from quizzes.competencies import COMPETENCIES
from quizzes.standing import State

if TYPE_CHECKING:
    from quizzes.models import Standing

_WAITS = " waits for an instructor"


@dataclass(frozen=True, slots=True)
class Board:
    """What the page needs: titles across, rows and sums as ready-made cells, and who waits for an instructor.

    Cells are joined here because a template that loops over them takes fifty times as long.
    """

    titles: tuple[str, ...]
    rows: SafeString
    sums: tuple[str, ...]
    size: int
    waiting: tuple[tuple[Person, str], ...]


def lay_out(trainees: Iterable[Person]) -> Board:
    """The board of these trainees, in the order given. Two queries, however many they are."""
    people = list(trainees)
    standings = queries.standings_of([person.pk for person in people])
    marks = state_marks()
    counts: dict[str, Counter[State]] = {slug: Counter() for slug in COMPETENCIES}
    waiting: list[tuple[Person, str]] = []
    rows = []
    for person in people:
        kept = standings.get(person.pk, {})
        rows.append(_row(person, kept, marks))
        for slug, count in counts.items():
            row = kept.get(slug)
            count[_state(row)] += 1
            if row and row.waits:
                waiting.append((person, COMPETENCIES[slug].title))
    return Board(
        titles=tuple(competency.title for competency in COMPETENCIES.values()),
        rows=mark_safe("".join(rows)),  # noqa: S308 (each row was escaped as it was made)
        sums=tuple(in_words(count) for count in counts.values()),
        size=len(people),
        waiting=tuple(waiting),
    )


def state_marks() -> Mapping[State, SafeString]:
    """Each state's mark and word, rendered once for the whole board."""
    return {state: render_to_string("components/state.html", {"state": state}) for state in State}


def in_words(count: Mapping[State, int]) -> str:
    """How many stand where, furthest first: "7 met, 1 held, 4 practising"."""
    order = (State.MET, State.DUE, State.LAPSED, State.HELD, State.READY, State.PRACTISING, State.NOT_STARTED)
    return ", ".join(f"{count[state]} {state.value}" for state in order if count.get(state))


def _state(row: Standing | None) -> State:
    return row.shown_state if row else State.NOT_STARTED


def _row(person: Person, kept: Mapping[str, Standing], marks: Mapping[State, SafeString]) -> SafeString:
    cells = format_html_join("", "<td>{}{}</td>", (_cell(kept.get(slug), marks) for slug in COMPETENCIES))
    url = reverse("desks:trainee", args=[person.pk])
    return format_html('<tr><th scope="row"><a href="{}">{}</a></th>{}</tr>\n', url, person.name, cells)


def _cell(row: Standing | None, marks: Mapping[State, SafeString]) -> tuple[SafeString, SafeString | str]:
    note = format_html('<span class="cell-note">{}</span>', _WAITS) if row and row.waits else ""
    return marks[_state(row)], note
