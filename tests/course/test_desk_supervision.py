"""The desk's pages about how checks are held: codes, accommodations, and what is waived after a hold."""

import csv
import io
from dataclasses import replace

import pytest
from django.urls import reverse
from django.utils import timezone

from quizzes import actions
from quizzes.models import Accommodation, DecisionRecord, JournalLine, Slot, Standing
from quizzes.policy import DEFAULT
from tests.quizzes.conftest import give

WHY = "Agreed with the unit."


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


@pytest.fixture
def trainee(quay):
    return quay.people["trainee"]


@pytest.fixture
def slots(quay):
    return reverse("desks:slots", args=[quay.cohort.pk])


def test_a_code_is_shown_once_and_opens_the_trainees_supervised_check(desk, slots, quay, trainee, boyle):
    shown = desk.post(slots).context["code"]
    assert shown not in desk.get(slots).text
    Standing.objects.filter(learner=trainee).update(waits=False, state="ready", held_until=None)
    policy = replace(DEFAULT, supervised=("boyle",))
    actions.set_policy(policy=policy, by=quay.people["administrator"], why=WHY)
    sitting = actions.start_check(learner=trainee, competency=boyle, code=shown)
    assert sitting.supervised_by == "Given Instructor"


def test_the_list_says_who_opened_each_code_and_closing_one_is_kept(desk, slots, quay):
    assert "Given Instructor" in desk.get(slots).text
    close = reverse("desks:close-slot", args=[quay.cohort.pk, quay.slot.pk])
    assert "The code is closed" in desk.post(close, follow=True).text
    assert Slot.objects.get(pk=quay.slot.pk).closed_at
    assert JournalLine.objects.first().verb == "supervised slot closed"
    desk.post(close)
    assert JournalLine.objects.filter(verb="supervised slot closed").count() == 1


def test_a_code_cannot_be_closed_through_another_cohort(client, quay):
    client.force_login(quay.people["outsider"])
    close = reverse("desks:close-slot", args=[quay.other.pk, quay.slot.pk])
    assert client.post(close).status_code == 404


def held_again(quay, trainee, boyle):
    """The trainee is held by a supervised check with extra time, and nothing waits."""
    Standing.objects.filter(learner=trainee).update(waits=False, state="ready", held_until=None)
    actions.set_accommodation(
        learner=trainee, by=quay.people["instructor"], why=WHY, extra_time_percent=50, other="Larger print"
    )
    sitting = actions.start_check(learner=trainee, competency=boyle, code=quay.code)
    give(sitting, "--", timezone.now())


def test_both_records_and_the_export_say_who_supervised_and_what_it_was_held_with(desk, quay, trainee, boyle):
    held_again(quay, trainee, boyle)
    here = desk.get(reverse("desks:trainee", args=[trainee.pk])).text
    today = timezone.localdate().isoformat()
    url = reverse("exports:download", args=["competency-records"])
    file = desk.get(url, {"cohort": quay.cohort.pk, "first": "2000-01-01", "last": today})
    row = list(csv.DictReader(io.StringIO(file.getvalue().decode(), newline="")))[-1]
    desk.force_login(trainee)
    own = desk.get(reverse("quizzes:record")).text
    for text in (here, own):
        assert "<dd>Given Instructor</dd>" in text.replace("\n", "")
        assert "50 % more time; Larger print" in text
    assert (row["supervised_by"], row["accommodation"]) == (
        "Given Instructor",
        "50 % more time; Larger print",
    )


@pytest.mark.parametrize(
    ("what", "said", "state"),
    [
        ("rest", "the rest is waived", "held"),
        ("practice", "the practice is waived", "ready"),
        ("open", "the check is open again", "ready"),
    ],
)
def test_the_trainees_page_offers_what_may_be_waived_and_records_it(
    desk, quay, trainee, boyle, what, said, state
):
    held_again(quay, trainee, boyle)
    page = reverse("desks:trainee", args=[trainee.pk])
    assert "rests until" in desk.get(page).text
    url = reverse("desks:open-check", args=[trainee.pk, "boyle"])
    assert said in desk.post(url, {"what": what, "why": WHY}, follow=True).text
    assert Standing.objects.get(learner=trainee, competency="boyle").state == state
    assert DecisionRecord.objects.first().why == WHY


def test_a_code_for_the_next_check_is_asked_for_by_hand(desk, trainee):
    said = {"deed": "supervise", "competency": "boyle", "why": WHY}
    desk.post(reverse("desks:decide", args=[trainee.pk]), said)
    assert "next check needs a code" in desk.get(reverse("desks:trainee", args=[trainee.pk])).text


@pytest.fixture
def set_it(desk, trainee):
    url = reverse("desks:accommodations", args=[trainee.pk])
    return lambda **said: desk.post(url, {"why": WHY, **said}, follow=True)


def test_accommodations_are_appended_and_the_latest_holds(set_it, desk, trainee):
    set_it(extra_time_percent="25", other="Questions read aloud")
    set_it(extra_time_percent="", other="")
    assert [entry.in_words for entry in Accommodation.objects.all()] == [
        "none",
        "25 % more time; Questions read aloud",
    ]
    lines = JournalLine.objects.filter(verb="accommodation set")
    assert lines.last().details == {"set": "25 % more time; Questions read aloud", "why": WHY}


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        ({"extra_time_percent": "a quarter"}, "Write a whole number of per cent"),
        ({"extra_time_percent": "-5"}, "not negative"),
        ({"extra_time_percent": "1000"}, "at most 900 per cent"),
        ({"extra_time_percent": "25", "why": " "}, "This field is required."),
    ],
)
def test_what_cannot_be_set_comes_back_with_a_sentence_and_as_typed(set_it, said, sentence):
    page = set_it(**said).text
    assert sentence in page
    assert f'value="{said["extra_time_percent"]}"' in page
    assert not Accommodation.objects.exists()
