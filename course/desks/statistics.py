"""What first answers say of every item: the figures, the flags, and the rows of the table, from kept counts.

Figures are computed from the text of the counts and remembered by it: equal counts have equal figures, so a
page works out anew only what was answered since the last one.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import chain
from typing import Any, NamedTuple

from django.db import connection
from django.db.models import F, Q, TextField
from django.db.models.functions import Cast
from django.urls import reverse
from django.utils.html import format_html, format_html_join
from django.utils.safestring import SafeString, mark_safe

from quizzes.competencies import COMPETENCIES
from quizzes.items import competencies_of, exists, question_items, split, title_of
from quizzes.models import ItemTally
from quizzes.models.pauses import paused_items
from quizzes.statistics.drift import Drift
from quizzes.statistics.flags import Case, Finding, Flag, Phase, findings
from quizzes.statistics.items import ItemStatistics, describe
from quizzes.statistics.keeping import tally_of
from quizzes.statistics.reliability import Reliability, reliability
from quizzes.statistics.shares import Estimate, Share

KINDS, QUESTIONS = "kinds", "questions"
PAUSED, FLAGGED = "paused", "flagged"


class Counted(NamedTuple):
    """The counts of one item as the database hands them over, JSON unread."""

    rests: str = "{}"
    chosen: str = "{}"
    before_right: int = 0
    before_wrong: int = 0
    drift_score: int = 0
    drift_answers: int = 0
    drift_began: int = 0
    drift_alarm: int | None = None


NOTHING = Counted()


@dataclass(frozen=True, slots=True)
class Figures:
    """What the counts come to; ``item`` is None before the first answer."""

    item: ItemStatistics | None
    before: Share | None
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Wish:
    """Which items: families or single questions, of a competency, with a flag; empty for all."""

    show: str = KINDS
    competency: str = ""
    flag: str = ""


@dataclass(frozen=True, slots=True)
class Sheet:
    """The table: its rows ready-made, how many of how many, and how far one competency's block is trusted."""

    rows: SafeString
    shown: int
    among: int
    flagged: int
    together: Reliability | None


def sheet(wish: Wish) -> Sheet:
    """The items that are wished for, in the order of the course. Two queries, however many were answered."""
    counted, paused = kept_counts(wish.show), paused_items()
    lines = [_line(item, counted.get(item, NOTHING), item in paused) for item in _items(wish)]
    shown = [row for row, flags in lines if not wish.flag or wish.flag in flags]
    return Sheet(
        rows=mark_safe("".join(shown)),  # noqa: S308 (each was escaped as it was made)
        shown=len(shown),
        among=len(lines),
        flagged=sum([FLAGGED in flags for _, flags in lines]),
        together=_together(wish, counted),
    )


def kept_counts(show: str) -> dict[str, tuple[Any, ...]]:
    """The counts of every family, or question, that was answered: each the fields of ``Counted``.

    Read past the ORM, whose work upon the statement would take longer than the rows.
    """
    with connection.cursor() as cursor:
        cursor.execute(*_statement(show, connection.vendor))
        return {row[0]: row[1:] for row in cursor.fetchall()}


@cache
def _statement(show: str, vendor: str) -> tuple[str, tuple[Any, ...]]:
    """The statement in the words of that database."""
    whole = Q(item=F("family"))
    rows = ItemTally.objects.filter(~whole if show == QUESTIONS else whole).order_by()
    numbers = Counted._fields[2:]
    texts = (Cast(name, TextField()) for name in Counted._fields[:2])
    sql, values = rows.values_list("item", *texts, *numbers).query.sql_with_params()
    return sql, tuple(values)


@lru_cache(maxsize=4096)
def figures(counts: tuple[Any, ...]) -> Figures:
    """Share right, correlation and flags. Times and draws are left to the item's own page."""
    one = Counted(*counts)
    answered = one.before_right + one.before_wrong
    before = Share(one.before_right, answered) if answered else None
    rests = json.loads(one.rests)
    if not rests:
        return Figures(None, before, ())
    item = describe(tally_of(rests, json.loads(one.chosen)))
    drift = Drift(one.drift_score, one.drift_answers, one.drift_began, one.drift_alarm)
    return Figures(item, before, flags_of(item, before, drift))


