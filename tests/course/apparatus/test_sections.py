"""Ear, hood, sinus, mask and suit in section: the model's pressures, and what gives where it is said to."""

from itertools import pairwise

import pytest

from course.lessons.apparatus.catalogue import bench
from course.lessons.apparatus.contract import Place
from course.lessons.apparatus.moving import said
from course.lessons.apparatus.sections import sea
from course.lessons.apparatus.walls import ATMOSPHERE, BULGE, arrows, bent, bulging
from pressure.airspaces.injuries import INJURIES
from pressure.units import shown
from pressure.waters import ALLOWED

SECTIONS = ("ear", "hood", "sinus", "mask", "suit")
INJURED = {
    "ear": ("middle-ear-squeeze", "middle-ear-reverse"),
    "hood": ("outer-ear-squeeze",),
    "sinus": ("sinus-squeeze", "sinus-reverse"),
    "mask": ("face-squeeze",),
    "suit": ("suit-squeeze",),
}
# The first whole foot and tenth of a metre of sea water beyond 60, 100 and 500 mmHg, which by weight are
# 2.61, 4.35 and 21.75 ft, 0.800, 1.333 and 6.666 m (arithmetic, 64 lb/ft³; a msw is 10 kPa by definition).
# Lock: Atlas of Emergency Medicine, 5th edition, 2021, 4 ft or 1.2 m. 60, 100 and 500: recalled from memory.
EAR = [
    ("us", {"Pain": 3, "The tube is said to lock": 4, "It may tear": 5, "Beyond 500 mmHg": 22}),
    ("metric", {"Pain": 8, "The tube is said to lock": 12, "It may tear": 14, "Beyond 500 mmHg": 67}),
]
every = pytest.mark.parametrize(("name", "system"), [(n, s) for n in SECTIONS for s in ("us", "metric")])


def column(name, system, way, entry):
    table = bench(name, system)
    return [table.at(Place(at, (way,)))[entry] for at in range(table.slider.top + 1)]


def ways(name, system):
    return [way for way, _ in bench(name, system).switches[0].options]


def since(name, system, way):
    """The step at which the space was last open under an option of the switch."""
    top, later = sea(system).top, sea(system).later
    return {"later": later, "bottom": top}.get(way, 0)


def bulge(row):
    """How far the drawn wall stands off its place, to the right: its arrows move with it."""
    return float(row["lean"])


@pytest.mark.parametrize(("system", "moments"), EAR)
@pytest.mark.parametrize("way", ["surface", "later"])
def test_each_thing_is_said_of_the_ear_from_the_published_difference_on(system, moments, way):
    banners, open_at = column("ear", system, way, "banner"), since("ear", system, way)
    for banner, after in moments.items():
        first = next((n for n, each in enumerate(banners[open_at:]) if each.startswith(banner)), None)
        assert first == (after if open_at + after < len(banners) else None)


@pytest.mark.parametrize(("system", "pain", "tear"), [("us", 3, 5), ("metric", 8, 14)])
def test_on_the_way_up_the_ear_gives_after_the_same_differences_and_nothing_locks(system, pain, tear):
    banners = column("ear", system, "bottom", "banner")[::-1]
    assert banners[0].startswith("Equal")
    assert set(banners[1:pain]) == {"The eardrum bows outwards"}
    assert set(banners[pain:tear]) == {"Pain is put near 60 mmHg"}
    assert banners[tear].startswith("It may tear")


# The outer ear: seen from 150 mmHg, 2 m (a web copy of Diving and Subaquatic Medicine, attribution inferred);
# by weight 6.52 ft. Of sinus, mask and suit no source read gives a figure, so any difference counts.
@pytest.mark.parametrize(
    ("name", "way", "feet", "tenths"),
    [
        ("ear", "surface", 3, 8),
        ("hood", "hood", 7, 20),
        ("hood", "plug", 7, 20),
        ("sinus", "surface", 1, 1),
        ("mask", "surface", 1, 1),
        ("suit", "surface", 1, 1),
    ],
)
def test_what_gives_gives_from_its_figure_on_and_not_before(name, way, feet, tenths):
    for system, first in (("us", feet), ("metric", tenths)):
        gives = column(name, system, way, "gives")
        assert gives == ["none"] * first + ["inline"] * (len(gives) - first)


# Common practice, no source: 33 ft or 10 m of sea water are one atmosphere, 14.7 psi or 1 bar.
@pytest.mark.parametrize(
    ("system", "at", "outside", "across"),
    [
        ("us", 4, "16.5 psi", "1.78 psi (92.1 mmHg)"),
        ("us", 24, "25.4 psi", "10.7 psi (553 mmHg)"),
        ("metric", 12, "1.12 bar", "0.120 bar (90.0 mmHg)"),
        ("metric", 70, "1.70 bar", "0.700 bar (525 mmHg)"),
    ],
)
def test_the_difference_is_the_water_since_the_space_was_open(system, at, outside, across):
    for name in SECTIONS:
        row = bench(name, system).at(Place(at, (ways(name, system)[1],)))
        assert (row["outside"], row["across"]) == (outside, across)
        assert row["inside"] == shown(ALLOWED[system, "sea"][0].surface, outside.split()[1])


