"""The teaching list: what it ranks and in which words, where it sends one, and practice asked for from it."""

import re
from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from course.demo.factories import PersonFactory
from course.desks.mending import lessons_on, place_that_mends
from course.desks.teaching import MOST
from pressure import catalogue
from quizzes import actions
from quizzes.models import AnswerCount, Assignment
from quizzes.models.assignments import open_assignments
from tests.course.slips import slip_in

FAMILY, SLIP = "depth-to-volume", "inverted-ratio"
LABEL = "the ratio was upside down"


def open_list(client, quay, who="instructor", **query):
    client.force_login(quay.people[who])
    return client.get(reverse("desks:teaching", args=[quay.cohort.pk]), query)


def send(client, quay, **said):
    client.force_login(quay.people["instructor"])
    return client.post(reverse("desks:assign", args=[quay.cohort.pk]), {"slip": SLIP, **said}, follow=True)


@pytest.fixture
def counted(quay):
    """Twenty more trainees, of whom eight turned the ratio upside down, each once in four answers."""
    more = [PersonFactory() for _ in range(20)]
    quay.cohort.trainees.add(*more)
    rows = [AnswerCount(learner=one, family=FAMILY, verdict="right", answers=3) for one in more]
    rows += [
        AnswerCount(learner=one, family=FAMILY, verdict="slip", slip=SLIP, label=LABEL, answers=1)
        for one in more[:8]
    ]
    AnswerCount.objects.filter(learner=quay.people["trainee"]).delete()
    AnswerCount.objects.bulk_create(rows)
    return quay


def test_a_slip_stands_with_both_shares_and_their_intervals(client, counted):
    page = open_list(client, counted).text
    assert "1. The ratio was upside down" in page
    # Wilson (1927), 8 of 20: 0.219 to 0.613, as R's prop.test(8, 20, correct = FALSE) gives, from memory.
    assert re.search(r"8 of 20\s*<span[^>]*>40 % \(22 to 61\)", page)
    assert re.search(r"8 of 68\s*<span[^>]*>12 % \(", page)
    assert "Ask 8 to practise" in page


def test_it_leads_to_the_section_that_mends_it_and_to_a_fresh_example(client, counted):
    page = open_list(client, counted).text
    place = place_that_mends(LABEL, FAMILY, "us")
    assert f'<a href="{place.url}">{place.section}</a>' in page
    example = re.search(rf"/desk/problems/{FAMILY}/us/\d+/", page)[0]
    assert "Answer and worked solution" in client.get(example).text
    examples = {re.search(rf"{FAMILY}/us/(\d+)/", open_list(client, counted).text)[1] for _ in range(4)}
    assert len(examples) > 1


def test_those_who_made_it_are_asked_once_however_often_it_is_sent(client, counted):
    assert "8 trainees meet it next in practice" in send(client, counted).text
    assert "All 8 asked already, not done yet." in send(client, counted).text
    makers = AnswerCount.objects.filter(slip=SLIP).values_list("learner", flat=True)
    assert {one.learner_id for one in open_assignments(makers)} == set(makers)
    assert Assignment.objects.count() == 8
    assert Assignment.objects.first().family == FAMILY


def test_who_makes_it_later_can_be_asked_besides(client, counted):
    send(client, counted)
    late = PersonFactory()
    counted.cohort.trainees.add(late)
    AnswerCount.objects.create(learner=late, family=FAMILY, verdict="slip", slip=SLIP, label=LABEL, answers=1)
    page = open_list(client, counted).text
    assert "8 of 9 asked already" in page
    assert "Ask 1 to practise" in page


def test_a_slip_nobody_made_is_refused_in_a_sentence(client, counted):
    page = send(client, counted, slip="no-such-slip").text
    assert "Nobody here made this slip in that time" in page
    assert not Assignment.objects.exists()


def test_a_paused_kind_is_not_asked_for(client, counted):
    actions.pause(item=FAMILY, by=counted.people["officer"], why="Its figure is being redrawn.")
    assert "paused for now" in open_list(client, counted).text
    send(client, counted)
    assert not Assignment.objects.exists()


def test_a_period_counts_only_what_was_answered_in_it(client, quay):
    trainee, now = quay.people["trainee"], timezone.now()
    slip = slip_in(trainee, FAMILY, now - timedelta(days=20))
    for days, is_there in (("7", False), ("30", True), ("90", True), ("", True)):
        assert (slip.slip_label.capitalize() in open_list(client, quay, days=days).text) is is_there
    page = send(client, quay, slip=slip.slip, days="7")
    assert "Nobody here made this slip" in page.text
    assert "?days=7" in page.redirect_chain[-1][0]
    assert "1 trainee meets it next" in send(client, quay, slip=slip.slip, days="30").text


def test_a_period_that_does_not_exist_is_said_and_left_out(client, counted):
    page = open_list(client, counted, days="12").text
    assert "There is no such period." in page
    assert "The ratio was upside down" in page


def test_an_empty_list_says_what_will_appear(client, quay):
    AnswerCount.objects.all().delete()
    assert "No slip yet" in open_list(client, quay).text
    assert "No slip in this time" in open_list(client, quay, days="7").text
    quay.cohort.trainees.clear()
    assert "No trainee yet" in open_list(client, quay).text


def test_of_many_slips_the_commonest_ten_are_shown(client, counted):
    trainee = counted.people["trainee"]
    AnswerCount.objects.bulk_create(
        AnswerCount(
            learner=trainee, family=FAMILY, verdict="slip", slip=f"slip-{n}", label=f"No. {n}", answers=1
        )
        for n in range(12)
    )
    page = open_list(client, counted).text
    assert "The 10 commonest of 13 slips" in page
    assert page.count('<th scope="row">') == MOST


def test_the_page_takes_nine_queries_however_many_trainees_there_are(
    client, counted, django_assert_max_num_queries
):
    send(client, counted)
    url = reverse("desks:teaching", args=[counted.cohort.pk])
    for days in ("", "30"):
        with django_assert_max_num_queries(9):
            assert client.get(url, {"days": days}).status_code == 200


def test_a_kind_that_left_the_course_is_still_named(client, counted):
    AnswerCount.objects.filter(slip=SLIP).update(family="no-longer-there")
    page = open_list(client, counted).text
    assert "no longer asked" in page
    assert "The ratio was upside down" in page


@pytest.mark.parametrize("family", sorted(catalogue.families()))
def test_every_kind_of_problem_has_a_section_that_mends_it(family):
    place = place_that_mends(LABEL, family, "us")
    assert place.section
    assert place.lesson in [one.title for one in lessons_on(family)]


@pytest.mark.parametrize(
    ("label", "family", "section"),
    [
        ("gauge pressures were used in the ratio", "depth-to-volume", "The slips people make"),
        ("fresh water was used for sea water", "depth-to-gauge", "Fresh water and salt"),
        ("the air was taken all the way to the surface", "overpressure-rise", "Held on the way up"),
        ("the use at the surface was counted at depth", "use-at-depth", "It goes faster at depth"),
    ],
)
def test_a_slip_leads_to_the_section_an_instructor_would_open(label, family, section):
    assert place_that_mends(label, family, "us").section == section
