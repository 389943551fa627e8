"""Supply: the laws, and what the families about it promise."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure import catalogue, record
from pressure.cylinders import cylinder_words, real_free_air
from pressure.draw import draw
from pressure.laws import supply
from pressure.units import shown, spoken

amounts = st.floats(1e-2, 1e4)
ratios = st.floats(1, 20)


@given(amounts, amounts, amounts)
def test_all_that_is_inside_is_one_room_more_than_can_be_let_out(room, gauge, surface):
    usable = supply.free_gas(room, gauge, surface)
    assert supply.free_gas(room, gauge + surface, surface) == pytest.approx(usable + room)


@given(amounts, amounts, ratios)
def test_endurance_times_use_is_what_there_was(usable, rate, ratio):
    use = supply.used_at_depth(rate, ratio)
    assert supply.endurance(usable, use) * use == pytest.approx(usable)


@given(amounts, st.floats(1, 100), ratios)
def test_the_rate_found_at_depth_is_the_rate_that_was_breathed(rate, minutes, ratio):
    used = supply.used_at_depth(rate, ratio) * minutes
    assert supply.rate_at_surface(used, minutes, ratio) == pytest.approx(rate)


@given(amounts, amounts)
def test_what_a_supply_has_over_the_bottom_is_the_margin_it_was_given(bottom, margin):
    assert supply.over_bottom(supply.supply_pressure(bottom, margin), bottom) == pytest.approx(
        margin, abs=1e-9
    )


@given(st.integers(1, 6), amounts, ratios)
def test_demand_grows_with_the_divers(divers, rate, ratio):
    assert supply.demand(divers, rate, ratio) == pytest.approx(divers * supply.demand(1, rate, ratio))


def supply_families():
    return [each for each in catalogue.families().values() if each.topic == "supply"]


@pytest.mark.parametrize("family", supply_families(), ids=lambda each: each.slug)
@pytest.mark.parametrize("system", ["us", "metric"])
def test_every_problem_can_be_kept_and_solved(family, system):
    for seed in range(60):
        problem = draw(family, seed, system)
        assert record.shown(problem)["givens"]
        assert record.key(problem)["steps"]
        assert len(problem.number_key.slips) >= 3


@pytest.mark.parametrize(
    "slug",
    ["use-at-depth", "surface-rate", "cylinder-endurance", "overbottom-pressure", "compressor-demand"],
)
def test_planning_gas_carries_the_caution(slug):
    assert "not a dive plan, a decompression schedule or medical advice" in draw(slug, 0, "us").caution


def test_a_reserve_forgotten_is_found_by_name():
    slips = {slip.name: slip for slip in draw("cylinder-endurance", 0, "metric").number_key.slips}
    assert slips["reserve-forgotten"].low > draw("cylinder-endurance", 0, "metric").answer.value
    assert "reserve" in slips["reserve-forgotten"].mend


def test_one_cylinder_and_several_are_named():
    assert cylinder_words("metric", 12.0, 1) == "a cylinder of 12 L water capacity"
    assert cylinder_words("us", 0.399, 2) == "2 cylinders, each of 0.399 ft³ floodable volume,"


def test_a_count_has_no_unit():
    assert (shown(3.0, "", given=True), spoken(3.0, "", given=True)) == ("3", "3")


def test_a_full_cylinder_says_what_real_air_does_and_a_low_one_does_not():
    whys = {
        problem.facts["reading_bar"]: catalogue.solve(problem)[-1].why
        for problem in (draw("cylinder-content", seed, "metric") for seed in range(200))
    }
    assert all(("real air" in why) == (reading >= 200) for reading, why in whys.items())
    assert real_free_air("metric", 12, 232) < 12 * 232
