"""The air against a column of water: the published heights at the sea, shorter ones on a mountain."""

from itertools import pairwise

import ambiance
import pytest

from course.lessons.apparatus.catalogue import bench
from course.lessons.apparatus.contract import Place
from pressure.units import FACTORS

EVERY = pytest.mark.parametrize(
    ("system", "water"), [(system, water) for system in ("us", "metric") for water in ("sea", "fresh")]
)


def number(entry):
    return float(entry.split()[0])


def column(system, water):
    table = bench("column", system)
    return [table.at(Place(at, (water,))) for at in range(table.slider.top + 1)]


# OSHA, commercial diving, gas laws: 33.1 ft or 10.1 m of sea and 33.8 ft or 10.3 m of fresh water to an
# atmosphere; TERMIUM Plus: 33 ft; L. Martin, Scuba Diving Explained (1997): 34 ft of fresh water.
@pytest.mark.parametrize(
    ("system", "water", "least", "most"),
    [
        ("us", "sea", 33.0, 33.1),
        ("us", "fresh", 33.8, 34.0),
        ("metric", "sea", 10.1, 10.13),
        ("metric", "fresh", 10.3, 10.34),
    ],
)
def test_at_the_sea_the_column_is_what_is_published(system, water, least, most):
    assert least <= number(column(system, water)[0]["column"]) <= most


def test_at_five_thousand_feet_the_air_and_its_column_are_those_of_the_handbook():
    """US Navy Diving Manual, 9-12.1.1: 0.832 ata. By the 33-foot rule that holds up 27.459 ft of sea."""
    row = column("us", "sea")[50]
    assert (row["altitude"], row["ratio"], row["column"]) == ("5000 ft", "0.832", "27.5 ft")


@EVERY
def test_the_air_is_the_standard_atmosphere_at_every_height(system, water):
    """ambiance 1.3.1 (ICAO Doc 7488, 1993); heights are geometric."""
    for row in column(system, water):
        altitude, air = [(number(row[name]), row[name].split()[1]) for name in ("altitude", "air")]
        pascals = float(ambiance.Atmosphere(altitude[0] * FACTORS[altitude[1]]).pressure[0])
        assert air[0] * FACTORS[air[1]] == pytest.approx(pascals, rel=5e-3)


@EVERY
def test_the_column_shortens_all_the_way_up_and_keeps_in_step_with_the_air(system, water):
    rows = column(system, water)
    highs = [float(row["high"]) for row in rows]
    assert all(before > after for before, after in pairwise(highs))
    for row in rows:
        assert float(row["high"]) / highs[0] == pytest.approx(number(row["ratio"]), abs=1e-3)
        assert float(row["push"]) == pytest.approx(40 * number(row["ratio"]), abs=0.1)


@pytest.mark.parametrize("system", ["us", "metric"])
def test_the_lighter_water_stands_higher_by_the_ratio_of_the_weights(system):
    """Common practice, no source: 34 ft against 33 ft, 10.2 m against 10 m."""
    known = 34 / 33 if system == "us" else 1.02
    for sea, fresh in zip(column(system, "sea"), column(system, "fresh"), strict=True):
        assert float(fresh["high"]) / float(sea["high"]) == pytest.approx(known, rel=1e-3)
        assert fresh["air"] == sea["air"]


@EVERY
def test_the_mark_of_the_sea_stays_and_the_flag_climbs(system, water):
    rows = column(system, water)
    assert {row["sea_level"] for row in rows} == {rows[0]["level"]}
    assert float(rows[0]["level"]) > 60
    assert [float(row["place_y"]) for row in rows] == sorted(
        [float(row["place_y"]) for row in rows], reverse=True
    )


@pytest.mark.parametrize("system", ["us", "metric"])
def test_the_highest_place_has_lost_about_a_third_as_the_guess_says(system):
    table = bench("column", system)
    assert number(table.at(table.guess.place)["ratio"]) == pytest.approx(2 / 3, abs=0.03)
    assert number(table.at(table.guess.place)["ratio"]) > 2 / 3
