"""The hand slates: one answer each, changed until the close, and nothing of the key before it is shown."""

import re

import pytest
from django.urls import reverse
from django.utils.html import conditional_escape

from course.classroom import actions
from course.classroom.models import Answer, Showing
from course.demo.factories import CohortFactory
from quizzes.errors import Refused
from tests.course.classroom.conftest import TASKS, right, slip, wrong

KEPT = "shelf-of-the-key"


def sent(showing, form):
    return {"showing": showing.pk, **form}


@pytest.mark.parametrize("family", TASKS.values())
def test_an_answer_of_any_kind_is_judged_and_kept(room, hand, family):
    showing = room.put_up(family)
    page = hand.post(room.url("answer"), sent(showing, right(showing)), follow=True)
    answer = Answer.objects.get()
    assert (answer.learner, answer.verdict) == (room.trainees[0], "right")
    assert f"<bdi>{conditional_escape(answer.understood)}</bdi>" in page.text
    assert room.showing.answered == 1


def test_an_answer_is_changed_until_the_close_and_counts_once(room, hand):
    showing = room.put_up()
    for form in (wrong(showing), slip(showing), right(showing), right(showing)):
        hand.post(room.url("answer"), sent(showing, form))
    assert Answer.objects.get().verdict == "right"
    room.move("closed")
    page = hand.post(room.url("answer"), sent(showing, wrong(showing)), follow=True)
    assert "closed before your answer arrived" in page.text
    assert Answer.objects.get().verdict == "right"
    assert room.showing.answered == 1


def test_text_that_cannot_be_read_gets_a_sentence_and_keeps_what_was_kept(room, hand):
    showing = room.put_up()
    hand.post(room.url("answer"), sent(showing, right(showing)))
    page = hand.post(room.url("answer"), sent(showing, {"answer": "deep <enough>"}))
    assert "Nothing was counted" in page.text
    assert 'value="deep &lt;enough&gt;"' in page.text
    assert 'aria-invalid="true"' in page.text
    assert Answer.objects.get().verdict == "right"


@pytest.mark.parametrize("text", ["", "x" * 65, "9" * 10_000, "9**9**9", "\x00"])
def test_nonsense_is_never_an_error_of_the_site(room, hand, text):
    showing = room.put_up()
    assert hand.post(room.url("answer"), sent(showing, {"answer": text})).status_code == 200
    assert not Answer.objects.exists()


@pytest.mark.parametrize("number", ["", "x", "0", "9" * 30, "²"])
def test_an_answer_to_what_is_not_on_the_wall_is_refused_in_words(room, hand, number):
    room.put_up()
    page = hand.post(room.url("answer"), {"showing": number, "answer": "1 psi"}, follow=True)
    assert 'class="message warning"' in page.text
    assert not Answer.objects.exists()


def test_an_answer_to_the_problem_before_does_not_count_for_the_next(room):
    first = room.put_up()
    room.put_up(after=first.pk)
    with pytest.raises(Refused):
        actions.answer(learner=room.trainees[0], cohort=room.cohort, showing_id=first.pk, form=right(first))
    assert not Answer.objects.exists()


def mark(value):
    """The same key with a mark in every text that only the key holds."""
    if isinstance(value, dict):
        told = {"label", "mend", "why", "sense", "answer_text", "answer_words", "words", "mathml"}
        return {key: KEPT if key in told else mark(one) for key, one in value.items()}
    return [mark(one) for one in value] if isinstance(value, list) else value


def everything(room, form):
    """All that the site sends to a wall and to a hand, with and without htmx."""
    wall, hand, other = (room.client(p) for p in (room.instructor, *room.trainees[:2]))
    showing = room.showing
    for extra in ({}, {"HX-Request": "true"}):
        for name in ("hand", "hand-news"):
            yield hand.get(room.url(name), headers=extra)
            yield other.get(room.url(name), headers=extra)
        for name in ("wall", "wall-news"):
            yield wall.get(room.url(name), headers=extra)
        yield hand.post(room.url("answer"), sent(showing, form), headers=extra, follow=True)
        yield hand.post(room.url("answer"), sent(showing, {"answer": "?"}), headers=extra, follow=True)
        yield wall.post(room.url("step"), {"showing": showing.pk, "number": 1}, follow=True)
        yield wall.post(room.url("put-up"), {"family": "", "after": showing.pk})


@pytest.mark.parametrize("family", TASKS.values())
@pytest.mark.parametrize("stage", ["open", "closed"])
def test_nothing_of_the_key_is_sent_before_the_answers_are_shown(room, family, stage):
    showing = room.put_up(family)
    form = right(showing)
    Showing.objects.update(key=mark(showing.key))
    room.move(stage)
    for response in everything(room, form):
        assert KEPT not in response.text + str(response.headers)
        assert 'class="verdict' not in response.text
    room.move("closed", "spread")
    assert any(KEPT in response.text for response in everything(room, form))


def test_a_right_a_slipped_and_a_wrong_answer_get_the_same_page(room):
    showing = room.put_up()
    pages = set()
    for number, form in enumerate([right(showing), slip(showing), wrong(showing)]):
        client, person = room.client(room.trainees[number]), room.trainees[number]
        text = client.post(room.url("answer"), sent(showing, form), follow=True).text
        text = text.replace(person.name, "").replace(person.class_answers.get().understood, "")
        pages.add(re.sub(r'value="\w{64}"', "", text))
    assert len(pages) == 1


def test_the_units_are_the_walls_whatever_ones_own(room, hand):
    showing = room.put_up(system="us")
    assert room.trainees[0].system == "metric"
    assert conditional_escape(showing.shown["asked"]["text"]) in hand.get(room.url("hand")).text
    assert showing.shown["asked"]["unit"] == "psi"


def test_once_shown_the_slate_tells_ones_own_verdict_and_nobody_elses_name(room, hand):
    showing = room.put_up()
    room.answer(0, slip(showing))
    room.answer(1, right(showing))
    room.move("closed", "spread")
    text = hand.get(room.url("hand")).text
    assert f"A slip: {conditional_escape(showing.key['slips'][0]['label'])}." in text
    assert "Wren Number 1" not in text
    assert "Wren Number 0" in text  # the reader, in the masthead


def test_the_short_address_leads_to_ones_cohort_or_lets_choose(room, hand):
    assert hand.get(reverse("classroom:mine")).url == room.url("hand")
    CohortFactory(name="Boathouse", trainees=[room.trainees[0]])
    text = hand.get(reverse("classroom:mine")).text
    assert "Boathouse" in text
    assert "Slipway" in text
    assert reverse("classroom:mine") in hand.get(reverse("home")).text


def test_a_hand_slate_is_for_those_who_learn_in_the_cohort(room, wall):
    showing = room.put_up()
    assert wall.get(room.url("hand")).status_code == 404
    assert wall.get(room.url("hand-news")).status_code == 404
    assert wall.post(room.url("answer"), sent(showing, right(showing))).status_code == 404
