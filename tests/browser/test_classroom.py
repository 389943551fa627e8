"""A class before its wall slate: one window to project, two phones, with and without script."""

import os

import pytest
from django.db import transaction
from django.urls import reverse
from playwright.sync_api import expect

from tests.browser.audit import faults
from tests.browser.conftest import session
from tests.browser.steps import tab_to
from tests.course.classroom.conftest import TASKS, Class, right, slip

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
SHOTS = os.environ.get("SHOTS")


@pytest.fixture
def room(transactional_db):
    return Class(size=2)


def put_up(room, **said):
    """Dealt in a transaction, as in service."""
    with transaction.atomic():
        return room.put_up(**said)


def press(page, name):
    page.get_by_role("button", name=name, exact=True).click()


def sees(page, stage):
    expect(page.locator("main .state-word")).to_have_text(stage, timeout=6_000)


def look_again(page, script):
    """By itself with script, by a link without."""
    if not script:
        page.get_by_role("link", name="Look again").click()


def answer(page, form):
    page.get_by_role("textbox").fill(form["answer"])
    page.get_by_role("button", name="nswer").click()
    expect(page.get_by_text("You may change it until")).to_be_visible()


def rows(page):
    """The spread as a person reads it: each row's words and count."""
    return [line.inner_text().split("\t") for line in page.locator(".spread tbody tr").all()]


@pytest.mark.parametrize("script", [True, False], ids=["script", "no-script"])
def test_a_class_from_the_first_problem_to_the_next(visit, room, script):
    wall = visit(room.instructor, script=script)
    phones = [visit(one, width=390, script=script) for one in room.trainees]
    for phone in phones:
        phone.goto(reverse("home"))
        phone.get_by_role("link", name="In class").click()
        expect(phone.get_by_text("Nothing is on the wall")).to_be_visible()
    wall.goto(reverse("desks:board", args=[room.cohort.pk]))
    wall.get_by_role("link", name="Wall slate").click()
    wall.get_by_label("Kind of problem").select_option("depth-to-gauge")
    wall.get_by_label("Units").select_option("us")
    press(wall, "Put it up")
    sees(wall, "Open for answers")
    showing = room.showing
    answer_on_the_phones(wall, phones, showing, script)
    close_and_show(wall, phones, showing, script)
    solve_and_go_on(wall, phones, showing, script)


def answer_on_the_phones(wall, phones, showing, script):
    first, second = phones
    for phone in phones:
        look_again(phone, script)
        sees(phone, "Open for answers")
        expect(phone.locator(".situation")).to_have_text(showing.shown["situation"])
    first.get_by_role("textbox").fill("deep enough")
    press(first, "Answer")
    expect(first.get_by_role("alert")).to_contain_text("Nothing was counted")
    expect(first.get_by_role("textbox")).to_have_value("deep enough")
    answer(first, right(showing))
    answer(first, slip(showing))
    look_again(wall, script)
    expect(wall.locator(".count")).to_have_text("1 of 2 has answered.", timeout=6_000)
    answer(second, right(showing))
    look_again(wall, script)
    expect(wall.locator(".count")).to_have_text("2 of 2 have answered.", timeout=6_000)


def close_and_show(wall, phones, showing, script):
    press(wall, "Close")
    sees(wall, "Closed")
    for phone in phones:
        look_again(phone, script)
        sees(phone, "Closed")
        expect(phone.get_by_role("textbox")).to_have_count(0)
    assert showing.key["answer_text"] not in wall.content()
    press(wall, "Show the answers")
    expected = [f"Right: {showing.key['answer_text']}", f"A slip: {showing.key['slips'][0]['label']}"]
    assert [[words.strip(), count.strip()] for words, count in rows(wall)] == [[one, "1"] for one in expected]
    for phone, word in zip(phones, ("A slip", "Right."), strict=True):
        look_again(phone, script)
        expect(phone.locator(".verdict-word")).to_contain_text(word, timeout=6_000)


