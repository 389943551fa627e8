"""What a wrong number would have meant: true by outside values, and silent where there is nothing to say."""

import json
import re

import pytest

from pressure import catalogue, record
from pressure.draw import draw, key_of
from pressure.marking import Judged
from pressure.meanings import Case, meaning
from pressure.mixing import mix
from pressure.problem import Key, Problem
from pressure.remarks import difference, told_more

NUMBERS = [
    (family.slug, system)
    for family in catalogue.families().values()
    for system in family.systems
    if isinstance(draw(family, 0, system).key, Key)
]


def put(slug, system, **facts):
    """A problem with these numbers, whether or not a draw would ever ask them."""
    family = catalogue.family(slug)
    whole = {axis.name: axis.values[0] for axis in family.axes[system]} | facts
    posed = family.pose(system, whole)
    return Problem(
        slug, family.edition, 0, system, 0, whole, posed.situation, posed.convention, posed.givens,
        key_of(posed), posed.sense, posed.caution,
    )  # fmt: skip


def said(problem, value):
    return meaning(record.shown(problem), problem.key.answer, value)


# Outside values: the second number of each sentence follows from the first by the source named.
@pytest.mark.parametrize(
    ("slug", "system", "facts", "value", "sentence"),
    [
        # 33 ft of sea water to an atmosphere: 132 fsw are 5 ata (US Navy Diving Manual, ch. 12), 4 of water.
        (
            *("depth-to-gauge", "us", {"depth_ft": 99.0, "is_fresh": 0.0}, 58.8),
            "58.8 psi gauge would be so at 132 ft, not at 99 ft.",
        ),
        (
            *("depth-to-absolute", "us", {"depth_ft": 99.0, "is_fresh": 0.0}, 73.5),
            "73.5 psi absolute would be so at 132 ft, not at 99 ft.",
        ),
        # 60 m of sea are 7 atmospheres absolute (Scott et al., J Appl Physiol 130:1490, 2021).
        (
            *("depth-to-absolute", "metric", {"depth_m": 50.0, "is_fresh": 0.0}, 7.0),
            "7.00 bar absolute would be so at 60.0 m, not at 50 m.",
        ),
        # 57 ft of fresh water: 39.3 psi absolute (teaching sheet, undated, low authority).
        (
            *("absolute-to-depth", "us", {"absolute_psi": 44.5, "is_fresh": 1.0}, 57.0),
            "At 57.0 ft the pressure is 39.3 psi absolute, not 44.5 psi absolute.",
        ),
        # 1.0 % at 132 fsw is 0.05 ata, a surface equivalent of 5 % (formula recalled, example by arithmetic).
        (
            *("surface-equivalent", "us", {"depth_ft": 99.0, "share_percent": 1.0}, 5.0),
            "5.00 % would be so at 132 ft, not at 99 ft.",
        ),
        # Lungs of 6.0 L down to 1.2 L: a ratio of 5, 132 ft (arithmetic on Boyle's law).
        (
            *("residual-volume-depth", "us", {"total_L": 6.0, "residual_L": 1.5}, 132.0),
            "At 132 ft the air would take up 1.20 L, not 1.5 L.",
        ),
        # A free rise of 33 ft doubles a volume: from 4 ata to 2 ata (common practice, no source).
        (
            *("volume-on-ascent", "us", {"volume_ft3": 4.0, "from_ft": 99.0, "to_ft": 0.0}, 8.0),
            "8.00 ft³ would be so at 33.0 ft, not at the surface.",
        ),
    ],
)
def test_a_wrong_number_is_told_where_it_would_have_been_right(slug, system, facts, value, sentence):
    assert said(put(slug, system, **facts), value) == sentence


@pytest.mark.parametrize(
    ("slug", "facts", "share", "sentence"),
    [
        ("cylinder-endurance", {}, 2.0, "You would have counted on {told} of air where there are {due}."),
        ("use-at-depth", {}, 0.5, "You would have planned {told} of air for a dive that takes {due}."),
        ("overpressure-rise", {}, 4.0, "You would have counted on a rise of {told}; {due} makes that"),
        (
            "lift-bag-fill",
            {},
            0.5,
            "With {told} of surface air the load stays down: {told} would be missing.",
        ),
        ("volume-to-vent", {}, 0.5, "With {told} let out, {told} too much would stay in the lungs."),
        ("volume-to-vent", {}, 2.0, ""),
    ],
)
def test_a_plan_made_with_a_wrong_number_is_told_beside_what_is_there(slug, facts, share, sentence):
    problem = draw(slug, 3, "us")
    texts = [record.key(problem)["answer_text"]]
    texts.append(record.text_of(problem.key.answer * share, problem.asked.unit))
    assert said(problem, problem.key.answer * share).startswith(sentence.format(due=texts[0], told=texts[1]))


