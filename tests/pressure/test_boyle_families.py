"""What the families of Boyle's law promise beyond their single answers: no air is made or lost."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pressure import catalogue
from pressure.draw import draw
from pressure.laws.boyle import density_after, volume_after
from pressure.marking import judge
from pressure.problem import ChoiceKey

systems = st.sampled_from(["us", "metric"])
seeds = st.integers(0, 5_000)
unhurried = settings(deadline=None)  # the first draw of a family walks its whole grid
COLUMN = {"us": 33, "metric": 10}
FOOT = {"us": "ft", "metric": "m"}
VOLUME = {"us": "ft3", "metric": "L"}


def atmospheres(depth, system):
    """Absolute pressure in atmospheres, exactly, by the convention that the prompt names."""
    return 1 + Fraction(depth) / COLUMN[system]


@given(st.floats(0.01, 100), st.floats(0.1, 100), st.floats(0.1, 100))
def test_mass_is_kept_when_density_grows(density, before, after):
    mass = density_after(density, before, after) * volume_after(1.0, before, after)
    assert mass == pytest.approx(density)


@unhurried
@given(systems, seeds)
def test_a_bag_taken_there_and_back_holds_what_it_held(system, seed):
    problem = draw("between-depths", seed, system)
    name = f"volume_{VOLUME[system]}"
    back = {**problem.facts, name: problem.answer.value, "is_up": 1 - problem.facts["is_up"]}
    found = catalogue.family("between-depths").pose(system, back).accepted[0]
    assert found == pytest.approx(problem.facts[name])


@unhurried
@given(systems, seeds)
def test_what_shrinks_to_a_share_at_a_depth_has_that_share_there(system, seed):
    problem = draw("depth-for-fraction", seed, system)
    if problem.facts["is_fresh"]:
        return
    left = 1 / (1 + problem.answer.value / COLUMN[system])
    assert 100 * left == pytest.approx(problem.facts["left_percent"])


@unhurried
@given(systems, seeds)
def test_what_is_lost_and_what_is_left_are_what_was_there(system, seed):
    problem = draw("box-on-ascent", seed, system)
    facts, foot = problem.facts, FOOT[system]
    room = Fraction(facts[f"room_{VOLUME[system]}"])
    there = room * Fraction(facts["filled_percent"]) / 100 * atmospheres(facts[f"from_{foot}"], system)
    left = room * atmospheres(facts[f"to_{foot}"], system)
    assert problem.answer.value + float(left) == pytest.approx(float(there))
    assert problem.answer.value > 0.3 * float(there)


@unhurried
@given(systems, seeds)
def test_a_box_raised_to_where_it_spills_is_just_full(system, seed):
    problem = draw("spill-depth", seed, system)
    start, end = problem.facts[f"from_{FOOT[system]}"], problem.answer.value
    grown = volume_after(
        problem.facts["filled_percent"], 1 + start / COLUMN[system], 1 + end / COLUMN[system]
    )
    assert grown == pytest.approx(100)
    assert 0 < end < start


@unhurried
@given(systems, seeds)
def test_air_added_fills_the_room_that_the_water_took(system, seed):
    problem = draw("air-to-refill", seed, system)
    facts, foot = problem.facts, FOOT[system]
    room = facts[f"room_{VOLUME[system]}"]
    start, end = [float(atmospheres(facts[f"{way}_{foot}"], system)) for way in ("from", "to")]
    assert volume_after(room, start, end) + problem.answer.value / end == pytest.approx(room)


@unhurried
@given(systems, seeds)
def test_down_a_table_pressure_times_volume_stays_the_same(system, seed):
    problem = draw("air-table", seed, system)
    pressures, volumes = problem.key.cells[::2], problem.key.cells[1::2]
    products = [one.answer * other.answer for one, other in zip(pressures, volumes, strict=True)]
    assert products == pytest.approx([products[0]] * len(products))
    assert len(products) == 4


def test_a_table_with_one_cell_wrong_says_which_slip():
    problem = draw("air-table", 5, "us")
    form = {
        f"answer-{n}": f"{cell.answer:.4g} {cell.asked.unit}" for n, cell in enumerate(problem.key.cells, 1)
    }
    assert judge(form, problem.key).verdict == "right"
    gauge = problem.key.cells[4].answer - 14.7
    judged = judge({**form, "answer-5": f"{gauge:.4g} psi"}, problem.key)
    assert (judged.verdict, judged.slip) == ("slip", "atmosphere-left-out")


@unhurried
@given(systems, seeds)
def test_the_stretch_that_is_right_is_right_by_exact_fractions(system, seed):
    problem = draw("shallow-metres", seed, system)
    assert isinstance(problem.key, ChoiceKey)
    facts, foot = problem.facts, FOOT[system]
    tops = [facts[f"top_{foot}"] + place * facts[f"apart_{foot}"] for place in range(3)]
    changes = [
        1 / atmospheres(top, system) - 1 / atmospheres(top + facts[f"length_{foot}"], system) for top in tops
    ]
    best = changes.index((min if facts["asks_least"] else max)(changes))
    assert problem.key.right == ("shallowest-stretch", "middle-stretch", "deepest-stretch")[best]
    assert sorted(changes)[-1] > sorted(changes)[-2] * Fraction(6, 5)


@pytest.mark.parametrize("slug", ["box-on-ascent", "spill-depth"])
def test_what_rises_carries_the_caution_of_the_held_breath(slug):
    assert "never hold your breath" in draw(slug, 0, "us").caution


@pytest.mark.parametrize("slug", ["between-depths", "shallow-metres"])
def test_what_may_go_either_way_carries_it_on_the_way_up(slug):
    problems = [draw(slug, seed, "metric") for seed in range(40)]
    assert all(bool(one.caution) == bool(one.facts["is_up"]) for one in problems)
    assert {bool(one.caution) for one in problems} == {True, False}


@pytest.mark.parametrize("system", ["us", "metric"])
def test_spilling_left_out_is_named(system):
    problem = draw("box-on-ascent", 9, system)
    facts, foot = problem.facts, FOOT[system]
    air = facts[f"room_{VOLUME[system]}"] * facts["filled_percent"] / 100
    grown = air * float(atmospheres(facts[f"from_{foot}"], system) / atmospheres(facts[f"to_{foot}"], system))
    judged = judge({"answer": f"{grown:.4g} {VOLUME[system]}"}, problem.key)
    assert (judged.verdict, judged.slip) == ("slip", "spilling-ignored")
