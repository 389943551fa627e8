"""Three people's day, in a real browser: on a desk, on a phone, and without JavaScript."""

import csv
import re

import pytest
from django.contrib.auth.hashers import make_password
from django.urls import reverse
from django.utils import timezone
from playwright.sync_api import expect

from course.people.models import Person
from quizzes.models import DecisionRecord, Standing
from tests.browser import steps

pytestmark = pytest.mark.browser

WINDOWS = pytest.mark.parametrize(
    "window",
    [{"width": 1280}, {"width": 390}, {"width": 1280, "script": False}, {"width": 390, "script": False}],
    ids=["desk", "phone", "desk without JavaScript", "phone without JavaScript"],
)


@pytest.fixture
def unit(quay):
    """The cast, able to sign in by password."""
    Person.objects.update(password=make_password(steps.PASSWORD))
    return quay


@WINDOWS
def test_a_trainee_reads_practises_and_is_checked_until_the_competency_is_met(visit, unit, window):
    trainee, page = unit.people["stranger"], visit(**window)
    steps.sign_in(page, trainee)
    steps.read_lesson(page, window.get("script", True))
    practice = steps.begin_practice(page, trainee, "gauge-absolute")
    steps.be_asked_to_write_it_clearly(page, practice)
    steps.slip_and_read_the_solution(page, practice)
    for _ in range(3):
        steps.get_one_right(page, practice)
    check = steps.begin_check(page, trainee, "gauge-absolute")
    steps.answer_check_question(page, check)
    steps.go_away_and_come_back(page, check)
    steps.answer_in_two_windows(page, check)
    steps.finish_check(page, check)
    expect(page.get_by_role("heading", level=1)).to_have_text("Gauge and absolute: met")
    expect(page.get_by_role("row")).to_have_count(1 + check.attempts.count())
    assert Standing.objects.get(learner=trainee, competency="gauge-absolute").state == "met"
    page.get_by_role("link", name="My record").first.click()
    expect(page.get_by_role("row", name=re.compile("Gauge and absolute"))).to_contain_text("met")


@WINDOWS
def test_an_instructor_reads_what_was_asked_typed_understood_and_decided(visit, unit, window):
    page, attempt = visit(**window), unit.attempt
    steps.sign_in(page, unit.people["instructor"])
    page.get_by_role("link", name="Desk", exact=True).click()
    page.get_by_role("link", name="Slipway").click()
    row = page.get_by_role("row", name=re.compile("Given Trainee"))
    expect(row).to_contain_text("held")
    row.get_by_role("link").click()
    page.get_by_role("link", name=str(attempt.pk), exact=True).click()
    for text in (attempt.shown["situation"], attempt.typed, attempt.understood, attempt.key["answer_text"]):
        expect(page.get_by_role("main")).to_contain_text(text)
    expect(page.get_by_role("main")).to_contain_text("standard, edition")


@WINDOWS
def test_an_instructor_opens_a_held_check_again_and_gives_the_reason(visit, unit, window):
    page, trainee = visit(**window), unit.people["trainee"]
    steps.sign_in(page, unit.people["instructor"])
    page.goto(reverse("desks:trainee", args=[trainee.pk]))
    page.get_by_label("Reason").fill("Worked the missed questions together.")
    page.get_by_role("button", name="Open the check again").click()
    expect(page.get_by_role("main")).to_contain_text("Worked the missed questions together.")
    assert not Standing.objects.get(learner=trainee, competency="boyle").waits


@WINDOWS
def test_an_officer_takes_out_the_records_as_csv(visit, unit, window, tmp_path):
    page, decision = visit(**window), DecisionRecord.objects.get(learner=unit.people["trainee"])
    steps.sign_in(page, unit.people["officer"])
    page.get_by_role("link", name="Exports").click()
    page.get_by_label("Cohort").select_option("Slipway")
    with page.expect_download() as download:
        page.get_by_role("button", name=re.compile("Download competency records")).click()
    download.value.save_as(tmp_path / "records.csv")
    with open(tmp_path / "records.csv", encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file, strict=True))
    kept = [(row["email"], row["competency"], row["decided"], row["score"]) for row in rows]
    assert kept == [("trainee@quay.example", "boyle", "held", str(decision.score))]
    assert rows[0]["decided_at"] == timezone.localtime(decision.at).isoformat(timespec="seconds")


def test_signing_in_and_answering_take_no_mouse(visit, unit):
    page, trainee = visit(), unit.people["trainee"]
    page.goto(reverse("quizzes:practice", args=["depth-pressure"]))
    page.keyboard.type(trainee.email)
    page.keyboard.press("Tab")
    page.keyboard.type(steps.PASSWORD)
    page.keyboard.press("Enter")
    steps.sees_problem(page, unit.waiting)
    steps.tab_to(page, page.get_by_role("textbox"))
    page.keyboard.type(steps.right(unit.waiting))
    page.keyboard.press("Enter")
    expect(page.locator(".verdict")).to_be_focused()
    expect(page.locator(".verdict")).to_contain_text("Right.")
    steps.tab_to(page, page.get_by_role("link", name="Next problem"))
    page.keyboard.press("Enter")
    steps.sees_problem(page, steps.waiting(unit.waiting.sitting))
