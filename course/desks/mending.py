"""Where a slip is mended: the section of the lessons on its family that says most about it, by words."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import log

from course.lessons.library import lessons
from course.lessons.manuscript import Lesson
from course.lessons.search import Entry, fold, sections
from course.lessons.steps import Plan, lesson_url
from pressure.problem import System
from quizzes.items import competencies_of, title_of

_WORD = re.compile(r"\w+")
_PLAIN = {
    *("a", "an", "and", "as", "at", "by", "for", "from", "in", "into", "is", "it", "not", "of", "on"),
    *("the", "to", "was", "were", "given", "used"),
}
_IN_TITLE, _EXAMPLE, _OF_FAMILY = 2.0, 4.0, 0.5
"""How much more a word is worth in a heading; an example of the family; a word of the family's title."""


@dataclass(frozen=True, slots=True)
class Place:
    """A section of a lesson."""

    lesson: str
    section: str
    url: str


@lru_cache(maxsize=4096)
def place_that_mends(label: str, family: str, system: System) -> Place | None:
    """Where to read about a slip made in that family; None where no lesson prepares for it."""
    found = [entry for lesson in lessons_on(family) for entry in sections(lesson, system) if "#" in entry.url]
    if not found:
        return None
    held = [set(_words(f"{entry.title} {entry.text}")) for entry in found]
    many = Counter(word for words in held for word in words)
    worth = dict.fromkeys(_words(title_of(family)), _OF_FAMILY) | dict.fromkeys(_words(label), 1.0)
    worth = {word: much * log(len(found) / many[word]) for word, much in worth.items() if word in many}
    shown = set(_examples(family))
    scores = [
        _score(entry, words, worth) + _EXAMPLE * (entry.url in shown)
        for entry, words in zip(found, held, strict=True)
    ]
    best = found[scores.index(max(scores))]
    return Place(best.under, best.title, best.url)


def lessons_on(family: str) -> list[Lesson]:
    """The lesson whose questions it is made of; else those that prepare for what it tests, reviews last."""
    shelf = lessons()
    if own := shelf.get(family.removesuffix("-questions")):
        return [own]
    tested, reviews = set(competencies_of(family)), Plan.of(shelf.values()).reviews
    found = [one for one in shelf.values() if tested & {*one.competencies}]
    return [one for one in found if one.slug not in reviews] or found


def _score(entry: Entry, words: set[str], worth: dict[str, float]) -> float:
    titled = set(_words(entry.title))
    return sum(much * (_IN_TITLE if one in titled else 1) for one, much in worth.items() if one in words)


def _examples(family: str) -> Iterator[str]:
    """The addresses of the sections that work an example of the family."""
    for lesson in lessons_on(family):
        anchor = ""
        for part in lesson.parts["us"]:
            anchor = part.section.anchor if part.section else anchor
            if part.kind == "example" and part.settings and part.settings["family"] == family:
                yield f"{lesson_url(lesson)}#{anchor}"


def _words(text: str) -> list[str]:
    """The words that say something, folded."""
    return [fold(word) for word in _WORD.findall(text.casefold()) if word not in _PLAIN]
