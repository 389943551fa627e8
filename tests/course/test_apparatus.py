"""The apparatus: its table is the physics, its drawings follow the table, and it steps without JavaScript."""

import json
import re
from html.parser import HTMLParser

import pytest
from django.urls import reverse

from course.demo.factories import PersonFactory
from course.lessons.apparatus import bench, find_depth, read
from pressure.figures import box
from pressure.laws.boyle import volume_after
from pressure.units import shown
from pressure.waters import ALLOWED

PAGE = reverse("lessons:lesson", args=["gauge-absolute-boyle"])

# Common practice, no source: 14.7 psi and 1 ata more for every 33 ft, and 1/2, 1/3, 1/4, 1/5 of the air.
FEET = [
    (0, "0 psi", "14.7 psi", "1.00 ata", "1.00 ft³", "all"),
    (33, "14.7 psi", "29.4 psi", "2.00 ata", "0.500 ft³", "one half"),
    (66, "29.4 psi", "44.1 psi", "3.00 ata", "0.333 ft³", "one third"),
    (99, "44.1 psi", "58.8 psi", "4.00 ata", "0.250 ft³", "one quarter"),
    (132, "58.8 psi", "73.5 psi", "5.00 ata", "0.200 ft³", "one fifth"),
]
# Common practice, no source: 1 bar more for every 10 m. 60 m is 7 ata: Scott et al., J Appl Physiol
# 130:1490 (2021), the same rule beyond this apparatus.
METRES = [
    (0, "0 bar", "1.00 bar", "1.00 ata", "60.0 L", "all"),
    (10, "1.00 bar", "2.00 bar", "2.00 ata", "30.0 L", "one half"),
    (30, "3.00 bar", "4.00 bar", "4.00 ata", "15.0 L", "one quarter"),
    (50, "5.00 bar", "6.00 bar", "6.00 ata", "10.0 L", "one sixth"),
]
SAID = ("gauge", "absolute", "ata", "volume", "part")
VOID = {"br", "circle", "input", "line", "link", "meta", "path", "rect"}