def solve_and_go_on(wall, phones, showing, script):
    steps = len(showing.key["steps"])
    for number in range(1, steps + 1):
        press(wall, f"Show step {number} of {steps}")
        expect(wall.locator(".steps > li")).to_have_count(number)
    expect(wall.locator(".sense")).to_contain_text(showing.key["sense"])
    for phone in phones:
        look_again(phone, script)
        expect(phone.locator(".steps > li")).to_have_count(steps, timeout=6_000)
    press(wall, "Next, with other numbers")
    sees(wall, "Open for answers")
    for phone in phones:
        look_again(phone, script)
        sees(phone, "Open for answers")
        expect(phone.locator(".situation")).not_to_have_text(showing.shown["situation"])


def test_what_is_being_typed_stays_while_others_answer_and_a_second_wall_follows(visit, room):
    showing = put_up(room)
    walls = [visit(room.instructor), visit(room.instructor, width=390)]
    phone = visit(room.trainees[0], width=390)
    phone.goto(room.url("hand"))
    for wall in walls:
        wall.goto(room.url("wall"))
    phone.get_by_role("textbox").fill("12.")
    room.answer(1, right(showing))
    for wall in walls:
        expect(wall.locator(".count")).to_contain_text("1 of 2", timeout=6_000)
    expect(phone.get_by_role("textbox")).to_have_value("12.")
    expect(phone.get_by_role("textbox")).to_be_focused()
    press(walls[0], "Close")
    sees(walls[1], "Closed")
    sees(phone, "Closed")


def test_a_slate_out_of_touch_says_so_and_recovers(new_context, live_server, room):
    """In a window of its own, since a browser notes every request that fails."""
    put_up(room)
    window = new_context(base_url=live_server.url)
    window.add_cookies([session(room.trainees[0], live_server.url)])
    phone, news = window.new_page(), f"**{room.url('hand-news')}*"
    phone.goto(room.url("hand"))
    phone.get_by_role("textbox").fill("12 psi")
    phone.route(news, lambda route: route.abort())
    expect(phone.get_by_text("out of touch")).to_be_visible(timeout=6_000)
    phone.unroute(news)
    expect(phone.get_by_text("out of touch")).to_have_count(0, timeout=6_000)
    expect(phone.get_by_role("textbox")).to_have_value("12 psi")


def test_a_class_is_led_by_keyboard_alone(visit, room):
    wall = visit(room.instructor)
    wall.goto(room.url("wall"))
    tab_to(wall, wall.get_by_label("Kind of problem"))
    wall.keyboard.type("Depth to gauge")
    tab_to(wall, wall.get_by_role("button", name="Put it up"))
    wall.keyboard.press("Enter")
    for name in ("Close", "Show the answers", "Show step 1"):
        button = wall.get_by_role("button", name=name).first
        expect(button).to_be_focused()
        wall.keyboard.press("Enter")
    expect(wall.locator(".steps > li")).to_have_count(1)


EVERYWHERE = [(1280, "light"), (390, "dark"), (320, "light")]
"""A number is looked at in three windows, the other kinds of form in one."""
SOME = [(1280, "dark")]


@pytest.mark.parametrize(
    ("task", "width", "scheme"),
    [(task, *window) for task in TASKS for window in (EVERYWHERE if task == "number" else SOME)],
)
def test_both_slates_are_accessible_in_every_stage(visit, room, task, width, scheme):
    wall, phone = (visit(one, width=width, scheme=scheme) for one in (room.instructor, room.trainees[0]))
    shot = f"{task}-{width}-{scheme}"
    found = audit(wall, room.url("wall"), f"bare-{shot}") + audit(phone, room.url("hand"), "")
    room.answer(1, right(put_up(room, family=TASKS[task])))
    found += audit(wall, room.url("wall"), f"open-{shot}")
    found += audit(phone, room.url("hand"), f"hand-open-{shot}")
    room.move("closed", "spread")
    steps = len(room.showing.key["steps"])
    for number in range(1, steps + 1):
        wall.goto(room.url("wall"))
        press(wall, f"Show step {number} of {steps}")
    found += audit(wall, room.url("wall"), f"spread-{shot}")
    found += audit(phone, room.url("hand"), f"hand-spread-{shot}")
    assert found == []


def audit(page, url, shot):
    page.goto(url)
    if SHOTS and shot:
        page.screenshot(path=f"{SHOTS}/{shot}.png", full_page=True)
    return faults(page)
