"""The cohort board: a table that can be read aloud, at a cost that does not grow with the cohort."""

import re
from html import unescape

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Standing


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


def board(client, cohort):
    return client.get(reverse("desks:board", args=[cohort.pk]))


def text_of(markup):
    """The words between the tags, as they would be read aloud."""
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", markup)).split())


def rows_of(response):
    return [text_of(row) for row in re.findall(r"<tr>.*?</tr>", response.text, re.DOTALL)]


def test_each_row_says_the_state_of_every_competency_in_a_word(desk, quay):
    head, row, sums = rows_of(board(desk, quay.cohort))
    titles = [competency.title for competency in COMPETENCIES.values()]
    assert head == " ".join(["Trainee", *titles])
    states = ["held waits for an instructor" if slug == "boyle" else "not started" for slug in COMPETENCIES]
    assert row == " ".join(["Given Trainee", *states])
    assert sums == " ".join(
        ["All 1", *(f"1 {state.split()[0]}" if "held" in state else "1 not started" for state in states)]
    )


def test_whoever_waits_for_the_instructor_stands_above_the_table(desk, quay):
    text = text_of(board(desk, quay.cohort).text)
    assert "Waiting for an instructor Given Trainee : Boyle's law" in text
    Standing.objects.update(waits=False)
    assert "Waiting for an instructor" not in text_of(board(desk, quay.cohort).text)


def test_a_name_leads_to_the_trainee(desk, quay):
    link = reverse("desks:trainee", args=[quay.people["trainee"].pk])
    assert f'<a href="{link}">Given Trainee</a>' in board(desk, quay.cohort).text


def test_a_name_is_text_and_never_markup(desk, quay):
    quay.cohort.trainees.add(PersonFactory(name="<b>Otto</b> & Sons"))
    assert "&lt;b&gt;Otto&lt;/b&gt; &amp; Sons" in board(desk, quay.cohort).text


def test_the_sums_count_the_whole_cohort(desk, quay):
    quay.cohort.trainees.add(*PersonFactory.create_batch(3))
    sums = rows_of(board(desk, quay.cohort))[-1]
    assert sums.startswith("All 4 4 not started")
    assert sums.count("1 held, 3 not started") == 1


def test_a_board_of_sixty_costs_as_many_queries_as_a_board_of_one(desk, quay, boyle):
    def cost():
        with CaptureQueriesContext(connection) as captured:
            board(desk, quay.cohort)
        return len(captured)

    few = cost()
    trainees = PersonFactory.create_batch(59)
    quay.cohort.trainees.add(*trainees)
    for trainee in trainees[:5]:
        actions.start_practice(learner=trainee, competency=boyle)
    assert cost() == few <= 6


def test_an_instructor_who_learns_in_the_cohort_does_not_read_their_own_row(desk, quay):
    quay.cohort.trainees.add(quay.people["instructor"])
    assert [row.split(" not")[0] for row in rows_of(board(desk, quay.cohort))][1:-1] == ["Given Trainee"]


def test_an_empty_cohort_says_how_trainees_get_there(desk, quay):
    quay.cohort.trainees.clear()
    assert "No trainee yet" in board(desk, quay.cohort).text


def test_the_list_of_cohorts_holds_ones_own_for_an_instructor_and_all_for_an_officer(desk, quay):
    mine = desk.get(reverse("desks:cohorts")).text
    assert "Slipway" in mine
    assert "Boathouse" not in mine
    desk.force_login(quay.people["officer"])
    assert "Boathouse" in desk.get(reverse("desks:cohorts")).text
