"""One's own record on paper: everything that makes it a record is there, nothing of the page around it."""

from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone
from playwright.sync_api import expect

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Standing
from tests.quizzes.conftest import give

pytestmark = pytest.mark.browser

# The width between the margins of static/css/print.css (16 mm on both sides), at 96 dots to the inch.
SHEETS = pytest.mark.parametrize(("sheet", "width"), [("A4", 673), ("Letter", 695)])


@pytest.fixture
def record(visit, quay):
    """The trainee's record: Boyle's law met under the standard rule, its pool part signed off."""
    trainee, boyle = quay.people["trainee"], COMPETENCIES["boyle"]
    Standing.objects.filter(learner=trainee).update(waits=False, held_until=None, state="ready", holds=0)
    begun = timezone.now() - timedelta(days=1)
    give(actions.start_check(learner=trainee, competency=boyle, now=begun), "+" * 10, begun)
    actions.sign_off(
        learner=trainee, competency=boyle, part="pool", by=quay.people["instructor"], why="Seen."
    )
    page = visit(trainee)
    page.goto(reverse("quizzes:record"))
    return page


@SHEETS
def test_the_sheet_says_who_when_which_rule_and_who_signed(record, sheet, width):
    record.set_viewport_size({"width": width, "height": 900})
    record.emulate_media(media="print")
    today = timezone.localdate()
    expect(record.locator("main strong", has_text="Given Trainee")).to_be_visible()
    expect(record.get_by_text(f"As it stands on {today.day} {today:%B %Y}")).to_be_visible()
    row = record.get_by_role("row", name="Boyle's law met")
    expect(row).to_contain_text("the standard rule, edition 2026-1")
    expect(row).to_contain_text("pool: Given Instructor")
    expect(record.get_by_role("note")).to_contain_text("not a dive plan, a decompression schedule")


@SHEETS
def test_nothing_of_the_page_around_it_is_printed_and_nothing_is_cut_off(record, sheet, width):
    record.set_viewport_size({"width": width, "height": 900})
    record.emulate_media(media="print")
    for around in (".masthead nav", ".page-side", ".masthead-person", ".no-print"):
        expect(record.locator(around).first).to_be_hidden()
    assert record.evaluate("document.documentElement.scrollWidth") <= width
    boxes = record.locator(".table-box")
    assert boxes.evaluate_all("all => all.every((one) => one.scrollWidth <= one.clientWidth + 1)")
    assert record.pdf(format=sheet).startswith(b"%PDF")
