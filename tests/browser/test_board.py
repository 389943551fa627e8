"""The cohort board in a real browser: by keyboard, on a phone, without script, on paper; who sees nothing."""

import re

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from course.demo.factories import PersonFactory
from quizzes.models import Standing
from tests.browser import steps
from tests.browser.audit import faults

pytestmark = pytest.mark.browser

ALL = "?state=practising&competency=lesson:boyle&idle=soon&sort=boyle"


@pytest.fixture
def board(quay):
    """Twelve more trainees, the first of them practising; the address of their board."""
    people = [PersonFactory(name=f"Diver {letter}") for letter in "ABCDEFGHIJKL"]
    quay.cohort.trainees.add(*people)
    Standing.objects.create(learner=people[0], competency="boyle", state="practising")
    return reverse("desks:board", args=[quay.cohort.pk])


def names(page):
    return page.locator("tbody th").all_inner_texts()


def sort_by(page, title):
    return page.get_by_role("columnheader", name=title).get_by_role("link")


WINDOWS = [(1280, "light"), (1280, "dark"), (390, "dark"), (320, "light")]


@pytest.mark.parametrize(("width", "scheme"), WINDOWS)
def test_the_board_is_accessible_and_fits_its_window_whatever_is_asked(visit, quay, board, width, scheme):
    page, found = visit(quay.people["instructor"], width=width, scheme=scheme), []
    for query in ("", "?sort=-idle", "?state=lapsed", ALL):
        page.goto(board + query)
        found += faults(page)
    page.goto(reverse("desks:trainee", args=[quay.people["trainee"].pk]))
    page.get_by_text("The same in numbers", exact=True).click()
    assert found + faults(page) == []


def test_the_keyboard_sorts_and_filters_and_keeps_its_place(visit, quay, board):
    page = visit(quay.people["instructor"])
    page.goto(board)
    header = page.get_by_role("columnheader", name="Boyle's law", exact=True)
    steps.tab_to(page, header.get_by_role("link"))
    page.keyboard.press("Enter")
    expect(header).to_have_attribute("aria-sort", "ascending")
    expect(header.get_by_role("link")).to_be_focused()
    assert names(page)[0] == "Given Trainee"  # held
    page.keyboard.press("Enter")
    expect(header).to_have_attribute("aria-sort", "descending")
    page.get_by_label("State").focus()
    page.keyboard.type("practising")
    steps.tab_to(page, page.get_by_role("button", name="Show"))
    page.keyboard.press("Enter")
    expect(page.get_by_role("status").filter(has_text="1 of 13 trainees")).to_be_visible()
    expect(page.get_by_role("button", name="Show")).to_be_focused()
    assert names(page) == ["Diver A"]
    assert "sort=-boyle" in page.url


def test_going_back_takes_the_last_wish_back(visit, quay, board):
    page = visit(quay.people["instructor"])
    page.goto(board)
    sort_by(page, "Trainee").click()
    expect(page).to_have_url(re.compile(r"\?sort=-name$"))
    expect(page.locator("tbody th").first).to_have_text("Given Trainee")
    page.go_back()
    expect(page.locator("tbody th").first).to_have_text("Diver A")
    expect(page.get_by_role("heading", level=1)).to_have_text("Slipway")


@pytest.mark.parametrize("script", [True, False])
def test_a_phone_filters_with_script_and_without(visit, quay, board, script):
    page = visit(quay.people["instructor"], width=390, script=script)
    page.goto(board)
    page.get_by_label("Lesson or competency").select_option("Boyle's law")
    page.get_by_label("Idle days, at least").fill("a week")
    page.get_by_role("button", name="Show").click()
    expect(page.locator("#board-idle_error")).to_have_text(
        "Write whole days, such as 14. Everybody is shown."
    )
    expect(page.get_by_label("Idle days, at least")).to_have_value("a week")
    expect(page.get_by_role("columnheader")).to_have_count(3)
    page.get_by_role("link", name="Show everybody and everything").click()
    expect(page.get_by_label("Idle days, at least")).to_have_value("")
    assert len(names(page)) == 13


def test_the_names_stay_in_view_while_the_table_scrolls_by_keys(visit, quay, board):
    page = visit(quay.people["instructor"], width=390)
    page.goto(board)
    box = page.locator(".table-box")
    box.focus()
    for _ in range(8):
        page.keyboard.press("ArrowRight")
    page.wait_for_function("() => document.querySelector('.table-box').scrollLeft > 100")
    assert page.locator("tbody th").first.bounding_box()["x"] >= 0


def test_print_holds_every_column_and_no_controls(visit, quay, board):
    page = visit(quay.people["instructor"], width=980)
    page.goto(board)
    page.emulate_media(media="print")
    expect(page.locator(".board-form")).to_be_hidden()
    expect(page.get_by_role("columnheader", name="Buoyancy")).to_be_visible()
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 980


def test_an_instructor_of_another_cohort_finds_nothing(visit, quay, board):
    page = visit(quay.people["outsider"])
    for address in (board, reverse("desks:trainee", args=[quay.people["trainee"].pk])):
        assert page.goto(address).status == 404
        expect(page.get_by_text("Given Trainee")).to_have_count(0)
    page.goto(reverse("desks:cohorts"))
    expect(page.get_by_role("link", name="Slipway")).to_have_count(0)
