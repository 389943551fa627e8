"""A lesson's text: Markdown with blocks between ``:::`` lines, made into the parts of a page.

    ::: apparatus box          an apparatus; each at most once in a lesson
    ::: caution                one paragraph, set as the usual caution
    ::: example family=… seed=…   a drawn problem with its worked solution

Each block ends in a line of ``:::``. HTML in the text is shown as text, never passed on.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import count, pairwise
from pathlib import Path
from typing import Literal

import nh3
from django.utils.text import slugify
from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.token import Token
from mdit_py_plugins.container import container_plugin

from course.lessons import inserts, terms
from course.lessons.apparatus.catalogue import apparatus
from course.lessons.errors import LessonError
from pressure.catalogue import family
from pressure.errors import UnknownFamily
from pressure.problem import System

_TAGS = {
    *("h2", "h3", "h4", "p", "ul", "ol", "li", "strong", "em", "code", "pre", "blockquote", "hr", "br", "a"),
    *("div", "table", "thead", "tbody", "tr", "th", "td"),
}
_ATTRIBUTES = {
    "a": {"href", "title", "class"},
    "h2": {"id"},
    "div": {"class", "tabindex", "role", "aria-label"},
    "ol": {"start"},
    "table": {"class"},
    "td": {"class"},
    "th": {"class"},
}
_TAKEN = {"content", "page-status"}


@dataclass(frozen=True, slots=True)
class Section:
    """A second heading of a lesson: its text, and its anchor, which no other has on the page."""

    title: str
    anchor: str


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of a lesson: clean ``html`` of prose or a caution, or a block with its ``settings``.

    Prose that opens a section has it; what follows belongs to that section until the next.
    """

    kind: Literal["prose", "caution", "apparatus", "example"]
    html: str = ""
    settings: Mapping[str, str] | None = None
    section: Section | None = None

    @property
    def apparatus(self) -> str:
        """The name of the apparatus; empty for all else."""
        return self.settings["name"] if self.kind == "apparatus" and self.settings else ""


@dataclass(frozen=True, slots=True)
class Lesson:
    """A lesson as the page needs it; ``parts`` by system of units."""

    slug: str
    title: str
    lead: str
    order: int
    competencies: tuple[str, ...]
    aims: tuple[str, ...]
    sources: tuple[str, ...]
    hazard: bool
    parts: Mapping[System, tuple[Part, ...]]

    @property
    def apparatus(self) -> tuple[str, ...]:
        """The names of its apparatus, in order."""
        return tuple([part.apparatus for part in self.parts["us"] if part.apparatus])

    @property
    def sections(self) -> tuple[Section, ...]:
        return tuple([part.section for part in self.parts["us"] if part.section])

    def section(self, anchor: str) -> Section | None:
        """The section of that anchor, unless it is the first: there one is at the top of the page anyway."""
        return next((one for one in self.sections[1:] if one.anchor == anchor), None)


@dataclass(frozen=True, slots=True)
class _Page:
    """Where we are: the file, its text in this system, how many lines of the file come before it."""

    path: Path
    lines: tuple[str, ...]
    skipped: int

    def error(self, token: Token, sentence: str) -> LessonError:
        return LessonError(self.path, self.skipped + (token.map or [0])[0] + 1, sentence)


def _reader() -> MarkdownIt:
    reader = MarkdownIt("commonmark", {"html": False}).enable("table").disable("image")
    reader.use(container_plugin, name="block", validate=lambda *_: True)
    reader.add_render_rule("table_open", _open_table)
    reader.add_render_rule("table_close", lambda *_: "</table></div>\n")
    return reader


def _open_table(_: RendererHTML, *__: object) -> str:
    return '<div class="table-box" tabindex="0" role="group" aria-label="Table"><table class="table">\n'


READER = _reader()


def parts(path: Path, body: str, skipped: int, system: System) -> tuple[Part, ...]:
    """The body as parts. Raises LessonError naming the line of the file."""
    page = _Page(path, tuple(_filled(path, body, skipped, system)), skipped)
    tokens = READER.parse("\n".join(page.lines))
    terms.link(tokens)
    _open_sections(page, tokens)
    found: list[Part] = []
    prose: list[Token] = []
    at = 0
    while at < len(tokens):
        token = tokens[at]
        _refuse_heading(page, token)
        if token.type != "container_block_open":
            if "section" in token.meta:
                found += _prose(prose)
                prose = []
            prose.append(token)
            at += 1
            continue
        end = next(n for n in range(at, len(tokens)) if _closes(tokens[n], token))
        found += [*_prose(prose), _block(page, token, tokens[at + 1 : end])]
        prose, at = [], end + 1
    found += _prose(prose)
    _refuse_twice(page, tokens)
    return tuple(found)


