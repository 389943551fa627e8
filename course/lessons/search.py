"""Search over the lessons, section by section, and the glossary: an index in memory, built once.

Words are compared folded: in small letters, without accents, in the singular. Every word that is asked for
must begin a word of what is found.
"""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_left
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache
from html import unescape
from typing import Literal

from django.utils.html import escape
from django.utils.safestring import SafeString, mark_safe

from course.lessons import library
from course.lessons.glossary import terms
from course.lessons.manuscript import Lesson
from course.lessons.steps import lesson_url
from course.lessons.terms import address
from pressure.problem import System

LONGEST = 64
MOST = 30
_AROUND = 90
_WORD = re.compile(r"\w+")
_TAG = re.compile(r"<[^>]+>")


@dataclass(frozen=True, slots=True)
class Entry:
    """A place that can be found: a section of a lesson, the top of one, or a term."""

    kind: Literal["lesson", "term"]
    title: str
    under: str
    url: str
    text: str


@dataclass(frozen=True, slots=True)
class Found:
    """An entry with the stretch of it that holds the words, marked."""

    entry: Entry
    snippet: SafeString


@dataclass(frozen=True, slots=True)
class Result:
    """What a query comes to; ``nearest`` is offered for the first word that nothing begins with."""

    found: tuple[Found, ...]
    unknown: str = ""
    nearest: str = ""


@dataclass(frozen=True, slots=True)
class Index:
    """Every entry; the folded words in order, each with its weight in the entries that hold it."""

    entries: tuple[Entry, ...]
    words: tuple[str, ...]
    weights: Mapping[str, Mapping[int, float]]
    spelled: Mapping[str, str]

    def beginning(self, start: str) -> Iterator[str]:
        """The words that begin so."""
        for word in self.words[bisect_left(self.words, start) :]:
            if not word.startswith(start):
                return
            yield word


def fold(word: str) -> str:
    """One word as it is compared: small letters, no accents, singular."""
    bare = unicodedata.normalize("NFKD", word.casefold())
    bare = "".join(sign for sign in bare if not unicodedata.combining(sign))
    if len(bare) > 4 and bare.endswith("ies"):
        return f"{bare[:-3]}y"
    return bare[:-1] if len(bare) > 3 and bare.endswith("s") and bare[-2] not in "su" else bare


def find(query: str, system: System) -> Result:
    """What holds all the words of the query, the best first; a query without a word finds nothing."""
    index = _index(system)
    asked = list(dict.fromkeys(fold(word) for word in _WORD.findall(query)))
    totals = dict.fromkeys(range(len(index.entries)), 0.0) if asked else {}
    for word in asked:
        scores = _scores(index, word)
        if not scores:
            return Result((), word, _nearest(index, word))
        totals = {n: totals[n] + scores[n] for n in totals.keys() & scores.keys()}
    best = sorted(totals.items(), key=lambda pair: (-pair[1], pair[0]))[:MOST]
    return Result(tuple([Found(index.entries[n], _snippet(index.entries[n].text, asked)) for n, _ in best]))


def _scores(index: Index, asked: str) -> dict[int, float]:
    """What one word is worth in each entry: a word that it only begins counts half."""
    scores: dict[int, float] = defaultdict(float)
    for word in index.beginning(asked):
        share = 1.0 if word == asked else 0.5
        for n, weight in index.weights[word].items():
            scores[n] = max(scores[n], share * weight)
    return scores


def _nearest(index: Index, word: str) -> str:
    close = get_close_matches(word, index.words, n=1, cutoff=0.7)
    return index.spelled[close[0]] if close else ""


@cache
def _index(system: System) -> Index:
    entries = tuple(_entries(system))
    weights: dict[str, dict[int, float]] = defaultdict(dict)
    spelled: dict[str, str] = {}
    for n, entry in enumerate(entries):
        for word, weight in _weighed(entry).items():
            folded = fold(word)
            spelled[folded] = min(word, spelled.get(folded, word), key=len)
            weights[folded][n] = max(weight, weights[folded].get(n, 0.0))
    return Index(entries, tuple(sorted(weights)), weights, spelled)


def _weighed(entry: Entry) -> dict[str, float]:
    """Its words by what they are worth: most in its title; again and again in the text, less each time."""
    worth = {word: count**0.5 for word, count in Counter(_words(entry.text)).items()}
    for text, weight in ((entry.under, 3.0), (entry.title, 10.0)):
        worth |= {word: worth.get(word, 0.0) + weight for word in _words(text)}
    return worth


def _words(text: str) -> list[str]:
    return _WORD.findall(text.casefold())


def _entries(system: System) -> Iterator[Entry]:
    for term in terms():
        forms = ", ".join(form for form in term.forms if form != term.name.casefold())
        yield Entry("term", term.name, forms, address(term), term.means[system])
    for lesson in library.lessons().values():
        yield from sections(lesson, system)


def sections(lesson: Lesson, system: System) -> Iterator[Entry]:
    title, url, texts = lesson.title, lesson_url(lesson), [lesson.lead, *lesson.aims]
    under = ""
    for part in lesson.parts[system]:
        if part.section:
            yield Entry("lesson", title, under, url, _plain(texts))
            title, under, texts = part.section.title, lesson.title, []
            url = f"{lesson_url(lesson)}#{part.section.anchor}"
        texts.append(_text(part.html))
    yield Entry("lesson", title, under, url, _plain(texts))


def _text(html: str) -> str:
    """The words of clean HTML without its first heading, which is the entry's title."""
    body = re.sub(r"^\s*<h2[^>]*>.*?</h2>", "", html, flags=re.DOTALL)
    return unescape(_TAG.sub("", re.sub(r"</(?:p|li|td|th|h3|h4)>", " ", body)))


def _plain(texts: Iterable[str]) -> str:
    return " ".join(" ".join(texts).split())


def _snippet(text: str, asked: list[str]) -> SafeString:
    """The text around the first word that was asked for, every such word marked."""
    hits = [hit for hit in _WORD.finditer(text) if fold(hit[0]).startswith(tuple(asked))]
    first = hits[0].start() if hits else 0
    start = _edge(text, first - _AROUND // 2)
    end = _edge(text, start + 2 * _AROUND)
    pieces, at = ["…" if start else ""], start
    for hit in hits:
        if start <= hit.start() and hit.end() <= end:
            pieces += [escape(text[at : hit.start()]), f"<mark>{escape(hit[0])}</mark>"]
            at = hit.end()
    pieces += [escape(text[at:end]), "…" if end < len(text) else ""]
    return mark_safe("".join(pieces))  # noqa: S308 (every piece of the text was escaped)


def _edge(text: str, at: int) -> int:
    """The beginning of the word there; the ends of the text stand for what lies beyond them."""
    if at <= 0:
        return 0
    return len(text) if at >= len(text) else text.rfind(" ", 0, at) + 1
