"""Pages to look things up in: the glossary, the search, the booklet."""

from __future__ import annotations

from itertools import groupby
from typing import Any, cast

from django.http import Http404, HttpResponse
from django.shortcuts import render
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_safe

from course.lessons import booklet as printed
from course.lessons import library, search
from course.lessons.glossary import Term, terms
from course.people.http import PersonRequest
from pressure.problem import System


@never_cache
@require_safe
def glossary(request: PersonRequest) -> HttpResponse:
    """Every term with its meaning, under its letter."""
    context = {"letters": _letters(cast("System", request.user.system))}
    return render(request, "lessons/glossary.html", context)


def _letters(system: System) -> list[tuple[str, list[dict[str, Any]]]]:
    groups = groupby(terms(), lambda term: term.initial)
    return [(letter, [_told(term, system) for term in group]) for letter, group in groups]


def _told(term: Term, system: System) -> dict[str, Any]:
    lesson = library.lessons().get(term.lesson)
    others = [form for form in term.forms if form != term.name.casefold()]
    return {"of": term, "means": term.means[system], "others": others, "lesson": lesson}


@never_cache
@require_safe
def find(request: PersonRequest) -> HttpResponse:
    """What the lessons and the glossary hold of the words asked for."""
    asked = " ".join(request.GET.get("q", "").split())
    context: dict[str, Any] = {"asked": asked, "longest": search.LONGEST}
    if asked and len(asked) <= search.LONGEST:
        context["result"] = search.find(asked, cast("System", request.user.system))
    return render(request, "lessons/search.html", context)


@never_cache
@require_safe
def booklet(request: PersonRequest) -> HttpResponse:
    """The course for print: its contents, or the part asked for."""
    system, part = cast("System", request.user.system), request.GET.get("part", "")
    leaves = printed.leaves(system, part)
    if part not in ("", printed.GLOSSARY) and not leaves:
        raise Http404
    with_terms = part in (printed.GLOSSARY, printed.WHOLE)
    context = {
        "part": part,
        "is_whole": part == printed.WHOLE,
        "lessons": library.lessons().values(),
        "leaves": leaves,
        "letters": _letters(system) if with_terms else (),
    }
    return render(request, "lessons/booklet.html", context)
