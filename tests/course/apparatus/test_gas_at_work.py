"""Cylinder, mixture, warm air and lift bag: what they show is what tables and worked examples say."""

import pytest

from course.lessons import library
from course.lessons.apparatus.catalogue import bench
from course.lessons.apparatus.contract import Place
from course.lessons.apparatus.kinds import heat, lift_bag
from pressure.laws.real_gas import compressibility


def at(name, system, place, *options):
    return bench(name, system).at(Place(place, options))


@pytest.mark.parametrize(
    ("depth", "use", "minutes"), [(0, 20, 90), (10, 40, 45), (30, 80, 22.5), (50, 120, 15)]
)
def test_a_cylinder_lasts_as_the_navy_reckons_it(depth, use, minutes):
    """US Navy Diving Manual, Revision 4, Change A, 7-4.1: T = usable free gas / (ata × use at the surface).

    By hand: 12 L × (200 − 50) bar is 1,800 L of free air.
    """
    row = at("cylinder", "metric", depth, "light")
    assert (float(row["use"].split()[0]), float(row["minutes"].split()[0])) == (use, minutes)
    hard = float(at("cylinder", "metric", depth, "hard")["minutes"].split()[0])
    assert hard == pytest.approx(minutes / 2, rel=0.01)


@pytest.mark.parametrize("system", library.SYSTEMS)
def test_the_minutes_of_a_cylinder_only_fall_with_depth(system):
    rows = [
        at("cylinder", system, depth, "light") for depth in range(bench("cylinder", system).slider.top + 1)
    ]
    times = [float(row["time"]) for row in rows]
    assert times == sorted(times, reverse=True)


@pytest.mark.parametrize(
    ("system", "depth", "oxygen", "like"), [("us", 66, 0.63, 3000), ("metric", 40, 1.05, 5000)]
)
def test_a_share_of_the_mixture_presses_as_dalton_says(system, depth, oxygen, like):
    """Partial pressure is share times total (OpenStax, Chemistry 2e, §9.3); 0.21 × 3 and 0.21 × 5 by hand."""
    row = at("mixture", system, depth)
    assert float(row["oxygen"].split()[0]) == pytest.approx(oxygen, abs=0.005)
    assert float(row["like"].split()[0].replace(",", "")) == like


@pytest.mark.parametrize("system", library.SYSTEMS)
def test_the_gases_of_the_mixture_add_up(system):
    for row in bench("mixture", system).rows:
        parts = float(row["oxygen_tall"]) + float(row["nitrogen_tall"]) + float(row["trace_tall"]) / 100
        assert parts == pytest.approx(-float(row["nitrogen_top"]) + float(row["trace_tall"]) / 100, abs=0.2)


def test_warm_air_presses_more_by_the_ratio_of_absolute_temperatures():
    """OpenStax, Chemistry 2e, §9.2 (P₁/T₁ = P₂/T₂), by hand: 201 bar × 303/288 − 1 bar."""
    ideal, _ = heat.gauge_at("metric", 30.0)
    assert ideal == pytest.approx(201 * 303 / 288 - 1, rel=1e-4)
    assert at("heat", "metric", 30)["size"] == "1.05"


@pytest.mark.parametrize("system", library.SYSTEMS)
def test_real_air_in_a_full_cylinder_gains_more_than_the_gas_law_says(system):
    full, filled = heat._FILLED[system]
    ideal, real = heat.gauge_at(system, 2 * filled)
    assert real - full > ideal - full > 0
    assert compressibility(201.0, 288.15) != pytest.approx(1.0, abs=1e-3)
    assert heat.gauge_at(system, filled) == pytest.approx((full, full), rel=1e-9)


@pytest.mark.parametrize(("system", "load"), [("us", 256.0), ("metric", 103.0)])
def test_an_unvented_bag_from_three_atmospheres_down_lifts_four_times_its_load(system, load):
    """64 lb to a cubic foot of sea water (US Navy Diving Manual); 1.03 kg to a litre by convention."""
    top = bench("lift-bag", system).slider.top
    below, above = (lift_bag.at(system, Place(way, ("large",)), top) for way in (0, top))
    assert below.lift == below.load == pytest.approx(load, rel=0.01)
    assert above.lift == pytest.approx(4 * below.lift, rel=0.01)


@pytest.mark.parametrize("system", library.SYSTEMS)
def test_a_bag_that_is_nearly_full_spills_and_gains_no_more(system):
    top = bench("lift-bag", system).slider.top
    places = [lift_bag.at(system, Place(way, ("close",)), top) for way in range(top + 1)]
    spilling = [each for each in places if each.spilled > 1e-9]
    assert {round(each.lift / each.load, 9) for each in spilling} == {lift_bag.ROOMS["close"]}
    assert len(spilling) > top / 2
