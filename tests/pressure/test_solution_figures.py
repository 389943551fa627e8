"""The drawing beside a worked solution says what was given and found, fits its frame and hides nothing."""

import json
from html import escape
from itertools import combinations
from pathlib import Path
from statistics import median
from time import perf_counter
from xml.etree import ElementTree

import pytest
from django.template.loader import render_to_string
from django.urls import reverse

from pressure import catalogue, record
from pressure.draw import draw, walk
from pressure.figures.catalogue import figures, render
from pressure.figures.solutions import LAYOUTS, figure_for
from pressure.problem import ChoiceKey, Key, TableKey
from pressure.units import shown
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt
from tests.quizzes.conftest import wrong_text

FAMILIES = [family for family in catalogue.families().values() if family.topic != "questions"]
"""An authored question has no numbers to draw."""
SET = [(family, system) for family in FAMILIES for system in family.systems]
DRAWS = 60
TAGS = {"svg", "title", "desc", "g", "path", "circle", "rect", "text", "tspan"}
STYLES = Path(__file__).resolve().parents[2] / "static" / "css" / "apparatus.css"
LETTER, BOLD, LINE = 7.5, 8.3, 15.0
"""How much room a letter takes at most on the average, and a line."""
every_family = pytest.mark.parametrize(
    ("family", "system"), SET, ids=lambda each: getattr(each, "slug", each)
)


def solved(family, system, most=DRAWS):
    """Problems with their figures and the drawings read back."""
    for seed in range(min(most, len(walk(family, system)))):
        problem = draw(family, seed, system)
        figure = figure_for(problem, family.topic)
        page = render(figure.name, figure.facts, figure.words)
        yield problem, figure, ElementTree.fromstring(page)  # noqa: S314 (our own markup)


def local(element):
    return element.tag.rpartition("}")[2]


def labels(root):
    """Each label with the frame it takes up: left, right and middle height."""
    for each in root.iter():
        if local(each) == "text":
            words = "".join(each.itertext())
            wide = len(words) * (BOLD if each.get("font-weight") else LETTER)
            back = {"start": 0.0, "middle": wide / 2, "end": wide}[each.get("text-anchor")]
            left = float(each.get("x")) - back
            yield words, left, left + wide, float(each.get("y"))


def answers(problem):
    cells = problem.key.cells if isinstance(problem.key, TableKey) else [problem.key]
    return [shown(one.answer, one.asked.unit, one.asked.kind) for one in cells if isinstance(one, Key)]


def givens(problem):
    quantities = [given.quantity for given in problem.givens]
    return [shown(each.value, each.unit, each.kind, given=True) for each in quantities]


@every_family
def test_each_given_and_each_answer_is_written_in_the_drawing(family, system):
    for problem, _, root in solved(family, system):
        written = [words for words, *_ in labels(root)]
        for text in (*givens(problem), *answers(problem)):
            assert any(text in words for words in written), (text, written)


@every_family
def test_what_was_asked_for_stands_out(family, system):
    for problem, _, root in solved(family, system, most=20):
        bold = ["".join(each.itertext()) for each in root.iter() if each.get("font-weight")]
        assert all(any(text in words for words in bold) for text in answers(problem))


@every_family
def test_labels_fit_the_frame_and_keep_clear_of_each_other(family, system):
    for _, _, root in solved(family, system):
        left, top, wide, high = map(float, root.get("viewBox").split())
        found = list(labels(root))
        for words, start, end, y in found:
            assert left - 4 <= start < end <= left + wide + 4, words
            assert top + 6 <= y <= top + high - 6, words
        for (one, start, end, y), (other, begin, stop, at) in combinations(found, 2):
            assert end - 6 < begin or stop - 6 < start or abs(y - at) > LINE, (one, other)


@every_family
def test_only_numbers_of_the_problem_are_written(family, system):
    for problem, _, root in solved(family, system, most=20):
        told = f"{problem.situation} {problem.convention} {answers(problem)} {givens(problem)}".split()
        known = {word.strip("'[],.?") for word in told}
        for words, *_ in labels(root):
            numbers = [word for word in words.split() if word[0].isdigit()]
            assert set(numbers) <= known, words


@every_family
def test_the_words_tell_the_same(family, system):
    for problem, figure, root in solved(family, system, most=20):
        described = next(each.text for each in root.iter() if local(each) == "desc")
        assert described == figure.words
        numbers = [text.split()[0] for text in (*givens(problem), *answers(problem))]
        assert set(numbers) <= set(described.replace(",", " ").replace(".  ", " ").replace(". ", " ").split())


