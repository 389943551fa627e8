"""A gauge and an absolute dial in three waters: the needles stay as far apart as the air presses."""

import pytest

from course.lessons.apparatus.catalogue import bench
from course.lessons.apparatus.contract import Place
from pressure.waters import ALLOWED

EVERY = pytest.mark.parametrize(
    ("system", "water"), [(system, name) for system in ("us", "metric") for name in ("sea", "fresh", "lake")]
)


def number(entry):
    return float(entry.split()[0])


def going_down(system, water):
    table = bench("dials", system)
    return [table.at(Place(at, (water,))) for at in range(table.slider.top + 1)]


# Sea, common practice, no source: 14.7 psi for 33 ft, 1 bar for 10 m. Fresh, from a teaching sheet: 57 ft at
# 0.432 psi a foot is 24.6 psig. Lake at 5000 ft: US Navy Diving Manual, 9-12.1.1, 843 mb or 12.2 psi.
# Lake at 2000 m: ambiance 1.3.1, 0.795 bar, with 10.2 m to a bar, 1.96 bar for 20 m; by density 2.756 bar.
@pytest.mark.parametrize(
    ("system", "water", "depth", "gauge", "air", "absolute"),
    [
        ("us", "sea", 33, "14.7 psi", "14.7 psi", "29.4 psi"),
        ("us", "sea", 132, "58.8 psi", "14.7 psi", "73.5 psi"),
        ("us", "fresh", 57, "24.6 psi", "14.7 psi", "39.3 psi"),
        ("us", "lake", 100, "43.2 psi", "12.2 psi", "55.4 psi"),
        ("metric", "sea", 30, "3.00 bar", "1.00 bar", "4.00 bar"),
        ("metric", "fresh", 20, "1.96 bar", "1.00 bar", "2.96 bar"),
        ("metric", "lake", 20, "1.96 bar", "0.795 bar", "2.76 bar"),
    ],
)
def test_the_dials_read_what_the_trade_knows(system, water, depth, gauge, air, absolute):
    row = bench("dials", system).at(Place(depth, (water,)))
    assert (row["gauge"], row["air"], row["absolute"]) == (gauge, air, absolute)


@EVERY
def test_the_needles_stay_one_air_apart_at_every_depth(system, water):
    rows, top = going_down(system, water), 90.0 if system == "us" else 6.0
    for row in rows:
        apart = float(row["absolute_turn"]) - float(row["gauge_turn"])
        assert apart == pytest.approx(270 * number(row["air"]) / top, abs=0.2)
    assert float(rows[0]["gauge_turn"]) == -135
    assert {row["band"] for row in rows} == {rows[0]["band"]}


@EVERY
def test_both_needles_rise_all_the_way_and_the_part_left_out_falls(system, water):
    rows = going_down(system, water)
    for name in ("gauge_turn", "absolute_turn"):
        turns = [float(row[name]) for row in rows]
        assert turns == sorted(turns)
        assert len(set(turns)) == len(turns)
    parts = [number(row["left_out"]) for row in rows]
    assert parts == sorted(parts, reverse=True)
    assert rows[0]["left_out"] == "100 %"


@pytest.mark.parametrize("system", ["us", "metric"])
def test_the_mountain_moves_the_absolute_needle_and_leaves_the_gauge_alone(system):
    for near, high in zip(going_down(system, "fresh"), going_down(system, "lake"), strict=True):
        assert near["gauge_turn"] == high["gauge_turn"]
        assert float(near["absolute_turn"]) > float(high["absolute_turn"])
    assert near["band"] != high["band"]


@pytest.mark.parametrize("system", ["us", "metric"])
def test_fresh_water_moves_both_needles_less_than_the_sea(system):
    sea, fresh = going_down(system, "sea")[-1], going_down(system, "fresh")[-1]
    assert number(fresh["gauge"]) < number(sea["gauge"])
    assert number(fresh["absolute"]) < number(sea["absolute"])
    assert fresh["air"] == sea["air"]


@EVERY
def test_the_bars_stand_on_one_another_and_inside_the_picture(system, water):
    sea = ALLOWED[system, "sea"][0]
    scale = 156 / sea.absolute(5 * sea.column)
    for row in going_down(system, water):
        assert float(row["water_high"]) == pytest.approx(scale * number(row["gauge"]), abs=0.2)
        assert float(row["air_high"]) == pytest.approx(scale * number(row["air"]), abs=0.2)
        assert float(row["air_top"]) + float(row["air_high"]) == pytest.approx(
            float(row["water_top"]), abs=0.11
        )
        assert float(row["absolute_label"]) > 12
