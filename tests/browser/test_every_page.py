"""Every page at every width, by day and by night: accessible, inside its window, silent, and alone."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from tests.browser import steps
from tests.browser.audit import faults

pytestmark = pytest.mark.browser

WIDTHS = (1280, 390, 320)
WINDOWS = pytest.mark.parametrize("width", WIDTHS)
SCHEMES = pytest.mark.parametrize("scheme", ["light", "dark"])

QUERY = {"quizzes:attempt": "?steps=99", "search": "?q=pressure+ear", "booklet": "?part=squeeze"}
"""What is asked of a page, so that it shows all it has."""

REFUSED = {("trainee", "desks:attempt"), ("officer", "exports:download")}
"""Pages that say no: not for trainees; nothing chosen yet."""


def staff_pages(trainee, attempt, cohort):
    return {
        "instructor": [
            *[("desks:cohorts",), ("desks:rules",), ("desks:families",)],
            ("desks:problem", "dial-reading", "us", 3),
            *[("desks:board", cohort), ("desks:slots", cohort), ("desks:accommodations", trainee)],
            *[("desks:trainee", trainee), ("desks:decide", trainee)],
            ("desks:attempt", attempt.pk),
        ],
        "officer": [
            ("exports:index",),
            ("exports:download", "competency-records"),
            ("people:roster",),
            ("people:person-add",),
            ("people:person", trainee),
            ("people:cohorts",),
            ("people:cohort-add",),
            ("people:cohort", cohort),
        ],
    }


def pages(quay):
    """Who opens what: (person, address)."""
    attempt = quay.attempt
    return {
        None: [
            ("people:sign-in",),
            ("people:password-forgotten",),
            ("people:password-sent",),
            ("people:password-set", "MQ", "no-such-token"),
        ],
        "trainee": [
            ("home",),
            *[("lessons:lesson", slug) for slug in ("boyle", "gauge-absolute", "squeeze")],
            *[("glossary",), ("search",), ("booklet",)],
            ("quizzes:practice", "gauge-absolute"),
            ("quizzes:practice", "depth-pressure"),
            *[("quizzes:check", "boyle"), ("quizzes:course-check",), ("quizzes:across",)],
            ("quizzes:attempt", attempt.pk),
            ("quizzes:sitting", attempt.sitting_id),
            ("quizzes:record",),
            ("people:units",),
            ("people:password",),
            ("desks:attempt", attempt.pk),
        ],
        **staff_pages(quay.people["trainee"].pk, attempt, quay.cohort.pk),
    }


@SCHEMES
def test_every_page_is_accessible_and_fits_its_window(visit, quay, scheme):
    found = []
    for who, addresses in pages(quay).items():
        page = visit(quay.people.get(who), scheme=scheme)
        for name, *arguments in addresses:
            opened = page.goto(reverse(name, args=arguments) + QUERY.get(name, ""))
            if not opened.ok and (who, name) not in REFUSED:
                found.append(f"{opened.status} {opened.url}")
            found += at_every_width(page)
        page.context.close()
    assert found == []


def at_every_width(page):
    """The faults of a page at each width, loaded once."""
    found = []
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        found += faults(page)
    return found


@WINDOWS
@SCHEMES
def test_a_card_stays_accessible_as_it_changes(visit, quay, width, scheme):
    page = visit(quay.people["trainee"], width=width, scheme=scheme)
    page.goto(reverse("quizzes:practice", args=["depth-pressure"]))
    steps.type_answer(page, "deep enough")
    expect(page.get_by_role("alert")).to_be_visible()
    found = faults(page)
    steps.type_answer(page, steps.slipped(quay.waiting)[1])
    expect(page.locator(".verdict")).to_be_visible()
    found += faults(page)
    page.get_by_role("link", name="Show the worked solution").click()
    expect(page.locator(".steps > li")).to_have_count(1)
    assert found + faults(page) == []