def _filled(path: Path, body: str, skipped: int, system: System) -> list[str]:
    filled = []
    for number, line in enumerate(body.split("\n"), skipped + 1):
        if line.startswith("## ") and "{" in line:
            raise LessonError(path, number, "A heading holds no insert: its address is one for all units.")
        try:
            filled.append(inserts.fill(line, system))
        except inserts.UnknownInsert as error:
            raise LessonError(path, number, str(error)) from None
    return filled


def _closes(token: Token, opening: Token) -> bool:
    return token.type == "container_block_close" and token.level == opening.level


def _refuse_heading(page: _Page, token: Token) -> None:
    if token.type == "heading_open" and token.tag == "h1":
        raise page.error(token, "The title is the page's only first heading. Begin headings here with ##.")


def _open_sections(page: _Page, tokens: list[Token]) -> None:
    """Give each second heading its anchor, and keep its section with it."""
    taken = {*apparatus(), *_TAKEN}
    for token, inline in pairwise(tokens):
        if token.type != "heading_open" or token.tag != "h2" or token.level:
            continue
        title = "".join(child.content for child in inline.children or [])
        plain = slugify(title)
        if not plain:
            raise page.error(token, "This heading holds no letters, and its address is made of them.")
        anchor = next(name for n in count(1) if (name := plain if n == 1 else f"{plain}-{n}") not in taken)
        taken.add(anchor)
        token.attrSet("id", anchor)
        token.meta["section"] = Section(title, anchor)


def _refuse_twice(page: _Page, tokens: list[Token]) -> None:
    seen: set[str] = set()
    for token in tokens:
        if token.type == "container_block_open" and token.info.split()[:1] == ["apparatus"]:
            if token.info in seen:
                raise page.error(token, "This apparatus stands on the page already. Take one of them out.")
            seen.add(token.info)


def _prose(tokens: list[Token]) -> list[Part]:
    if not tokens:
        return []
    for token in tokens:
        # Alignment comes as a style, which the content policy would block.
        if token.type in ("th_open", "td_open") and token.attrs.pop("style", ""):
            token.attrSet("class", "num")
    html = _clean(READER.renderer.render(tokens, READER.options, {}))
    return [Part("prose", html, section=tokens[0].meta.get("section"))]


def _clean(html: str) -> str:
    schemes = {"https", "http", "mailto"}
    return nh3.clean(html, tags=_TAGS, attributes=_ATTRIBUTES, url_schemes=schemes, link_rel=None)


def _block(page: _Page, opening: Token, inside: list[Token]) -> Part:
    _, end = opening.map or (0, 0)
    if end >= len(page.lines) or not page.lines[end].strip().startswith(":::"):
        raise page.error(opening, "This block is not closed. End it with a line of :::.")
    name, *rest = opening.info.split() or [""]
    if name == "caution":
        return _caution(page, opening, inside)
    if name not in ("apparatus", "example"):
        raise page.error(opening, f"There is no block {name!r}. There are: apparatus, caution, example.")
    if inside:
        raise page.error(opening, f"A block of kind {name!r} holds no text. Close it on the next line.")
    return _apparatus(page, opening, rest) if name == "apparatus" else _example(page, opening, rest)


def _caution(page: _Page, opening: Token, inside: list[Token]) -> Part:
    if [token.type for token in inside] != ["paragraph_open", "inline", "paragraph_close"]:
        raise page.error(opening, "A caution is one paragraph.")
    children = inside[1].children or []
    return Part("caution", _clean(RendererHTML().renderInline(children, READER.options, {})))


def _apparatus(page: _Page, opening: Token, rest: list[str]) -> Part:
    if len(rest) != 1 or rest[0] not in apparatus():
        raise page.error(opening, f"Name one apparatus after the word. There are: {', '.join(apparatus())}.")
    return Part("apparatus", settings={"name": rest[0]})


def _example(page: _Page, opening: Token, rest: list[str]) -> Part:
    settings = dict(word.partition("=")[::2] for word in rest)
    seed = settings.get("seed", "")
    if settings.keys() != {"family", "seed"} or not (seed.isascii() and seed.isdigit() and len(seed) < 10):
        raise page.error(opening, "Write an example as: ::: example family=depth-to-absolute seed=7")
    try:
        family(settings["family"])
    except UnknownFamily as error:
        raise page.error(opening, str(error)) from None
    return Part("example", settings=settings)
