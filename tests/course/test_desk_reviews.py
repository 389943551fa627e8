"""A trainee doubts an answer, an instructor rules on it, and it is followed to record, desk and export."""

import csv
import io
from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from quizzes import actions
from quizzes.models import Attempt, DecisionRecord, Doubt, JournalLine, Ruling, Standing
from tests.quizzes.conftest import give, waiting

EARLIER = timedelta(hours=2)


def page(client, person, name, *arguments, **query):
    client.force_login(person)
    return client.get(reverse(name, args=arguments), query)


def send(client, person, name, *arguments, **fields):
    client.force_login(person)
    return client.post(reverse(name, args=arguments), fields, follow=True)


def doubt(learner, attempt, said="Two answers fit.", **when):
    return actions.doubt(learner=learner, attempt_id=attempt.pk, doubted="question", said=said, **when)


@pytest.fixture
def held(quay, boyle):
    """A check that the trainee was held in, nine right and then five wrong."""
    learner, now = quay.people["trainee"], timezone.now() - EARLIER
    Standing.objects.filter(learner=learner).update(waits=False, state="ready", held_until=None, holds=0)
    sitting = actions.start_check(learner=learner, competency=boyle, now=now)
    give(sitting, "+" * 9 + "-" * 5, now)
    return Attempt.objects.get(sitting=sitting, number=10)


# The trainee's side


def test_a_doubt_goes_from_the_answer_to_the_instructors_queue(client, quay):
    trainee, attempt = quay.people["trainee"], quay.attempt
    answer = page(client, trainee, "quizzes:attempt", attempt.pk).content.decode()
    assert reverse("quizzes:doubt", args=[attempt.pk]) in answer
    fields = {"doubted": "meant", "said": "I meant <b>2 atm</b>."}
    sent = send(client, trainee, "quizzes:doubt", attempt.pk, **fields).content.decode()
    assert "I meant &lt;b&gt;2 atm&lt;/b&gt;." in sent
    assert "It waits for your instructor" in sent
    queue = page(client, quay.people["instructor"], "desks:reviews").content.decode()
    assert "I meant something else: <bdi>I meant &lt;b&gt;2 atm&lt;/b&gt;.</bdi>" in queue


def test_what_is_wrong_with_a_doubt_is_said_at_its_field_and_the_words_are_kept(client, quay):
    fields = {"said": "The diagram hides the depth."}
    told = send(client, quay.people["trainee"], "quizzes:doubt", quay.attempt.pk, **fields).content.decode()
    assert "Choose one." in told
    assert "The diagram hides the depth." in told
    assert not Doubt.objects.exists()


def test_a_running_check_has_no_way_to_doubt_its_answers(client, quay, boyle):
    trainee, now = quay.people["trainee"], timezone.now()
    Standing.objects.filter(learner=trainee).update(waits=False, state="ready", held_until=None)
    sitting = actions.start_check(learner=trainee, competency=boyle, now=now)
    give(sitting, "-", now)
    first = Attempt.objects.get(sitting=sitting, number=1)
    response = page(client, trainee, "quizzes:doubt", first.pk)
    assert (response.status_code, response.url) == (302, reverse("quizzes:check", args=["boyle"]))
    send(client, trainee, "quizzes:doubt", first.pk, doubted="question", said="No.")
    assert not Doubt.objects.exists()


# The queue


def test_the_oldest_doubt_comes_first_and_the_navigation_counts_them(client, quay):
    trainee, other = quay.people["trainee"], Attempt.objects.get(sitting=quay.attempt.sitting, number=2)
    doubt(trainee, other, "The older.", now=timezone.now() - EARLIER)
    doubt(trainee, quay.attempt, "The newer.")
    queue = page(client, quay.people["officer"], "desks:reviews").content.decode()
    assert queue.index("The older.") < queue.index("The newer.")
    assert 'Reviews (2<span class="visually-hidden"> waiting</span>)' in queue


def test_an_instructor_of_another_cohort_sees_neither_doubt_nor_count(client, quay):
    doubt(quay.people["trainee"], quay.attempt)
    queue = page(client, quay.people["outsider"], "desks:reviews").content.decode()
    assert "Nothing waits" in queue
    assert "Reviews (" not in queue
    assert page(client, quay.people["outsider"], "desks:review", quay.attempt.pk).status_code == 404


def test_the_queue_costs_the_same_for_one_doubt_and_for_many(client, quay, django_assert_num_queries):
    instructor, answers = quay.people["instructor"], quay.attempt.sitting.attempts.order_by("number")
    doubt(quay.people["trainee"], answers[0])
    client.force_login(instructor)
    with django_assert_num_queries(5):
        client.get(reverse("desks:reviews"))
    doubt(quay.people["trainee"], answers[1])
    with django_assert_num_queries(5):
        client.get(reverse("desks:reviews"))


# The ruling


