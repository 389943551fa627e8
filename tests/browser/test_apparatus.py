"""Every apparatus moved by keys, and by links where there is no script: its numbers are the physics'."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from course.lessons import library
from course.lessons.apparatus.catalogue import bench
from course.lessons.apparatus.contract import Place
from course.lessons.apparatus.moving import said

pytestmark = pytest.mark.browser

WHERE = {name: lesson.slug for lesson in library.lessons().values() for name in lesson.apparatus}
every_apparatus = pytest.mark.parametrize("name", sorted(WHERE))


def shows(page, name, table, place):
    """The words, the readings and the table's rows are those of the place."""
    block = page.locator(f"#{name}")
    row = table.at(place)
    expect(block.locator(".bench-words")).to_have_text(said(table.words, row))
    for (_, form), reading in zip(table.readings, block.locator(".readings dd").all(), strict=True):
        expect(reading).to_have_text(said(form, row))
    last = table.at(Place(table.slider.stops[-1].at, place.set_to))
    cells = block.locator(".bench-table tbody tr").last.locator("th, td")
    expect(cells).to_have_text([said(form, last) for _, form in table.table])


def guess_by_keyboard(page, name, table):
    options = page.locator(f"#{name}").get_by_role("radio")
    options.first.focus()
    page.keyboard.press("Space")
    for _ in range([option for option, _ in table.guess.options].index(table.guess.right)):
        page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    expect(page.locator(f"#{name} .notice").first).to_contain_text(table.guess.because)


def turned(page, name, table, place):
    """Every switch turned to its last option by the arrow keys."""
    for switch in table.switches:
        options = page.locator(f"#{name}").get_by_role("group", name=switch.label).get_by_role("radio")
        options.first.focus()
        page.keyboard.press("Space")
        for _ in switch.options[1:]:
            page.keyboard.press("ArrowDown")
    return Place(place.at, tuple([switch.options[-1][0] for switch in table.switches]))


WINDOWS = [
    (name, *((1280, "us"), (390, "metric"))[at % 2]) for at, name in enumerate(sorted(WHERE))
]  # turn and turn about: what is read in either system is compared row by row elsewhere


@pytest.mark.parametrize(("name", "width", "system"), WINDOWS)
def test_keys_move_it_and_the_numbers_are_those_of_the_physics(visit, quay, name, width, system):
    learner, table = quay.people["trainee"], bench(name, system)
    learner.system = system
    learner.save()
    page = visit(learner, width=width)
    page.goto(reverse("lessons:lesson", args=[WHERE[name]]))
    guess_by_keyboard(page, name, table)
    place = table.guess.place
    shows(page, name, table, place)
    page.locator(f"#{name}").get_by_role("slider").focus()
    page.keyboard.press("Home")
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    shows(page, name, table, Place(3, place.set_to))
    page.keyboard.press("End")
    place = turned(page, name, table, Place(table.slider.top, place.set_to))
    shows(page, name, table, place)
    page.reload()
    shows(page, name, table, place)


@every_apparatus
def test_links_and_a_button_move_it_without_script(visit, quay, name):
    table = bench(name, quay.people["trainee"].system)
    page = visit(quay.people["trainee"], script=False)
    page.goto(reverse("lessons:lesson", args=[WHERE[name]]))
    block = page.locator(f"#{name}")
    block.get_by_role("link", name="Look without a guess").click()
    shows(page, name, table, table.start)
    page.locator(f"#{name} a[rel=next]").click()
    shows(page, name, table, Place(table.slider.stops[1].at, table.start.set_to))
    options = tuple([switch.options[-1][0] for switch in table.switches])
    for switch in table.switches:
        block.get_by_role("group", name=switch.label).get_by_role("radio").last.check()
    block.get_by_role("button", name="Set it so").click()
    shows(page, name, table, Place(table.slider.stops[1].at, options))
