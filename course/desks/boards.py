"""The cohort board: trainees down, competencies across, a state in every cell, sums in words and shapes."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache
from html import escape
from itertools import repeat
from math import inf

from django.template.loader import render_to_string
from django.urls import reverse
from django.utils import timezone
from django.utils.html import format_html, strip_spaces_between_tags
from django.utils.safestring import SafeString, mark_safe

from course.desks.filters import IDLE, NAME, Wish
from quizzes import queries
from quizzes.competencies import COMPETENCIES
from quizzes.queries import STANDS, Stand
from quizzes.standing import State

_BLANK = STANDS[State.NOT_STARTED, False]
_WAITS = " waits for an instructor"
_MOST_IN_NEED_FIRST = (
    *(State.HELD, State.LAPSED, State.NOT_STARTED, State.PRACTISING),
    *(State.READY, State.DUE, State.MET),
)
_FURTHEST_FIRST = (
    *(State.MET, State.DUE, State.LAPSED, State.HELD),
    *(State.READY, State.PRACTISING, State.NOT_STARTED),
)
_RANKS = {stand: (not stand.waits, _MOST_IN_NEED_FIRST.index(stand.state)) for stand in STANDS.values()}


@dataclass(frozen=True, slots=True)
class Line:
    """One trainee: where they stand in what they began, and days since they last moved, if ever."""

    pk: int
    name: str
    stands: Mapping[str, Stand]
    idle: int | None


@dataclass(frozen=True, slots=True)
class Head:
    """The head of a column: a link that sorts by it, and which way it is sorted now, if it is."""

    key: str
    title: str
    address: str
    direction: str


@dataclass(frozen=True, slots=True)
class Board:
    """What the page needs: heads, rows and sums as ready-made markup, and who waits for an instructor.

    Cells are joined, and names escaped, here: a template that loops over them takes many times as long.
    """

    heads: tuple[Head, ...]
    rows: str
    sums: str
    shown: int
    size: int
    waiting: tuple[tuple[int, str, str], ...]


def lay_out(trainees: Iterable[tuple[int, str]], wish: Wish) -> Board:
    """The board of these trainees, each (number, name), as wished. Two queries, however many they are."""
    lines = lines_of(list(trainees), timezone.localdate())
    shown = in_order([line for line in lines if fits(line, wish)], wish)
    grid = grid_of(shown, wish.columns)
    return Board(
        heads=tuple(_head(key, wish) for key in (NAME, IDLE, *wish.columns)),
        rows=rows_of(shown, grid),
        sums=sums_of(shown, grid),
        shown=len(shown),
        size=len(lines),
        waiting=tuple(_waiting(lines)),
    )


def lines_of(trainees: Sequence[tuple[int, str]], today: date) -> list[Line]:
    """A line for each, in the order given."""
    numbers = [pk for pk, _ in trainees]
    stands: dict[int, dict[str, Stand]] = defaultdict(dict)
    for learner, competency, stand in queries.stands_of(numbers):
        stands[learner][competency] = stand
    moved = queries.last_moves_of(numbers)
    return [
        Line(pk, name, stands.get(pk, {}), (today - moved[pk]).days if pk in moved else None)
        for pk, name in trainees
    ]


def fits(line: Line, wish: Wish) -> bool:
    """Whether it is idle as long (who never answered always is), and in that state in one of the columns."""
    if wish.idle is not None and line.idle is not None and line.idle < wish.idle:
        return False
    return wish.state is None or any(
        line.stands.get(slug, _BLANK).state is wish.state for slug in wish.columns
    )


def in_order(lines: Sequence[Line], wish: Wish) -> list[Line]:
    """The lines as wished; equals stay in the order given, which is by name."""
    if wish.sort == NAME:
        return list(reversed(lines)) if wish.backwards else list(lines)
    if wish.sort == IDLE:
        return sorted(lines, key=lambda line: inf if line.idle is None else line.idle, reverse=wish.backwards)
    return sorted(lines, key=lambda line: _RANKS[line.stands.get(wish.sort, _BLANK)], reverse=wish.backwards)


Grid = Sequence[Sequence[Stand]]
"""Where each line's trainee stands in each column."""


