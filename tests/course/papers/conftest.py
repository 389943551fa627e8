"""A run of papers in gauge and absolute, for a trainee who is ready, and a spare."""

import pytest
from django.urls import reverse

from course.papers.printing import print_papers
from quizzes.competencies import COMPETENCIES
from quizzes.models import Standing

SLUG = "gauge-absolute"


@pytest.fixture
def trainee(quay):
    return quay.people["trainee"]


@pytest.fixture
def ready(trainee):
    return Standing.objects.create(learner=trainee, competency=SLUG, state="ready")


@pytest.fixture
def make(quay):
    """Print for Slipway's trainee and as many spares."""

    def printed(slug=SLUG, *, spares=1, trainees=None, **more):
        trainees = [quay.people["trainee"]] if trainees is None else trainees
        chosen = {"system": "us", "sheet": "A4", "by": quay.people["instructor"]} | more
        return print_papers(
            cohort=quay.cohort, competency=COMPETENCIES[slug], trainees=trainees, spares=spares, **chosen
        )

    return printed


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


@pytest.fixture
def send(desk):
    """Post a step of entering; the page it led to."""
    return lambda paper, said, step="enter": desk.post(
        reverse("papers:enter", args=[paper.code]), said | {"step": step}, follow=True
    )
