"""A lesson's page is kept in pieces, and nothing of one reader is left in another's."""

import re

import pytest
from django.test import Client
from django.urls import reverse

from course.demo.factories import PersonFactory
from course.lessons import library
from course.lessons.places import remember
from course.people.models import Role
from quizzes.models import Standing

LESSON = library.lessons()["squeeze"]
URL = reverse("lessons:lesson", args=[LESSON.slug])


@pytest.fixture
def reader(db):
    def sign_in(name, **fields):
        client = Client()
        client.force_login(PersonFactory(name=name, **fields))
        return client

    return sign_in


def test_each_reader_gets_their_own_name_place_and_states(reader):
    busy = reader("Busy Bee")
    person = busy.get(URL).wsgi_request.user
    remember(person=person, lesson=LESSON, section=LESSON.sections[3].anchor)
    Standing.objects.create(learner=person, competency="boyle", state="practising", streak=1)
    mine, theirs = busy.get(URL).text, reader("Calm Sea").get(URL).text
    for said in ("Busy Bee", "You were at", "practising</span>"):
        assert said in mine
        assert said not in theirs
    assert "Calm Sea" in theirs


def test_every_form_carries_a_token_of_the_readers_own_which_works(reader):
    client = Client(enforce_csrf_checks=True)
    client.force_login(PersonFactory())
    tokens = re.findall(r'name="csrfmiddlewaretoken" value="(\w+)"', client.get(URL).text)
    assert len(tokens) == 2
    place = reverse("lessons:place", args=[LESSON.slug])
    sent = {"section": LESSON.sections[0].anchor}
    assert client.post(place, sent).status_code == 403
    assert client.post(place, sent | {"csrfmiddlewaretoken": tokens[0]}).status_code == 204


def test_the_staff_keep_their_links_and_a_name_is_never_markup(reader):
    reader("A Trainee").get(URL)
    assert reverse("desks:cohorts") in reader("An Officer", role=Role.OFFICER).get(URL).text
    assert reverse("desks:cohorts") not in reader("Another").get(URL).text
    assert "<b>Bold</b>" not in reader("<b>Bold</b>").get(URL).text


def test_the_page_says_what_the_site_has_to_say(reader):
    client = reader("Busy Bee")
    units = client.post(reverse("people:units"), {"system": "metric", "next": URL}, follow=True)
    assert units.redirect_chain[-1][0] == URL
    assert 'class="messages"' in units.text
    assert 'class="messages"' not in client.get(URL).text


def test_no_mark_of_the_pieces_is_left(reader):
    client = reader("Busy Bee")
    for url in (URL, f"{URL}?ear=3&next=%EE%80%80name%EE%80%80"):
        assert "\ue000" not in client.get(url).text
