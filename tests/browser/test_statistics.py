"""Questions in figures in a real browser: found by a flag, paused with a reason, gone from practice."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, ItemTally
from tests.benchmarks.ready_counts import fill
from tests.browser.audit import faults

pytestmark = pytest.mark.browser

BAD = "depth-to-volume"
PAGES = [
    ("desks:items", [], ""),
    ("desks:items", [], "?show=questions&competency=boyle-at-work&flag=no-such"),
    ("desks:item", [BAD], ""),
    ("desks:item", ["boyle-questions"], ""),
    ("desks:question", ["boyle-questions", "fills-in-a-full-bell"], ""),
    ("desks:item", ["column-weight"], ""),
    ("desks:families", [], ""),
    ("desks:rules", [], ""),
]


@pytest.fixture
def counted(quay):
    """Everything was answered by sixty people, one kind of problem wrongly by most, one by nobody."""
    fill(people=60)
    ItemTally.objects.filter(item=BAD).update(rests={"2/1": [4, 36], "2/0": [2, 18]})
    ItemTally.objects.filter(item="column-weight").delete()
    actions.pause(item="column-weight", by=quay.people["officer"], why="Its figure is being redrawn.")
    return quay


@pytest.mark.parametrize("script", [True, False])
def test_an_instructor_finds_a_flagged_kind_and_pauses_it(visit, counted, script):
    page = visit(counted.people["instructor"], script=script)
    page.goto(reverse("desks:cohorts"))
    page.get_by_role("link", name="Questions in figures").click()
    page.get_by_label("Flag", exact=True).select_option(label="key or wording suspect")
    page.get_by_role("button", name="Show").click()
    page.get_by_role("link", name="Air in an open box going down").click()
    expect(page.get_by_role("heading", name="Key or wording suspect")).to_be_visible()
    page.get_by_role("button", name="Pause it").click()
    expect(page.get_by_role("alert")).to_contain_text("Give the reason")
    page.get_by_label("Reason").fill("Its key takes fresh water for salt.")
    page.get_by_role("button", name="Pause it").click()
    expect(page.get_by_role("heading", name="Paused", exact=True)).to_be_visible()
    expect(page.get_by_text("Its key takes fresh water for salt.")).to_be_visible()
    learner, boyle = counted.people["stranger"], COMPETENCIES["boyle-at-work"]
    actions.start_practice(learner=learner, competency=boyle)
    assert not Attempt.objects.filter(learner=learner, family=BAD, answered_at=None).exists()


def test_neither_a_trainee_nor_an_administrator_finds_it(visit, counted):
    for who in ("trainee", "administrator"):
        page = visit(counted.people[who])
        for name, arguments, query in PAGES:
            assert page.goto(reverse(name, args=arguments) + query).status == 404
        page.context.close()


@pytest.mark.parametrize(("width", "scheme"), [(1280, "light"), (390, "dark"), (320, "light")])
def test_the_pages_are_accessible_and_fit_their_window(visit, counted, width, scheme):
    page = visit(counted.people["instructor"], width=width, scheme=scheme)
    found = []
    for name, arguments, query in PAGES:
        assert page.goto(reverse(name, args=arguments) + query).ok
        for each in page.locator("summary").all():
            each.click()
        found += faults(page)
    assert found == []
