"""Buoyancy: what is displaced carries, what rises grows, and the problems warn of it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure.cautions import LIFTING, STANDARD
from pressure.draw import draw, walk
from pressure.families.float_or_sink import FAMILY as FLOAT_OR_SINK
from pressure.laws import archimedes
from pressure.marking import judge
from pressure.waters import HEAVINESS

weights = st.floats(0.1, 1e5)
volumes = st.floats(0.01, 1e3)
heaviness = st.sampled_from([each.value for each in HEAVINESS.values()])


@given(weights, volumes, heaviness)
def test_what_the_water_carries_and_what_is_left_are_the_weight(weight, volume, water):
    carried = archimedes.displaced_weight(volume, water)
    assert archimedes.apparent_weight(weight, volume, water) + carried == pytest.approx(weight)


@given(weights, heaviness)
def test_a_bag_of_the_volume_to_carry_leaves_no_weight(weight, water):
    volume = archimedes.volume_to_carry(weight, water)
    assert archimedes.apparent_weight(weight, volume, water) == pytest.approx(0, abs=1e-6)


@given(st.floats(1.5, 20.0), volumes)
def test_weighing_in_air_and_in_water_finds_the_density(density, volume):
    in_water = archimedes.apparent_weight(density * volume, volume, 1.0)
    assert archimedes.density_from_weighing(density * volume, in_water, 1.0) == pytest.approx(density)


def test_what_sinks_is_wholly_under():
    assert archimedes.share_submerged(7.8, 1.0) == 1.0


def test_nonsense_is_refused_with_a_reason():
    with pytest.raises(ValueError, match="weighs less in a liquid"):
        archimedes.density_from_weighing(3.0, 3.0, 1.0)
    with pytest.raises(ValueError, match="liquid with a weight"):
        archimedes.volume_to_carry(3.0, 0.0)


@pytest.mark.parametrize("system", ["us", "metric"])
def test_every_body_has_one_defensible_outcome_one_per_cent_clear_of_both_waters(system):
    waters = [HEAVINESS[system, water] for water in ("sea", "fresh")]
    for seed in range(len(walk(FLOAT_OR_SINK, system))):
        weight, volume = (one.quantity.value for one in draw(FLOAT_OR_SINK, seed, system).givens)
        pushes = [archimedes.displaced_weight(volume, water.value) for water in waters]
        assert all(abs(weight / push - 1) > 0.009 for push in pushes)


def test_all_outcomes_but_the_impossible_one_come_up_about_as_often():
    keys = [draw(FLOAT_OR_SINK, seed, "us").key for seed in range(600)]
    counts = {name: [key.right for key in keys].count(name) for name in (one.name for one in keys[0].options)}
    assert counts.pop("floats-in-fresh") == 0
    assert all(150 <= count <= 300 for count in counts.values())


@pytest.mark.parametrize("slug", ["lift-bag-fill", "lift-bag-growth"])
def test_lifting_carries_its_caution(slug):
    assert draw(slug, 0, "us").caution == f"{LIFTING} {STANDARD}"


@pytest.mark.parametrize(
    ("slug", "name"),
    [
        ("lift-bag-fill", "weight-in-air"),
        ("lift-bag-fill", "volume-at-depth"),
        ("lift-bag-fill", "atmosphere-left-out"),
        ("lift-bag-growth", "whole-for-change"),
        ("salt-to-fresh", "weight-in-air"),
        ("apparent-weight", "buoyancy-added"),
        ("suit-compression", "part-left"),
    ],
)
def test_the_misunderstandings_of_the_topic_are_named(slug, name):
    problem = draw(slug, 11, "us")
    slip = next(one for one in problem.key.slips if one.name == name)
    typed = f"{(slip.low * slip.high) ** 0.5:.5g} {problem.asked.unit}"
    assert judge({"answer": typed}, problem.key).slip == name


@pytest.mark.parametrize("is_fresh", [0.0, 1.0])
def test_the_bag_filled_with_the_answer_just_carries_the_load(is_fresh):
    """Sent down again under the named convention, the surface air displaces what the load weighs in water."""
    problem = next(
        one
        for seed in range(50)
        if (one := draw("lift-bag-fill", seed, "metric")).facts["is_fresh"] == is_fresh
    )
    facts, water = problem.facts, HEAVINESS["metric", "fresh" if is_fresh else "sea"].value
    below = problem.answer.value / (1 + facts["depth_m"] / (10.2 if is_fresh else 10.0))
    assert facts["volume_L"] * water + below * water == pytest.approx(facts["weight_kg"])


def test_a_bag_gains_most_near_the_surface():
    from pressure.families.lift_bag_growth import FAMILY

    def gain(start, end):
        facts = {"from_ft": start, "to_ft": end, "volume_ft3": 5.0 / (1 + start / 33), "scene": 0.0}
        return FAMILY.pose("us", facts).accepted[0]

    assert gain(40.0, 7.0) > gain(73.0, 40.0) > gain(106.0, 73.0)
