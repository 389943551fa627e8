"""Authored questions in practice: helped without being answered, and never known by their id."""

import pytest
from django.urls import reverse
from django.utils.html import conditional_escape

from pressure import record
from pressure.catalogue import families
from pressure.draw import draw
from quizzes import actions
from quizzes.aids import aid_for
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt
from tests.quizzes.conftest import waiting

SLUGS = [one.slug for one in families().values() if one.topic == "questions"]
HOMES = {slug: next(one for one in COMPETENCIES.values() if slug in one.families) for slug in SLUGS}
every_file = pytest.mark.parametrize("slug", SLUGS)


@pytest.fixture
def put(client, learner):
    """Puts one draw of a family to the learner and gives the attempt."""
    client.force_login(learner)

    def put(slug, seed, stage=0):
        attempt = waiting(actions.start_practice(learner=learner, competency=HOMES[slug]))
        problem = draw(slug, seed, "us")
        stored = {"shown": record.shown(problem), "key": record.key(problem)}
        Attempt.objects.filter(pk=attempt.pk).update(
            family=slug, seed=seed, place=problem.number, help=stage, hints=9, **stored
        )
        return Attempt.objects.get(pk=attempt.pk)

    return put


@every_file
def test_a_file_of_questions_tests_one_competency_beside_its_numbers(slug):
    assert [slug in one.families for one in COMPETENCIES.values()].count(True) == 1
    assert len(HOMES[slug].families) == len(set(HOMES[slug].families)) > 1


@every_file
def test_the_example_beside_a_question_is_another_question(put, slug):
    for seed in range(12):
        attempt = put(slug, seed)
        found = aid_for(attempt).example
        assert found["shown"]["item"] != attempt.shown["item"]
        assert found["key"]["answer_text"] != attempt.key["answer_text"]


@pytest.mark.parametrize("stage", [0, 1, 2, 3])
@every_file
def test_no_stage_of_help_gives_a_question_away(client, put, slug, stage):
    for seed in range(3):
        attempt = put(slug, seed, stage)
        page = client.get(reverse("quizzes:practice", args=[HOMES[slug].slug])).text
        secrets = [attempt.key["sense"], attempt.key["steps"][-1]["why"], attempt.shown["item"]]
        secrets += [one["why"] for one in attempt.key["options"]]
        assert str(conditional_escape(attempt.shown["situation"])) in page
        assert not [secret for secret in secrets if str(conditional_escape(secret)) in page]
