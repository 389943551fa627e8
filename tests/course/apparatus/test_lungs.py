"""The chest and the two balloons: where something gives is where the physics crosses the line."""

import pytest

from course.lessons import library
from course.lessons.apparatus.catalogue import bench
from course.lessons.apparatus.contract import Place
from course.lessons.apparatus.kinds import balloons, chest
from pressure.waters import ALLOWED

SEA = {system: ALLOWED[system, "sea"][0] for system in library.SYSTEMS}


@pytest.mark.parametrize(("system", "depth"), [("us", 99), ("metric", 30)])
def test_a_held_breath_is_down_to_a_quarter_at_the_classical_limit(system, depth):
    """A quarter left, 30 m or 99 ft: a hyperbaric clinic's page (secondary); Britannica, thoracic squeeze."""
    assert chest.classical_limit(SEA[system]) == pytest.approx(depth, abs=0.1)
    row = bench("chest", system).at(Place(depth, ("down", "held")))
    assert (row["volume"], row["difference"]) == ("1.50 L", "none")
    deeper = bench("chest", system).at(Place(depth + 1, ("down", "held")))
    assert (deeper["volume"], deeper["difference"].split()[-1]) == ("1.50 L", "inwards")


@pytest.mark.parametrize(("system", "within"), [("us", 4), ("metric", 2)])
def test_full_lungs_held_reach_what_tears_them_within_a_few_feet(system, within):
    """MSD Manual, Barotrauma: a held breath of compressed gas can injure in as little as 4 ft, about 1 m."""
    table = bench("chest", system)
    outcomes = [table.at(Place(way, ("up", "held")))["outcome"] for way in range(table.slider.top + 1)]
    first = next(way for way, outcome in enumerate(outcomes) if "tears" in outcome)
    assert 0 < first <= within
    assert all("tears lungs" in outcome for outcome in outcomes[first:])


@pytest.mark.parametrize("system", library.SYSTEMS)
@pytest.mark.parametrize("way", ["up", "down"])
def test_who_breathes_from_the_supply_has_no_difference_anywhere(system, way):
    table = bench("chest", system)
    rows = [table.at(Place(at, (way, "free"))) for at in range(table.slider.top + 1)]
    assert {(row["difference"], row["volume"]) for row in rows} == {("none", "6.00 L")}


def test_the_breath_taken_at_33_ft_would_double_by_the_surface():
    """MSD Manual, Barotrauma: a full breath at 33 ft doubles by the surface. Here it may not grow."""
    one = chest.at(SEA["us"], Place(33, ("up", "held")), 33.0)
    assert one.free == pytest.approx(2 * chest.FULL_L)
    assert (one.volume, one.inside / one.outside) == (chest.FULL_L, pytest.approx(2.0))


@pytest.mark.parametrize("system", library.SYSTEMS)
def test_the_shut_balloon_bursts_where_the_absolute_pressure_has_halved(system):
    water, table = SEA[system], bench("balloons", system)
    bottom = table.slider.top
    for way in range(bottom + 1):
        burst = table.at(Place(way, ("loose",)))["size"] == "burst"
        assert burst == (water.absolute(bottom) >= 2 * water.absolute(bottom - way) - 1e-9)


@pytest.mark.parametrize("system", library.SYSTEMS)
def test_the_net_gives_when_one_atmosphere_of_water_is_left_behind(system):
    table = bench("balloons", system)
    gone = [way for way in range(table.slider.top + 1) if table.at(Place(way, ("net",)))["size"] == "burst"]
    assert gone[0] == pytest.approx(SEA[system].column, abs=0.5)
    assert balloons.at(SEA[system], Place(gone[0] - 1, ("net",)), table.slider.top).over < SEA[system].surface
