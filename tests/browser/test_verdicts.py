"""What a slip is told, and a problem asked in another unit: with and without script, wide and narrow."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from pressure import record
from pressure.draw import draw
from pressure.mixing import mix
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt
from tests.browser.audit import faults

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
PRACTICE = ["depth-pressure"]


def put(learner, problem):
    """Let the learner's open practice problem be this one."""
    sitting = actions.start_practice(learner=learner, competency=COMPETENCIES["depth-pressure"])
    waiting = Attempt.objects.filter(sitting=sitting, answered_at__isnull=True)
    waiting.update(
        family=problem.family, system=problem.system, shown=record.shown(problem), key=record.key(problem)
    )
    return waiting.get()


@pytest.mark.parametrize("script", [True, False], ids=["script", "no-script"])
@pytest.mark.parametrize(("width", "scheme"), [(1280, "light"), (320, "dark")])
def test_a_slip_in_the_unit_is_told_with_its_step(visit, quay, width, scheme, script):
    learner = quay.people["trainee"]
    form = mix(draw("depth-to-absolute", 3, "us"))
    put(learner, form)
    page = visit(learner, width=width, scheme=scheme, script=script)
    page.goto(reverse("quizzes:practice", args=PRACTICE))
    page.get_by_label("Absolute pressure, in bar").fill("37.6 psi")
    page.get_by_role("button", name="Answer").click()
    expect(page.get_by_role("alert")).to_contain_text("takes no other")
    page.get_by_label("Absolute pressure, in bar").fill("37.6 bar")
    page.get_by_role("button", name="Answer").click()
    expect(page.locator(".verdict")).to_contain_text("the unit changed and the number did not")
    expect(page.locator(".mended")).to_contain_text("Where it left the way: step 3")
    if script:
        assert faults(page) == []
