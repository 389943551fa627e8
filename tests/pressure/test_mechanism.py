"""The scenario families: of every problem they can draw, exactly one option agrees with the model."""

import re
from collections import Counter

import pytest

from pressure.airspaces.chains import chain
from pressure.airspaces.harmless import ALL
from pressure.airspaces.injuries import ESCAPES, INJURIES, NONE
from pressure.airspaces.measures import MEASURES, taken
from pressure.airspaces.misreadings import LABELS
from pressure.airspaces.model import giving_way, onset, outcome
from pressure.airspaces.spaces import SPACES
from pressure.airspaces.telling import Case, case
from pressure.airspaces.trips import TRIPS, Trip
from pressure.catalogue import families, solve
from pressure.draw import draw, walk

FAMILIES = ("chain-of-events", "greater-pressure", "name-the-injury", "what-gives-first", "what-prevents")
CHOICES = tuple(slug for slug in FAMILIES if slug != "chain-of-events")
both_systems = pytest.mark.parametrize("system", ["us", "metric"])
INJURY_BY_TITLE = {each.title: each for each in INJURIES.values()}
MEASURE_BY_TEXT = {each.text: each for each in MEASURES.values()}
AMOUNT = re.compile(r"^(In|Round) .*, by about ([\d.]+) \w+$")


def drawn(slug, system):
    family = families()[slug]
    return [draw(family, seed, system) for seed in range(len(walk(family, system)))]


def depths(problem):
    """The trip, read from the sentence that a trainee reads."""
    first = problem.situation.split(".")[0]
    unit = "ft" if problem.system == "us" else "m"
    found = re.search(rf" from (the surface|[\d.]+) ?(?:{unit})? to (the surface|[\d.]+)", first)
    if found:
        return Trip(*(0.0 if end == "the surface" else float(end) for end in found.groups()))
    at = float(re.search(rf"works at ([\d.]+) {unit}", first)[1])
    return Trip(at, at)


def told_in(problem):
    """The circumstances that the prompt tells, on the trip that it names: nothing is asked of the family."""
    trip = depths(problem)
    named = case(problem.system, ALL[0], 0).named
    told = [each for each in ALL if f" {each.told}" in problem.situation]
    sentences = Counter(each.told for each in told)
    # Long and short dives on one breath are told in one sentence: there the trip says which it is.
    return [
        Case(each, trip, named)
        for each in told
        if sentences[each.told] == 1 or trip in TRIPS[problem.system][each.trips]
    ]


def agreeing(problem, agrees):
    return [option.name for option in problem.key.options if agrees(option.text)]


@both_systems
def test_one_injury_is_what_the_model_finds(system):
    for problem in drawn("name-the-injury", system):
        (of,) = told_in(problem)
        found = outcome(of.circumstance, of.trip, of.named).injury
        if "A lung tears" in problem.situation:
            assert found == "lung-overexpansion"
            signs = {each for each in ESCAPES if INJURIES[each].signs[1:] in problem.situation}
            assert agreeing(problem, lambda text: INJURY_BY_TITLE[text].name in signs) == ["right"]  # noqa: B023
        else:
            assert agreeing(problem, lambda text: INJURY_BY_TITLE[text].name == found) == ["right"]  # noqa: B023


@both_systems
def test_one_side_and_size_is_what_the_model_finds(system):
    for problem in drawn("greater-pressure", system):
        (of,) = told_in(problem)
        found = outcome(of.circumstance, of.trip, of.named)
        assert agreeing(problem, lambda text: says(text, found)) == ["right"]  # noqa: B023


def says(text, found):
    """Whether an option claims this side and, to its three figures, this size."""
    claim = AMOUNT.match(text)
    if claim is None:
        return text.startswith("Neither") and found.side is None
    side = "inside" if claim[1] == "In" else "outside"
    return side == found.side and float(claim[2]) == pytest.approx(found.difference, rel=0.005)


