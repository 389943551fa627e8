"""A lesson set for the page: what is the same for every reader is rendered once and kept."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache, lru_cache
from itertools import groupby
from typing import Any

from django.template.loader import render_to_string
from django.utils.safestring import SafeString, mark_safe

from course.lessons import library
from course.lessons.apparatus import page
from course.lessons.manuscript import Lesson, Part
from pressure import record
from pressure.draw import draw
from pressure.problem import System
from quizzes.competencies import COMPETENCIES

_ANCHOR = re.compile(r'(\bid="|\bhref="#)(?=[\w-])')
_LABELLED = re.compile(r'\baria-labelledby="([^"]+)"')


@cache
def stretches(slug: str, system: System) -> tuple[tuple[str, SafeString], ...]:
    """The lesson as pairs: the name of an apparatus and nothing, or nothing and all up to the next one."""
    found: list[tuple[str, SafeString]] = []
    parts = enumerate(library.lessons()[slug].parts[system])
    for name, group in groupby(parts, lambda part: part[1].apparatus):
        if name:
            found += [(name, SafeString("")) for _ in group]
        else:
            pieces = [_set(part, n, system) for n, part in group]
            found.append(("", mark_safe("".join(pieces))))  # noqa: S308 (set by a template)
    return tuple(found)


def _set(part: Part, number: int, system: System) -> str:
    html = render_to_string("lessons/_parts.html", {"parts": [_told(part, system)]})
    # Two examples of a page may come with the same figure.
    return anchored(html, f"part-{number}") if part.kind == "example" else html


def anchored(html: str, under: str) -> str:
    """The same markup with every anchor, and what points to one, under a name."""
    html = _ANCHOR.sub(lambda found: f"{found[1]}{under}-", html)
    return _LABELLED.sub(
        lambda found: 'aria-labelledby="{}"'.format(" ".join(f"{under}-{one}" for one in found[1].split())),
        html,
    )


def body(lesson: Lesson, system: System, query: Mapping[str, str]) -> SafeString:
    """The whole lesson, its apparatus where the address puts them."""
    return _body(lesson, system, query) if query else _unmoved(lesson.slug, system)


@cache
def _unmoved(slug: str, system: System) -> SafeString:
    return _body(library.lessons()[slug], system, {})


def _body(lesson: Lesson, system: System, query: Mapping[str, str]) -> SafeString:
    names = lesson.apparatus
    pieces = [
        page.rendered(name, system, query, names) if name else html
        for name, html in stretches(lesson.slug, system)
    ]
    return mark_safe("".join(pieces))  # noqa: S308 (templates and apparatus escape what they hold)


@cache
def top(slug: str) -> SafeString:
    """What comes first on the page: the aims and the sections."""
    return render_to_string("lessons/_top.html", {"lesson": library.lessons()[slug]})


@cache
def end(slug: str) -> SafeString:
    """What comes last: the sources."""
    return render_to_string("lessons/_sources.html", {"lesson": library.lessons()[slug]})


@lru_cache(maxsize=512)
def way_back(slug: str, section: str, is_finished: bool) -> SafeString:
    """Where the reader was, as a link; nothing where there is nothing to go back to."""
    at = library.lessons()[slug].section(section)
    if not (at or is_finished):
        return SafeString("")
    return render_to_string("lessons/_way_back.html", {"at": at, "is_finished": is_finished})


@lru_cache(maxsize=512)
def states(competencies: tuple[tuple[str, str], ...]) -> SafeString:
    """The competencies of a lesson, each with its state, a word and a mark."""
    rows = [(COMPETENCIES[slug], state) for slug, state in competencies]
    return render_to_string("lessons/_states.html", {"rows": rows})


def _told(part: Part, system: System) -> dict[str, Any]:
    if part.kind != "example" or part.settings is None:
        return {"kind": part.kind, "html": part.html}
    problem = draw(part.settings["family"], int(part.settings["seed"]), system)
    return {"kind": "example", "shown": record.shown(problem), "key": record.key(problem)}