def grid_of(lines: Iterable[Line], columns: Collection[str]) -> Grid:
    """The stands of the lines in these columns."""
    return [list(map(line.stands.get, columns, repeat(_BLANK))) for line in lines]


def rows_of(lines: Iterable[Line], grid: Grid) -> str:
    """The rows of the table as markup, joined once: a long text is dear to copy."""
    cell_of, start = _cells().__getitem__, reverse("desks:trainee", args=[0]).removesuffix("0/")
    parts: list[str] = []
    for line, row in zip(lines, grid, strict=True):
        idle = "no answer yet" if line.idle is None else line.idle
        parts.append(
            f'<tr><th scope="row"><a href="{start}{line.pk}/">{escape(line.name)}</a></th>'
            f'<td class="num">{idle}</td>'
        )
        parts += map(cell_of, row)
        parts.append("</tr>\n")
    return "".join(parts)


def sums_of(lines: Sequence[Line], grid: Grid) -> str:
    """The cells of the sum row: how idle the idlest is, then how many stand where in each column."""
    counts = [Counter(column) for column in zip(*grid, strict=True)]
    states = "".join([f'<td class="sum-words">{_counted(count)}</td>' for count in counts])
    return f'<td class="sum-words num">{_idlest(lines)}</td>{states}'


def _idlest(lines: Sequence[Line]) -> str:
    known = [line.idle for line in lines if line.idle is not None]
    missing = len(lines) - len(known)
    said = [f"longest {max(known)}"] if known else []
    return "; ".join([*said, *([f"{missing} without an answer"] if missing else [])])


def _counted(stands: Mapping[Stand, int]) -> str:
    """How many stand where, furthest first, each with its mark and word."""
    parts = []
    for alone, waiting, words in _sum_words():
        number = stands.get(alone, 0) + stands.get(waiting, 0)
        if number:
            parts.append(f'<span class="sum-part">{number} {words}</span>')
    return "".join(parts)


@cache
def _sum_words() -> Sequence[tuple[Stand, Stand, str]]:
    """What a sum is made of, furthest first: the stands that count, and what is said after their number."""
    return [
        (STANDS[state, False], STANDS[state, True], f'{mark}<span class="visually-hidden">, </span>')
        for state, mark in ((state, state_marks()[state]) for state in _FURTHEST_FIRST)
    ]


@cache
def state_marks() -> Mapping[State, SafeString]:
    """Each state's mark and word, rendered once."""
    return {state: _tight(render_to_string("components/state.html", {"state": state})) for state in State}


def _tight(markup: str) -> SafeString:
    return mark_safe(strip_spaces_between_tags(markup.strip()))  # noqa: S308 (our own template's output)


@cache
def _cells() -> Mapping[Stand, str]:
    """Every cell that a board can hold, ready-made."""
    note = format_html('<span class="cell-note">{}</span>', _WAITS)
    marks = state_marks()
    return {stand: f"<td>{marks[stand.state]}{note if stand.waits else ''}</td>" for stand in STANDS.values()}


def _head(key: str, wish: Wish) -> Head:
    title = {NAME: "Trainee", IDLE: "Idle days"}.get(key) or COMPETENCIES[key].title
    direction = ("descending" if wish.backwards else "ascending") if key == wish.sort else ""
    return Head(key, title, wish.sorted_by(key).address, direction)


def _waiting(lines: Iterable[Line]) -> Iterable[tuple[int, str, str]]:
    for line in lines:
        for slug, competency in COMPETENCIES.items():
            if line.stands.get(slug, _BLANK).waits:
                yield line.pk, line.name, competency.title
