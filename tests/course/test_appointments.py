"""A check set for people of a cohort: drafted, looked over, sent, kept to, perhaps taken back."""

from dataclasses import replace
from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from course.appointments import deeds
from course.appointments.models import Appointment
from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.errors import Refused
from quizzes.models import JournalLine, Sitting, Standing
from quizzes.policy import DEFAULT

HOUR = timedelta(hours=1)


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


@pytest.fixture
def trainee(quay):
    return quay.people["trainee"]


@pytest.fixture
def ready(trainee):
    """The trainee's check of Boyle's law is open."""
    Standing.objects.filter(learner=trainee, competency="boyle").update(
        waits=False, state="ready", held_until=None
    )
    return trainee


@pytest.fixture
def set_check(quay):
    """Drafts and sends a check of Boyle's law, open now for an hour unless told otherwise."""

    def send(*, by="instructor", cohort=None, opens=timedelta(0), **terms):
        opens_at = timezone.now() + opens
        plan = deeds.Plan(True, [], ["boyle"], opens_at, opens_at + HOUR)
        cohort, by = cohort or quay.cohort, quay.people[by]
        one = deeds.draft(cohort=cohort, by=by, plan=replace(plan, **terms))
        return deeds.send(appointment_id=one.pk, by=by)

    return send


def form(**said):
    opens = timezone.localtime() + HOUR
    fields = {
        "whole_cohort": "yes",
        "subjects": ["boyle"],
        "opens_at": f"{opens:%Y-%m-%dT%H:%M}",
        "closes_at": f"{opens + HOUR:%Y-%m-%dT%H:%M}",
        "note": "Bring your slate.",
    }
    return fields | said


def test_a_draft_is_looked_over_then_sent_and_the_trainee_reads_it(desk, quay, client, ready):
    page = desk.post(reverse("appointments:new", args=[quay.cohort.pk]), form(supervised="on"), follow=True)
    assert "Nobody has been told" in page.text
    assert "It goes to 1 trainee: Given Trainee" in page.text
    client.force_login(ready)
    assert "Bring your slate." not in client.get(reverse("home")).text
    client.force_login(quay.people["instructor"])
    one = Appointment.objects.first()
    client.post(reverse("appointments:send", args=[one.pk]))
    client.force_login(ready)
    for address in (reverse("home"), reverse("quizzes:check", args=["boyle"])):
        assert "Bring your slate." in client.get(address).text
        assert "begins only with the code" in client.get(address).text


def test_sending_twice_is_once(set_check, quay):
    one = set_check()
    deeds.send(appointment_id=one.pk, by=quay.people["officer"])
    assert JournalLine.objects.filter(verb="check set", subject_key=one.pk).count() == 1
    assert Appointment.objects.get(pk=one.pk).by_name == "Given Instructor"


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        ({"subjects": []}, "Choose a competency"),
        ({"subjects": ["boyle", "whole-course"]}, "Choose it alone"),
        ({"whole_cohort": "no"}, "Tick at least one trainee."),
        ({"opens_at": "soon"}, "like 2026-12-03 09:00"),
        ({"opens_at": "2020-01-01T09:00", "closes_at": "2020-01-01T08:00"}, "ends before it begins"),
        ({"opens_at": "2020-01-01T09:00", "closes_at": "2020-01-01T10:00"}, "That time is over"),
        ({"closes_at": "2999-01-01T10:00"}, "Look at the year"),
        ({"extra_time_percent": "-5"}, "not negative"),
        ({"note": "x" * 401}, "400 characters; it is 401"),
    ],
)
def test_what_cannot_be_set_comes_back_with_a_sentence_and_as_typed(desk, quay, said, sentence):
    page = desk.post(reverse("appointments:new", args=[quay.cohort.pk]), form(**said)).text
    assert sentence in page
    assert said.get("note", "Bring your slate.") in page
    assert not Appointment.objects.filter(sent_at=None).exists()


def test_only_people_of_the_cohort_can_be_chosen(desk, quay):
    said = form(whole_cohort="no", people=[quay.people["stranger"].pk])
    page = desk.post(reverse("appointments:new", args=[quay.cohort.pk]), said)
    assert page.context["form"].errors["people"]


