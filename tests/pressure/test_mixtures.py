"""Mixtures: the parts add up, depth multiplies, and the problems say what the course leaves out."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pressure.cautions import BEFORE_DECOMPRESSION, STANDARD
from pressure.draw import draw
from pressure.laws import dalton
from pressure.marking import judge

shares = st.floats(1e-6, 1.0)
pressures = st.floats(0.1, 1e3)
OXYGEN_AND_NITROGEN = ["partial-pressure", "depth-for-partial-pressure"]
FOUL = ["surface-equivalent", "contaminant-at-depth"]


@given(st.lists(st.floats(1e-3, 1.0), min_size=1, max_size=6), pressures)
def test_the_parts_add_up_to_the_whole(amounts, total):
    parts = [dalton.partial_pressure(amount / sum(amounts), total) for amount in amounts]
    assert sum(parts) == pytest.approx(total)


@given(shares, pressures)
def test_share_part_and_whole_lead_back_to_each_other(share, total):
    part = dalton.partial_pressure(share, total)
    assert dalton.share(part, total) == pytest.approx(share)
    assert dalton.total_for(part, share) == pytest.approx(total)


@given(shares, st.floats(1.0, 30.0))
def test_the_surface_equivalent_presses_as_much_at_the_surface(share, atmospheres):
    there = dalton.partial_pressure(share, atmospheres)
    assert dalton.partial_pressure(dalton.surface_equivalent(share, atmospheres), 1.0) == pytest.approx(there)


@pytest.mark.parametrize("share", [0.0, -0.21])
def test_a_gas_that_is_not_there_reaches_no_pressure(share):
    with pytest.raises(ValueError, match="not in the mixture"):
        dalton.total_for(1.4, share)


@pytest.mark.parametrize("system", ["us", "metric", "si"])
def test_oxygen_and_nitrogen_of_one_dive_add_up_to_the_absolute_pressure(system):
    from pressure.families.partial_pressure import FAMILY

    depth = "depth_ft" if system == "us" else "depth_m"
    facts = {depth: 30.0, "oxygen_percent": 32.0, "scene": 0.0}
    parts = [FAMILY.pose(system, facts | {"is_nitrogen": n}).accepted[0] for n in (0.0, 1.0)]
    whole = {"us": 1 + 30 / 33, "metric": 4.0, "si": 101.325 + 30 * 1025.18 * 9.80665 / 1000}
    assert sum(parts) == pytest.approx(whole[system])


@pytest.mark.parametrize("slug", OXYGEN_AND_NITROGEN)
def test_a_problem_about_oxygen_or_nitrogen_stops_short_of_decompression(slug):
    caution = draw(slug, 1, "us").caution
    assert BEFORE_DECOMPRESSION in caution
    assert caution.endswith(STANDARD)


@pytest.mark.parametrize("slug", FOUL)
def test_a_problem_about_bad_air_carries_the_caution(slug):
    assert draw(slug, 1, "metric").caution.endswith(STANDARD)


@pytest.mark.parametrize("gas", ["carbon monoxide", "carbon dioxide"])
def test_a_trace_is_named_and_its_caution_speaks_of_it(gas):
    problems = [draw("contaminant-at-depth", seed, "us") for seed in range(40)]
    named = [problem for problem in problems if gas in problem.situation]
    assert named
    assert all(problem.caution.lower().startswith(gas) for problem in named)


@pytest.mark.parametrize("system", ["us", "metric"])
def test_oxygen_in_the_problems_stays_within_what_divers_breathe(system):
    problems = [draw("partial-pressure", seed, system) for seed in range(2000)]
    oxygen = [problem.answer.value for problem in problems if not problem.facts["is_nitrogen"]]
    assert 0.16 < min(oxygen) < max(oxygen) <= 1.61


def test_the_same_pressure_in_another_unit_is_right_and_a_gauge_mark_is_not():
    problem = draw("partial-pressure", 4, "metric")
    bars = problem.answer.value
    assert judge({"answer": f"{bars * 100:.2f} kPa"}, problem.key).verdict == "right"
    marked = judge({"answer": f"{bars:.3f} bar gauge"}, problem.key)
    assert marked.slip == "wrong_mark"


def test_per_cent_for_the_fraction_is_named_and_mended():
    problem = draw("partial-pressure", 4, "us")
    judged = judge({"answer": f"{problem.answer.value * 100:.1f} ata"}, problem.key)
    assert judged.slip == "percent-for-fraction"
    assert "hundred times too much" in judged.mend
