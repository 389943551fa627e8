"""Setting a check, signing off and releasing at the desk: with and without script, by keyboard, by whom."""

import re
from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone
from playwright.sync_api import expect

from course.appointments import deeds
from course.demo.factories import PersonFactory
from quizzes.models import DecisionRecord, Standing
from tests.browser.audit import faults
from tests.browser.steps import tab_to

pytestmark = pytest.mark.browser

SCRIPT = pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
WINDOWS = pytest.mark.parametrize(("width", "scheme"), [(1280, "light"), (390, "dark"), (320, "light")])


@pytest.fixture
def ready(quay):
    """The trainee's check of Boyle's law is open."""
    mine = Standing.objects.filter(learner=quay.people["trainee"], competency="boyle")
    mine.update(waits=False, state="ready", held_until=None)
    return quay.people["trainee"]


@pytest.fixture
def draft(quay):
    """A draft for chosen trainees, with everything that can be said."""
    now = timezone.now()
    plan = deeds.Plan(
        whole_cohort=False,
        people=[quay.people["trainee"]],
        subjects=["boyle", "closed-spaces"],
        opens_at=now,
        closes_at=now + timedelta(hours=2),
        only=True,
        supervised=True,
        extra_time_percent=25,
        note="At the slip; bring a slate.",
    )
    return deeds.draft(cohort=quay.cohort, by=quay.people["instructor"], plan=plan)


def write_draft(page, quay):
    page.goto(reverse("desks:board", args=[quay.cohort.pk]))
    page.get_by_role("link", name="Set checks").click()
    page.get_by_role("link", name="Set a check").click()
    page.get_by_label("Boyle's law", exact=True).check()
    opens = timezone.localtime() - timedelta(minutes=5)
    page.get_by_label("From").fill(f"{opens:%Y-%m-%dT%H:%M}")
    page.get_by_label("Until").fill(f"{opens + timedelta(hours=2):%Y-%m-%dT%H:%M}")
    page.get_by_label("Supervised").check()
    page.get_by_label("Note to the trainees").fill("At the slip.")
    page.get_by_role("button", name="Look it over").click()
    expect(page.get_by_text("Nobody has been told")).to_be_visible()


def look_at_draws(page):
    page.get_by_role("link", name=re.compile("^metric")).first.click()
    expect(page.locator(".problem")).to_have_count(10)
    page.get_by_role("link", name="The same in US customary units").click()
    expect(page.locator(".problem")).to_have_count(10)
    page.go_back()
    page.go_back()


@SCRIPT
def test_an_instructor_sets_a_check_and_the_trainee_takes_it_with_the_code(visit, quay, ready, script):
    desk = visit(quay.people["instructor"], script=script)
    write_draft(desk, quay)
    look_at_draws(desk)
    desk.get_by_role("button", name="Send it").click()
    expect(desk.get_by_role("heading", name="Check set: open")).to_be_visible()
    page = visit(ready, script=script)
    page.goto(reverse("home"))
    expect(page.get_by_text("At the slip.")).to_be_visible()
    page.locator(".set-check").get_by_role("link", name="the check of Boyle's law").click()
    page.get_by_label("Code").fill(quay.code)
    page.get_by_role("button", name="Begin the check").click()
    expect(page.get_by_text("Supervised by Given Instructor")).to_be_visible()
    desk.reload()
    expect(desk.get_by_text("Boyle's law: under way since")).to_be_visible()
    expect(desk.get_by_role("heading", name="Take it back")).to_have_count(0)


@SCRIPT
def test_a_set_check_is_taken_back_with_a_reason_by_keyboard(visit, quay, script):
    page = visit(quay.people["instructor"], script=script)
    page.goto(reverse("appointments:appointment", args=[quay.appointment.pk]))
    tab_to(page, page.get_by_label("Reason"))
    page.keyboard.type("The slip is iced up.")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", name="Check set: taken back")).to_be_visible()
    trainee = visit(quay.people["trainee"], script=script)
    trainee.goto(reverse("home"))
    expect(trainee.get_by_text("The slip is iced up.")).to_be_visible()


