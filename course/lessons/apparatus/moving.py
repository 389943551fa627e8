"""Markup that moves: forms in braces, filled from a row by the server, and again by the page's script.

In the parts of a picture an attribute may hold a form, ``y="{level}"``; the pseudo-attribute
``text="{depth}"`` of an empty element is its text. Each is sent filled, its form beside it as
``data-form-y``.
"""

from __future__ import annotations

import re
from html import escape

from course.lessons.apparatus.contract import Row

_TAG = re.compile(r'<(?P<name>\w+)(?P<held>(?:\s+[\w:-]+="[^"]*")*)\s*(?P<shut>/?)>')
_ATTRIBUTE = re.compile(r'\s+(?P<name>[\w:-]+)="(?P<value>[^"]*)"')
_NAME = re.compile(r"\{(\w+)\}")


def said(form: str, row: Row) -> str:
    """The form with the row's entries in it, as plain text. Raises KeyError for a name the row has not."""
    return _NAME.sub(lambda found: row[found[1]], form)


def filled(parts: str, row: Row, *, still: bool = False) -> str:
    """Markup with every form filled, escaped and, unless it is ``still``, kept beside."""
    return _TAG.sub(lambda tag: _filled(tag, row, still), parts)


def _filled(tag: re.Match[str], row: Row, still: bool) -> str:
    held, text = "", ""
    for attribute in _ATTRIBUTE.finditer(tag["held"]):
        name, form = attribute["name"], attribute["value"]
        if "{" not in form:
            held += attribute[0]
            continue
        value = escape(said(form, row))
        held += "" if still else f' data-form-{name}="{form}"'
        held += "" if name == "text" else f' {name}="{value}"'
        text = value if name == "text" else text
    return f"<{tag['name']}{held}{tag['shut']}>{text}"


def element(tag: str, form: str, row: Row, attributes: str = "") -> str:
    """An element whose text moves; ``form`` is escaped here."""
    return f'<{tag}{attributes} data-form-text="{escape(form)}">{escape(said(form, row))}</{tag}>'


def forms(parts: str) -> set[str]:
    """The names that markup or a form of words asks of a row."""
    return set(_NAME.findall(parts))
