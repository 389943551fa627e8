"""Figures are accessible, harmless SVG, the same bytes every time, and drawn fast enough for a page."""

import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from statistics import median
from time import perf_counter
from xml.etree import ElementTree

import pytest

from pressure.draw import draw
from pressure.families.column_weight import FAMILY as COLUMN_WEIGHT
from pressure.figures import curves
from pressure.figures.catalogue import figures, of_topic, render
from pressure.figures.curves import Curve, sketch
from quizzes.templatetags.prompts import figure as figure_filter

DIAL = {"top": 100, "step": 20, "fine": 10, "at": 43.0, "unit": "psi"}
COLUMN = {"height": "33 ft", "area": "1 in²", "water": "sea"}
SAMPLES = {
    "dial": DIAL,
    "column": COLUMN,
    "absolute-curve": {"system": "us"},
    "volume-curve": {"system": "metric"},
}
CLASSES = {
    "figure",
    "fig-line",
    "fig-deep",
    "fig-face",
    "fig-water",
    "fig-solid",
    "fig-halo",
    "fig-text-muted",
}
DULL = Curve("A < B & C", "x", "y", (0.0, 1.0), (1.0, 2.0), (0.0, 1.0), (0.0, 2.0))
every_figure = pytest.mark.parametrize("name", SAMPLES)


def drawn(name, words="What it shows."):
    return ElementTree.fromstring(render(name, SAMPLES[name], words))  # noqa: S314 (our own markup)


def local(element):
    return element.tag.rpartition("}")[2]


def test_every_topic_named_has_its_figure():
    assert set(SAMPLES) <= set(figures())
    assert of_topic("gauge and absolute") == ("dial", "split")
    assert of_topic("column of water") == ("column", "joined", "standing", "tube")


@every_figure
def test_a_figure_is_an_image_with_a_title_and_words(name):
    root = drawn(name)
    by_id = {part.get("id"): part for part in root.iter() if part.get("id")}
    title, words = (by_id[each] for each in root.get("aria-labelledby").split())
    assert root.get("role") == "img"
    assert (local(title), local(words), words.text) == ("title", "desc", "What it shows.")
    assert title.text


@every_figure
def test_nothing_in_a_figure_is_blocked_by_the_content_policy(name):
    for part in drawn(name).iter():
        assert local(part) in {"svg", "title", "desc", "g", "path", "circle", "text"}
        assert not [key for key in part.attrib if key.startswith("on") or key in ("style", "href")]
        assert set(part.get("class", "figure").split()) <= CLASSES


@every_figure
def test_colours_are_left_to_the_style_sheet(name):
    assert "#" not in render(name, SAMPLES[name], "words")


def test_ids_differ_between_figures_and_hold_still_for_one():
    one, same, other = drawn("dial"), drawn("dial"), drawn("dial", "Something else.")
    assert one.get("aria-labelledby") == same.get("aria-labelledby") != other.get("aria-labelledby")


def test_facts_and_words_are_escaped():
    page = render("column", COLUMN | {"height": "<b>1</b>"}, "a < b & c")
    assert "<b>" not in page
    assert "a &lt; b &amp; c" in page


def test_an_unknown_figure_is_its_words_in_a_paragraph():
    words = '<p class="figure-words">a &lt; b</p>'
    assert figure_filter({"name": "gone", "facts": {}, "words": "a < b"}) == words
    assert figure_filter({"name": "dial", "facts": DIAL, "words": "w"}).startswith("<svg")


def test_a_figure_of_a_problem_can_be_drawn_from_what_is_stored():
    stored = draw(COLUMN_WEIGHT, 4, "us").figure
    assert str(stored.facts["height"]) in render(stored.name, stored.facts, stored.words)


@pytest.mark.parametrize("name", ["absolute-curve", "volume-curve"])
def test_a_curve_is_the_same_bytes_in_another_process(name):
    script = (
        f"from pressure.figures.catalogue import render; print(render({name!r}, {SAMPLES[name]}), end='')"
    )
    run = subprocess.run([sys.executable, "-c", script], capture_output=True, check=True)
    assert run.stdout.decode() == render(name, SAMPLES[name])


def test_curves_drawn_side_by_side_come_out_right():
    alone = [curves.plot(each) for each in (DULL, DULL)]
    assert alone[0] == alone[1]
    with ThreadPoolExecutor(4) as pool:
        assert set(pool.map(curves.plot, [DULL] * 8)) == {alone[0]}


def test_a_curve_passes_through_its_points_and_its_text_is_text():
    root = ElementTree.fromstring(f"<g>{sketch(DULL).parts}</g>")  # noqa: S314 (our own markup)
    assert {part.text for part in root.iter("text")} >= {"x", "y", "0", "1"}
    assert any(part.get("class") == "fig-deep" for part in root.iter("path"))


@pytest.mark.parametrize(
    ("name", "system", "said"),
    [
        ("absolute-curve", "us", ["14.7 psi", "33 ft", "88.2 psi", "165 ft"]),
        ("volume-curve", "us", ["50.0 % at 33 ft", "33.3 % at 66 ft", "25.0 % at 99 ft", "20.0 % at 132 ft"]),
        ("volume-curve", "metric", ["50.0 % at 10 m", "25.0 % at 30 m"]),
    ],
)
def test_a_curve_says_in_words_what_it_shows(name, system, said):
    """Common practice, no source: 1/2, 1/3, 1/4, 1/5 of the volume at 33, 66, 99, 132 ft."""
    page = render(name, {"system": system})
    assert all(each in page for each in said)


@pytest.mark.parametrize("name", ["dial", "column"])
def test_a_figure_takes_at_most_half_a_millisecond(name):
    spent = []
    for at in range(100):
        began = perf_counter()
        render(name, SAMPLES[name] | {"at": float(at // 2)}, "words")
        spent.append(perf_counter() - began)
    assert median(spent) < 0.0005
