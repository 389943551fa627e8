"""The export of competency records: one row a decision, of one cohort, within the days chosen."""

import csv
import io
from datetime import UTC, datetime

import pytest
from django.urls import reverse
from django.utils import timezone

from quizzes import actions
from quizzes.models import DecisionRecord, Standing


@pytest.fixture
def officer(client, quay):
    client.force_login(quay.people["officer"])
    return client


def records(client, quay, first="2000-01-01", last="2100-12-31"):
    url = reverse("exports:download", args=["competency-records"])
    response = client.get(url, {"cohort": quay.cohort.pk, "first": first, "last": last})
    return list(csv.DictReader(io.StringIO(response.getvalue().decode(), newline=""), strict=True))


def decide_at(quay, boyle, at, why="Looked at together."):
    Standing.objects.update(waits=True)
    actions.open_check_again(
        learner=quay.people["trainee"], competency=boyle, by=quay.people["instructor"], why=why, now=at
    )


def test_a_hold_stands_with_its_score_rule_and_evidence(officer, quay):
    (row,) = records(officer, quay)
    decision = DecisionRecord.objects.get(learner=quay.people["trainee"])
    assert (row["person"], row["email"], row["cohort"]) == (
        "Given Trainee",
        "trainee@quay.example",
        "Slipway",
    )
    assert (row["competency"], row["competency_title"], row["decided"]) == ("boyle", "Boyle's law", "held")
    assert (row["score"], row["due_on"], row["decided_by"]) == ("-6", "", "the rule")
    assert [row[f"rule_{part}"] for part in ("target", "loss", "floor", "maximum")] == ["10", "3", "-6", "30"]
    assert row["evidence"].split() == [str(pk) for pk in decision.evidence]
    assert (row["answers"], row["sitting"]) == ("2", str(decision.sitting_id))


def test_the_time_reads_back_to_the_second(officer, quay):
    (row,) = records(officer, quay)
    at = DecisionRecord.objects.get(learner=quay.people["trainee"]).at
    assert datetime.fromisoformat(row["decided_at"]) == at.replace(microsecond=0)


def test_rows_of_another_cohort_are_absent(officer, quay):
    assert DecisionRecord.objects.count() == 2
    assert {row["person"] for row in records(officer, quay)} == {"Given Trainee"}


def test_a_reason_that_looks_like_a_formula_is_made_harmless(officer, quay, boyle):
    decide_at(quay, boyle, timezone.now(), why='=HYPERLINK("http://boathouse.example")')
    reasons = {row["why"] for row in records(officer, quay)}
    assert '\'=HYPERLINK("http://boathouse.example")' in reasons


def test_both_days_count_from_midnight_to_midnight_on_the_sites_clock(officer, quay, boyle, settings):
    settings.TIME_ZONE = "America/Halifax"  # four hours behind UTC in January
    for at in (
        datetime(2026, 1, 10, 3, 59, 59, tzinfo=UTC),  # the day before, locally
        datetime(2026, 1, 10, 4, 0, tzinfo=UTC),
        datetime(2026, 1, 12, 3, 59, 59, tzinfo=UTC),
        datetime(2026, 1, 12, 4, 0, tzinfo=UTC),  # the day after, locally
    ):
        decide_at(quay, boyle, at)
    found = [row["decided_at"] for row in records(officer, quay, "2026-01-10", "2026-01-11")]
    assert found == ["2026-01-10T00:00:00-04:00", "2026-01-11T23:59:59-04:00"]


def test_the_number_of_queries_does_not_grow_with_the_rows(
    officer, quay, boyle, django_assert_max_num_queries
):
    for _ in range(30):
        decide_at(quay, boyle, timezone.now())
    with django_assert_max_num_queries(9):
        assert len(records(officer, quay)) == 31


def test_a_part_that_was_signed_off_is_in_the_file(officer, quay, boyle):
    trainee, instructor = quay.people["trainee"], quay.people["instructor"]
    actions.sign_off(learner=trainee, competency=boyle, part="pool", by=instructor, why="Seen.")
    today = timezone.localdate().isoformat()
    rows = records(officer, quay, today, today)
    assert [(row["decided"], row["part"]) for row in rows if row["part"]] == [("signed", "pool")]
