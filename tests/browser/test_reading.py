"""Reading and coming back, in a real browser: the place is kept, search answers, print is whole."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from course.lessons import booklet, library
from course.lessons.models import Place
from course.lessons.places import remember
from tests.browser.audit import faults

pytestmark = pytest.mark.browser

LESSON = library.lessons()["squeeze"]
LATER = LESSON.sections[4]
ADDRESS = reverse("lessons:lesson", args=[LESSON.slug])


def test_the_section_that_is_being_read_is_told_and_offered_on_return(visit, quay):
    page = visit(quay.people["trainee"], width=390)
    page.goto(ADDRESS)
    with page.expect_response(lambda response: response.url.endswith("/place/")) as told:
        page.locator(f"#{LATER.anchor}").evaluate("one => one.scrollIntoView({ block: 'center' })")
    assert told.value.status == 204
    assert Place.objects.get(person=quay.people["trainee"], lesson=LESSON.slug).section == LATER.anchor
    page.goto(ADDRESS)
    page.get_by_role("link", name=LATER.title).first.click()
    expect(page).to_have_url(f"{page.url.partition('#')[0]}#{LATER.anchor}")


@pytest.mark.parametrize("script", [True, False])
def test_the_button_at_the_end_marks_as_read_and_leads_on(visit, quay, script):
    page = visit(quay.people["stranger"], script=script)
    page.goto(ADDRESS)
    page.get_by_role("button", name="Mark as read").click()
    expect(page.get_by_role("heading", level=1)).not_to_have_text(LESSON.title)
    assert Place.objects.get(person=quay.people["stranger"], lesson=LESSON.slug).is_finished
    page.goto(ADDRESS)
    expect(page.get_by_text("You have read this lesson.")).to_be_visible()


def test_search_answers_as_one_types_and_without_script_on_sending(visit, quay):
    page = visit(quay.people["trainee"], width=320)
    page.goto(reverse("search"))
    page.get_by_role("searchbox").press_sequentially("barotr")
    expect(page.locator("#found li").first).to_be_visible()
    expect(page.get_by_role("status").filter(has_text="found")).to_be_visible()
    assert faults(page) == []
    plain = visit(quay.people["trainee"], script=False)
    plain.goto(reverse("home"))
    plain.get_by_role("searchbox").fill("barotruama")
    plain.get_by_role("button", name="Search").click()
    plain.get_by_role("link", name="barotrauma").click()
    expect(plain.locator("#found li").first).to_be_visible()


def test_a_lesson_one_comes_back_to_is_accessible(visit, quay):
    remember(person=quay.people["trainee"], lesson=LESSON, section=LATER.anchor, finished=True)
    for width in (1280, 320):
        page = visit(quay.people["trainee"], width=width)
        page.goto(ADDRESS)
        assert faults(page) == []
        page.goto(reverse("home"))
        assert faults(page) == []


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_nothing_of_the_booklet_is_wider_than_the_paper(visit, quay, paper):
    booklet.leaves("us", booklet.WHOLE)  # set once for all; this takes a while
    page = visit(quay.people["trainee"])
    page.goto(f"{reverse('booklet')}?part=whole")
    page.emulate_media(media="print")
    page.set_viewport_size({"width": {"A4": 672, "Letter": 695}[paper], "height": 900})  # within the margins
    wide = page.evaluate(
        "() => [...document.querySelectorAll('.booklet *')].filter(one => "
        "one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0 && !one.closest('svg, math'))"
        ".map(one => one.outerHTML.slice(0, 120))"
    )
    assert wide == []
