"""The same paper sent by several at once is entered once; several runs at once share no numbers."""

import pytest
from django.test import Client
from django.urls import reverse

from course.papers.models import Paper
from quizzes.models import DecisionRecord, JournalLine, Sitting
from tests.course.papers.conftest import SLUG
from tests.course.papers.factories import written
from tests.quizzes.test_two_at_once import AT_ONCE, all_at_once

pytestmark = pytest.mark.django_db(transaction=True)


def test_a_paper_sent_by_six_at_once_is_entered_once(quay, make, ready):
    paper = make(spares=0).papers.get()
    said = written(paper, "+" * len(paper.questions)) | {"step": "enter"}

    def send():
        client = Client()
        client.force_login(quay.people["instructor"])
        return client.post(reverse("papers:enter", args=[paper.code]), said).status_code

    assert set(all_at_once(send)) <= {200, 302}
    assert Paper.objects.get(pk=paper.pk).is_entered
    assert Sitting.objects.filter(competency=SLUG, purpose="check").count() == 1
    assert DecisionRecord.objects.filter(competency=SLUG).count() == 1
    assert JournalLine.objects.filter(verb="paper check entered").count() == 1


def test_runs_made_at_once_share_no_numbers(quay, make):
    runs = all_at_once(lambda: make("depth-pressure", spares=1, trainees=[]))
    papers = Paper.objects.filter(run__in=runs)
    asked = [(one["shown"]["family"], one["shown"]["number"]) for paper in papers for one in paper.questions]
    assert len(papers) == AT_ONCE
    assert len(set(asked)) == len(asked)
