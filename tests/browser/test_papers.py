"""Paper checks from the printing to the record, in a real browser; each page at each width, day and night."""

from io import BytesIO

import pytest
from django.urls import reverse
from playwright.sync_api import expect
from pypdf import PdfReader

from course.papers.models import Paper, Run
from quizzes.models import DecisionRecord, Standing
from tests.browser.audit import faults
from tests.course.papers.factories import form_of

pytestmark = pytest.mark.browser

SLUG = "gauge-absolute"


@pytest.fixture
def ready(quay):
    return Standing.objects.create(learner=quay.people["trainee"], competency=SLUG, state="ready")


def make(page, quay):
    """Print through the page: a paper for the trainee and a spare."""
    page.goto(reverse("papers:runs", args=[quay.cohort.pk]))
    page.get_by_label("Competency").select_option("Gauge and absolute")
    page.get_by_label("Spare papers, without a name").fill("1")
    page.get_by_role("button", name="Make the papers").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Gauge and absolute: 2 papers")
    return Run.objects.first()


def written_on(page, name, path):
    with page.expect_download() as download:
        page.get_by_role("link", name=name).click()
    download.value.save_as(path)
    return "\n".join(one.extract_text() for one in PdfReader(BytesIO(path.read_bytes())).pages)


def type_in(page, paper, mark="+"):
    for number, question in enumerate(paper.questions, start=1):
        for name, text in form_of(question, mark).items():
            page.locator(f"[name=q{number}-{name}]").fill(text)


@pytest.mark.parametrize("window", [{"width": 1280}, {"width": 320, "script": False}], ids=["desk", "phone"])
def test_a_paper_is_printed_answered_and_entered_until_it_stands_in_the_record(
    visit, quay, ready, window, tmp_path
):
    page = visit(quay.people["instructor"], **window)
    run = make(page, quay)
    paper = run.papers.get(number=1)
    assert paper.spaced_code in written_on(page, "Papers to hand out (PDF)", tmp_path / "papers.pdf")
    assert paper.spaced_code in written_on(page, "Key with worked answers (PDF)", tmp_path / "key.pdf")
    page.goto(reverse("papers:find"))
    page.get_by_label("Code").fill(paper.spaced_code.lower())
    page.get_by_role("button", name="Open the paper").click()
    type_in(page, paper)
    page.get_by_role("button", name="Read it once more").click()
    page.get_by_role("button", name="Enter these answers for Given Trainee").click()
    expect(page.get_by_role("main")).to_contain_text("met: The score reached 10")
    page.get_by_role("link", name="Given Trainee").click()
    expect(page.get_by_role("main")).to_contain_text("on paper, entered by Given Instructor")
    assert DecisionRecord.objects.get(sitting__entered_paper=paper).decided == "met"


def test_a_mistake_in_typing_is_mended_before_it_is_entered(visit, quay, ready):
    page = visit(quay.people["instructor"])
    paper = make(page, quay).papers.get(number=1)
    page.goto(paper.get_absolute_url())
    type_in(page, paper)
    blank = page.get_by_role("textbox", name="Question 1: ")
    kept = blank.input_value()
    blank.fill("x" * 70)
    page.get_by_role("button", name="Read it once more").click()
    expect(page.get_by_role("alert")).to_contain_text("Question 1")
    expect(blank).to_have_value("x" * 70)
    blank.fill(kept)
    page.get_by_role("button", name="Read it once more").click()
    page.get_by_role("button", name="Change something").click()
    expect(blank).to_have_value(kept)
    assert not Paper.objects.get(pk=paper.pk).is_entered


def test_an_instructor_of_another_cohort_finds_nothing(visit, quay):
    page = visit(quay.people["outsider"])
    for name, argument in (("runs", quay.cohort.pk), ("run", quay.paper.run_id), ("enter", quay.paper.code)):
        assert page.goto(reverse(f"papers:{name}", args=[argument])).status == 404
    page.goto(reverse("papers:find"))
    page.get_by_label("Code").fill(quay.paper.code)
    page.get_by_role("button", name="Open the paper").click()
    expect(page.get_by_role("alert")).to_contain_text("No paper of your cohorts has this code")


@pytest.mark.parametrize(("width", "scheme"), [(1280, "light"), (390, "dark"), (320, "light")])
def test_every_page_of_paper_checks_is_accessible(visit, quay, ready, width, scheme):
    page = visit(quay.people["instructor"], width=width, scheme=scheme)
    paper = make(page, quay).papers.get(number=1)
    found = faults(page)
    addresses = [reverse("papers:runs", args=[quay.cohort.pk]), reverse("papers:find") + "?code=XXXXXX"]
    for address in (*addresses, quay.paper.get_absolute_url(), paper.get_absolute_url()):
        page.goto(address)
        found += faults(page)
    page.locator("[name=answered_on]").fill("2000-01-01")
    page.get_by_role("button", name="Read it once more").click()
    found += faults(page)
    page.goto(paper.get_absolute_url())
    for step in ("Read it once more", "Enter these answers for Given Trainee"):
        page.get_by_role("button", name=step).click()
        found += faults(page)
    assert found == []
