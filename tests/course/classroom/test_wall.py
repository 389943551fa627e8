"""The wall slate: what is put up, and from where to where it goes."""

import pytest
from django.urls import reverse
from django.utils.html import conditional_escape

from course.classroom.models import Showing
from course.demo.factories import CohortFactory, PersonFactory
from quizzes import actions as learning
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.models import Attempt, JournalLine, Standing
from tests.course.classroom.conftest import TASKS, right, slip, wrong


def chosen(**said):
    return {"family": "depth-to-gauge", "system": "us", "after": 0, **said}


@pytest.mark.parametrize("family", TASKS.values())
def test_a_problem_of_any_kind_is_put_up_in_the_walls_units(room, wall, family):
    text = wall.post(room.url("put-up"), chosen(family=family), follow=True).text
    showing = room.showing
    assert (showing.family, showing.system) == (family, "us")
    assert conditional_escape(showing.shown["convention"]) in text
    assert "Open for answers" in text
    assert "<strong>0</strong> of 4 have answered" in text


def test_the_numbers_come_from_the_cohorts_deal_so_that_practice_brings_others(room):
    room.put_up("depth-to-gauge", "metric")
    learner = room.trainees[0]
    sitting = learning.start_practice(learner=learner, competency=COMPETENCIES["depth-pressure"])
    asked = {sitting.attempts.get().place} if sitting.attempts.get().family == "depth-to-gauge" else set()
    places = {room.showing.place}
    for _ in range(3):
        places.add(room.put_up("depth-to-gauge", "metric", room.showing.pk).place)
    assert len(places | asked) == 4 + len(asked)


def test_a_kind_that_does_not_come_in_the_units_is_refused_with_those_it_comes_in(room, wall):
    answer = wall.post(room.url("put-up"), chosen(family="shallow-metres", system="si"))
    assert "only. Choose that, or another kind." in answer.text
    assert '<option value="shallow-metres" selected>' in answer.text
    assert not Showing.objects.exists()


@pytest.mark.parametrize("said", [{"family": "no-such"}, {"family": ""}, {"system": "furlongs"}])
def test_what_cannot_be_put_up_is_said_at_its_field(room, wall, said):
    answer = wall.post(room.url("put-up"), chosen(**said))
    assert "Please mend this" in answer.text
    assert not Showing.objects.exists()


def test_putting_up_the_same_form_twice_puts_up_one_problem(room, wall):
    wall.post(room.url("put-up"), chosen())
    again = wall.post(room.url("put-up"), chosen(), follow=True)
    assert Showing.objects.count() == 1
    assert "moved on in another window" in again.text


def test_another_draw_takes_the_first_one_down(room):
    first = room.put_up()
    second = room.put_up(after=first.pk)
    first.refresh_from_db()
    assert (first.stage, room.showing) == ("down", second)
    assert first.place != second.place


def test_nothing_is_put_before_a_closed_cohort(room, wall):
    room.cohort.closed = True
    room.cohort.save()
    assert "put-up" not in wall.get(room.url("wall")).text
    with pytest.raises(Refused, match="cohort is closed"):
        room.put_up()


def test_the_answers_are_shown_only_after_the_close(room):
    room.put_up()
    with pytest.raises(Refused):
        room.move("spread")
    room.move("closed", "open", "closed", "closed", "spread", "spread")
    for back in ("open", "closed"):
        with pytest.raises(Refused):
            room.move(back)
    room.move("down")
    assert "Nothing is on the wall" in room.client(room.instructor).get(room.url("wall")).text


@pytest.mark.parametrize("said", [{"to": "nowhere"}, {"to": "closed", "showing": "x"}, {}])
def test_a_deed_that_is_none_changes_nothing_and_says_so(room, wall, said):
    showing = room.put_up()
    page = wall.post(room.url("move"), {"showing": showing.pk, **said}, follow=True)
    assert 'class="message warning"' in page.text
    assert room.showing.stage == "open"


def test_a_wall_of_another_cohort_is_not_moved_by_the_number_of_its_problem(room, wall):
    there = CohortFactory(instructors=[room.instructor])
    showing = room.put_up()
    url = reverse("classroom:move", args=[there.pk])
    wall.post(url, {"showing": showing.pk, "to": "closed"})
    assert room.showing.stage == "open"


def test_the_spread_counts_everybody_and_names_nobody(room, wall):
    showing = room.put_up()
    for number, form in enumerate([right(showing), slip(showing), wrong(showing)]):
        room.answer(number, form)
    room.move("closed", "spread")
    page = wall.get(room.url("wall"))
    counts = {group.words: group.count for group in page.context["spread"].groups}
    label = showing.key["slips"][0]["label"]
    right_words = f"Right: {showing.key['answer_text']}"
    assert counts == {right_words: 1, label: 1, "Another answer": 1, "No answer": 1}
    assert f"A slip: {conditional_escape(label)}" in page.text
    assert "Wren" not in page.text


def test_the_solution_opens_one_step_a_click_and_ends_with_its_figure(room, wall):
    showing = room.put_up()
    room.move("closed", "spread")
    steps = showing.key["steps"]
    for number in range(1, len(steps) + 1):
        for _ in range(2):
            page = wall.post(room.url("step"), {"showing": showing.pk, "number": number}, follow=True)
        assert len(page.context["steps"]) == number
        assert ("<figure" in page.text) == (number == len(steps) or bool(showing.shown["figure"]))
    assert conditional_escape(showing.key["sense"]) in page.text


@pytest.mark.parametrize("number", ["2", "0", "99", "-1", "one", ""])
def test_no_step_is_skipped(room, wall, number):
    showing = room.put_up()
    room.move("closed", "spread")
    wall.post(room.url("step"), {"showing": showing.pk, "number": number})
    assert room.showing.steps == 0


def test_no_step_is_shown_before_the_answers(room, wall):
    showing = room.put_up()
    for stage in ("open", "closed"):
        room.move(stage)
        wall.post(room.url("step"), {"showing": showing.pk, "number": 1})
        assert room.showing.steps == 0


def test_a_kind_named_in_the_address_is_chosen_already(room, wall):
    page = wall.get(room.url("wall"), {"family": "air-table"})
    assert '<option value="air-table" selected>' in page.text
    assert wall.get(room.url("wall"), {"family": "<script>"}).status_code == 200


def test_every_deed_stands_in_the_journal_but_class_certifies_nothing(room):
    showing = room.put_up()
    room.answer(0, right(showing))
    room.move("closed", "spread", "down")
    verbs = JournalLine.objects.filter(subject_type="classroom.showing").values_list("verb", flat=True)
    assert len(verbs) == 4
    assert not Attempt.objects.exists()
    assert not Standing.objects.exists()


def test_an_instructor_of_another_cohort_finds_no_wall(room):
    stranger = PersonFactory(role="instructor")
    CohortFactory(instructors=[stranger])
    assert room.client(stranger).get(room.url("wall")).status_code == 404