def test_an_instructor_who_learns_in_the_cohort_sets_nothing_for_themselves(quay, set_check):
    quay.cohort.trainees.add(quay.people["instructor"])
    assert [person.name for person in set_check().people.all()] == ["Given Trainee"]


def test_whoever_is_in_the_cohort_when_it_is_sent_is_meant_and_nobody_who_left(quay, set_check, client):
    new = PersonFactory()
    quay.cohort.trainees.add(new)
    assert set_check(note="At the slip.").people.contains(new)
    client.force_login(new)
    assert "At the slip." in client.get(reverse("home")).text
    quay.cohort.trainees.remove(new)
    assert "At the slip." not in client.get(reverse("home")).text


def test_a_supervised_one_asks_for_the_code_in_its_window(quay, set_check, ready, boyle):
    set_check(supervised=True)
    with pytest.raises(Refused, match="supervised"):
        actions.start_check(learner=ready, competency=boyle)
    sitting = actions.start_check(learner=ready, competency=boyle, code=quay.code)
    assert sitting.supervised_by == "Given Instructor"


def test_before_its_window_the_check_opens_as_ever(set_check, ready, boyle):
    set_check(supervised=True, opens=HOUR)
    assert actions.start_check(learner=ready, competency=boyle).supervised_by == ""


def test_an_only_window_shuts_the_check_on_every_page_until_it_opens(set_check, ready, boyle, client):
    set_check(only=True, opens=HOUR)
    with pytest.raises(Refused, match="opens only then"):
        actions.start_check(learner=ready, competency=boyle)
    client.force_login(ready)
    assert "opens only then" in client.get(reverse("quizzes:check", args=["boyle"])).text
    assert "the check is open" not in client.get(reverse("quizzes:practice", args=["boyle"])).text
    assert client.get(reverse("home")).context["next_step"].url != reverse("quizzes:check", args=["boyle"])


def test_it_opens_nothing_that_practice_has_not_opened(set_check, trainee, boyle):
    Standing.objects.filter(learner=trainee, competency="boyle").update(waits=False, state="practising")
    set_check()
    with pytest.raises(Refused, match="right in a row in practice"):
        actions.start_check(learner=trainee, competency=boyle)


@pytest.mark.parametrize(("own", "appointed", "minutes"), [(0, 50, 60), (100, 50, 80), (25, 0, 50)])
def test_the_longer_of_ones_own_and_the_set_extra_time_holds(
    quay, set_check, ready, boyle, own, appointed, minutes
):
    policy = replace(DEFAULT, time_limit_minutes=40)
    actions.set_policy(policy=policy, by=quay.people["officer"], why="As on the day.")
    by = quay.people["instructor"]
    actions.set_accommodation(learner=ready, by=by, why="Agreed.", extra_time_percent=own)
    set_check(extra_time_percent=appointed)
    sitting = actions.start_check(learner=ready, competency=boyle)
    assert sitting.ends_at - sitting.began == timedelta(minutes=minutes)
    assert ("more time for this check" in sitting.accommodation) is (appointed > own)


def test_the_check_page_says_the_time_with_the_set_extra_counted_in(quay, set_check, ready, client):
    policy = replace(DEFAULT, time_limit_minutes=40)
    actions.set_policy(policy=policy, by=quay.people["officer"], why="As on the day.")
    set_check(extra_time_percent=50)
    client.force_login(ready)
    assert "Time is limited to 1 hour" in client.get(reverse("quizzes:check", args=["boyle"])).text


def test_taken_back_with_a_reason_it_binds_nobody_and_the_trainee_reads_why(
    desk, set_check, ready, boyle, client
):
    one = set_check(only=True, opens=HOUR)
    address = reverse("appointments:take-back", args=[one.pk])
    assert "Give the reason" in desk.post(address, {"why": " "}).text
    assert "It is taken back" in desk.post(address, {"why": "The slip is iced up."}, follow=True).text
    desk.post(address, {"why": "Again."})
    assert JournalLine.objects.filter(verb="set check taken back").count() == 1
    client.force_login(ready)
    assert "The slip is iced up." in client.get(reverse("home")).text
    assert actions.start_check(learner=ready, competency=boyle)


