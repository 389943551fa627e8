"""Lungs: the arithmetic of a held breath, and what its problems say about it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure import catalogue
from pressure.cautions import STANDARD
from pressure.draw import draw, walk
from pressure.laws.boyle import volume_after
from pressure.laws.lungs import residual_depth

LUNGS = ("held-breath-down", "held-breath-up", "overpressure-rise", "residual-volume-depth", "volume-to-vent")
SYSTEMS = ("us", "metric")

totals = st.floats(2.0, 9.0)
shares = st.floats(0.05, 0.95)
columns = st.floats(5.0, 40.0)


@given(totals, shares, columns)
def test_boyle_shrinks_a_full_breath_to_the_residual_volume_just_there(total, share, column):
    depth = residual_depth(total, share * total, column)
    assert volume_after(total, 1.0, 1.0 + depth / column) == pytest.approx(share * total)


@given(totals, shares, columns)
def test_a_larger_residual_volume_is_reached_sooner(total, share, column):
    more = share + 0.02
    assert residual_depth(total, more * total, column) < residual_depth(total, share * total, column)


@pytest.mark.parametrize("residual", [0.0, -1.0, 6.0, 7.0])
def test_a_residual_volume_lies_between_nothing_and_the_whole(residual):
    with pytest.raises(ValueError, match="between nothing and the total"):
        residual_depth(6.0, residual, 33.0)


def words(problem):
    return " ".join(step.why for step in catalogue.solve(problem))


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("slug", LUNGS)
def test_every_problem_of_the_lungs_carries_the_caution(slug, system):
    problem = draw(slug, 1, system)
    assert problem.caution.endswith(STANDARD)
    assert len(problem.caution) > len(STANDARD) + 40


@pytest.mark.parametrize("system", SYSTEMS)
def test_the_residual_depth_is_said_to_be_only_arithmetic(system):
    said = words(draw("residual-volume-depth", 4, system))
    assert "only arithmetic" in said
    assert "blood shifts into the chest" in said


@pytest.mark.parametrize("system", SYSTEMS)
def test_a_held_breath_up_always_outgrows_the_lungs_and_down_never(system):
    for slug, grows in (("held-breath-up", True), ("held-breath-down", False)):
        for seed in range(len(walk(catalogue.family(slug), system))):
            problem = draw(slug, seed, system)
            assert (problem.number_key.answer > problem.facts["volume_L"]) is grows


@pytest.mark.parametrize("system", SYSTEMS)
def test_air_counted_at_the_surface_is_more_than_at_the_end_of_the_ascent(system):
    family = catalogue.family("volume-to-vent")
    for seed in range(200):
        facts = dict(draw(family, seed, system).facts)
        there, surface = (
            family.pose(system, {**facts, "as_surface_air": which}).accepted[0] for which in (0.0, 1.0)
        )
        assert surface > there


def test_the_depth_of_the_breath_does_not_change_the_rise_that_tears():
    family = catalogue.family("overpressure-rise")
    facts = {"overpressure_cmH2O": 90.0, "given_in": 0.0, "scene": 0.0}
    rises = {family.pose("us", {**facts, "depth_ft": depth}).accepted for depth in (12.0, 30.0, 60.0)}
    assert len(rises) == 1


@pytest.mark.parametrize("system", [*SYSTEMS, "si"])
def test_the_over_pressure_reads_the_same_in_every_unit(system):
    family = catalogue.family("overpressure-rise")
    depth = "depth_ft" if system == "us" else "depth_m"
    units = {axis.name: axis.values for axis in family.axes[system]}["given_in"]
    for pressure in (70.0, 86.0, 110.0):
        facts = {"overpressure_cmH2O": pressure, depth: 20.0, "scene": 0.0}
        rises = [family.pose(system, {**facts, "given_in": unit}).accepted[0] for unit in units]
        assert max(rises) / min(rises) < 1.02  # given in whole millimetres of mercury
