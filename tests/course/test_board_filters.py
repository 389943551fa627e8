"""What a board is asked to show: chosen in the address, kept in every link, forgiven where it is wrong."""

import re
from datetime import timedelta
from html import unescape

import pytest
from django.utils import timezone

from course.demo.factories import PersonFactory
from course.desks.filters import BoardForm
from course.lessons.library import lessons
from quizzes.competencies import COMPETENCIES
from quizzes.models import Standing
from tests.course.boards import board, head_of, names, text_of

CAST = {
    # name: (state in Boyle's law, state in air supply, days since the last move)
    "Ada Reef": ("met", None, 3),
    "Bo Kelp": ("practising", "met", 40),
    "Cy Moor": ("held", "practising", 14),
    "Di Fend": (None, None, None),
}


@pytest.fixture
def cohort(quay):
    """Four trainees of known standing, in the place of the one who is there."""
    today, quay_cohort = timezone.localdate(), quay.cohort
    people = [PersonFactory(name=name) for name in CAST]
    quay_cohort.trainees.set(people)
    for person, (boyle, supply, days) in zip(people, CAST.values(), strict=True):
        for slug, state in (("boyle", boyle), ("air-supply", supply)):
            if state:
                Standing.objects.create(
                    learner=person, competency=slug, state=state, met_on=today,
                    due_on=today + timedelta(days=300), moved_at=timezone.now() - timedelta(days=days),
                )  # fmt: skip
    return quay_cohort


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


@pytest.mark.parametrize(
    ("query", "shown"),
    [
        ({}, "Ada Bo Cy Di"),
        ({"state": "met"}, "Ada Bo"),
        ({"state": "met", "competency": "boyle"}, "Ada"),
        ({"state": "not-started", "competency": "boyle"}, "Di"),
        ({"state": "held", "competency": "lesson:boyle"}, "Cy"),
        ({"idle": "14"}, "Bo Cy Di"),
        ({"idle": "15"}, "Bo Di"),
        ({"idle": "0"}, "Ada Bo Cy Di"),
        ({"idle": "14", "state": "practising"}, "Bo Cy"),
        ({"state": "lapsed"}, ""),
        ({"sort": "-name"}, "Di Cy Bo Ada"),
        ({"sort": "idle"}, "Ada Cy Bo Di"),
        ({"sort": "-idle"}, "Di Bo Cy Ada"),
        ({"sort": "boyle"}, "Cy Di Bo Ada"),
        ({"sort": "-boyle"}, "Ada Bo Di Cy"),
        ({"sort": "-air-supply", "idle": "14"}, "Bo Cy Di"),
    ],
)
def test_the_board_shows_who_was_asked_for_in_the_order_asked_for(desk, cohort, query, shown):
    assert [name.split()[0] for name in names(board(desk, cohort, **query))] == shown.split()


def test_whoever_waits_for_an_instructor_comes_before_whoever_is_merely_held(desk, cohort):
    waits = PersonFactory(name="Zed Sluice")
    cohort.trainees.add(waits)
    Standing.objects.create(learner=waits, competency="boyle", state="held", waits=True)
    assert names(board(desk, cohort, sort="boyle"))[:2] == ["Zed Sluice", "Cy Moor"]


@pytest.mark.parametrize("within", ["boyle", "lesson:boyle"])
def test_a_lesson_or_competency_narrows_the_columns(desk, cohort, within):
    own = lessons()["boyle"].competencies if within.startswith("lesson") else ("boyle",)
    titles = " ".join(["Trainee", "Idle days", *(COMPETENCIES[slug].title for slug in own)])
    assert text_of(head_of(board(desk, cohort, competency=within))) == titles


@pytest.mark.parametrize(
    ("query", "sentence"),
    [
        ({"state": "sunk"}, "The board knows no such state. Every state is shown."),
        ({"competency": "knots"}, "The course has no such lesson or competency."),
        ({"competency": "lesson:knots"}, "The course has no such lesson or competency."),
        ({"idle": "soon"}, "Write whole days, such as 14. Everybody is shown."),
        ({"idle": "2.5"}, "Write whole days, such as 14."),
        ({"idle": "-1"}, "Days idle are not negative."),
        ({"idle": "9" * 5000}, "Everybody is shown."),
        ({"sort": "shoe-size"}, "The board has no such column to sort by. It is sorted by name."),
        ({"sort": "--name"}, "The board has no such column to sort by."),
        ({"sort": "air-supply", "competency": "boyle"}, "The board has no such column to sort by."),
    ],
)
def test_what_cannot_be_read_is_said_and_left_out(desk, cohort, query, sentence):
    answer = board(desk, cohort, **query)
    assert answer.status_code == 200
    assert sentence in text_of(answer.text)
    assert names(answer) == list(CAST)


def test_what_is_right_is_kept_beside_what_is_wrong_and_what_was_typed_stays(desk, cohort):
    answer = board(desk, cohort, state="held", idle="<soon>")
    assert names(answer) == ["Cy Moor"]
    field = re.search(r'<input type="text" name="idle"[^>]*>', answer.text)[0]
    assert 'value="&lt;soon&gt;"' in field
    assert 'aria-invalid="true"' in field
    assert 'aria-describedby="board-idle_error"' in field


def test_every_head_keeps_the_filters_and_turns_the_order_round(desk, cohort):
    answer = board(desk, cohort, state="met", competency="lesson:boyle", idle="2", sort="boyle")
    links = dict(re.findall(r'id="sort-([^"]+)" href="[^"?]*(\?[^"]*)"', head_of(answer)))
    kept = "?state=met&competency=lesson:boyle&idle=2"
    assert unescape(links["boyle"]) == f"{kept}&sort=-boyle"
    assert unescape(links["idle"]) == f"{kept}&sort=-idle"
    assert unescape(links["name"]) == kept
    assert 'aria-sort="ascending"><a id="sort-boyle"' in head_of(answer)


def test_the_form_keeps_the_order(desk, cohort):
    assert '<input type="hidden" name="sort" value="-idle" />' in board(desk, cohort, sort="-idle").text


def test_what_is_shown_is_said_in_words(desk, cohort):
    text = text_of(board(desk, cohort, state="held", competency="boyle", idle="1", sort="-idle").text)
    said = "1 of 4 trainees: held in Boyle's law, idle 1 day or more; sorted by idle days, longest first."
    assert said in text


def test_when_nobody_is_like_that_the_board_says_so_and_leads_back(desk, cohort):
    text = text_of(board(desk, cohort, state="lapsed").text)
    assert "0 of 4 trainees" in text
    assert "Nobody is like that today." in text


def test_an_address_read_back_is_the_wish_that_wrote_it():
    for text in ("state=due&competency=lesson:boyle&idle=0&sort=-boyle", "idle=9999", "sort=-name", ""):
        form = BoardForm(dict(pair.split("=") for pair in text.split("&") if pair))
        assert form.wish.address == f"?{text}"