def test_one_verdict_changed_is_followed_to_the_record_the_desk_and_the_export(client, quay, held):
    trainee, instructor = quay.people["trainee"], quay.people["instructor"]
    doubt(trainee, held)
    fields = {"ruled": "right", "why": "Sea water was meant.", "seen": "0"}
    told = send(client, instructor, "desks:review", held.pk, **fields).content.decode()
    assert "Boyle&#x27;s law is now met." in told
    record = page(client, trainee, "quizzes:record").content.decode()
    assert "met after a review" in record
    assert "An answer was accepted as right. <bdi>Sea water was meant.</bdi>" in record
    assert "accepted as right" in page(client, trainee, "quizzes:attempt", held.pk).content.decode()
    check = page(client, trainee, "quizzes:sitting", held.sitting_id).content.decode()
    assert "After a review" in check
    assert "after a review: met" in page(client, instructor, "desks:trainee", trainee.pk).content.decode()
    row = ("met", str(held.pk), "right", "Sea water was meant.", "Given Instructor")
    assert row in exported(client, quay)


def exported(client, quay):
    client.force_login(quay.people["officer"])
    query = {"cohort": quay.cohort.pk, "first": "2000-01-01", "last": "2100-12-31"}
    response = client.get(reverse("exports:download", args=["competency-records"]), query)
    rows = csv.DictReader(io.StringIO(response.getvalue().decode(), newline=""), strict=True)
    wanted = ("decided", "reviewed_answer", "ruling", "ruling_why", "decided_by")
    return [tuple(row[name] for name in wanted) for row in rows]


def test_the_rows_of_the_check_as_it_ended_stay_in_the_export(client, quay, held):
    before = exported(client, quay)
    actions.rule_on(attempt_id=held.pk, ruled="right", by=quay.people["instructor"], why="Read.", seen=0)
    after = exported(client, quay)
    assert (len(after), [row for row in after if row in before]) == (len(before) + 1, before)


def test_the_ruling_and_what_it_moved_stand_in_the_journal(quay, held):
    by = quay.people["instructor"]
    actions.rule_on(attempt_id=held.pk, ruled="right", by=by, why="Read.", seen=0)
    moved, ruled = JournalLine.objects.all()[:2]
    assert (ruled.verb, ruled.subject_key, ruled.actor_key) == ("answer accepted as right", held.pk, by.pk)
    assert ruled.details == {"why": "Read.", "marked": "wrong", "counted": "wrong", "counts": "right"}
    assert (moved.verb, moved.actor_key) == ("check met after a review", by.pk)
    assert (moved.details["before"], moved.details["attempt"]) == ("held", held.pk)


def test_who_comes_second_is_told_and_can_send_again(client, quay, held):
    actions.rule_on(attempt_id=held.pk, ruled="right", by=quay.people["officer"], why="Read.", seen=0)
    fields = {"ruled": "left", "why": "The key stands.", "seen": "0"}
    told = send(client, quay.people["instructor"], "desks:review", held.pk, **fields).content.decode()
    assert "Given Officer ruled in the meantime: accepted as right." in told
    assert '<input type="hidden" name="seen" value="1" />' in told
    assert "The key stands." in told
    send(client, quay.people["instructor"], "desks:review", held.pk, **fields | {"seen": "1"})
    assert list(Ruling.objects.values_list("ruled", flat=True)) == ["right", "left"]
    assert DecisionRecord.objects.filter(ruling__isnull=False).count() == 2


def test_a_ruling_needs_a_choice_and_a_reason(client, quay, held):
    told = send(client, quay.people["instructor"], "desks:review", held.pk, seen="0").content.decode()
    assert "Choose what becomes of the answer." in told
    assert "Give the reason; it is kept with the record." in told
    assert not Ruling.objects.exists()


def test_the_page_of_a_ruling_shows_what_was_typed_read_and_decided_and_the_key(client, quay, held):
    doubt(quay.people["trainee"], held, "Two fit.")
    shown = page(client, quay.people["instructor"], "desks:review", held.pk).content.decode()
    for text in ("Two fit.", held.typed, held.understood, held.key["answer_text"], "Slips looked for"):
        assert text in shown
    assert "the check is met, score 10" in shown  # what follows if it is accepted
    assert "the check is held, score -6" in shown  # if it is left


def test_an_answer_to_a_check_that_a_review_closed_is_told_why(client, quay, boyle, held):
    trainee, by = quay.people["trainee"], quay.people["instructor"]
    actions.open_check_again(learner=trainee, competency=boyle, by=by, why="Seen.")
    waits = waiting(actions.start_check(learner=trainee, competency=boyle))
    actions.rule_on(attempt_id=held.pk, ruled="right", by=by, why="Read.", seen=0)
    told = send(client, trainee, "quizzes:answer", waits.pk, answer="1 ft3").content.decode()
    assert "A review had closed the check before that answer arrived" in told
    assert "it counts for neither side" in told
