"""Twelve papers with their key, from the request to the two files; the bound is the brief of a classroom."""

from time import perf_counter

import pytest

from course.demo.factories import CohortFactory, PersonFactory
from course.papers.keys import key_as_pdf
from course.papers.printing import print_papers
from course.papers.sheets import papers_as_pdf
from quizzes.competencies import COMPETENCIES

PAPERS, SECONDS = 12, 10.0


@pytest.mark.benchmark
@pytest.mark.django_db
@pytest.mark.parametrize("slug", ["gauge-absolute", "boyle-at-work", "mechanisms"])
def test_twelve_papers_and_their_key_take_less_than_ten_seconds(slug, say):
    cohort, by = CohortFactory(), PersonFactory()
    start = perf_counter()
    run = print_papers(
        cohort=cohort,
        competency=COMPETENCIES[slug],
        trainees=[],
        spares=PAPERS,
        system="us",
        sheet="A4",
        by=by,
    )
    made = perf_counter()
    papers = list(run.papers.all())
    files = papers_as_pdf(run, papers), key_as_pdf(run, papers)
    done = perf_counter()
    say(f"{PAPERS} papers of {slug}: made in {made - start:.1f} s, set with their key in {done - made:.1f} s")
    assert all(files)
    assert done - start < SECONDS
