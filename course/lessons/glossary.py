"""The words of the trade: read from ``glossary.toml``, a ``[[term]]`` for each, and found again in texts.

name = "…"   means = "…"          what it is and what it means; numbers as in a lesson, {gauge 1}
also = ["…"]                      its other forms, as they stand in a sentence
source = "…"   lesson = "…"       where the meaning comes from; the folder of the lesson that teaches it
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any

from django.utils.text import slugify

from course.lessons import inserts
from course.lessons.errors import LessonError
from pressure.problem import System

GLOSSARY = Path(__file__).parent / "glossary.toml"
SYSTEMS: tuple[System, ...] = ("us", "metric")
_KNOWN = ("name", "also", "means", "source", "lesson")
_FORM = re.compile(r"\w(?:[\w .,'’/()-]*[\w).])?")


@dataclass(frozen=True, slots=True)
class Term:
    """A word of the trade; ``means`` by system of units, ``forms`` in small letters, its name among them."""

    name: str
    anchor: str
    forms: tuple[str, ...]
    means: Mapping[System, str]
    source: str
    lesson: str
    line: int

    @property
    def initial(self) -> str:
        """The letter it stands under; a figure stands under "0"."""
        return "0" if self.name[0].isdigit() else self.name[0].upper()


@cache
def terms() -> tuple[Term, ...]:
    """Every term in the order of the alphabet. Raises LessonError for the first fault."""
    found, faults = read(GLOSSARY)
    if faults:
        raise faults[0]
    return tuple(sorted(found, key=lambda term: term.name.casefold()))


@cache
def by_form() -> Mapping[str, Term]:
    """Every term under each of its forms."""
    return MappingProxyType({form: term for term in terms() for form in term.forms})


def read(path: Path, lessons: Sequence[str] | None = None) -> tuple[list[Term], list[LessonError]]:
    """The terms of a file and what is wrong with it; with ``lessons``, each term's lesson must be one."""
    try:
        text = path.read_text(encoding="utf-8")
        told = tomllib.loads(text)
    except FileNotFoundError:
        return [], [LessonError(path, 1, "The file is missing. The glossary stands in it.")]
    except UnicodeDecodeError:
        return [], [LessonError(path, 1, "The file is not UTF-8 text. Save it as UTF-8.")]
    except tomllib.TOMLDecodeError as error:
        at = re.search(r"at line (\d+)", str(error))
        line = int(at[1]) if at else text.count("\n") + 1
        return [], [LessonError(path, line, f"This is not TOML: {error}.")]
    lines = [n for n, line in enumerate(text.split("\n"), 1) if re.match(r"\s*\[\[\s*term\s*\]\]", line)]
    tables = told.get("term")
    if told.keys() != {"term"} or not isinstance(tables, list) or len(lines) != len(tables):
        return [], [LessonError(path, 1, "The file holds terms and nothing else: begin each with [[term]].")]
    return _terms(path, list(zip(lines, tables, strict=True)), lessons)


def _terms(
    path: Path, tables: Sequence[tuple[int, Mapping[str, Any]]], lessons: Sequence[str] | None
) -> tuple[list[Term], list[LessonError]]:
    found: list[Term] = []
    faults: list[LessonError] = []
    taken: dict[str, str] = {}
    for line, table in tables:
        if sentence := next(_faults(table, taken, lessons), ""):
            faults.append(LessonError(path, line, f"Term {table.get('name')!r}: {sentence}"))
            continue
        term = _term(table, line)
        taken |= dict.fromkeys((*term.forms, f"#{term.anchor}"), term.name)
        found.append(term)
    return found, faults


def _term(table: Mapping[str, Any], line: int) -> Term:
    means: dict[System, str] = {system: inserts.fill(table["means"], system) for system in SYSTEMS}
    return Term(
        name=table["name"],
        anchor=slugify(table["name"]),
        forms=tuple(dict.fromkeys(form.casefold() for form in (table["name"], *table.get("also", ())))),
        means=MappingProxyType(means),
        source=table.get("source", ""),
        lesson=table.get("lesson", ""),
        line=line,
    )


def _faults(
    table: Mapping[str, Any], taken: Mapping[str, str], lessons: Sequence[str] | None
) -> Iterator[str]:
    """What is wrong with one term, in sentences; later ones may assume that the earlier are mended."""
    yield from _faults_of_fields(table)
    for form in (table["name"], *table.get("also", [])):
        if not _FORM.fullmatch(form):
            yield f"The form {form!r} begins or ends in a sign that is no part of a word."
        if form.casefold() in taken:
            yield f"The form {form!r} is a form of {taken[form.casefold()]!r} already. Leave it out of one."
    if (anchor := f"#{slugify(table['name'])}") in taken:
        yield f"Its place on the page, {anchor}, is that of {taken[anchor]!r}. Name it otherwise."
    if lessons is not None and table.get("lesson", "") not in ("", *lessons):
        yield f"There is no lesson {table['lesson']!r}. There are: {', '.join(lessons)}."
    try:
        inserts.fill(table["means"], "us")
    except inserts.UnknownInsert as error:
        yield str(error)


def _faults_of_fields(table: Mapping[str, Any]) -> Iterator[str]:
    if unknown := [key for key in table if key not in _KNOWN]:
        yield f"{unknown[0]!r} is not known. Known are: {', '.join(_KNOWN)}."
    for key in ("name", "means"):
        if not _is_text(table.get(key)):
            yield f"Give it a {key}: {key} = “…”."
    for key in ("source", "lesson"):
        if key in table and not _is_text(table[key]):
            yield f"{key!r} is text; leave the line out where there is none."
    also = table.get("also", [])
    if not (isinstance(also, list) and all(map(_is_text, also))):
        yield "“also” is a list of its other forms: also = [“…”, “…”]."


def _is_text(value: object) -> bool:
    return isinstance(value, str) and bool(value.strip()) and "\n" not in value