@every_family
def test_the_drawing_is_plain_parts_without_styles(family, system):
    styles = STYLES.read_text()
    for _, _, root in solved(family, system, most=5):
        for part in root.iter():
            assert local(part) in TAGS
            assert f".{part.get('class', 'figure')} " in styles
            assert not [name for name in part.attrib if name.startswith("on") or name in ("style", "href")]


def test_every_topic_is_laid_out_by_its_own_drawing():
    assert {family.topic for family in FAMILIES} == set(LAYOUTS)
    names = {figure_for(draw(family, 1, system), family.topic).name for family, system in SET}
    assert names <= set(figures()) - {"values"}


def test_a_topic_without_a_layout_lists_its_values():
    problem = draw("volume-on-ascent", 4, "us")
    figure = figure_for(problem, "something new")
    page = render(figure.name, figure.facts, figure.words)
    assert all(text in page for text in (*givens(problem), *answers(problem)))


def test_bars_are_as_long_as_the_volumes():
    """1 ft³ at 6 atm becomes 3 ft³ at 2 atm; common practice, no source."""
    problem = next(
        each
        for each in (draw("volume-on-ascent", seed, "us") for seed in range(3000))
        if (each.facts["from_ft"], each.facts["to_ft"]) == (165.0, 33.0)
    )
    facts = figure_for(problem, "Boyle").facts
    assert facts["0:size"] / facts["1:size"] == pytest.approx(3.0, rel=0.001)


def test_arrows_agree_with_the_right_option():
    for seed in range(90):
        problem = draw("greater-pressure", seed, "metric")
        assert isinstance(problem.key, ChoiceKey)
        right = next(each.text for each in problem.key.options if each.name == problem.key.right)
        facts = figure_for(problem, "mechanism").facts
        over = facts["in"] - facts["out"]
        assert right.startswith("In ") == (over > 0), right
        assert right.startswith("Neither") == (over == 0), right


def test_two_figures_on_a_page_share_no_id():
    pages = [record.key(draw("dial-reading", seed, "us"))["figure"] for seed in (1, 2)]
    page = "".join(render_to_string("pressure/_figure.html", {"figure": each}) for each in pages)
    ids = [part.split('"')[0] for part in page.split(' id="')[1:]]
    assert len(ids) == len(set(ids)) == 4


def test_what_is_stored_draws_the_same_after_json():
    figure = record.key(draw("held-breath-up", 3, "metric"))["figure"]
    again = json.loads(json.dumps(figure))
    assert render(**figure) == render(**again)


@pytest.mark.django_db
def test_the_figure_waits_for_the_answer_and_the_last_step(client, django_user_model):
    learner = django_user_model.objects.create_user("mara@quay.example", name="Mara Quill")
    client.force_login(learner)
    sitting = actions.start_practice(learner=learner, competency=COMPETENCIES["boyle"])
    attempt = Attempt.objects.get(sitting=sitting)
    words = escape(attempt.key["figure"]["words"])
    assert words not in client.get(reverse("quizzes:practice", args=["boyle"])).text
    actions.answer(learner=learner, attempt_id=attempt.pk, form={"answer": wrong_text(attempt)})
    page = reverse("quizzes:attempt", args=[attempt.pk])
    assert words not in client.get(f"{page}?steps=1").text
    assert client.get(f"{page}?steps=99").text.count(words) == 1


def test_an_attempt_stored_without_a_figure_still_reads():
    problem = draw("volume-on-ascent", 4, "us")
    key = record.key(problem)
    words = key.pop("figure")["words"]
    attempt = Attempt(shown=record.shown(problem), key=key, number=1)
    page = render_to_string("desks/_answered.html", {"attempt": attempt})
    assert key["sense"] in page
    assert words not in page
    assert "<svg" not in page


def test_a_figure_is_laid_out_and_drawn_fast_enough():
    laid, drawn = [], []
    for family, system in SET:
        problem = draw(family, 5, system)
        began = perf_counter()
        figure = figure_for(problem, family.topic)
        laid.append(perf_counter() - began)
        began = perf_counter()
        render(figure.name, figure.facts, figure.words)
        drawn.append(perf_counter() - began)
    assert median(laid) < 0.0002
    assert median(drawn) < 0.0005