def flags_of(item: ItemStatistics, before: Share | None, drift: Drift) -> tuple[Finding, ...]:
    """The flags of an item: "tells nothing" by the answers before teaching, all others by those after."""
    found = findings(Case(item, Phase.AFTER_TEACHING, before, drift))
    if before:
        early = ItemStatistics(before, None, (), None, None, None)
        found += [
            one for one in findings(Case(early, Phase.BEFORE_TEACHING)) if one.flag is Flag.TELLS_NOTHING
        ]
    return tuple(sorted(found, key=lambda one: list(Flag).index(one.flag)))


def _items(wish: Wish) -> list[str]:
    slugs = [wish.competency] if wish.competency else list(COMPETENCIES)
    families = list(dict.fromkeys(chain.from_iterable(COMPETENCIES[slug].families for slug in slugs)))
    if wish.show == QUESTIONS:
        return list(chain.from_iterable(map(question_items, families)))
    return families


def _together(wish: Wish, counted: Mapping[str, tuple[Any, ...]]) -> Reliability | None:
    if not wish.competency or wish.show == QUESTIONS:
        return None
    families = COMPETENCIES[wish.competency].families
    kept = {one: Counted(*counted.get(one, NOTHING)) for one in families}
    return reliability({one: tally_of(json.loads(counts.rests), {}) for one, counts in kept.items()})


@lru_cache(maxsize=4096)
def _line(item: str, counts: tuple[Any, ...], is_paused: bool) -> tuple[SafeString, frozenset[str]]:
    """The row of an item, and the flags by which it is found."""
    found = figures(counts)
    row = format_html(
        '<tr><th scope="row"><a href="{}">{}</a></th><td>{}</td>{}<td>{}</td></tr>\n',
        address(item), title_of(item), _places(item), _cells(found), _remarks(found.findings, is_paused),
    )  # fmt: skip
    flags = {one.flag.name for one in found.findings} | ({FLAGGED} if found.findings else set())
    return row, frozenset(flags | ({PAUSED} if is_paused else set()))


def address(item: str) -> str:
    """The item's own page."""
    family, question = split(item)
    return (
        reverse("desks:question", args=[family, question])
        if question
        else reverse("desks:item", args=[family])
    )


def _places(item: str) -> str:
    """The competency that a family tests; the family that a question belongs to."""
    family, question = split(item)
    if question:
        return title_of(family)
    return ", ".join(COMPETENCIES[slug].title for slug in competencies_of(family)) or "none"


def _cells(found: Figures) -> SafeString:
    if found.item is None:
        return mark_safe('<td class="num">0</td><td colspan="2">no first answers yet</td>')
    return format_html(
        '<td class="num">{}</td><td class="num">{}</td><td class="num">{}</td>',
        found.item.right.of, percent(found.item.right), correlation(found.item.discrimination),
    )  # fmt: skip


def _remarks(found: Sequence[Finding], is_paused: bool) -> SafeString:
    words = [("flag-paused", "▮▮", "paused")] if is_paused else []
    words += [("flag-firm" if one.is_firm else "flag-soft", *_mark(one)) for one in found]
    if not words:
        return mark_safe("none")
    return format_html_join("", '<span class="flag {}"><span aria-hidden="true">{}</span> {}</span>', words)


def _mark(one: Finding) -> tuple[str, str]:
    """A full or an empty shape, and the flag with the answers it rests on."""
    return "◆" if one.is_firm else "◇", f"{one.flag.value}, {one.answers} answers"


def paused_lines() -> list[tuple[str, str]]:
    """What is paused now, as (title, address of its page)."""
    return sorted((_full_title(item), address(item)) for item in paused_items() if exists(item))


def _full_title(item: str) -> str:
    family, question = split(item)
    return f"{title_of(family)}: {title_of(item)}" if question else title_of(item)


def percent(share: Share) -> str:
    """A share with its interval, in per cent."""
    return f"{100 * share.value:.0f} % ({100 * share.low:.0f} to {100 * share.high:.0f})"


def correlation(r: Estimate | None) -> str:
    """A correlation with its interval."""
    if r is None:
        return "cannot be told"
    return f"{r.value:z.2f} ({r.low:z.2f} to {r.high:z.2f})".replace("-", "−")
