"""Air and water under one load: the air gives by the gas law, the water by its bulk modulus."""

from itertools import pairwise

import pytest

from course.lessons.apparatus.catalogue import bench
from course.lessons.apparatus.contract import Place
from course.lessons.apparatus.moving import forms

BOTH = pytest.mark.parametrize("system", ["us", "metric"])


def number(entry):
    return float(entry.split()[0])


# By arithmetic from 14.7 psi: 14.7/29.7, 14.7/44.7, 14.7/89.7 of the air left. In metres from 1 bar and
# 0.980665 bar for 1 kgf/cm² (exact): 1/1.980665, 1/2.96133, 1/5.903325.
@pytest.mark.parametrize(
    ("system", "load", "absolute", "air"),
    [
        ("us", 0, "14.7 psi", "0 %"),
        ("us", 15, "29.7 psi", "50.5 %"),
        ("us", 30, "44.7 psi", "67.1 %"),
        ("us", 75, "89.7 psi", "83.6 %"),
        ("metric", 10, "1.98 bar", "49.5 %"),
        ("metric", 20, "2.96 bar", "66.2 %"),
        ("metric", 50, "5.90 bar", "83.1 %"),
    ],
)
def test_the_air_follows_the_gas_law(system, load, absolute, air):
    row = bench("press", system).at(Place(load))
    assert (row["absolute"], row["air_lost"]) == (absolute, air)


@BOTH
def test_each_further_load_takes_less_of_the_air_and_as_much_of_the_water(system):
    table = bench("press", system)
    air = [number(table.at(Place(stop.at))["air_lost"]) for stop in table.slider.stops]
    water = [number(table.at(Place(stop.at))["water_lost"]) for stop in table.slider.stops]
    gains = [after - before for before, after in pairwise(air)]
    assert gains == sorted(gains, reverse=True)
    assert all(gain > 0 for gain in gains)
    assert water == pytest.approx([n * water[-1] / 5 for n in range(6)], rel=0.01)
    assert water[-1] < 0.03


@BOTH
def test_the_pistons_stand_on_what_they_press_and_inside_the_picture(system):
    for row in bench("press", system).rows:
        assert float(row["air_top"]) + float(row["air_high"]) == pytest.approx(262, abs=0.11)
        assert float(row["water_high"]) == pytest.approx(90, abs=0.1)
        for top in (row["air_top"], row["water_top"]):
            assert float(top) + float(row["weight_top"]) > 4


@BOTH
def test_every_arrow_on_the_ball_has_the_one_length_that_the_pressure_gives(system):
    table = bench("press", system)
    assert table.pictures[0].parts.count("{push}") == 8
    assert {name for name in forms(table.pictures[0].parts) if name.startswith("push")} == {"push"}
    for row in table.rows:
        pressed = number(row["absolute"]) / number(table.rows[0]["absolute"])
        assert float(row["push"]) == pytest.approx(6 * pressed, rel=0.01, abs=0.06)


@BOTH
def test_what_the_guess_says_is_so(system):
    table = bench("press", system)
    first, second = table.slider.stops[1], table.at(table.guess.place)
    assert number(table.at(Place(first.at))["air_lost"]) == pytest.approx(50, abs=1)
    assert 100 - number(second["air_lost"]) == pytest.approx(100 / 3, abs=1)
    assert number(second["water_lost"]) == pytest.approx(0.01, abs=0.002)
