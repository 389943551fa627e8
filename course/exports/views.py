"""Choosing an export and downloading it."""

from __future__ import annotations

from typing import Any

from django.http import Http404, HttpResponse, HttpResponseBase, StreamingHttpResponse
from django.shortcuts import render
from django.utils.http import content_disposition_header
from django.utils.text import slugify
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_GET, require_safe

from course.exports import csvfile
from course.exports.catalogue import exports
from course.exports.contract import Export, Scope
from course.exports.forms import ScopeForm
from course.people.access import Deed, needs
from course.people.http import PersonRequest
from quizzes.models import journal


@needs(Deed.EXPORT)
@never_cache
@require_safe
def index(request: PersonRequest) -> HttpResponse:
    """The exports there are, their columns, and what to put into the file."""
    return render(request, "exports/index.html", _page(ScopeForm(request.user)))


@needs(Deed.EXPORT)
@never_cache
@require_GET
def download(request: PersonRequest, slug: str) -> HttpResponseBase:
    """The file, written while it is read; a choice that makes no sense comes back with what to mend."""
    try:
        export = exports()[slug]
    except KeyError:
        raise Http404 from None
    form = ScopeForm(request.user, request.GET)
    if not form.is_valid():
        return render(request, "exports/index.html", _page(form), status=400)  # a file was asked for
    scope = form.scope
    _note(request, export, scope)
    header = [column.name for column in export.columns]
    return StreamingHttpResponse(
        csvfile.lines(header, export.rows(scope)),
        content_type="text/csv; charset=utf-8; header=present",
        headers={"Content-Disposition": content_disposition_header(True, _filename(export, scope))},
    )


def _page(form: ScopeForm) -> dict[str, Any]:
    return {"form": form, "exports": exports().values()}


def _note(request: PersonRequest, export: Export, scope: Scope) -> None:
    details = {"export": export.slug, "first": scope.first.isoformat(), "last": scope.last.isoformat()}
    journal.write(actor=request.user, verb="export downloaded", subject=scope.cohort, details=details)


def _filename(export: Export, scope: Scope) -> str:
    cohort = slugify(scope.cohort.name) or f"cohort-{scope.cohort.pk}"
    return f"{export.slug}_{cohort}_{scope.first}_{scope.last}.csv"
