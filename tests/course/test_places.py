"""The page remembers where one was: the deed, the address it is told to, what is shown on return."""

from datetime import timedelta
from html import unescape

import pytest
from django.urls import reverse
from django.utils import timezone

from course.demo.factories import PersonFactory
from course.lessons import library, places
from course.lessons.models import Place
from course.lessons.places import UnknownSection, remember

LESSON = next(iter(library.lessons().values()))
FIRST, SECOND = LESSON.sections[:2]


@pytest.fixture
def reader(db, client):
    person = PersonFactory()
    client.force_login(person)
    return person


def tell(client, slug=LESSON.slug, **fields):
    return client.post(reverse("lessons:place", args=[slug]), fields)


def read(client, slug=LESSON.slug):
    return unescape(client.get(reverse("lessons:lesson", args=[slug])).text)


def test_opening_a_lesson_is_remembered_once(client, reader):
    read(client), read(client)
    place = Place.objects.get()
    assert (place.person, place.lesson, place.section, place.is_finished) == (reader, LESSON.slug, "", False)


def test_a_lesson_opened_again_much_later_is_noted_anew(client, reader):
    read(client)
    then = timezone.now() - timedelta(hours=1)
    Place.objects.update(at=then)
    read(client)
    assert Place.objects.get().at > then


def test_the_section_is_remembered_and_offered_on_return(client, reader):
    assert tell(client, section=SECOND.anchor).status_code == 204
    text = read(client)
    assert f'You were at: <a href="#{SECOND.anchor}">{SECOND.title}</a>' in " ".join(text.split())


def test_at_the_top_of_a_lesson_nothing_is_offered(client, reader):
    assert "You were at" not in read(client)
    tell(client, section=FIRST.anchor)
    assert "You were at" not in read(client)


def test_the_same_told_twice_is_one_place(client, reader):
    for _ in range(2):
        assert tell(client, section=SECOND.anchor, finished="1").status_code == 302
    assert Place.objects.get().section == SECOND.anchor


def test_what_was_read_once_stays_read(reader):
    begun = timezone.now()
    remember(person=reader, lesson=LESSON, finished=True, now=begun)
    again = remember(person=reader, lesson=LESSON, section=FIRST.anchor, finished=True)
    assert again.finished_at == begun


def test_a_section_that_the_lesson_has_not_is_refused_and_nothing_is_written(client, reader):
    assert tell(client, section="no-such-section").status_code == 400
    assert not Place.objects.exists()
    with pytest.raises(UnknownSection, match=f"There are: {FIRST.anchor}"):
        remember(person=reader, lesson=LESSON, section="no-such-section")


def test_a_lesson_that_does_not_exist_is_not_found(client, reader):
    assert tell(client, slug="no-such-lesson", section=FIRST.anchor).status_code == 404


def test_everybody_has_places_of_their_own(client, reader):
    remember(person=PersonFactory(), lesson=LESSON, section=SECOND.anchor, finished=True)
    assert places.places_of(reader) == {}
    assert "You were at" not in read(client)


def test_the_start_page_marks_where_one_was_and_what_is_read(client, reader):
    second = list(library.lessons().values())[1]
    remember(person=reader, lesson=LESSON, finished=True)
    remember(person=reader, lesson=second, section=second.sections[1].anchor)
    text = " ".join(unescape(client.get(reverse("home")).text).split())
    assert "Read." in text
    assert f"You were at: {second.sections[1].title}" in text


def test_the_start_page_offers_to_go_on_reading(client, reader):
    remember(person=reader, lesson=LESSON, section=SECOND.anchor)
    step = client.get(reverse("home")).context["next_step"]
    assert (step.action, step.url) == (
        "Go on reading",
        f"{reverse('lessons:lesson', args=[LESSON.slug])}#{SECOND.anchor}",
    )
