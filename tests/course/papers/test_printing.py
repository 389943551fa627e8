"""What is printed: a paper each, all different, stored so that it reads the same for ever."""

from dataclasses import replace

import pytest
from django.urls import reverse
from django.utils import timezone

from course.papers.models import Run
from pressure.marking import judge
from pressure.record import key_from
from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import JournalLine, Sitting, Standing
from quizzes.policy import DEFAULT
from tests.course.papers.conftest import SLUG
from tests.course.papers.factories import form_of
from tests.quizzes.conftest import waiting


def numbers(papers):
    return [(one["shown"]["family"], one["shown"]["number"]) for paper in papers for one in paper.questions]


def test_every_paper_is_different_and_has_a_code_of_its_own(make):
    papers = make("depth-pressure", spares=5).papers.all()
    asked = numbers(papers)
    assert len(papers) == 6
    assert len(set(asked)) == len(asked)
    assert len({paper.code for paper in papers}) == 6
    assert not set("".join(paper.code for paper in papers)) & set("01258BILOSUVZ")


def test_numbers_of_a_paper_are_dealt_to_nobody_of_the_cohort_afterwards(make, trainee):
    papers = make("depth-pressure", spares=3).papers.all()
    other = make("depth-pressure", spares=1, trainees=[]).papers.all()
    sitting = Sitting.objects.get(learner=trainee, competency="depth-pressure")
    actions.answer(learner=trainee, attempt_id=waiting(sitting).pk, form={"answer": "1 psi"})
    asked = waiting(sitting)
    assert not set(numbers(papers)) & {*numbers(other), (asked.family, asked.place)}


@pytest.mark.parametrize("slug", ["dials-units", "boyle-at-work", "mechanisms"])
def test_the_key_of_every_question_takes_the_right_answer_and_no_other(make, slug):
    for paper in make(slug).papers.all():
        for question in paper.questions:
            key = key_from(question["shown"], question["key"])
            assert judge(form_of(question, "+"), key).verdict == "right"
            assert judge(form_of(question, "-"), key).verdict in ("wrong", "slip")


def test_a_named_paper_is_for_the_check_that_its_trainee_comes_to_next(make, trainee, ready):
    trainee.system = "metric"
    trainee.save()
    Standing.objects.filter(pk=ready.pk).update(holds=1)
    named, spare = make().papers.all()
    assert (named.name, named.system, named.purpose, named.rule["target"]) == (
        *("Given Trainee", "metric", "check", 12),
    )
    assert (spare.name, spare.system, spare.purpose, spare.rule["target"]) == ("", "us", "check", 10)
    today = timezone.localdate()
    Standing.objects.filter(pk=ready.pk).update(state="met", met_on=today, due_on=today)
    assert make().papers.get(number=1).purpose == "confirmation"
    Standing.objects.filter(pk=ready.pk).update(confirmed_on=today)
    assert make().papers.get(number=1).purpose == "refresher"


def test_extra_time_stands_on_the_named_paper_and_not_on_the_spare(make, quay, trainee):
    policy = replace(DEFAULT, time_limit_minutes=40)
    actions.set_policy(policy=policy, by=quay.people["administrator"], why="Agreed.")
    by = quay.people["instructor"]
    actions.set_accommodation(learner=trainee, by=by, why="Agreed.", extra_time_percent=50)
    assert [paper.minutes for paper in make().papers.all()] == [60, 40]


def test_the_page_prints_for_those_chosen_and_lists_what_was_printed(desk, quay, trainee):
    page = reverse("papers:runs", args=[quay.cohort.pk])
    said = {"competency": SLUG, "trainees": [trainee.pk], "spares": "2", "system": "us", "sheet": "Letter"}
    shown = desk.post(page, said, follow=True)
    run = Run.objects.first()
    assert shown.redirect_chain[-1][0] == run.get_absolute_url()
    assert [paper.learner for paper in run.papers.all()] == [trainee, None, None]
    assert all(paper.spaced_code in shown.text for paper in run.papers.all())
    assert COMPETENCIES[SLUG].title in desk.get(page).text
    line = JournalLine.objects.get(verb="paper checks printed")
    assert (line.actor_name, len(line.details["papers"])) == ("Given Instructor", 3)


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        ({"spares": "0"}, "Choose at least one trainee"),
        ({"spares": "a few"}, "Write a whole number of papers"),
        ({"spares": "-1"}, "not negative"),
        ({"spares": "61"}, "at most 60"),
        ({"spares": "1", "competency": "seamanship"}, "seamanship is not one of the available choices"),
    ],
)
def test_what_cannot_be_printed_comes_back_with_a_sentence(desk, quay, said, sentence):
    count = Run.objects.count()
    page = reverse("papers:runs", args=[quay.cohort.pk])
    shown = desk.post(page, {"competency": SLUG, "system": "us", "sheet": "A4", **said})
    assert sentence in shown.text
    assert f'value="{said["spares"]}"' in shown.text
    assert Run.objects.count() == count


def test_no_paper_is_printed_for_the_trainee_of_another_cohort_or_for_oneself(desk, quay):
    page = reverse("papers:runs", args=[quay.cohort.pk])
    quay.cohort.trainees.add(quay.people["instructor"])
    for who in ("stranger", "instructor"):
        said = {"competency": SLUG, "trainees": [quay.people[who].pk], "system": "us", "sheet": "A4"}
        assert "Choose from the trainees in the list." in desk.post(page, said).text
