"""The open box: its table is the physics, and its drawing follows the table."""

import pytest

from course.lessons.apparatus.catalogue import bench
from course.lessons.apparatus.contract import Place
from course.lessons.sea import read
from pressure.figures import box
from pressure.laws.boyle import volume_after
from pressure.units import shown
from pressure.waters import ALLOWED

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


@pytest.mark.parametrize(
    ("system", "row"), [("us", row) for row in FEET] + [("metric", row) for row in METRES]
)
def test_the_table_holds_what_the_trade_knows(system, row):
    depth, *known = row
    assert [bench("box", system).at(Place(depth))[name] for name in SAID] == known


@pytest.mark.parametrize("system", ["us", "metric"])
def test_every_row_of_the_table_is_what_the_physics_computes(system):
    table, water = bench("box", system), ALLOWED[system, "sea"][0]
    full, unit = (1.0, "ft3") if system == "us" else (60.0, "L")
    assert len(table.rows) == table.slider.top + 1 == (166 if system == "us" else 51)
    for depth, row in enumerate(table.rows):
        absolute = water.absolute(depth)
        assert row["gauge"] == shown(water.gauge(depth), water.pressure_unit)
        assert row["absolute"] == shown(absolute, water.pressure_unit)
        assert row["volume"] == shown(volume_after(full, water.surface, absolute), unit)


@pytest.mark.parametrize("system", ["us", "metric"])
def test_one_atmosphere_keeps_the_needles_apart_at_every_depth(system):
    rows = bench("box", system).rows
    apart = {float(row["absolute_turn"]) - float(row["gauge_turn"]) for row in rows}
    assert max(apart) - min(apart) < 0.2
    assert float(rows[0]["gauge_turn"]) == -135


def test_the_water_in_the_box_stands_at_the_depth_and_the_air_above_it_fits_the_volume():
    for depth in (0, 33, 100, 165):
        row, reading = bench("box", "us").at(Place(depth)), read("us", depth)
        assert float(row["air"]) == pytest.approx(box.HEIGHT * reading.volume, abs=0.06)
        assert float(row["level"]) == pytest.approx(box.SURFACE + depth / 33 * box.ATMOSPHERE, abs=0.06)
        assert float(row["top"]) + float(row["air"]) == pytest.approx(float(row["level"]), abs=0.11)
