"""Entering a paper: the answers become a check and the paper is closed, both or neither, and once."""

from __future__ import annotations

from django.db import transaction
from django.utils import timezone

from course.papers.forms import EntryForm
from course.papers.models import Paper, close
from course.people.models import Person
from quizzes.actions.papers import enter_paper
from quizzes.errors import Refused


def enter(form: EntryForm, by: Person) -> bool:
    """Enter a form that is valid; False where the paper was entered before, and nothing is changed then.

    Raises Refused where it cannot count after all.
    """
    learner = form.learner
    if learner is None:
        raise Refused("Say whose paper this is.")
    now = timezone.now()
    with transaction.atomic():
        locked = Paper.objects.select_for_update(of=("self",), no_key=True).get(pk=form.paper.pk)
        if locked.is_entered:
            return False
        sitting = enter_paper(
            paper=locked.check_on_paper,
            learner=learner,
            forms=form.answers,
            answered_on=form.cleaned_data["answered_on"],
            watched_by=form.cleaned_data["watched_by"],
            by=by,
            now=now,
        )
        close(locked, sitting, form.answers, by, now)
    return True
