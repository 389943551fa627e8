"""How a stored problem and a verdict are set on the page."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from django import template
from django.utils.html import conditional_escape
from django.utils.safestring import SafeString, mark_safe

from pressure.figures.catalogue import render

register = template.Library()


@register.filter
def situation(shown: Mapping[str, Any]) -> SafeString:
    """The situation with its given numbers in bold."""
    text = str(conditional_escape(shown["situation"]))
    givens = sorted(
        {str(conditional_escape(given["text"])) for given in shown["givens"]}, key=len, reverse=True
    )
    if givens:
        # Not inside a longer number or word: "3 ft" stands in "33 ft", and "ft" in "ft³".
        numbers = "|".join(map(re.escape, givens))
        text = re.sub(rf"(?<![\d.,])(?:{numbers})(?!\w)", r"<strong>\g<0></strong>", text)
    return mark_safe(text)  # noqa: S308 (every part was escaped above)


@register.filter
def mathml(line: Mapping[str, str]) -> SafeString:
    """A line of a worked solution as the attempt stores it; written by pressure/formula.py, which escapes."""
    return mark_safe(line["mathml"])  # noqa: S308


@register.filter
def figure(stored: Mapping[str, Any]) -> SafeString:
    """The drawing of a prompt; what it shows in words where it cannot be drawn."""
    drawn = render(stored["name"], stored["facts"], stored["words"])
    return mark_safe(drawn)  # noqa: S308 (pressure/figures escapes all text)
