"""The glossary: its file is held to account by line, its page holds every term, and lessons lead to it."""

import re
from html import unescape

import pytest
from django.urls import reverse

from course.demo.factories import PersonFactory
from course.lessons import glossary, library, terms
from course.lessons.checks import faulty_glossary
from course.lessons.manuscript import READER

TERM = '[[term]]\nname = "gauge pressure"\nmeans = "What a dial shows."\n'


@pytest.fixture
def told(tmp_path):
    """What is wrong with a glossary of this text."""

    def read(text):
        path = tmp_path / "lessons" / "glossary.toml"
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
        return [str(fault) for fault in glossary.read(path, list(library.lessons()))[1]]

    return read


@pytest.fixture
def page(db, client):
    client.force_login(PersonFactory())
    return unescape(client.get(reverse("glossary")).text)


def linked(text, before=()):
    """Which words of a text are linked to which anchors."""
    tokens = READER.parse(text)
    terms.link(tokens)
    html = READER.renderer.render(tokens, READER.options, {})
    return re.findall(r'<a class="term" href="[^"#]*#([^"]+)">([^<]+)</a>', html)


def test_the_glossary_as_it_stands_has_no_fault():
    assert faulty_glossary(glossary.GLOSSARY) == []
    assert len(glossary.terms()) > 60


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ("[[term]\n", 1, "not TOML"),
        ('[[word]]\nname = "x"\n', 1, "terms and nothing else"),
        (TERM + '[[term]]\nname = "ata"\n', 4, "Give it a means"),
        (TERM + '[[term]]\nmeans = "x"\n', 4, "Give it a name"),
        (TERM + '[[term]]\nname = "Gauge Pressure"\nmeans = "x"\n', 4, "is a form of 'gauge pressure'"),
        (TERM + '[[term]]\nname = "dial"\nalso = "dials"\nmeans = "x"\n', 4, "is a list"),
        (TERM + 'colour = "red"\n', 1, "'colour' is not known"),
        (TERM + 'lesson = "no-such-lesson"\n', 1, "There is no lesson 'no-such-lesson'"),
        (TERM + '\n[[term]]\nname = "foot"\nmeans = "{gauge two}"\n', 5, "{gauge two} is not known"),
    ],
)
def test_a_fault_is_told_by_file_and_line(told, text, line, said):
    [fault, *_] = told(text)
    assert fault.startswith(f"lessons/glossary.toml, line {line}: ")
    assert said in fault


def test_every_term_stands_on_the_page_under_its_anchor_with_its_meaning(page):
    for term in glossary.terms():
        assert f'<dt id="{term.anchor}">{term.name}</dt>' in page
        assert term.means["us"] in page


def test_terms_stand_in_the_order_of_the_alphabet_with_a_jump_to_each_letter(page):
    letters = re.findall(r'href="#letter-(\w)"', page)
    assert letters == sorted({term.name[0].upper() for term in glossary.terms()})
    assert re.findall(r'<h2 id="letter-(\w)">', page) == letters


def test_a_term_is_linked_where_it_first_appears_in_a_section_and_not_again():
    text = "## One\n\nThe bends hurt. The bends again.\n\n## Two\n\nThe bends once more.\n"
    assert [anchor for anchor, _ in linked(text)] == [glossary.by_form()["the bends"].anchor] * 2


def test_the_longest_form_wins_whatever_its_case_and_across_a_line():
    assert linked("Gauge\npressure") == [("gauge-pressure", "Gauge\npressure")]


def test_only_whole_words_are_linked():
    assert linked("The depressurised, unpressured thing") == []
    assert linked("a no-pressure day") == []


@pytest.mark.parametrize(
    "text",
    [
        "## Gauge pressure",
        "[gauge pressure](https://example.org)",
        "`gauge pressure`",
        "| gauge pressure |\n| - |",
    ],
)
def test_headings_links_code_and_heads_of_tables_are_left_alone(text):
    assert linked(text) == []


def test_every_link_of_every_lesson_leads_to_a_term(page):
    anchors = {term.anchor for term in glossary.terms()}
    for lesson in library.lessons().values():
        html = "".join(part.html for system in library.SYSTEMS for part in lesson.parts[system])
        found = set(re.findall(rf'<a class="term" href="{reverse("glossary")}#([^"]+)"', html))
        assert found
        assert found <= anchors
