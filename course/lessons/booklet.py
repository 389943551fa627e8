"""The course as a booklet: each lesson set for print, its headings a step down, its anchors its own."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from django.utils.html import format_html
from django.utils.safestring import SafeString, mark_safe

from course.lessons import library, typeset
from course.lessons.apparatus import catalogue, page
from course.lessons.manuscript import Lesson
from pressure.problem import System

WHOLE, GLOSSARY = "whole", "glossary"
"""Parts of the booklet beside the lessons: everything on one page, and the glossary."""

_TERM = re.compile(r'<a class="term"[^>]*>([^<]*)</a>')
_HEADING = re.compile(r"<(/?)h([2-5])\b")


@dataclass(frozen=True, slots=True)
class Leaf:
    """A lesson in print."""

    lesson: Lesson
    html: SafeString


def leaves(system: System, part: str) -> list[Leaf]:
    """The lessons of a part, that is of WHOLE or of one lesson's slug; none for any other."""
    return [
        Leaf(lesson, mark_safe(_printed(system)[slug]))  # noqa: S308 (set by our templates)
        for slug, lesson in library.lessons().items()
        if part in (WHOLE, slug)
    ]


@cache
def _printed(system: System) -> dict[str, str]:
    """Each lesson by slug; an apparatus that stands in several is drawn in the first."""
    drawn: dict[str, Lesson] = {}
    found = {}
    for slug, lesson in library.lessons().items():
        pieces = []
        for name, html in typeset.stretches(slug, system):
            if name in drawn:
                title = catalogue.bench(name, system).title
                pieces.append(format_html("<p>{}: as drawn in “{}”.</p>", title, drawn[name].title))
            elif name:
                drawn[name] = lesson
                pieces.append(page.still(name, system))
            else:
                pieces.append(html)
        found[slug] = _moved("".join(pieces), slug)
    return found


def _moved(html: str, slug: str) -> str:
    """The same with every heading a step lower, every anchor under the lesson's name, terms without links."""
    html = _TERM.sub(r"\1", html)
    html = _HEADING.sub(lambda found: f"<{found[1]}h{int(found[2]) + 1}", html)
    return typeset.anchored(html, slug)
