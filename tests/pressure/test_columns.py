"""Columns, faces and joined vessels behave as they should, whatever the numbers."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure.draw import draw
from pressure.families.column_pressure import FAMILY as COLUMN_PRESSURE
from pressure.families.column_weight import FAMILY as COLUMN_WEIGHT
from pressure.families.face_force import FAMILY as FACE_FORCE
from pressure.families.level_surfaces import FAMILY as LEVEL_SURFACES
from pressure.laws import columns, hydrostatics
from pressure.units import FACTORS

sizes = st.floats(1e-3, 1e4)
SYSTEMS = [(family, system) for family in (COLUMN_WEIGHT, FACE_FORCE) for system in family.systems]


@given(sizes, sizes, sizes)
def test_a_column_presses_by_its_height_and_not_by_its_width(height, area, weight):
    on_it = hydrostatics.column_weight(height, area, weight)
    assert columns.pressure_of(on_it, area) == pytest.approx(height * weight)


@given(sizes, sizes)
def test_a_column_stands_as_high_as_its_weight_balances(pressure, gradient):
    assert columns.height_held(pressure, gradient) * gradient == pytest.approx(pressure)


@given(sizes, sizes, sizes)
def test_a_press_gives_back_the_force_put_in(push, area, other):
    there = columns.force_passed_on(push, area, other)
    assert columns.force_passed_on(there, other, area) == pytest.approx(push)
    assert columns.pressure_of(there, other) == pytest.approx(columns.pressure_of(push, area))


def test_pressure_over_no_area_is_refused():
    with pytest.raises(ZeroDivisionError):
        columns.pressure_of(1.0, 0.0)


@pytest.mark.parametrize(("family", "system"), SYSTEMS, ids=lambda each: getattr(each, "slug", each))
def test_twice_the_area_is_twice_the_weight_or_force(family, system):
    for seed in range(100):
        facts = dict(draw(family, seed, system).facts)
        one, two = family.pose(system, facts), family.pose(system, facts | {"area": facts["area"] * 2})
        assert two.accepted[0] == pytest.approx(2 * one.accepted[0])


@pytest.mark.parametrize("system", COLUMN_PRESSURE.systems)
def test_the_area_of_a_column_leaves_its_pressure_alone(system):
    facts = dict(draw(COLUMN_PRESSURE, 5, system).facts)
    area = next(name for name in facts if name.startswith("area"))
    wider = COLUMN_PRESSURE.pose(system, facts | {area: facts[area] * 7})
    assert wider.accepted == COLUMN_PRESSURE.pose(system, facts).accepted


def test_metric_and_si_weigh_alike():
    facts = {"height_m": 20.0, "area": 2.0, "is_large": 1.0, "is_fresh": 1.0, "scene": 0.0}
    kilograms = COLUMN_WEIGHT.pose("metric", facts).accepted[0]
    kilonewtons = COLUMN_WEIGHT.pose("si", facts).accepted[0]
    assert kilograms == pytest.approx(kilonewtons * FACTORS["kN"])


def test_a_force_on_a_face_comes_with_the_caution():
    caution = draw(FACE_FORCE, 0, "us").caution
    assert "nobody comes near an opening" in caution
    assert "not a dive plan, a decompression schedule or medical advice" in caution


@pytest.mark.parametrize("system", LEVEL_SURFACES.systems)
def test_the_right_option_is_the_one_that_keeps_one_pressure(system):
    """Only the right option gives the pressure that the misconceptions change."""
    for seed in range(200):
        key = draw(LEVEL_SURFACES, seed, system).key
        texts = {option.name: option.text for option in key.options}
        told = re.search(r"[\d.]+ (?:psi|bar)", texts["level-equal"]).group()
        assert key.right == "level-equal"
        assert all(
            told not in text for name, text in texts.items() if name in ("same-force", "pressure-shared")
        )
