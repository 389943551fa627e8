"""Every kind of problem on the page (a dial, a table, a choice, an order): answered wrong and right."""

import pytest
from django.db import transaction
from django.urls import reverse
from django.utils import timezone
from playwright.sync_api import expect

from pressure.record import LETTERS
from quizzes.actions.sittings import ask_next
from quizzes.models import Sitting
from tests.browser.audit import faults

pytestmark = pytest.mark.browser

KINDS = pytest.mark.parametrize(
    ("competency", "family"),
    [
        ("dials-units", "dial-reading"),
        ("boyle-at-work", "air-table"),
        ("mechanisms", "name-the-injury"),
        ("mechanisms", "chain-of-events"),
    ],
)


def put(learner, competency, family):
    """A practice sitting whose first problem is of the family."""
    with transaction.atomic():  # as every deed that deals a problem
        return _put(learner, competency, family)


def _put(learner, competency, family):
    sitting = Sitting.objects.create(
        learner=learner,
        competency=competency,
        purpose="practice",
        system="us",
        seed=1,
        began=timezone.now(),
    )
    return ask_next(sitting, learner, timezone.now(), family=family)


def fill(page, attempt, *, right):
    """Answer by the fields that are there: with a wrong option, an order turned round, a wrong number."""
    key = attempt.key
    match attempt.shown["task"]:
        case "choice":
            name = next(one["name"] for one in key["options"] if (one["name"] == key["right"]) == right)
            text = next(one["text"] for one in key["options"] if one["name"] == name)
            page.get_by_label(text, exact=True).check()
        case "ordering":
            order = key["right"] if right else key["right"][::-1]
            for letter, one in zip(LETTERS, key["options"], strict=False):
                page.locator(f"#place-{letter}").fill(str(order.index(one["name"]) + 1))
        case _:
            for box, cell in zip(page.get_by_role("textbox").all(), key.get("cells", [key]), strict=True):
                box.fill(f"{cell['answer'] * (1 if right else 37):.6g} {cell['unit']}")
    page.get_by_role("button", name="Answer").click()


@KINDS
@pytest.mark.parametrize("script", [True, False], ids=["script", "no-script"])
@pytest.mark.parametrize("right", [True, False], ids=["right", "wrong"])
def test_every_kind_is_answered_and_explained(visit, quay, competency, family, script, right):
    attempt = put(quay.people["trainee"], competency, family)
    page = visit(quay.people["trainee"], width=390, script=script)
    page.goto(reverse("quizzes:practice", args=[competency]))
    expect(page.locator(".problem > .situation")).to_have_text(attempt.shown["situation"])
    fill(page, attempt, right=right)
    said = (
        "Right."
        if right
        else {"choice": "A slip", "ordering": "A slip"}.get(attempt.shown["task"], "Not right.")
    )
    expect(page.locator(".verdict")).to_contain_text(said)
    page.get_by_role("link", name="Show the worked solution").click()
    expect(page.locator(".steps > li").first).to_contain_text(attempt.key["steps"][0]["why"])


@KINDS
@pytest.mark.parametrize(("width", "scheme"), [(1280, "light"), (320, "dark")])
def test_every_kind_is_accessible_before_and_after_the_answer(visit, quay, competency, family, width, scheme):
    attempt = put(quay.people["trainee"], competency, family)
    page = visit(quay.people["trainee"], width=width, scheme=scheme)
    page.goto(reverse("quizzes:practice", args=[competency]))
    page.get_by_role("button", name="Answer").click()
    expect(page.get_by_role("alert")).to_contain_text("Nothing was counted")
    found = faults(page)
    fill(page, attempt, right=False)
    expect(page.locator(".verdict")).to_be_visible()
    page.goto(reverse("quizzes:attempt", args=[attempt.pk]) + "?steps=99")
    assert found + faults(page) == []
