"""Terms in a lesson's text: in each section the first appearance of a term leads to the glossary."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache

from django.urls import reverse
from markdown_it.token import Token

from course.lessons.glossary import Term, by_form

_UNLINKED = {"heading_open", "th_open"}


@cache
def _pattern() -> re.Pattern[str]:
    """Any form of any term as a whole word, the longest first; its words may stand on two lines."""
    forms = sorted(by_form(), key=len, reverse=True)
    spelled = [r"\s+".join(map(re.escape, form.split())) for form in forms]
    return re.compile(rf"(?<![\w-])(?:{'|'.join(spelled)})(?![\w-])", re.IGNORECASE)


def link(tokens: Iterable[Token]) -> None:
    """Put the links into a parsed text; headings, heads of tables, code and other links are left alone."""
    seen: set[str] = set()
    before = ""
    for token in tokens:
        if token.type == "heading_open" and token.tag == "h2":
            seen = set()
        if token.type == "inline" and before not in _UNLINKED:
            token.children = list(_linked(_joined(token.children or []), seen))
        before = token.type


def _joined(children: Iterable[Token]) -> Iterator[Token]:
    """The tokens with text in one piece, line breaks and all: a term may run over the end of a line."""
    held: Token | None = None
    for child in children:
        if child.type in ("text", "softbreak"):
            held = held or Token("text", "", 0)
            held.content += child.content if child.type == "text" else "\n"
            continue
        if held:
            yield held
        held = None
        yield child
    if held:
        yield held


def _linked(children: Iterable[Token], seen: set[str]) -> Iterator[Token]:
    inside = 0
    for child in children:
        inside += {"link_open": 1, "link_close": -1}.get(child.type, 0)
        if inside or child.type != "text":
            yield child
        else:
            yield from _pieces(child.content, seen)


def _pieces(text: str, seen: set[str]) -> Iterator[Token]:
    """The text as tokens, with a link round each term not ``seen`` before, which grows."""
    at = 0
    for found in _pattern().finditer(text):
        term = by_form()[" ".join(found[0].split()).casefold()]
        if term.anchor in seen:
            continue
        seen.add(term.anchor)
        yield _text(text[at : found.start()])
        yield Token("link_open", "a", 1, attrs={"class": "term", "href": address(term)})
        yield _text(found[0])
        yield Token("link_close", "a", -1)
        at = found.end()
    yield _text(text[at:])


def _text(content: str) -> Token:
    return Token("text", "", 0, content=content)


def address(term: Term) -> str:
    """Where the glossary has it."""
    return f"{reverse('glossary')}#{term.anchor}"
