"""The font of the formulas is a subset: every sign that a formula uses must be in it."""

import re
from html import unescape
from pathlib import Path

import pytest
from django.conf import settings

from pressure.catalogue import families
from pressure.draw import draw
from pressure.record import key

CSS = Path(settings.BASE_DIR, "static", "css", "base.css").read_text()
PARTS = ("relation", "substitution", "result")
ELSEWHERE = set("₂⅓")
"""Signs the font never had: the lowered two of a gas's formula, set in the reader's own font."""


def held():
    ranges = re.search(r"unicode-range: ([^;]+);", CSS)[1].split(", ")
    for entry in ranges:
        first, _, last = entry.removeprefix("U+").partition("-")
        yield from map(chr, range(int(first, 16), int(last or first, 16) + 1))


@pytest.mark.parametrize("slug", families())
def test_every_sign_of_a_familys_formulas_is_in_the_font(slug):
    signs = set()
    for system in families()[slug].systems:
        for seed in range(3):
            for step in key(draw(slug, seed, system))["steps"]:
                lines = [step[part]["mathml"] for part in PARTS if step[part]]
                signs |= set(unescape(re.sub(r"<[^>]+>", "", "".join(lines))))
    assert signs - set(held()) - ELSEWHERE == set()
