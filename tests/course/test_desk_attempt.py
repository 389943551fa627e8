"""One attempt at the desk: exactly what was asked, typed, understood and decided, and under which rule."""

import pytest
from django.urls import reverse
from django.utils.html import escape

from quizzes import actions
from quizzes.models import Attempt


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


def page(client, attempt):
    return client.get(reverse("desks:attempt", args=[attempt.pk])).text


def slip_in(attempt):
    """Type what the first known slip leads to; the slip comes back with the attempt as it then stands."""
    slip, unit = attempt.key["slips"][0], attempt.key["unit"]
    typed = f"{(slip['low'] + slip['high']) / 2:.6g} {unit}"
    return slip, actions.answer(
        learner=attempt.learner, attempt_id=attempt.pk, form={"answer": typed}
    ).attempt


def test_an_answered_attempt_shows_what_was_asked_typed_understood_and_decided(desk, quay):
    slip, attempt = slip_in(quay.waiting)
    text = page(desk, attempt)
    lines = attempt.mend.split("\n")
    for said in (attempt.shown["convention"], attempt.typed, attempt.understood, *lines):
        assert escape(said) in text
    assert escape(f"slip: {slip['label']}") in text
    assert escape(attempt.key["answer_text"]) in text
    assert all(step["result"]["mathml"] in text for step in attempt.key["steps"])


def test_an_open_attempt_shows_what_was_asked_and_nothing_of_the_key(desk, quay):
    text = page(desk, quay.waiting)
    assert escape(quay.waiting.shown["convention"]) in text
    assert "Not answered yet." in text
    assert not any(escape(slip["label"]) in text for slip in quay.waiting.key["slips"])
    assert not any(step["result"]["mathml"] in text for step in quay.waiting.key["steps"])
    assert "The key" not in text


def test_a_check_names_the_rule_in_force_and_practice_says_there_is_none(desk, quay):
    rule = quay.attempt.sitting.decision_rule
    assert f"{rule.name}, edition {rule.edition}." in page(desk, quay.attempt)
    assert "None: practice certifies nothing." in page(desk, quay.waiting)


def test_seed_and_edition_are_told(desk, quay):
    text = page(desk, quay.attempt)
    assert str(quay.attempt.seed) in text
    assert f"{quay.attempt.family}, edition {quay.attempt.edition}" in text


def test_what_was_typed_is_text_and_never_markup(desk, quay):
    Attempt.objects.filter(pk=quay.waiting.pk).update(
        typed="<script>1</script>", verdict="wrong", answered_at=quay.waiting.asked_at
    )
    text = page(desk, quay.waiting)
    assert "&lt;script&gt;1&lt;/script&gt;" in text
    assert "<script>1" not in text
