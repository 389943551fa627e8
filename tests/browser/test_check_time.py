"""What is left of a check's time: counted on in the page, said at five minutes, at one and at the end."""

from dataclasses import replace

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from quizzes import actions
from quizzes.models import Standing
from quizzes.policy import DEFAULT

pytestmark = pytest.mark.browser

CHECK = "quizzes:check"


@pytest.fixture
def begin(visit, quay):
    """Opens the check of Boyle's law, begun just now with forty minutes to go."""

    def open_check(**window):
        trainee = quay.people["trainee"]
        Standing.objects.filter(learner=trainee).update(waits=False, held_until=None, state="ready")
        policy = replace(DEFAULT, time_limit_minutes=40)
        actions.set_policy(policy=policy, by=quay.people["officer"], why="As on the day.")
        page = visit(trainee, **window)
        page.goto(reverse(CHECK, args=["boyle"]))
        expect(page.get_by_text("Time is limited to 40 minutes")).to_be_visible()
        if window.get("script", True):
            page.clock.install()
        page.get_by_role("button", name="Begin the check").click()
        return page

    return open_check


def test_the_time_is_said_at_five_minutes_at_one_and_at_the_end(begin):
    page = begin()
    left, said = page.locator("[data-words]"), page.locator("[data-said]")
    expect(left).to_have_text("39 minutes left.")
    expect(said).to_be_empty()
    page.clock.fast_forward("35:05")
    expect(said).to_have_text("Five minutes are left.")
    page.clock.fast_forward("04:00")
    expect(said).to_have_text("One minute is left.")
    page.clock.fast_forward("01:00")
    expect(said).to_contain_text("Time is over.")
    expect(page.get_by_role("link", name="End the check")).to_be_visible()
    expect(page.get_by_role("button", name="Answer")).to_be_visible()  # nothing was sent for anybody


def test_without_a_script_the_page_says_what_was_left_when_it_was_loaded(begin):
    page = begin(script=False)
    expect(page.get_by_text("Left when this page was loaded: 39 minutes.")).to_be_visible()
