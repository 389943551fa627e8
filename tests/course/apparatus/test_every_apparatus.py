"""What every apparatus promises: it asks first, its page says what its script would, it steps by links."""

import json
import re
from html import unescape
from html.parser import HTMLParser

import pytest

from course.lessons import library
from course.lessons.apparatus import address, page
from course.lessons.apparatus.catalogue import apparatus, bench
from course.lessons.apparatus.contract import places
from course.lessons.apparatus.moving import forms, said

EVERY = [(name, system) for name in apparatus() for system in library.SYSTEMS]
every_apparatus = pytest.mark.parametrize(("name", "system"), EVERY)


class Moving(HTMLParser):
    """Every part that moves: (form, what the page holds in its place)."""

    VOID = frozenset({"input", "path", "rect", "circle", "line", "br", "ellipse", "use", "polygon"})

    def __init__(self, text):
        super().__init__()
        self.found, self.open = [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        held = dict(attributes)
        moving = {key.removeprefix("data-form-"): form for key, form in held.items() if "data-form-" in key}
        self.found += [(form, held[key]) for key, form in moving.items() if key != "text"]
        if tag not in self.VOID:
            self.open.append([moving.get("text"), ""])

    def handle_startendtag(self, tag, attributes):
        self.handle_starttag(tag, attributes)
        if tag not in self.VOID:
            self.handle_endtag(tag)

    def handle_data(self, data):
        if self.open:
            self.open[-1][1] += data

    def handle_endtag(self, tag):
        form, held = self.open.pop()
        if form is not None:
            self.found.append((form, held))


def markup(name, system, place=None, **query):
    """The apparatus at a place, its guess passed by."""
    held = {f"{name}-said": address.UNSAID, **query}
    if place is not None:
        switches = bench(name, system).switches
        settings = zip(switches, place.set_to, strict=True)
        held |= {name: str(place.at), **{f"{name}-{switch.name}": option for switch, option in settings}}
    return page.rendered(name, system, held, [name])


@every_apparatus
def test_every_form_finds_its_entry_in_every_row(name, system):
    table = bench(name, system)
    asked = forms(table.words) | {table.slider.column}
    asked |= set().union(*[forms(form) for _, form in (*table.readings, *table.table)])
    asked |= set().union(*[forms(picture.parts) | forms(picture.words) for picture in table.pictures])
    for row in table.rows:
        assert asked <= row.keys() == table.rows[0].keys()
        assert all(isinstance(entry, str) for entry in row.values())
        assert not {entry for entry in row.values() if re.search(r"\bnan\b|\binf\b", entry)}


@every_apparatus
def test_the_words_differ_wherever_what_is_read_differs(name, system):
    table = bench(name, system)
    read = {tuple(said(form, row) for _, form in table.readings) for row in table.rows}
    words = {said(table.words, row) for row in table.rows}
    assert len(words) >= len(read) * 0.9 > 1


@every_apparatus
def test_nothing_moves_before_a_guess_or_a_wish_to_look(name, system):
    text = page.rendered(name, system, {}, [name])
    assert 'type="range"' not in text
    assert f'id="{name}-table"' not in text
    assert unescape(bench(name, system).guess.because) not in unescape(text)
    for option, words in bench(name, system).guess.options:
        assert f'value="{option}"' in text
        assert words in unescape(text)


@every_apparatus
def test_a_guess_is_answered_where_it_shows(name, system):
    table = bench(name, system)
    for option, words in table.guess.options:
        text = unescape(page.rendered(name, system, {f"{name}-said": option}, [name]))
        assert table.guess.because in text
        assert (
            f"As you said: {words}." in text if option == table.guess.right else f"You said: {words}." in text
        )
        assert said(table.words, table.at(table.guess.place)) in text
    assert table.guess.right in dict(table.guess.options)
    assert address.UNSAID not in dict(table.guess.options)


@every_apparatus
def test_the_page_shows_at_every_place_what_the_script_would_put_there(name, system):
    table = bench(name, system)
    every = list(places(table.slider, table.switches))
    for place in every[:: max(1, len(every) // 12)]:
        moving = Moving(markup(name, system, place)).found
        assert len(moving) > 5
        for form, held in moving:
            assert held == said(form, table.at(place))


@every_apparatus
def test_the_script_gets_the_whole_table_and_no_formula(name, system):
    text = markup(name, system)
    held = json.loads(unescape(re.search(rf'<div id="{name}-table" hidden>(.*?)</div>', text, re.S)[1]))
    rows = [dict(zip(held["columns"], cells, strict=True)) for cells in held["rows"]]
    assert rows == [dict(row) for row in bench(name, system).rows]
    assert len(text) < 200_000


@every_apparatus
def test_without_javascript_links_step_through_the_stops(name, system):
    slider = bench(name, system).slider
    for place, before, after in ((0, False, True), (slider.top, True, False)):
        text = markup(name, system, **{name: str(place)})
        assert ('rel="prev"' in text, 'rel="next"' in text) == (before, after)
        assert text.count('data-at="') == len(slider.stops)


@every_apparatus
def test_in_print_the_question_comes_with_its_answer_and_the_tables_that_show_it(name, system):
    text = unescape(page.still(name, system))
    assert bench(name, system).guess.because in text
    assert "data-form" not in text
    settings = {bench(name, system).start.set_to, bench(name, system).guess.place.set_to}
    assert text.count("<table") == len(settings)


@every_apparatus
def test_markup_keeps_to_the_content_policy(name, system):
    text = markup(name, system)
    assert not re.search(r'\sstyle=|\son\w+="|<script|javascript:', text)


@pytest.mark.parametrize(
    ("asked", "at", "note"),
    [
        ("", 66, ""),
        ("33", 33, ""),
        ("33.0", 33, ""),
        ("33.4", 33, "it stands at 33 ft, the nearest"),
        ("200", 165, "it stands at 165 ft, the nearest"),
        ("-5", 0, "it stands at 0 ft, the nearest"),
        ("deep", 0, "not a number"),
        ("1e9", 0, "not a number"),
        ("nan", 0, "not a number"),
        ("٣٣", 0, "not a number"),
        ("9" * 500, 0, "not a number"),
        ("<b>", 0, "not a number"),
    ],
)
def test_an_odd_place_in_the_address_gets_a_sentence_and_never_an_error(asked, at, note):
    query = {"box-said": "half"} | ({"box": asked} if asked else {})
    found = address.read("box", bench("box", "us"), query)
    assert found.place.at == at
    assert note in found.note
    assert bool(note) == bool(found.note)


def test_moving_one_apparatus_leaves_the_others_of_the_page_where_they_are():
    query = {"box": "33", "box-said": "half", "bag": "3", "bag-said": "x" * 99, "lift-bag": "7", "next": "/"}
    assert address.carried(query, ["box", "bag", "lift-bag"], "box") == [
        ("bag", "3"),
        ("bag-said", "x" * 40),
        ("lift-bag", "7"),
    ]