def test_beyond_the_limit_of_a_mix_is_said_so():
    # 36 % oxygen reaches 1.3 ata where 0.36 × (D + 33)/33 does; at 132 ft, 5 ata, it presses 1.8 ata.
    problem = put("depth-for-partial-pressure", "us", limit_atm=1.3, oxygen_percent=36.0, is_fresh=0.0)
    said_ = said(problem, 132.0)
    assert said_ == "At 132 ft the oxygen presses with 1.80 ata, not 1.3 ata. That is beyond the limit."
    assert "beyond" not in said(problem, 33.0)


def test_air_alone_presses_more_than_too_small_an_absolute_pressure():
    problem = put("depth-to-absolute", "us", depth_ft=66.0, is_fresh=0.0)
    assert said(problem, 3.0) == "No water has so little: the air alone presses with 14.7 psi."


def test_a_mixed_form_is_told_in_its_unit_and_reckoned_in_the_plain_one():
    form = mix(draw("depth-to-gauge", 3, "us"))
    assert form.givens[0].quantity.value == 53.0
    # 58.8 psi is 4.05412 bar by NIST's factor 6.894757 kPa; four atmospheres of 33 ft each.
    assert said(form, 4.05412) == "4.05 bar gauge would be so at 132 ft, not at 53 ft."


@pytest.mark.parametrize(("slug", "system"), NUMBERS)
def test_every_wrong_number_of_every_family_is_told_in_one_clean_sentence_or_none(slug, system):
    for seed in range(40):
        for problem in filter(None, (draw(slug, seed, system), mix(draw(slug, seed, system)))):
            shown = json.loads(json.dumps(record.shown(problem)))
            for value in (*(one.low for one in problem.key.slips), problem.key.answer * 37, 1e-6, -3.0):
                sentence = meaning(shown, problem.key.answer, value)
                assert sentence == "" or re.fullmatch(r"[A-Z0-9][^{}]*\.", sentence), sentence
                assert not re.search(r"nan|inf\b|e[+-]\d|-\d+ (?:ft|m)\b", sentence), sentence
            assert meaning(shown, problem.key.answer, problem.key.answer) == ""


def test_a_family_that_is_not_known_says_nothing():
    shown = record.shown(draw("depth-to-gauge", 3, "us")) | {"family": "long-gone"}
    assert meaning(shown, 20.0, 40.0) == ""


@pytest.mark.parametrize(
    ("value", "sentence"),
    [
        (500.0, "It is 10 times too large: look where the decimal point went."),
        (0.0499, "It is 1,000 times too small: look where the decimal point went."),
        (51.5, "It is 3 % too large: keep every figure, round at the end."),
        (160.0, "It is too large: about 3.2 times the answer."),
        (20.0, "It is too small: the answer is about 2.5 times as much."),
        (-50.0, "The answer is above nought."),
    ],
)
def test_a_wrong_number_that_no_slip_explains_is_told_how_it_lies_to_the_answer(value, sentence):
    assert difference(50.0, value) == sentence


def test_what_mends_comes_first_then_what_it_would_have_meant():
    problem = put("depth-to-gauge", "us", depth_ft=99.0, is_fresh=0.0)
    shown, key = record.shown(problem), record.key(problem)
    slip = Judged("slip", "58.8 psi", "58.8 psi gauge", "atmosphere-added", "added", "Take it off.", 58.8)
    mend, meant = told_more(slip, shown, key).mend.split("\n")
    assert (mend, meant) == ("Take it off.", "58.8 psi gauge would be so at 132 ft, not at 99 ft.")
    right = Judged("right", "44.1 psi", "44.1 psi gauge", value=44.1)
    assert told_more(right, shown, key) == right


BY_WATER = (
    "depth-to-gauge",
    "depth-to-absolute",
    "gauge-to-depth",
    "absolute-to-depth",
    "helmet-supply-loss",
)


@pytest.mark.parametrize(("slug", "system"), [pair for pair in NUMBERS if pair[0] in BY_WATER])
def test_what_it_would_have_meant_is_reckoned_in_the_water_of_the_prompt(slug, system):
    for seed in range(12):
        problem = draw(slug, seed, system)
        water = Case(record.shown(problem), 1.0, 2.0).water.water
        assert water == ("fresh" if problem.facts["is_fresh"] else "sea")