@every
def test_a_shut_space_keeps_the_pressure_it_had_and_an_open_one_takes_the_waters(name, system):
    water, finer = ALLOWED[system, "sea"][0], sea(system).finer
    for way in ways(name, system):
        for at, inside in enumerate(column(name, system, way, "inside")):
            held = since(name, system, way)
            vents = way == "open" or (name in ("mask", "suit") and at < held)
            absolute = water.absolute((at if vents else held) / finer)
            assert inside == shown(absolute, water.pressure_unit)


@every
def test_with_the_way_open_nothing_bulges_and_nothing_gives_at_any_depth(name, system):
    table = bench(name, system)
    for at in range(table.slider.top + 1):
        row = table.at(Place(at, ("open",)))
        assert (row["gives"], row["across"], row["left_arrow"]) == ("none", "none", row["right_arrow"])
        assert name == "sinus" or bulge(row) == 0


@every
def test_the_words_name_the_injury_where_something_gives_and_only_there(name, system):
    table = bench(name, system)
    for row in table.rows:
        words = said(table.words, row)
        named = [each for each in INJURED[name] if f" {INJURIES[each].title}." in words]
        assert len(named) == (row["gives"] == "inline")
        assert words.count(row["depth"]) >= 1
        assert f"{row['outside']} absolute" in words
        assert f"{row['inside']} absolute" in words
        assert row["net"] in words


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize(
    ("name", "way", "side"),
    [
        ("ear", "surface", 1),
        ("mask", "surface", 1),
        ("suit", "surface", 1),
        ("hood", "hood", -1),
        ("hood", "plug", -1),
    ],
)
def test_the_wall_bulges_further_with_every_step_to_the_side_of_the_lower_pressure(system, name, way, side):
    table = bench(name, system)
    found = [side * bulge(table.at(Place(at, (way,)))) for at in range(table.slider.top + 1)]
    assert found[0] == 0
    assert all(before < after for before, after in pairwise(found))
    assert found[-1] == pytest.approx(0.85 * BULGE, abs=0.1)


@pytest.mark.parametrize("system", ["us", "metric"])
def test_an_ear_blocked_at_depth_bulges_outwards_above_it_and_inwards_below(system):
    table, held = bench("ear", system), sea(system).later
    found = [bulge(table.at(Place(at, ("later",)))) for at in range(table.slider.top + 1)]
    assert max(found[:held]) < 0 == found[held] < min(found[held + 1 :])


@pytest.mark.parametrize("system", ["us", "metric"])
def test_the_lining_of_a_sinus_swells_on_the_way_down_and_is_pressed_thin_on_the_way_up(system):
    down = [float(x) for x in column("sinus", system, "surface", "wide")]
    up = [float(x) for x in column("sinus", system, "bottom", "wide")]
    assert down == sorted(down, reverse=True)
    assert up == sorted(up, reverse=True)
    assert down[0] == up[-1]
    assert min(down) > 0


@every
def test_arrows_are_as_long_as_the_absolute_pressures_and_the_thick_end_is_the_difference(name, system):
    surface = ALLOWED[system, "sea"][0].surface
    sides = ("inside", "outside") if name == "hood" else ("outside", "inside")
    for row in bench(name, system).rows:
        for side, arrow in zip(sides, ("left_arrow", "right_arrow"), strict=True):
            atmospheres = float(row[side].split()[0]) / surface
            assert float(row[arrow]) + 8 == pytest.approx(ATMOSPHERE * atmospheres, abs=0.3)
        apart = float(row["left_arrow"]) - float(row["right_arrow"])
        assert float(row["left_more"]) - float(row["right_more"]) == pytest.approx(apart, abs=0.11)
        assert min(float(row["left_more"]), float(row["right_more"])) == 0


@every
def test_the_guess_is_shown_where_something_gives(name, system):
    table = bench(name, system)
    row = table.at(table.guess.place)
    assert row["gives"] == "inline"
    assert 3 <= len(table.guess.options) <= 4


@pytest.mark.parametrize("system", ["us", "metric"])
def test_the_range_at_which_an_eardrum_tears_is_said_as_a_range(system):
    for row in bench("ear", system).rows:
        if row["banner"].startswith("It may tear"):
            assert "anywhere from 100 to 500 mmHg" in row["said"]
            assert "may tear" in row["said"]


def test_the_shapes_follow_the_difference():
    assert bulging(0, 5) == 0
    assert bulging(-5, 5) == -BULGE
    assert bent(150, 10)["apex"] == "170.0"
    assert arrows(2, 1, 1)["left_more"] == arrows(1, 2, 1)["right_more"] == f"{ATMOSPHERE:.1f}"
