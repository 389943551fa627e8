"""How a stored problem and a verdict are set on the page."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django import template
from django.utils.html import conditional_escape
from django.utils.safestring import SafeString, mark_safe

register = template.Library()


@register.filter
def situation(shown: Mapping[str, Any]) -> SafeString:
    """The situation with its given numbers in bold."""
    text = str(conditional_escape(shown["situation"]))
    for text_of_given in sorted({given["text"] for given in shown["givens"]}, key=len, reverse=True):
        plain = conditional_escape(text_of_given)
        text = text.replace(plain, f"<strong>{plain}</strong>", 1)
    return mark_safe(text)  # noqa: S308 (every part was escaped above)


@register.filter
def mathml(line: Mapping[str, str]) -> SafeString:
    """A line of a worked solution as the attempt stores it; written by pressure/formula.py, which escapes."""
    return mark_safe(line["mathml"])  # noqa: S308
