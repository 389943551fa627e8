"""The cohort board: a table that can be read aloud, at a cost that does not grow with the cohort."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from course.demo.factories import PersonFactory
from course.desks.boards import lay_out
from course.desks.filters import Wish
from quizzes import actions, queries
from quizzes.competencies import COMPETENCIES
from quizzes.models import Standing
from tests.course.boards import board, head_of, names, rows_of, text_of


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


def test_each_row_says_the_state_of_every_competency_in_a_word(desk, quay):
    head, row, sums = rows_of(board(desk, quay.cohort))
    titles = [competency.title for competency in COMPETENCIES.values()]
    assert head == " ".join(["Trainee", "Idle days", *titles])
    states = ["held waits for an instructor" if slug == "boyle" else "not started" for slug in COMPETENCIES]
    assert row == " ".join(["Given Trainee", "0", *states])
    sum_words = [f"1 {state.split(' waits')[0]} ," for state in states]
    assert sums == " ".join(["All 1", "longest 0", *sum_words])


def test_each_state_is_a_shape_as_well_as_a_word_in_rows_and_sums(desk, quay):
    markup = board(desk, quay.cohort).text
    for part in (markup.split("<tbody>")[1].split("</tbody>")[0], markup.split("<tfoot>")[1]):
        assert part.count("<svg") == part.count('class="state-word"') == len(COMPETENCIES)


def test_whoever_waits_for_the_instructor_stands_above_the_table(desk, quay):
    text = text_of(board(desk, quay.cohort).text)
    assert "Waiting for an instructor Given Trainee : Boyle's law" in text
    assert "Given Trainee : Boyle's law" in text_of(board(desk, quay.cohort, state="met").text)
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
    assert sums.startswith("All 4 longest 0; 3 without an answer 4 not started ,")
    assert sums.count("1 held , 3 not started ,") == 1


def test_the_sums_count_who_is_shown(desk, quay):
    quay.cohort.trainees.add(*PersonFactory.create_batch(3))
    sums = rows_of(board(desk, quay.cohort, state="held", competency="boyle"))[-1]
    assert sums == "1 of 4 longest 0 1 held ,"


def test_idle_days_count_from_the_last_move_in_any_competency(desk, quay):
    trainee, now = quay.people["trainee"], timezone.now()
    Standing.objects.filter(learner=trainee).update(moved_at=now - timedelta(days=30))
    Standing.objects.filter(learner=trainee, competency="boyle").update(moved_at=now - timedelta(days=12))
    assert rows_of(board(desk, quay.cohort))[1].startswith("Given Trainee 12 ")
    Standing.objects.filter(learner=trainee).update(moved_at=None)
    assert rows_of(board(desk, quay.cohort))[1].startswith("Given Trainee no answer yet ")


def test_a_state_on_the_board_is_the_one_the_standing_shows(quay):
    """The board reads columns, the trainee's page whole standings: both by the one rule."""
    row = Standing.objects.get(learner=quay.people["trainee"], competency="boyle")
    today = timezone.localdate()
    row.met_on = today - timedelta(days=400)
    for notice, due in ((-2, -1), (-1, 0), (0, 1), (1, 2)):
        row.state, row.notice_on, row.due_on = "met", today + timedelta(notice), today + timedelta(due)
        row.save()
        stands = {slug: stand for _, slug, stand in queries.stands_of([row.learner_id])}
        assert stands["boyle"] is queries.STANDS[row.shown_state, row.waits]


def test_a_board_of_sixty_costs_as_many_queries_as_a_board_of_one(desk, quay, boyle):
    def cost():
        with CaptureQueriesContext(connection) as captured:
            board(desk, quay.cohort, state="not-started", sort="-idle")
        return len(captured)

    few = cost()
    trainees = PersonFactory.create_batch(59)
    quay.cohort.trainees.add(*trainees)
    for trainee in trainees[:5]:
        actions.start_practice(learner=trainee, competency=boyle)
    assert cost() == few <= 7


def test_a_board_reads_summaries_and_never_the_answers(quay):
    trainees = [(person.pk, person.name) for person in quay.people.values()]
    with CaptureQueriesContext(connection) as captured:
        assert lay_out(trainees, Wish(sort="-idle", idle=0)).size == len(trainees)
    assert len(captured) == 2
    assert "quizzes_attempt" not in str(captured.captured_queries)


def test_an_instructor_who_learns_in_the_cohort_does_not_read_their_own_row(desk, quay):
    quay.cohort.trainees.add(quay.people["instructor"])
    assert names(board(desk, quay.cohort)) == ["Given Trainee"]


def test_an_empty_cohort_says_how_trainees_get_there(desk, quay):
    quay.cohort.trainees.clear()
    assert "No trainee yet" in board(desk, quay.cohort).text


def test_the_heads_name_their_columns_and_one_says_how_it_is_sorted(desk, quay):
    markup = head_of(board(desk, quay.cohort))
    assert markup.count('scope="col"') == markup.count("<a ") == len(COMPETENCIES) + 2
    assert markup.count("aria-sort") == markup.count('aria-sort="ascending"><a id="sort-name"') == 1


def test_the_list_of_cohorts_holds_ones_own_for_an_instructor_and_all_for_an_officer(desk, quay):
    mine = desk.get(reverse("desks:cohorts")).text
    assert "Slipway" in mine
    assert "Boathouse" not in mine
    desk.force_login(quay.people["officer"])
    assert "Boathouse" in desk.get(reverse("desks:cohorts")).text