@SCRIPT
def test_a_cohort_is_signed_off_in_one_go(visit, quay, script):
    quay.cohort.trainees.add(PersonFactory(name="Mara Quill"))
    page = visit(quay.people["instructor"], script=script)
    page.goto(reverse("desks:board", args=[quay.cohort.pk]))
    page.get_by_role("link", name="Sign-off").click()
    page.get_by_role("link", name="Boyle's law", exact=True).click()
    for name in ("Given Trainee", "Mara Quill"):
        page.get_by_role("checkbox", name=f"Oral {name}").check()
    page.get_by_label("Remark").fill("Told me why.")
    page.get_by_role("button", name="Look it over").click()
    expect(page.get_by_role("heading", name="Write 2 signatures?")).to_be_visible()
    page.get_by_role("button", name="Write them").click()
    expect(page.get_by_text("2 signatures written.")).to_be_visible()
    assert DecisionRecord.objects.filter(decided="signed", part="oral").count() == 2


@SCRIPT
def test_held_checks_are_opened_in_one_go_by_keyboard(visit, quay, script):
    page = visit(quay.people["instructor"], script=script)
    page.goto(reverse("signing:holds", args=[quay.cohort.pk]))
    tab_to(page, page.get_by_role("checkbox", name="Given Trainee Boyle's law"))
    page.keyboard.press("Space")
    tab_to(page, page.get_by_label("Waive the rest"))
    page.keyboard.press("ArrowUp")
    expect(page.get_by_label("Open the check now")).to_be_checked()
    tab_to(page, page.get_by_label("Reason"))
    page.keyboard.type("Worked through together.")
    page.get_by_role("button", name="Look it over").click()
    tab_to(page, page.get_by_role("button", name="Write them"))
    page.keyboard.press("Enter")
    expect(page.get_by_text("1 entry written.")).to_be_visible()


def test_an_instructor_of_another_cohort_sees_nothing(visit, quay, draft):
    page = visit(quay.people["outsider"])
    cohort, sent = [quay.cohort.pk], [quay.appointment.pk]
    for name, arguments in [
        *[("appointments:index", cohort), ("appointments:new", cohort), ("appointments:appointment", sent)],
        *[("appointments:change", [draft.pk]), ("signing:index", cohort), ("signing:holds", cohort)],
        ("signing:sign", [*cohort, "boyle"]),
    ]:
        assert page.goto(reverse(name, args=arguments)).status == 404
        expect(page.get_by_text("Given Trainee")).to_have_count(0)


def audited(page, addresses):
    """The faults of these pages; what a page turned into counts as well."""
    found = []
    for name, *arguments in addresses:
        opened = page.goto(reverse(name, args=arguments))
        found += faults(page) if opened.ok else [f"{opened.status} {opened.url}"]
    return found


@WINDOWS
def test_every_page_of_the_room_is_accessible_and_fits_its_window(visit, quay, draft, width, scheme):
    page = visit(quay.people["instructor"], width=width, scheme=scheme)
    cohort = quay.cohort.pk
    addresses = [
        *[("appointments:index", cohort), ("appointments:new", cohort)],
        *[("appointments:appointment", draft.pk), ("appointments:change", draft.pk)],
        ("appointments:appointment", quay.appointment.pk),
        *[("appointments:draws", family, "us", 1) for family in ("dial-reading", "boyle-questions")],
        *[("signing:index", cohort), ("signing:sign", cohort, "boyle"), ("signing:holds", cohort)],
    ]
    assert audited(page, addresses) == []


@WINDOWS
def test_what_was_refused_and_what_is_to_be_confirmed_is_accessible_too(visit, quay, width, scheme):
    page = visit(quay.people["instructor"], width=width, scheme=scheme)
    page.goto(reverse("appointments:new", args=[quay.cohort.pk]))
    page.get_by_role("button", name="Look it over").click()
    expect(page.get_by_role("alert")).to_be_visible()
    found = faults(page)
    page.goto(reverse("signing:sign", args=[quay.cohort.pk, "boyle"]))
    page.get_by_role("checkbox", name="Oral Given Trainee").check()
    page.get_by_label("Remark").fill("Told me why.")
    page.get_by_role("button", name="Look it over").click()
    expect(page.get_by_role("button", name="Write them")).to_be_visible()
    assert found + faults(page) == []


@WINDOWS
def test_the_trainees_pages_stay_accessible_with_checks_set(visit, quay, ready, draft, width, scheme):
    deeds.send(appointment_id=draft.pk, by=quay.people["instructor"])
    by = quay.people["instructor"]
    deeds.take_back(appointment_id=quay.appointment.pk, by=by, why="The slip is iced up.")
    page = visit(ready, width=width, scheme=scheme)
    addresses = [("home",), ("quizzes:check", "boyle"), ("quizzes:check", "dials-units")]
    assert audited(page, addresses) == []
    page.goto(reverse("home"))
    expect(page.locator(".set-check")).to_have_count(2)