class Moving(HTMLParser):
    """Every element that changes with the depth: (form, what the page now holds)."""

    def __init__(self, text):
        super().__init__()
        self.found, self.open = [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        held = dict(attributes)
        if "data-attr" in held:
            self.found.append((held["data-form"], held[held["data-attr"]]))
            held.pop("data-form")
        if tag not in VOID:
            self.open.append([held.get("data-form"), ""])

    def handle_startendtag(self, tag, attributes):
        self.handle_starttag(tag, attributes)
        if tag not in VOID:
            self.handle_endtag(tag)

    def handle_data(self, data):
        if self.open:
            self.open[-1][1] += data

    def handle_endtag(self, tag):
        form, held = self.open.pop()
        if form is not None:
            self.found.append((form, held))


@pytest.fixture
def open_page(db, client):
    """Opens the lesson at a depth, in units."""

    def open_at(depth=None, system="us"):
        client.force_login(PersonFactory(system=system))
        return client.get(PAGE, {} if depth is None else {"depth": depth}).text

    return open_at


@pytest.mark.parametrize(
    ("system", "row"), [("us", row) for row in FEET] + [("metric", row) for row in METRES]
)
def test_the_table_holds_what_the_trade_knows(system, row):
    depth, *known = row
    assert [bench(system).at(depth)[name] for name in SAID] == known


@pytest.mark.parametrize("system", ["us", "metric"])
def test_every_row_of_the_table_is_what_the_physics_computes(system):
    table, water = bench(system), ALLOWED[system, "sea"][0]
    full, unit = (1.0, "ft3") if system == "us" else (60.0, "L")
    assert len(table.rows) == table.deepest + 1 == (166 if system == "us" else 51)
    for depth in range(table.deepest + 1):
        row, absolute = table.at(depth), water.absolute(depth)
        assert row["gauge"] == shown(water.gauge(depth), water.pressure_unit)
        assert row["absolute"] == shown(absolute, water.pressure_unit)
        assert row["volume"] == shown(volume_after(full, water.surface, absolute), unit)


@pytest.mark.parametrize("system", ["us", "metric"])
def test_one_atmosphere_keeps_the_needles_apart_at_every_depth(system):
    table = bench(system)
    apart = {float(row["absolute_turn"]) - float(row["gauge_turn"]) for row in map(table.at, range(50))}
    assert max(apart) - min(apart) < 0.2
    assert table.gauge.turn(0) == -135
    with pytest.raises(ValueError, match="off this dial"):
        table.gauge.turn(table.gauge.top + 1)


def test_the_water_in_the_box_stands_at_the_depth_and_the_air_above_it_fits_the_volume():
    table = bench("us")
    for depth in (0, 33, 100, 165):
        row, reading = table.at(depth), read("us", depth)
        assert float(row["air"]) == pytest.approx(box.HEIGHT * reading.volume, abs=0.06)
        assert float(row["level"]) == pytest.approx(box.SURFACE + depth / 33 * box.ATMOSPHERE, abs=0.06)
        assert float(row["top"]) + float(row["air"]) == pytest.approx(float(row["level"]), abs=0.11)


@pytest.mark.parametrize("depth", [0, 33, 50, 165])
def test_the_page_shows_at_every_depth_what_the_script_would_put_there(open_page, depth):
    text, row = open_page(depth), bench("us").at(depth)
    moving = Moving(text).found
    assert len(moving) > 15
    for form, held in moving:
        assert held == re.sub(r"\{(\w+)\}", lambda name: row[name[1]], form)


def test_the_script_gets_the_whole_table_and_no_formula(open_page):
    text = open_page()
    data = json.loads(
        re.search(r'<script id="apparatus-table" type="application/json">(.*?)</script>', text)[1]
    )
    assert [tuple(row) for row in data["rows"]] == list(bench("us").rows)
    assert tuple(data["columns"]) == bench("us").columns


def test_without_javascript_links_step_through_the_depths(open_page):
    text = open_page(66)
    for stop in bench("us").stops:
        assert f'href="?depth={stop}#apparatus"' in text
    assert re.search(r'rel="prev" href="\?depth=33#', text)
    assert re.search(r'rel="next" href="\?depth=99#', text)
    assert 'rel="prev"' not in open_page(0)
    assert 'rel="next"' not in open_page(165)


@pytest.mark.parametrize(
    ("depth", "rows"), [(None, [0]), (0, [0]), (66, [0, 33, 66]), (70, [0, 33, 66, 70]), (5, [0, 5])]
)
def test_without_javascript_the_table_holds_the_stops_down_to_here(open_page, depth, rows):
    assert [int(at) for at in re.findall(r'<tr data-at="(\d+)"', open_page(depth))] == rows


def test_a_metric_reader_gets_metres_bar_and_litres(open_page):
    text = open_page(20, "metric")
    assert "At 20 m the gauge reads 2.00 bar and the absolute pressure is 3.00 bar, or 3.00 ata." in text
    assert 'max="50"' in text
    assert " ft<" not in text


@pytest.mark.parametrize(
    ("asked", "depth", "said"),
    [
        (None, 0, ""),
        ("", 0, ""),
        ("33", 33, ""),
        ("33.0", 33, ""),
        ("33.4", 33, "it stands at 33 ft, the nearest"),
        ("200", 165, "it stands at 165 ft, the nearest"),
        ("-5", 0, "it stands at 0 ft, the nearest"),
        ("deep", 0, "not a depth"),
        ("1e9", 0, "not a depth"),
        ("nan", 0, "not a depth"),
        ("٣٣", 0, "not a depth"),
        ("9" * 500, 0, "not a depth"),
        ("<b>", 0, "not a depth"),
    ],
)
def test_an_odd_depth_in_the_address_gets_a_sentence_and_never_an_error(open_page, asked, depth, said):
    found, sentence = find_depth(asked, bench("us"))
    assert found == depth
    assert said in sentence
    assert bool(sentence) == bool(said)
    assert sentence in open_page(asked)
