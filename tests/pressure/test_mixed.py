"""The mixed form: the same numbers with the answer wanted in another unit, checked against pint."""

import json
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pressure import catalogue, mixed, record
from pressure.answer import mark
from pressure.draw import draw, walk
from pressure.mixing import mix
from pressure.problem import Key
from pressure.units import DIMENSIONS, registry, rounded

# What pint calls the units; weights are taken as masses there, and lb as a force beside kN.
PINT = {"ft3": "foot**3", "in3": "inch**3", "ft3/min": "foot**3/minute", "lb/ft3": "pound/foot**3"}
PINT |= {"mmHg": "millimeter_Hg", "%": "percent", "L": "liter", "mL": "milliliter", "L/min": "liter/minute"}
PINT |= {"g/L": "gram/liter"}
SET = [
    (family.slug, system)
    for family in catalogue.families().values()
    for system in family.systems
    if isinstance(draw(family, 0, system).key, Key)
]
SOME = st.tuples(st.sampled_from(SET), st.integers(0, 10**6))


def by_pint(value, old, new):
    old = "pound_force" if (old, new) == ("lb", "kN") else PINT.get(old, old)
    return registry().Quantity(value, old).to(PINT.get(new, new)).magnitude


def mixed_form(slug, system):
    """The first mixed form of a family, if it has one."""
    places = min(40, len(walk(catalogue.family(slug), system)))
    return next(filter(None, (mix(draw(slug, seed, system)) for seed in range(places))), None)


def test_units_are_mixed_only_with_units_of_the_same_dimension():
    assert [pair for pair in mixed.OTHER.items() if DIMENSIONS[pair[0]] != DIMENSIONS[pair[1]]] == []


@settings(max_examples=150, deadline=None)
@given(SOME)
def test_the_answer_and_its_band_are_those_of_the_plain_problem_as_pint_turns_them(some):
    (slug, system), seed = some
    plain = draw(slug, seed, system)
    form = mix(plain)
    if form is None:
        return
    old, new = plain.asked.unit, form.asked.unit
    for was, now in ((plain.key.answer, form.key.answer), (plain.key.low, form.key.low)):
        assert now == pytest.approx(by_pint(was, old, new), rel=1e-6)
    assert form.key.high / form.key.low == pytest.approx(plain.key.high / plain.key.low)
    kept = {slip.name: slip for slip in form.key.slips}
    for slip in plain.key.slips:
        if slip.name in kept and slip.name not in mixed.OF_THE_UNIT:
            assert kept[slip.name].low == pytest.approx(by_pint(slip.low, old, new), rel=1e-6)


@settings(max_examples=150, deadline=None)
@given(SOME)
def test_bands_never_touch_and_the_prompt_never_holds_the_answer(some):
    (slug, system), seed = some
    form = mix(draw(slug, seed, system))
    if form is None:
        return
    bands = sorted([(form.key.low, form.key.high), *((slip.low, slip.high) for slip in form.key.slips)])
    assert all(below[1] < above[0] for below, above in pairwise(bands))
    shown, key = record.shown(form), record.key(form)
    assert not any(form.key.low <= one["value"] <= form.key.high for one in shown["givens"])
    told = f"{shown['situation']} {shown['convention']}".split()
    assert key["answer_text"].split()[0] not in [word.strip(".,?") for word in told]


@pytest.mark.parametrize(("slug", "system"), SET)
def test_a_mixed_form_reads_and_marks_the_same_from_its_record_alone(slug, system):
    form = mixed_form(slug, system)
    if form is None:
        pytest.skip("has no mixed form")
    shown, key = json.loads(json.dumps([record.shown(form), record.key(form)]))
    assert record.key_from(shown, key) == form.key
    assert shown["mixed"] == form.plain.asked.unit != shown["asked"]["unit"]
    assert form.asked.unit in ("kN", mixed.OTHER[form.plain.asked.unit])
    last = key["steps"][-1]
    assert last["why"].count("exact") or "definition" in last["why"] or "conventional" in last["why"]
    assert rounded(form.key.answer) in last["result"]["words"]
    for line in (last["relation"], last["substitution"], last["result"]):
        ElementTree.fromstring(line["mathml"])  # noqa: S314 (our own text)


@pytest.mark.parametrize(("slug", "system"), SET)
def test_the_figure_left_in_the_old_unit_is_a_slip_of_its_own(slug, system):
    form = mixed_form(slug, system)
    if form is None:
        pytest.skip("has no mixed form")
    marked = mark(f"{form.plain.key.answer:.10g} {form.asked.unit}", form.key)
    assert (marked.verdict, marked.slip_name) == ("slip", "not-converted")
    assert marked.mend.startswith("That is the figure in ")


def test_a_slip_on_the_way_speaks_of_the_number_before_the_unit_was_turned():
    # 33 ft of sea water to an atmosphere of 14.7 psi: 23.6 psi at 53 ft, as the Navy's 0.445 psi/ft has it.
    form = mix(draw("depth-to-absolute", 3, "us"))
    slip = next(one for one in form.key.slips if one.name == "atmosphere-left-out")
    marked = mark(f"{form.key.answer - by_pint(14.7, 'psi', 'bar'):.4g} bar", form.key)
    assert marked.slip == slip
    assert marked.mend.startswith(f"{marked.reading.typed} is about 22.9 psi, turned into bar. 22.9 psi is")


def test_another_unit_is_refused_with_a_sentence_and_costs_nothing():
    form = mix(draw("depth-to-absolute", 3, "us"))
    trouble = mark(f"{form.plain.key.answer:.4g} psia", form.key)
    assert trouble.code == "unit_other"
    assert trouble.sentence.endswith("Say 37.61 psi absolute in bar.")


def test_a_pressure_given_is_no_answer_to_what_it_is_in_another_unit():
    problem = draw("unit-conversion", 3, "us")
    given = problem.givens[0].quantity
    assert mark(f"{given.value:g} {given.unit}", problem.key).code == "unit_other"


@pytest.mark.parametrize("slug", ["air-table", "chain-of-events", "unit-conversion", "cylinder-endurance"])
def test_what_cannot_be_asked_in_another_unit_has_no_mixed_form(slug):
    assert mix(draw(slug, 1, "us")) is None


def test_most_families_of_one_number_have_a_mixed_form():
    without = {slug for slug, system in SET if mixed_form(slug, system) is None}
    having = {slug for slug, system in SET if mixed_form(slug, system)}
    assert len(having) >= 40
    assert without - having == {
        "unit-conversion",  # the unit is the very question
        "cylinder-endurance",  # minutes
        "contaminant-at-depth",  # parts per million
        "held-breath-down",  # a lungful in cubic feet
        "held-breath-up",
        "volume-to-vent",
    }