def test_once_somebody_has_begun_it_is_not_taken_back(desk, set_check, ready, boyle):
    one = set_check()
    actions.start_check(learner=ready, competency=boyle)
    page = desk.post(reverse("appointments:take-back", args=[one.pk]), {"why": "Too late."}).text
    assert "Somebody has begun" in page
    assert Appointment.objects.get(pk=one.pk).taken_back_at is None
    assert "under way since" in desk.get(reverse("appointments:appointment", args=[one.pk])).text


def test_a_check_begun_before_it_was_sent_is_not_begun_under_it(set_check, ready, boyle, desk):
    actions.start_check(learner=ready, competency=boyle)
    Sitting.objects.filter(learner=ready).update(began=timezone.now() - HOUR / 4)
    one = set_check(opens=-HOUR / 2)
    assert "not begun" in desk.get(reverse("appointments:appointment", args=[one.pk])).text


def test_whoever_has_not_begun_is_listed_with_where_they_stand(set_check, ready, desk):
    one = set_check(subjects=["boyle", "mixtures"])
    page = desk.get(reverse("appointments:appointment", args=[one.pk])).text
    assert "Boyle&#x27;s law: not begun; ready" in page
    assert "Mixtures of gases: not begun<" in page


def test_a_draft_is_changed_and_discarded_but_what_is_sent_stays(desk, quay, set_check):
    desk.post(reverse("appointments:new", args=[quay.cohort.pk]), form())
    draft = Appointment.objects.first()
    change = reverse("appointments:change", args=[draft.pk])
    assert "Bring your slate." in desk.get(change).text
    desk.post(change, form(note="Bring nothing."))
    assert Appointment.objects.get(pk=draft.pk).note == "Bring nothing."
    desk.post(reverse("appointments:discard", args=[draft.pk]))
    assert not Appointment.objects.filter(pk=draft.pk).exists()
    sent = set_check()
    for deed in ("change", "discard"):
        page = desk.post(reverse(f"appointments:{deed}", args=[sent.pk]), form(), follow=True)
        assert "It was sent, so it stays as it is" in page.text


def test_a_draft_whose_time_has_passed_is_not_sent(quay):
    opens = timezone.now() - 2 * HOUR
    plan = deeds.Plan(True, [], ["boyle"], opens, opens + HOUR)
    one = deeds.draft(cohort=quay.cohort, by=quay.people["instructor"], plan=plan)
    with pytest.raises(Refused, match="over already"):
        deeds.send(appointment_id=one.pk, by=quay.people["instructor"])


def test_ten_draws_are_shown_in_either_system_as_trainees_see_them_without_the_key(desk):
    for system, unit in (("us", "ft"), ("metric", "m")):
        page = desk.get(reverse("appointments:draws", args=["depth-to-gauge", system, 1]))
        assert [draw.number for draw in page.context["draws"]] == list(range(1, 11))
        assert page.text.count('class="situation"') == 10
        assert f"\N{NO-BREAK SPACE}{unit}" in page.text or f" {unit}" in page.text
        assert page.context.get("key") is None


@pytest.mark.parametrize(
    "arguments", [["no-such", "us", 1], ["depth-to-gauge", "si", 1], ["depth-to-gauge", "us", 10**12]]
)
def test_draws_that_do_not_exist_are_not_found(desk, arguments):
    assert desk.get(reverse("appointments:draws", args=arguments)).status_code == 404


def test_the_page_of_a_large_cohort_costs_as_many_queries_as_that_of_a_small_one(
    desk, quay, set_check, django_assert_num_queries, ready, boyle
):
    one = set_check()
    address = reverse("appointments:appointment", args=[one.pk])
    desk.get(address)
    with django_assert_num_queries(8):
        desk.get(address)
    more = PersonFactory.create_batch(30)
    quay.cohort.trainees.add(*more)
    one.people.add(*more)
    with django_assert_num_queries(8):
        desk.get(address)
