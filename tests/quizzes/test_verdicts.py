"""What a wrong answer is told at once: the slip, the step to mend, what the number would have meant."""

import pytest
from django.urls import reverse
from django.utils.html import conditional_escape

from pressure import record
from pressure.draw import draw
from pressure.mixing import mix
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt
from quizzes.practice import IN_ANOTHER_UNIT
from tests.quizzes.conftest import NOON, give, right_text, waiting

HTMX = {"HX-Request": "true"}


@pytest.fixture
def site(client, learner):
    client.force_login(learner)
    return client


def put(learner, competency, problem):
    """Let the learner's open practice problem be this one."""
    attempt = waiting(actions.start_practice(learner=learner, competency=COMPETENCIES[competency], now=NOON))
    Attempt.objects.filter(pk=attempt.pk).update(
        family=problem.family, system=problem.system, shown=record.shown(problem), key=record.key(problem)
    )
    return Attempt.objects.get(pk=attempt.pk)


def answer(site, attempt, typed, **extra):
    url = reverse("quizzes:answer", args=[attempt.pk])
    fields = typed if isinstance(typed, dict) else {"answer": typed}
    return site.post(url, fields, follow="headers" not in extra, **extra).text


def slipped(key, name):
    """A number in the middle of a slip, as somebody would type it."""
    slip = next(one for one in key["slips"] if one["name"] == name)
    return f"{(slip['low'] + slip['high']) / 2:.5g} {key['unit']}"


@pytest.mark.parametrize("headers", [{}, HTMX])
def test_a_slip_is_named_mended_shown_in_its_step_and_told_at_depth(site, learner, headers):
    attempt = put(learner, "depth-pressure", draw("depth-to-absolute", 3, "us"))
    extra = {"headers": headers} if headers else {}
    text = answer(site, attempt, slipped(attempt.key, "atmosphere-left-out"), **extra)
    assert "A slip: the atmosphere was left out." in text
    assert "The atmosphere presses on the water: add it." in text
    assert "psi absolute would be so at" in text
    assert "Where it left the way: step 2" in text
    assert attempt.key["steps"][1]["relation"]["mathml"] in text
    assert attempt.key["steps"][0]["relation"]["mathml"] not in text
    assert f"Done so it comes to <strong>{attempt.key['answer_text']}</strong>" in text


def test_what_was_told_stays_with_the_attempt(site, learner):
    attempt = put(learner, "depth-pressure", draw("depth-to-gauge", 3, "us"))
    answer(site, attempt, slipped(attempt.key, "atmosphere-added"))
    kept = Attempt.objects.get(pk=attempt.pk)
    assert kept.mend.splitlines()[1].endswith("ft, not at 53 ft.")
    assert len(kept.mend.splitlines()) == 2


def test_a_wrong_number_without_a_slip_is_told_how_far_off_it_is(site, learner):
    attempt = put(learner, "depth-pressure", draw("depth-to-gauge", 3, "us"))
    text = answer(site, attempt, f"{attempt.key['answer'] * 4:.5g} psi")
    assert "Not right." in text
    assert "It is too large: about 4.0 times the answer." in text
    assert "would be so at 212 ft, not at 53 ft." in text  # four times the depth


def test_a_right_answer_is_told_nothing_of_slips(site, learner):
    attempt = put(learner, "depth-pressure", draw("depth-to-gauge", 3, "us"))
    text = answer(site, attempt, right_text(attempt))
    assert "Right." in text
    assert "Where it left the way" not in text
    assert Attempt.objects.get(pk=attempt.pk).mend == ""


def test_a_slip_in_a_table_shows_the_step_of_its_own_cell(site, learner):
    attempt = put(learner, "boyle-at-work", draw("air-table", 3, "us"))
    cells = attempt.key["cells"]
    form = {f"answer-{n}": f"{cell['answer']:.6g} {cell['unit']}" for n, cell in enumerate(cells, start=1)}
    wrong = cells[4]["slips"][0]
    form["answer-5"] = f"{(wrong['low'] + wrong['high']) / 2:.5g} {cells[4]['unit']}"
    text = answer(site, attempt, form)
    assert f"Done so it comes to <strong>{cells[4]['answer_text']}</strong>" in text
    assert "Where it left the way: step 5" in text


def test_a_choice_keeps_to_the_explanations_of_its_options(site, learner):
    attempt = put(learner, "mechanisms", draw("greater-pressure", 3, "us"))
    right = attempt.key["right"]
    wrong = next(n for n, one in enumerate(attempt.key["options"]) if one["name"] != right)
    text = answer(site, attempt, attempt.shown["options"][wrong]["letter"])
    assert "Where it left the way" not in text
    assert all(str(conditional_escape(one["why"])) in text for one in attempt.key["options"])


def test_the_unit_left_as_it_was_is_mended_in_the_step_that_turns_it(site, learner):
    form = mix(draw("depth-to-absolute", 3, "us"))
    attempt = put(learner, "depth-pressure", form)
    text = answer(site, attempt, f"{form.plain.key.answer:.5g} bar")
    assert "A slip: the unit changed and the number did not." in text
    assert "That is the figure in psi. Turn it into bar: 1 bar is 14.5038 psi." in text
    assert "Where it left the way: step 3" in text


def test_a_mixed_form_says_which_unit_and_takes_no_other(site, learner):
    form = mix(draw("depth-to-absolute", 3, "us"))
    attempt = put(learner, "depth-pressure", form)
    page = site.get(reverse("quizzes:practice", args=["depth-pressure"])).text
    assert "It is wanted in bar absolute; no other unit will do here." in page
    text = answer(site, attempt, f"{form.plain.key.answer:.5g} psi")
    assert "Nothing was counted" in text
    assert not Attempt.objects.get(pk=attempt.pk).is_answered


def test_practice_asks_in_another_unit_once_a_kind_goes_well_and_a_check_never_does(learner):
    depth = COMPETENCIES["depth-pressure"]
    give(actions.start_practice(learner=learner, competency=depth, now=NOON), "+" * 12)
    mixed = Attempt.objects.filter(reason=IN_ANOTHER_UNIT)
    assert mixed
    assert all(one.shown["mixed"] and one.help == 3 for one in mixed)
    sitting = actions.start_check(learner=learner, competency=depth, now=NOON)
    give(sitting, "+" * 8)
    assert not any(one.shown["mixed"] for one in sitting.attempts.all())
