"""A lesson as a trainee reads it, and the start page that says what to do next."""

import re
from datetime import date, timedelta
from html import unescape

import pytest
from django.urls import reverse
from django.utils import timezone

from course.demo.factories import PersonFactory
from course.lessons import library, steps
from course.lessons.places import remember
from pressure.draw import draw
from pressure.record import key
from quizzes.competencies import COMPETENCIES
from quizzes.models import Standing

LESSON = "boyle"


@pytest.fixture
def reader(db, client):
    person = PersonFactory()
    client.force_login(person)
    return person


def open_lesson(client, slug=LESSON):
    return client.get(reverse("lessons:lesson", args=[slug]))


@pytest.mark.parametrize("slug", library.lessons())
@pytest.mark.parametrize("system", library.SYSTEMS)
def test_every_lesson_renders_with_the_way_to_practise_it(client, reader, slug, system):
    reader.system = system
    reader.save()
    text = unescape(open_lesson(client, slug).text)
    lesson = library.lessons()[slug]
    for said in (lesson.title, *lesson.aims, *lesson.sources):
        assert said in text
    for competency in lesson.competencies:
        assert reverse("quizzes:practice", args=[competency]) in text
    assert [left for left in ("{depth 1", ":::", " style=") if left in text] == []


@pytest.mark.parametrize("system", library.SYSTEMS)
def test_worked_examples_are_drawn_and_solved_by_the_physics(client, reader, system):
    reader.system = system
    reader.save()
    text = open_lesson(client).text
    examples = [part.settings for part in library.lessons()[LESSON].parts[system] if part.kind == "example"]
    assert examples
    for example in examples:
        solved = key(draw(example["family"], int(example["seed"]), system))
        assert f"<strong>{solved['answer_text']}</strong>" in text
        assert all(step["result"]["mathml"] in text for step in solved["steps"])


def test_a_hazard_lesson_carries_the_usual_caution(client, reader):
    text = " ".join(unescape(open_lesson(client).text).split())
    caution = text[text.index('class="caution"') :]
    for said in (
        "Never hold your breath",
        "a training aid, not a dive plan, a decompression schedule or medical advice",
        "Local regulations, the employer's manual, the supervisor and a diving physician come first",
        "call the local emergency services",
    ):
        assert said in caution


def test_an_unknown_lesson_is_not_found(client, reader):
    assert open_lesson(client, "no-such-lesson").status_code == 404


def test_each_section_is_linked_at_the_top_and_no_two_parts_of_a_page_share_an_anchor(client, reader):
    for slug, lesson in library.lessons().items():
        text = unescape(open_lesson(client, slug).text)
        for section in lesson.sections:
            assert f'<a href="#{section.anchor}">{section.title}</a>' in text
            assert f'<h2 id="{section.anchor}">' in text
        anchors = re.findall(r'\sid="([^"]+)"', text)
        assert sorted(anchors) == sorted(set(anchors))
        assert lesson.sections


def test_a_lesson_ends_in_one_button_and_says_the_state_of_each_competency(client, reader):
    for slug, lesson in library.lessons().items():
        foot = open_lesson(client, slug).text.partition('class="onward-foot')[2].partition("</section>")[0]
        assert foot.count('class="button') == 1
        assert foot.count('<span class="state-word">not started</span>') == len(lesson.competencies)


def test_a_lesson_is_only_read(client, reader):
    assert client.post(reverse("lessons:lesson", args=[LESSON])).status_code == 405


def stand(reader, competency, state, **fields):
    return Standing.objects.create(learner=reader, competency=competency, state=state, **fields)


def met(reader, competency, *, due_in):
    today = timezone.localdate()
    due_on = today + timedelta(days=due_in)
    stand(
        reader,
        competency,
        "met",
        met_on=date(2026, 1, 5),
        confirmed_on=date(2026, 1, 7),
        notice_on=due_on - timedelta(days=60),
        due_on=due_on,
    )


def read_all(reader):
    for lesson in library.lessons().values():
        remember(person=reader, lesson=lesson, finished=True)


def next_step(client):
    step = client.get(reverse("home")).context["next_step"]
    return step.action, step.url


def test_a_newcomer_is_sent_to_the_first_lesson(client, reader):
    first = next(iter(library.lessons().values()))
    assert next_step(client) == ("Read the lesson", steps.lesson_url(first))


def in_order():
    """The competencies as the lessons come."""
    taught = [slug for lesson in library.lessons().values() for slug in lesson.competencies]
    return list(dict.fromkeys([*taught, *COMPETENCIES]))


def address(page):
    return reverse(f"quizzes:{page}", args=[in_order()[0]])


def test_who_has_read_and_begun_goes_on_practising(client, reader):
    read_all(reader)
    stand(reader, in_order()[0], "practising", streak=1)
    assert next_step(client) == ("Go on practising", address("practice"))
    assert "2 to go" in client.get(reverse("home")).text


def test_who_is_ready_goes_to_the_check(client, reader):
    stand(reader, in_order()[0], "ready", streak=3)
    assert next_step(client) == ("Go to the check", address("check"))


def test_what_was_never_begun_comes_after_what_is_met(client, reader):
    first, second, *_ = in_order()
    met(reader, first, due_in=200)
    stand(reader, second, "not started")
    lessons = [one for one in library.lessons().values() if second in one.competencies]
    begun = any(slug == first for slug in lessons[0].competencies) if lessons else True
    wanted = reverse("quizzes:practice", args=[second]) if begun else steps.lesson_url(lessons[0])
    assert next_step(client)[1] == wanted


def test_a_lapsed_competency_is_checked_again(client, reader):
    met(reader, in_order()[0], due_in=-1)
    assert next_step(client) == ("Go to the check", address("check"))


def test_what_falls_due_waits_until_the_rest_is_met(client, reader):
    for competency in COMPETENCIES:
        met(reader, competency, due_in=10 if competency == in_order()[0] else 300)
    assert next_step(client) == ("Take the check again", address("check"))


def test_who_has_met_everything_reads_the_review_and_is_then_shown_the_record(client, reader):
    for competency in COMPETENCIES:
        met(reader, competency, due_in=300)
    assert next_step(client) == ("Read the lesson", steps.lesson_url([*library.lessons().values()][-1]))
    read_all(reader)
    assert next_step(client) == ("Read your record", reverse("quizzes:record"))


def test_the_start_page_says_every_state_in_a_word(client, reader):
    stand(reader, "boyle", "practising")
    text = client.get(reverse("home")).text
    assert '<span class="state-word">practising</span>' in text
    assert text.count('<span class="state-word">not started</span>') == len(COMPETENCIES) - 1