@both_systems
def test_one_measure_leaves_the_diver_unhurt(system):
    for problem in drawn("what-prevents", system):
        (of,) = told_in(problem)
        assert outcome(of.circumstance, of.trip, of.named).injury != NONE
        assert agreeing(problem, lambda text: mends(MEASURE_BY_TEXT[text], of)) == ["right"]  # noqa: B023


def mends(measure, of):
    return outcome(*taken(measure, of.circumstance, of.trip), of.named).injury == NONE


@both_systems
def test_one_space_is_hurt_first_or_one_tissue_gives(system):
    for problem in drawn("what-gives-first", system):
        told = told_in(problem)
        if problem.key.question.startswith("What gives way"):
            tissue = giving_way(*told[0][:3]).tissue
            assert agreeing(problem, lambda text: text[1:] == tissue[1:]) == ["right"]  # noqa: B023
        else:
            first = earliest(told)
            assert agreeing(problem, lambda text: text[1:] == first[1:]) == ["right"]  # noqa: B023


def earliest(told):
    """The space whose harm has begun at the latest before that of any other can begin, or none."""
    begun = {of.circumstance.space.text: found for of in told if (found := onset(*of[:3]))}
    if not begun:
        return "None of them"
    surely_first = [
        text
        for text, mine in begun.items()
        if all(mine.latest < other.soonest for name, other in begun.items() if name != text)
    ]
    (first,) = surely_first
    return first


@both_systems
def test_a_chain_has_one_order_in_which_each_event_finds_what_it_needs(system):
    for problem in drawn("chain-of-events", system):
        (of,) = told_in(problem)
        injury = next(
            each for each in INJURY_BY_TITLE if f"in this: {each[1:]}" in lowered(problem.situation)
        )
        escape = INJURY_BY_TITLE[injury].name
        events = chain(*of[:3], escape if escape in ESCAPES else "")
        needs = {each.name: each.after for each in events}
        assert {item.name for item in problem.key.items} == set(needs)
        assert problem.key.right == only_order(needs)


def lowered(text):
    return re.sub(r"in this: \w", "in this: ", text)


def only_order(needs):
    """The one order in which every event comes after the event it needs; fails where there are several."""
    order = [""]
    while len(order) <= len(needs):
        ready = [name for name, after in needs.items() if after == order[-1]]
        assert len(ready) == 1
        order += ready
    return tuple(order[1:])


@both_systems
@pytest.mark.parametrize("slug", CHOICES)
def test_wrong_options_name_a_misreading_and_explain_it(slug, system):
    for problem in drawn(slug, system):
        assert len(problem.key.options) == 4
        for option in problem.key.options:
            known = any(option.name.startswith(name) and option.label == LABELS[name] for name in LABELS)
            assert known or option.name == "right"
            assert len(option.why) > 20


def test_every_misreading_is_offered_somewhere():
    offered = {
        option.label for slug in CHOICES for problem in drawn(slug, "us") for option in problem.key.options
    }
    assert offered - {""} == set(LABELS.values())


@both_systems
@pytest.mark.parametrize("slug", FAMILIES)
def test_hazards_carry_the_caution_and_solutions_their_sources(slug, system):
    problem = draw(slug, 5, system)
    assert "not a dive plan, a decompression schedule or medical advice" in problem.caution
    assert len(solve(problem)) >= 2


@pytest.mark.parametrize("slug", FAMILIES)
def test_each_family_has_hundreds_of_different_problems(slug):
    for system in ("us", "metric"):
        assert len({problem.situation for problem in drawn(slug, system)}) >= 500


def test_spaces_named_in_options_are_spaces_of_the_model():
    texts = {each.text[1:] for each in SPACES.values()} | {"one of them"}
    for problem in drawn("what-gives-first", "us"):
        if problem.key.question.startswith("Which"):
            assert {option.text[1:] for option in problem.key.options} <= texts
