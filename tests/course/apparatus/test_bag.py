"""A soft bag going down: sealed it shrinks by Boyle's law, kept full it takes a fill for each atmosphere."""

from itertools import pairwise

import pytest

from course.lessons.apparatus.catalogue import bench
from course.lessons.apparatus.contract import Place

BOTH = pytest.mark.parametrize("system", ["us", "metric"])
ROOM = {"us": 1.0, "metric": 60.0}


def number(entry):
    return float(entry.split()[0])


def going_down(system, how):
    table = bench("bag", system)
    return [table.at(Place(at, (how,))) for at in range(table.slider.top + 1)]


# Common practice, no source: 1/2, 1/3, 1/4, 1/5, 1/6 of the air at 2 to 6 ata, and a fill more for each.
# Britannica, thoracic squeeze: about one fourth at 100 ft or 30 m.
@pytest.mark.parametrize(
    ("system", "depth", "sealed", "put_in"),
    [
        ("us", 0, "1.00 ft³", "0 ft³"),
        ("us", 33, "0.500 ft³", "1.00 ft³"),
        ("us", 66, "0.333 ft³", "2.00 ft³"),
        ("us", 100, "0.248 ft³", "3.03 ft³"),
        ("us", 165, "0.167 ft³", "5.00 ft³"),
        ("metric", 10, "30.0 L", "60.0 L"),
        ("metric", 30, "15.0 L", "180 L"),
        ("metric", 50, "10.0 L", "300 L"),
    ],
)
def test_the_bag_holds_and_takes_what_the_trade_knows(system, depth, sealed, put_in):
    table = bench("bag", system)
    assert table.at(Place(depth, ("sealed",)))["volume"] == sealed
    assert table.at(Place(depth, ("full",)))["put_in"] == put_in


@BOTH
def test_the_sealed_bag_gets_nothing_and_the_full_one_keeps_its_room(system):
    sealed, full = going_down(system, "sealed"), going_down(system, "full")
    assert {number(row["put_in"]) for row in sealed} == {0}
    assert {number(row["held"]) for row in sealed} == {ROOM[system]}
    assert {(number(row["volume"]), row["size"]) for row in full} == {(ROOM[system], "1.000")}
    assert {row["hose"] for row in sealed} == {"none"}
    assert {row["hose"] for row in full} == {"inline"}


@BOTH
def test_the_sealed_bag_shrinks_all_the_way_and_each_step_takes_less_of_it(system):
    sizes = [float(row["size"]) ** 2 for row in going_down(system, "sealed")]
    ata = [number(row["ata"]) for row in going_down(system, "sealed")]
    assert all(before > after for before, after in pairwise(sizes))
    assert [1 / each for each in ata] == pytest.approx(sizes, rel=6e-3)


@BOTH
def test_the_first_stretch_takes_more_room_than_all_the_others(system):
    row = going_down(system, "sealed")[-1]
    first, *others = [number(row[f"change_{n}"]) for n in range(5)]
    assert first > sum(others)
    assert others == sorted(others, reverse=True)
    assert first + sum(others) == pytest.approx(ROOM[system] * 5 / 6, rel=5e-3)


@BOTH
def test_kept_full_every_stretch_takes_one_fill(system):
    row = going_down(system, "full")[-1]
    assert [number(row[f"change_{n}"]) for n in range(5)] == pytest.approx([ROOM[system]] * 5)
    assert number(row["put_in"]) == pytest.approx(5 * ROOM[system])
    assert number(row["held"]) == pytest.approx(6 * ROOM[system])


@BOTH
@pytest.mark.parametrize("how", ["sealed", "full"])
def test_a_bar_begins_only_where_the_bag_has_entered_its_stretch(system, how):
    rows = going_down(system, how)
    stretch = (len(rows) - 1) // 5
    for depth, row in enumerate(rows):
        begun = -(-depth // stretch)
        assert row["bars"].count("M") == begun
        assert [row[f"change_{n}"] != "" for n in range(5)] == [n < begun for n in range(5)]


@BOTH
@pytest.mark.parametrize("how", ["sealed", "full"])
def test_the_bag_hangs_at_its_depth_from_a_line_that_reaches_it(system, how):
    rows = going_down(system, how)
    for depth, row in enumerate(rows):
        assert float(row["y"]) == pytest.approx(52 + 220 * depth / (len(rows) - 1), abs=0.06)
        assert float(row["neck"]) == pytest.approx(float(row["y"]) - 36 * float(row["size"]), abs=0.15)
