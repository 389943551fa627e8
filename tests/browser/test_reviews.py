"""A review from the trainee's word to the record, with and without script, wide and narrow."""

import re
from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone
from playwright.sync_api import expect

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, Standing
from tests.browser.audit import faults
from tests.quizzes.conftest import give

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
WINDOWS = pytest.mark.parametrize(
    ("width", "scheme", "script"), [(1280, "light", True), (320, "dark", True), (390, "light", False)]
)


@pytest.fixture
def held(quay):
    """Question 10 of a check that the trainee was held in: nine right, then five wrong."""
    learner, then = quay.people["trainee"], timezone.now() - timedelta(hours=2)
    Standing.objects.filter(learner=learner).update(waits=False, state="ready", held_until=None, holds=0)
    sitting = actions.start_check(learner=learner, competency=COMPETENCIES["boyle"], now=then)
    give(sitting, "+" * 9 + "-" * 5, then)
    return Attempt.objects.get(sitting=sitting, number=10)


def ask_for_a_review(page, attempt):
    """From the check to its tenth question, and a word to the instructor; a form sent empty first."""
    page.goto(reverse("quizzes:sitting", args=[attempt.sitting_id]))
    page.get_by_role("link", name="Question 10").click()
    page.get_by_role("link", name="This question is wrong, or I meant something else").click()
    page.get_by_role("button", name="Send to the instructor").click()
    expect(page.get_by_role("alert")).to_contain_text("Choose one.")
    found = faults_of(page)
    page.get_by_label("This question is wrong").check()
    page.get_by_label("In a few words").fill("Both readings fit the dial.")
    page.get_by_role("button", name="Send to the instructor").click()
    expect(page.get_by_text("It waits for your instructor.")).to_be_visible()
    return found + faults_of(page)


def rule_on_it(page):
    """From the desk through the queue to the ruling."""
    page.goto(reverse("desks:cohorts"))
    page.get_by_role("link", name=re.compile(r"Reviews \(1")).click()
    expect(page.get_by_role("table")).to_contain_text("Both readings fit the dial.")
    found = faults_of(page)
    page.get_by_role("link", name=re.compile("Boyle's law, attempt")).click()
    found += faults_of(page)
    page.get_by_label("Accept it as right").check()
    page.get_by_label("Reason").fill("The drawing is ambiguous.")
    page.get_by_role("button", name="Record the ruling").click()
    expect(page.get_by_role("status")).to_contain_text("Boyle's law is now met")
    expect(page.get_by_role("heading", name="Nothing waits")).to_be_visible()
    return found


def read_the_record(page, attempt):
    """The state, the decision and its reason stand on the record; the check as it ended stays."""
    page.goto(reverse("quizzes:record"))
    expect(page.get_by_role("row", name=re.compile("^Boyle's law met "))).to_be_visible()
    expect(page.get_by_role("heading", name="Boyle's law: met after a review")).to_be_visible()
    expect(page.get_by_role("heading", name="Boyle's law: held", exact=True)).to_have_count(2)
    expect(page.get_by_text("The drawing is ambiguous.")).to_be_visible()
    found = faults_of(page)
    for name, pk in (("quizzes:sitting", attempt.sitting_id), ("quizzes:attempt", attempt.pk)):
        page.goto(reverse(name, args=[pk]))
        expect(page.get_by_text("accepted as right").first).to_be_visible()
        found += faults_of(page)
    return found


def faults_of(page):
    """Nothing where there is no script, since the audit is one."""
    return [] if page.no_script else faults(page)


@WINDOWS
def test_one_answer_goes_from_the_trainee_to_the_instructor_and_to_the_record(
    visit, quay, held, width, scheme, script
):
    windows = {}
    for who in ("trainee", "instructor"):
        windows[who] = visit(quay.people[who], width=width, scheme=scheme, script=script)
        windows[who].no_script = not script
    found = ask_for_a_review(windows["trainee"], held)
    found += rule_on_it(windows["instructor"])
    found += read_the_record(windows["trainee"], held)
    assert found == []


def test_an_instructor_of_another_cohort_finds_nothing(visit, quay, held):
    said = {"doubted": "question", "said": "Both readings fit."}
    actions.doubt(learner=quay.people["trainee"], attempt_id=held.pk, **said)
    page = visit(quay.people["outsider"])
    page.goto(reverse("desks:reviews"))
    expect(page.get_by_role("heading", name="Nothing waits")).to_be_visible()
    expect(page.get_by_role("link", name="Reviews", exact=True)).to_be_visible()
    assert page.goto(reverse("desks:review", args=[held.pk])).status == 404
