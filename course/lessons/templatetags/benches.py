"""Words that move with an apparatus."""

from __future__ import annotations

from django import template
from django.utils.safestring import SafeString, mark_safe

from course.lessons.apparatus import moving
from course.lessons.apparatus.contract import Row

register = template.Library()


@register.filter
def said(form: str, row: Row) -> str:
    """A form of words with the row's entries in it."""
    return moving.said(form, row)


@register.simple_tag
def moves(tag: str, form: str, row: Row) -> SafeString:
    """An element whose text is the form, now and when the controls move."""
    return mark_safe(moving.element(tag, form, row))  # noqa: S308 (the element escapes what it holds)
