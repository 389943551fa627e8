"""A lesson's page around what is each reader's own: set once, then filled in.

The template writes a mark wherever a value of the reader belongs; the page is kept as the pieces between.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from types import SimpleNamespace
from typing import Any

from django.contrib.messages import get_messages
from django.http import HttpRequest, HttpResponse
from django.middleware.csrf import get_token
from django.shortcuts import render
from django.template.loader import render_to_string
from django.urls import resolve
from django.utils.html import escape
from django.utils.safestring import SafeString, mark_safe

from course.lessons import library, typeset
from course.people.context import site

_MARK = "\ue000"  # of the private use area: no text of ours holds it
TEMPLATE = "lessons/lesson.html"


def filled(request: HttpRequest, slug: str, own: Mapping[str, SafeString]) -> HttpResponse:
    """The lesson's page with ``own``, the reader's values of the template's context, as markup."""
    if len(get_messages(request)):
        return render(request, TEMPLATE, {**_common(slug), **own})
    pieces = _pieces(request.get_full_path(), slug, tuple(own), tuple(site(request).items()))
    values = {**own, "csrf_token": get_token(request), "name": escape(request.user)}
    return HttpResponse("".join([values[piece] if at % 2 else piece for at, piece in enumerate(pieces)]))


def _common(slug: str) -> dict[str, Any]:
    """What of the context is the same for every reader."""
    return {"lesson": library.lessons()[slug], "top": typeset.top(slug), "end": typeset.end(slug)}


@lru_cache(maxsize=128)
def _pieces(url: str, slug: str, own: tuple[str, ...], flags: tuple[tuple[str, Any], ...]) -> tuple[str, ...]:
    """The page in pieces: its text, and between two of them the name of the value that stands there."""
    request = HttpRequest()
    request.method, request.path = "GET", url.partition("?")[0]
    request.META["QUERY_STRING"] = url.partition("?")[2]
    request.resolver_match = resolve(request.path)
    request.user = SimpleNamespace(name=_hole("name"), is_authenticated=True)  # type: ignore[assignment]
    context = {name: _hole(name) for name in (*own, "csrf_token")}
    context |= {**_common(slug), **dict(flags)}
    return tuple(re.split(f"{_MARK}(\\w+){_MARK}", render_to_string(TEMPLATE, context, request)))


def _hole(name: str) -> SafeString:
    return mark_safe(f"{_MARK}{name}{_MARK}")  # noqa: S308 (names of this module and its caller)
