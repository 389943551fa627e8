"""Judging what was posted, whatever kind of problem it answers.

A form holds one field ``answer`` for a number or a choice (its letter), ``answer-1``, ``answer-2`` … for
the cells of a table and, for an order, ``place-a``, ``place-b`` … each with the place given to that item.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from pressure.answer import LONGEST, Trouble, Verdict, mark
from pressure.problem import AnyKey, ChoiceKey, Key, Option, OrderKey, TableKey
from pressure.record import LETTERS


class Judged(NamedTuple):
    """A judged answer in the words that are kept: as typed, as understood, the verdict and the slip.

    ``value`` is the number in the asked unit where just one is asked for.
    """

    verdict: Verdict
    typed: str
    understood: str
    slip: str = ""
    label: str = ""
    mend: str = ""
    value: float | None = None


class Unjudged(NamedTuple):
    """Why nothing could be judged: the field at fault and the sentence to show there."""

    field: str
    code: str
    sentence: str


def judge(form: Mapping[str, str], key: AnyKey) -> Judged | Unjudged:
    """Judge a form against the key. Nothing in it is evaluated, and nothing raises."""
    if isinstance(key, Key):
        return _number(form.get("answer", ""), key, "answer")
    if isinstance(key, TableKey):
        return _table(form, key)
    if isinstance(key, ChoiceKey):
        return _choice(form.get("answer", ""), key)
    return _order(form, key)


def _number(text: str, key: Key, field: str) -> Judged | Unjudged:
    marked = mark(text, key)
    if isinstance(marked, Trouble):
        return Unjudged(field, *marked)
    return Judged(
        marked.verdict,
        text.strip(),
        marked.reading.understood,
        marked.slip_name,
        marked.label,
        marked.mend,
        marked.reading.in_asked,
    )


def _table(form: Mapping[str, str], key: TableKey) -> Judged | Unjudged:
    """Right when every cell is; otherwise the first cell that shows a known slip speaks for the table."""
    cells: list[Judged] = []
    for number, cell in enumerate(key.cells, start=1):
        judged = _number(form.get(f"answer-{number}", ""), cell, f"answer-{number}")
        if isinstance(judged, Unjudged):
            return judged
        cells.append(judged)
    missed = [one for one in cells if one.verdict != "right"]
    worst = next((one for one in missed if one.verdict == "slip"), missed[0] if missed else cells[0])
    return worst._replace(
        typed="; ".join(one.typed for one in cells),
        understood="; ".join(one.understood for one in cells),
        value=None,
    )


def _choice(letter: str, key: ChoiceKey) -> Judged | Unjudged:
    chosen = dict(zip(LETTERS, key.options, strict=False)).get(letter.strip())
    if chosen is None:
        return Unjudged("answer", "unchosen", "Nothing is chosen yet. Choose one of the answers.")
    if chosen.name == key.right:
        return Judged("right", chosen.text, chosen.text)
    return Judged("slip", chosen.text, chosen.text, chosen.name, chosen.label, chosen.why)


def _order(form: Mapping[str, str], key: OrderKey) -> Judged | Unjudged:
    places: dict[int, Option] = {}
    for letter, item in zip(LETTERS, key.items, strict=False):
        field = f"place-{letter}"
        text = form.get(field, "")[:LONGEST].strip()
        place = int(text) if text.isascii() and text.isdigit() and len(text) < 3 else 0
        if not 1 <= place <= len(key.items):
            return Unjudged(field, "unplaced", f"Give each a place from 1 to {len(key.items)}.")
        if place in places:
            return Unjudged(field, "same_place", f"Two stand at place {place}. Give each a place of its own.")
        places[place] = item
    said = [places[place] for place in sorted(places)]
    words = "; ".join(f"{place}. {item.text}" for place, item in enumerate(said, start=1))
    for item, right in zip(said, key.right, strict=True):
        if item.name != right:
            due = next(one for one in key.items if one.name == right)
            return Judged("slip", words, words, f"before-{right}", f"“{item.text}” stands too early", due.why)
    return Judged("right", words, words)
