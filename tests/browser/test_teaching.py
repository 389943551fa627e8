"""The teaching list in a real browser: found, read, sent, printed on one page; the practice that follows."""

from io import BytesIO

import pytest
from django.urls import reverse
from playwright.sync_api import expect
from pypdf import PdfReader

from course.demo.factories import PersonFactory
from pressure.slips import LABELS
from quizzes.models import AnswerCount, Assignment
from tests.browser import steps
from tests.browser.audit import faults

pytestmark = pytest.mark.browser

LABEL = "the atmosphere was left out"
KINDS = ("depth-to-gauge", "depth-to-absolute")


@pytest.fixture
def slips(quay):
    """Fourteen more trainees with as many slips; all, and the trainee, left out the atmosphere.

    They did so in the kind that does not wait for the trainee now.
    """
    AnswerCount.objects.all().delete()
    people = [quay.people["trainee"], *(PersonFactory(name=f"Diver {n}") for n in range(14))]
    quay.cohort.trainees.add(*people)
    kind = next(one for one in KINDS if one != quay.waiting.family)
    longest = sorted(LABELS, key=lambda slip: -len(LABELS[slip]))[:14]
    made = [(person, "atmosphere-left-out", LABEL, 3) for person in people]
    made += [(people[n], slip, LABELS[slip], n) for n, slip in enumerate(longest) if n]
    AnswerCount.objects.bulk_create(
        AnswerCount(learner=who, family=kind, verdict="slip", slip=slip, label=label, answers=answers)
        for who, slip, label, answers in made
    )
    return quay


def address(quay, query=""):
    return reverse("desks:teaching", args=[quay.cohort.pk]) + query


@pytest.mark.parametrize("script", [True, False])
def test_an_instructor_asks_for_practice_and_the_trainee_meets_it(visit, slips, script):
    page = visit(slips.people["instructor"], script=script)
    page.goto(reverse("desks:board", args=[slips.cohort.pk]))
    page.get_by_role("link", name="Teaching list").click()
    first = page.get_by_role("row", name="1. The atmosphere was left out")
    expect(first).to_contain_text("15 of 15")
    first.get_by_role("button", name="Ask 15 to practise").click()
    expect(page.get_by_text("15 trainees meet it next in practice")).to_be_visible()
    expect(first).to_contain_text("All 15 asked already, not done yet.")
    expect(first.get_by_role("button")).to_have_count(0)
    assert Assignment.objects.count() == 15
    page = visit(slips.people["trainee"], script=script)
    page.goto(reverse("quizzes:practice", args=["depth-pressure"]))
    steps.type_answer(page, steps.right(slips.waiting))
    expect(page.locator(".verdict")).to_be_visible()
    page.goto(reverse("quizzes:practice", args=["depth-pressure"]))
    expect(page.get_by_text(f"Your instructor asks for this: {LABEL}.")).to_be_visible()


def test_each_slip_leads_to_its_section_and_to_an_example_with_its_solution(visit, slips):
    page = visit(slips.people["instructor"])
    page.goto(address(slips))
    row = page.get_by_role("row", name="1. The atmosphere was left out")
    row.get_by_role("link").first.click()
    expect(page.get_by_role("heading", name="From depth to pressure")).to_be_in_viewport()
    page.go_back()
    row.get_by_role("link").last.click()
    page.get_by_text("Answer and worked solution").click()
    expect(page.locator(".steps > li").first).to_be_visible()


def test_another_cohorts_instructor_and_the_trainees_find_nothing(visit, slips):
    for who in ("outsider", "trainee", "administrator"):
        page = visit(slips.people[who])
        assert page.goto(address(slips)).status == 404
        page.context.close()


@pytest.mark.parametrize(("width", "scheme"), [(1280, "light"), (390, "dark"), (320, "light")])
def test_the_list_is_accessible_and_fits_its_window(visit, slips, width, scheme):
    page, found = visit(slips.people["instructor"], width=width, scheme=scheme), []
    for query in ("", "?days=7", "?days=12"):
        assert page.goto(address(slips, query)).ok
        found += faults(page)
    assert found == []


@pytest.mark.parametrize("sheet", ["A4", "Letter"])
def test_ten_slips_with_the_longest_names_fit_one_printed_page(visit, slips, sheet):
    page = visit(slips.people["instructor"])
    page.goto(address(slips))
    pages = PdfReader(BytesIO(page.pdf(format=sheet))).pages
    assert len(pages) == 1
    text = " ".join(pages[0].extract_text().split())
    assert "10. " in text
    assert "From depth to pressure" in text
    assert "to practise" not in text
    assert "not a dive plan" in text
