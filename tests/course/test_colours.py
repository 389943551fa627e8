"""The colours of the pages keep the contrasts of WCAG 2.2 AA in both modes."""

import re
from itertools import product
from pathlib import Path

import pytest

TOKENS = Path(__file__).resolve().parents[2] / "static/css/tokens.css"
LIGHT, DARK = (
    dict(re.findall(r"--([\w-]+): (#[0-9a-f]{6});", part))
    for part in TOKENS.read_text().split("@media (prefers-color-scheme: dark)")
)

# What stands on what as text (1.4.3, 4.5 to 1) and as a line, mark or frame (1.4.11, 3 to 1).
TEXT = [
    *product(["ink", "muted", "deep", "slip", "met"], ["paper"]),
    *product(["ink", "muted", "deep", "slip", "met"], ["deep-tint"]),
    *product(["ink", "slip"], ["slip-tint"]),
    *product(["paper"], ["deep", "ink"]),
]
LINES = [*product(["muted", "deep", "slip", "met"], ["paper", "deep-tint"]), ("slip", "slip-tint")]


def luminance(colour):
    """Relative luminance as WCAG 2.2 defines it."""
    red, green, blue = (
        share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4
        for share in (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """Contrast ratio as WCAG 2.2 defines it."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_the_measure_gives_the_published_extremes():
    # WCAG 2.2, "contrast ratio": ratios can range from 1 to 21.
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#0e4a5e", "#0e4a5e") == 1


def test_both_modes_name_the_same_colours():
    assert LIGHT.keys() == DARK.keys()
    assert len(LIGHT) == 9


@pytest.mark.parametrize("mode", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize(("ink", "ground"), TEXT)
def test_text_can_be_read_on_its_ground(mode, ink, ground):
    assert contrast(mode[ink], mode[ground]) >= 4.5


@pytest.mark.parametrize("mode", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize(("line", "ground"), LINES)
def test_lines_and_marks_can_be_seen_on_their_ground(mode, line, ground):
    assert contrast(mode[line], mode[ground]) >= 3
