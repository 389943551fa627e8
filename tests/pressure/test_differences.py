"""Differences across closed walls: the atmosphere drops out, and only the water between counts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure import catalogue
from pressure.cautions import STANDARD
from pressure.draw import draw
from pressure.laws.boyle import volume_after
from pressure.laws.differences import ROUND_SURFACES, across, air_between, allowed_in, height_for
from pressure.units import FACTORS
from pressure.waters import ALLOWED

SPACES = ("air-to-restore", "closed-space-difference", "helmet-fall", "helmet-supply-loss")
SYSTEMS = ("us", "metric")

conventions = st.sampled_from([each for allowed in ALLOWED.values() for each in allowed])
depths = st.floats(0, 300)
volumes = st.floats(1e-3, 100)


@given(conventions, depths, depths)
def test_a_difference_is_what_absolute_and_gauge_pressures_differ_by(convention, one, other):
    found = across(convention.gradient, one, other)
    assert found == pytest.approx(convention.absolute(one) - convention.absolute(other), abs=1e-6)
    assert found == pytest.approx(convention.gauge(one) - convention.gauge(other), abs=1e-6)


@given(conventions, depths)
def test_no_difference_arises_where_a_space_is_open_to_the_water(convention, depth):
    assert across(convention.gradient, depth, depth) == 0.0


@given(conventions, depths, depths, depths)
def test_differences_add_up_along_the_way(convention, first, second, third):
    whole = across(convention.gradient, third, first)
    parts = across(convention.gradient, second, first) + across(convention.gradient, third, second)
    assert parts == pytest.approx(whole, abs=1e-6)


@given(conventions, st.floats(0.01, 100))
def test_a_rise_makes_the_difference_it_was_reckoned_from(convention, height):
    assert height_for(across(convention.gradient, height, 0.0), convention.gradient) == pytest.approx(height)


@given(volumes, st.floats(1, 20), st.floats(0, 20))
def test_air_that_restores_a_space_fills_the_room_its_gas_has_lost(volume, before, more):
    after = before + more
    lost = volume - volume_after(volume, before, after)
    assert air_between(volume, after, before, measured_at=after) == pytest.approx(lost, abs=1e-9)


@given(volumes, st.floats(1, 20), st.floats(0, 20), st.floats(0.1, 20))
def test_measured_elsewhere_it_is_the_same_air(volume, lower, more, elsewhere):
    here = air_between(volume, lower + more, lower, measured_at=1.0)
    there = air_between(volume, lower + more, lower, measured_at=elsewhere)
    assert there * elsewhere == pytest.approx(here)


@pytest.mark.parametrize("pressure", [0.0, -14.7])
def test_air_is_not_measured_at_a_gauge_pressure(pressure):
    with pytest.raises(ValueError, match="absolute pressure above zero"):
        air_between(1.0, 2.0, 1.0, measured_at=pressure)


@pytest.mark.parametrize(("own", "unit"), ROUND_SURFACES)
def test_round_surfaces_are_the_trades_own_within_a_fifth_of_a_percent(own, unit):
    surface = 14.7 if own == "psi" else 1.0
    assert ROUND_SURFACES[own, unit] * FACTORS[unit] == pytest.approx(surface * FACTORS[own], rel=0.002)


@pytest.mark.parametrize(
    ("system", "unit"),
    [("us", "mmHg"), ("us", "cmH2O"), ("metric", "kPa"), ("metric", "mmHg"), ("si", "kPa")],
)
@pytest.mark.parametrize("water", ["sea", "fresh"])
def test_a_convention_in_another_unit_says_the_same_pressure(system, water, unit):
    for here, there in zip(ALLOWED[system, water], allowed_in(system, water, unit), strict=True):
        assert there.pressure_unit == unit
        assert there.column == pytest.approx(here.column)
        size = FACTORS[unit] / FACTORS[here.pressure_unit]
        assert there.absolute(40.0) * size == pytest.approx(here.absolute(40.0), rel=0.002)


def test_a_unit_without_a_round_figure_is_refused():
    with pytest.raises(KeyError):
        allowed_in("us", "sea", "inHg")


def test_the_convention_names_the_round_figure_it_uses():
    assert allowed_in("us", "sea", "mmHg")[0].sentence.endswith("An atmosphere is 760 mmHg.")
    assert allowed_in("metric", "sea", "cmH2O")[0].sentence.endswith("A bar is 1020 cmH₂O.")


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("slug", SPACES)
def test_every_problem_of_an_air_space_carries_the_caution(slug, system):
    assert draw(slug, 1, system).caution.endswith(STANDARD)


@pytest.mark.parametrize("system", [*SYSTEMS, "si"])
def test_down_and_up_over_the_same_water_give_one_difference(system):
    family = catalogue.family("closed-space-difference")
    for seed in range(100):
        facts = dict(draw(family, seed, system).facts)
        down, up = (family.pose(system, {**facts, "scene": scene}) for scene in (0.0, 6.0))
        assert down.accepted == up.accepted
        assert "towards the closed space" in down.sense
        assert "out of the closed space" in up.sense


@pytest.mark.parametrize("system", SYSTEMS)
def test_the_same_fall_presses_alike_and_costs_more_gas_near_the_surface(system):
    family = catalogue.family("helmet-fall")
    foot = "ft" if system == "us" else "m"
    facts = dict(draw(family, 2, system).facts)
    near, far = (family.pose(system, {**facts, f"from_{foot}": start}) for start in (10.0, 20.0))
    assert near.cells[0].accepted == pytest.approx(far.cells[0].accepted)
    assert near.cells[1].accepted[0] < far.cells[1].accepted[0]


def test_a_hose_that_parts_under_water_leaves_less_difference_than_on_deck():
    family = catalogue.family("helmet-supply-loss")
    facts = {"depth_ft": 90.0, "is_fresh": 0.0, "asked_in": 0.0, "scene": 0.0}
    deck, water = (family.pose("us", {**facts, "break_ft": place}).accepted[0] for place in (0.0, 15.0))
    assert water < deck
