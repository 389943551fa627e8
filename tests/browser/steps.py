"""What people do on the pages, step by step; every step looks at what it led to."""

import re

from django.urls import reverse
from playwright.sync_api import expect

from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, Sitting

PASSWORD = "slack water at noon"

# Depth in feet of sea water, gauge, absolute: common practice, no source.
DIALS = [(33, "14.7 psi", "29.4 psi"), (66, "29.4 psi", "44.1 psi")]


def sign_in(page, person):
    page.goto(reverse("people:sign-in"))
    page.get_by_label("E-mail address").fill(person.email)
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Sign in").click()
    expect(page.get_by_role("button", name="Sign out")).to_be_visible()


def waiting(sitting):
    """The problem that waits, key and all: the test process reads it from the database."""
    return sitting.attempts.select_related("sitting").get(answered_at__isnull=True)


def right(attempt):
    return f"{attempt.key['answer']:.6g} {attempt.key['unit']}"


def slipped(attempt):
    """The slip of the first kind this problem knows, and the answer it leads to."""
    slip = attempt.key["slips"][0]
    return slip, f"{(slip['low'] + slip['high']) / 2:.6g} {attempt.key['unit']}"


def type_answer(page, text):
    page.get_by_role("textbox").fill(text)
    page.get_by_role("button", name="Answer").click()


def sees_problem(page, attempt):
    word = "Question" if attempt.sitting.is_check else "Problem"
    expect(page.get_by_role("heading", name=f"{word} {attempt.number}", exact=True)).to_be_visible()
    expect(page.locator(".problem > .situation")).to_have_text(attempt.shown["situation"])


def read_lesson(page, script):
    """The slider by keyboard, or the links without script, lower the dials; the instruments follow."""
    page.get_by_role("link", name="Gauge and absolute", exact=True).first.click()
    dials = page.locator("#dials")
    dials.get_by_role("link", name="Look without a guess").click()
    for depth, gauge, absolute in DIALS:
        move(page, dials, depth, script)
        expect(dials.locator(".readings")).to_contain_text(gauge)
        expect(dials.locator(".readings")).to_contain_text(absolute)
        expect(dials.locator(".bench-words")).to_contain_text(f"At {depth} ft")
    page.get_by_role("link", name=re.compile("^Practise.*Gauge and absolute$")).click()


def move(page, apparatus, depth, script):
    if not script:
        apparatus.get_by_role("list", name="Marked positions").get_by_role("link", name=f"{depth} ft").click()
        return
    slider = apparatus.get_by_role("slider")
    slider.focus()
    for _ in range(depth - int(slider.input_value())):
        page.keyboard.press("ArrowRight")


def begin_practice(page, learner, competency):
    page.get_by_role("button", name="Begin practice").click()
    expect(page.get_by_role("textbox")).to_be_visible()
    sitting = Sitting.objects.get(learner=learner, competency=competency, purpose="practice")
    sees_problem(page, waiting(sitting))
    return sitting


def be_asked_to_write_it_clearly(page, sitting):
    """What cannot be read is handed back with a sentence, and counts as nothing."""
    type_answer(page, "deep enough")
    expect(page.get_by_role("alert")).to_contain_text("Nothing was counted")
    expect(page.get_by_role("textbox")).to_have_value("deep enough")
    expect(page.get_by_role("textbox")).to_have_attribute("aria-invalid", "true")
    assert not waiting(sitting).is_answered


def slip_and_read_the_solution(page, sitting):
    """A wrong answer by a known slip: its name stands in the verdict, and the solution opens step by step."""
    attempt = waiting(sitting)
    slip, text = slipped(attempt)
    type_answer(page, text)
    expect(page.locator(".verdict")).to_contain_text(f"A slip: {slip['label']}")
    expect(page.locator(".steps > li")).to_have_count(0)
    page.get_by_role("link", name="Show the worked solution").click()
    for shown in range(1, len(attempt.key["steps"])):
        expect(page.locator(".steps > li")).to_have_count(shown)
        page.get_by_role("link", name="Next step").click()
    expect(page.locator(".steps > li")).to_have_count(len(attempt.key["steps"]))
    expect(page.get_by_role("link", name="Next step")).to_have_count(0)


def get_one_right(page, sitting):
    page.get_by_role("link", name="Next problem").click()
    attempt = waiting(sitting)
    sees_problem(page, attempt)
    type_answer(page, right(attempt))
    expect(page.locator(".verdict")).to_contain_text("Right.")


def begin_check(page, learner, competency):
    page.get_by_role("link", name="My record").click()
    page.get_by_role("row", name=re.compile(COMPETENCIES[competency].title)).get_by_role("link").click()
    page.get_by_role("button", name="Begin the check").click()
    expect(page.get_by_role("textbox")).to_be_visible()
    sitting = Sitting.objects.get(learner=learner, competency=competency, purpose="check")
    sees_problem(page, waiting(sitting))
    return sitting


def answer_check_question(page, sitting):
    """No verdict shows; the next question, or the end, comes instead."""
    attempt = waiting(sitting)
    sees_problem(page, attempt)
    type_answer(page, right(attempt))
    expect(page.get_by_role("heading", name=f"Question {attempt.number}", exact=True)).to_have_count(0)
    sitting.refresh_from_db()
    if not sitting.ended:
        sees_problem(page, waiting(sitting))
        expect(page.locator(".verdict")).to_have_count(0)


def go_away_and_come_back(page, sitting):
    """A reload, and the browser closed and opened again, find the same question."""
    attempt = waiting(sitting)
    page.reload()
    sees_problem(page, attempt)
    page.goto("about:blank")
    page.goto(reverse("quizzes:check", args=[sitting.competency]))
    sees_problem(page, attempt)


def answer_in_two_windows(page, sitting):
    """The same question open twice: the second answer changes nothing and counts nothing."""
    attempt = waiting(sitting)
    other = page.context.new_page()
    other.goto(page.url)
    sees_problem(other, attempt)
    answer_check_question(page, sitting)
    type_answer(other, "1 psi" if attempt.key["unit"] == "psi" else f"1 {attempt.key['unit']}")
    sees_problem(other, waiting(sitting))
    other.close()
    kept = Attempt.objects.get(pk=attempt.pk)
    assert (kept.typed, kept.verdict) == (right(attempt), "right")


def finish_check(page, sitting):
    while not sitting.ended:
        answer_check_question(page, sitting)
    expect(page).to_have_url(re.compile(reverse("quizzes:sitting", args=[sitting.pk]) + "$"))


def tab_to(page, target, most=60):
    """Reach ``target`` by the Tab key alone."""
    for _ in range(most):
        page.keyboard.press("Tab")
        if target.evaluate("element => element === document.activeElement"):
            return
    raise AssertionError(f"{target} is not reached by {most} presses of Tab.")
