"""The model of air spaces: where a difference arises, which way, how large, and what comes of it."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure.airspaces.chains import chain
from pressure.airspaces.circumstances import BOTH, OPEN
from pressure.airspaces.harmful import HARMFUL
from pressure.airspaces.harmless import ALL, HARMLESS
from pressure.airspaces.injuries import ESCAPES, INJURIES, NONE
from pressure.airspaces.measures import BELIEFS, MEASURES, right_measure, taken
from pressure.airspaces.misreadings import LABELS
from pressure.airspaces.model import filled_at, first_to_give, outcome, pressure_inside, way_needed
from pressure.airspaces.spaces import SPACES, STIFF
from pressure.airspaces.telling import case, escapes_of, named_in
from pressure.airspaces.trips import EACH, TRIPS, Trip
from pressure.laws.differences import across
from pressure.laws.lungs import residual_depth

SYSTEMS = ("us", "metric")
SHARES = (0.20, 0.25, 0.262)
CASES = [case(system, each, trip) for system in SYSTEMS for each in ALL for trip in range(EACH)]
BY_NAME = {each.name: each for each in ALL}
depths = st.floats(0, 100)
metres = named_in("metric")


def test_a_difference_arises_only_where_the_way_that_gas_needs_is_shut():
    for of in CASES:
        differs = outcome(*of[:3]).side is not None
        assert not differs or way_needed(of.circumstance, of.trip) in of.circumstance.shuts
        opened = replace(of.circumstance, shuts=OPEN)
        assert outcome(opened, of.trip, of.named).side is None


def test_the_pressure_is_greater_outside_on_the_way_down_and_inside_on_the_way_up():
    for of in CASES:
        side = outcome(*of[:3]).side
        if side and of.trip.start != of.trip.end:
            assert side == ("outside" if of.trip.end > of.trip.start else "inside")


def test_a_stiff_space_keeps_the_water_between_the_two_depths():
    for of in CASES:
        found = outcome(*of[:3])
        if found.side and of.circumstance.space.yields == STIFF:
            filled = filled_at(of.circumstance, of.trip)
            deeper, shallower = max(filled, of.trip.end), min(filled, of.trip.end)
            assert found.difference == pytest.approx(across(of.named.gradient, deeper, shallower))


@pytest.mark.parametrize("share", SHARES)
def test_harm_is_done_where_it_is_told_under_every_published_volume_of_the_lungs(share):
    for of in CASES:
        injury = outcome(*of[:3], share).injury
        assert (injury != NONE) == (of.circumstance in HARMFUL), of.circumstance.name


@given(st.sampled_from(ALL), depths, depths)
def test_direction_and_size_belong_together_on_any_trip(circumstance, start, end):
    found = outcome(circumstance, Trip(start, end), metres)
    assert (found.side is None) == (found.difference == 0)
    assert found.difference <= metres.gauge(max(start, end)) + 1e-9
    assert found.injury == NONE or found.side


@given(depths, depths)
def test_a_shut_space_is_mended_by_going_back_to_where_it_was_filled(start, end):
    shut = replace(BY_NAME["ear-cold"], shuts=BOTH)
    there = outcome(shut, Trip(start, end), metres).difference
    back = outcome(shut, Trip(start, (start + end) / 2), metres).difference
    assert back == pytest.approx(there / 2, abs=1e-9)


@given(st.floats(0, 120), st.sampled_from(SHARES))
def test_lungs_on_one_breath_follow_down_to_their_residual_volume_and_no_further(depth, share):
    inside = pressure_inside(BY_NAME["lungs-deep"], Trip(0, depth), metres, share)
    limit = residual_depth(1.0, share, metres.column)
    assert inside == pytest.approx(metres.absolute(min(depth, limit)))


@given(depths, depths)
def test_a_breath_from_the_surface_never_over_stretches_on_the_way_up(deep, shallow):
    trip = Trip(max(deep, shallow), min(deep, shallow))
    assert outcome(BY_NAME["lungs-return"], trip, metres).side != "inside"


def test_every_injury_is_reached_and_says_where_it_is_from():
    reached = {outcome(*of[:3]).injury for of in CASES} | set(ESCAPES)
    assert reached == set(INJURIES)
    for injury in INJURIES.values():
        for part in (injury.signs, injury.cause, injury.prevention, injury.response):
            assert part.endswith("."), injury.name
        assert injury.source


def test_every_space_appears_in_harm_and_every_circumstance_has_a_trip_in_each_system():
    assert {each.place for each in HARMFUL} == set(SPACES)
    assert all(len(TRIPS[system][each.trips]) == EACH for system in SYSTEMS for each in ALL)


def test_causes_name_what_is_shut_and_nothing_else():
    assert all(each.cause and each.shuts for each in HARMFUL)
    assert not any(each.cause for each in HARMLESS)


def test_a_right_measure_leaves_nobody_hurt():
    for of in CASES:
        if of.circumstance in HARMFUL:
            mended = taken(right_measure(of.circumstance), of.circumstance, of.trip)
            assert outcome(*mended, of.named).injury == NONE


def test_half_the_change_of_depth_is_half_the_difference_in_a_stiff_space():
    of = case("metric", BY_NAME["ear-cold"], 0)
    half = taken(MEASURES["half-as-far"], of.circumstance, of.trip)
    assert outcome(*half, of.named).difference == pytest.approx(outcome(*of[:3]).difference / 2)


def test_misreadings_of_measures_have_labels():
    assert {each.misreading for each in BELIEFS} <= set(LABELS)


def test_a_stiff_space_is_hurt_before_lungs_that_yield():
    of = case("metric", BY_NAME["lungs-deep"], 0)
    both = (BY_NAME["lungs-deep"], BY_NAME["ear-uncleared"])
    assert first_to_give(both, of.trip, of.named) is BY_NAME["ear-uncleared"]
    assert first_to_give(both[:1], of.trip, of.named) is BY_NAME["lungs-deep"]
    assert first_to_give((BY_NAME["ear-cleared"],), of.trip, of.named) is None


def test_what_nobody_could_say_is_not_answered():
    both = (BY_NAME["ear-cold"], BY_NAME["sinus-cold"])
    with pytest.raises(ValueError, match="overlap"):
        first_to_give(both, Trip(0, 20), metres)


def test_each_event_needs_the_one_before_it_so_a_chain_has_one_order():
    for of in CASES:
        if of.circumstance in HARMFUL:
            for escape in escapes_of(of.circumstance):
                events = chain(*of[:3], escape)
                assert [each.after for each in events] == ["", *(each.name for each in events[:-1])]
                assert len({each.name for each in events}) == len(events) >= 5


def test_what_harms_nobody_has_no_chain_of_events():
    with pytest.raises(ValueError, match="no events"):
        chain(*case("us", BY_NAME["ear-cleared"], 0))
