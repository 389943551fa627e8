"""A slip made by the real actions, for the pages that rank them."""

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.items import competencies_of
from quizzes.models import Attempt
from tests.browser.steps import slipped
from tests.quizzes.conftest import form_for, waiting


def slip_in(learner, family, now):
    """Practise until that family is asked, and answer it by its first slip: the answered attempt."""
    competency = COMPETENCIES[competencies_of(family)[0]]
    practice = actions.start_practice(learner=learner, competency=competency, now=now)
    while (attempt := waiting(practice)).family != family:
        form = form_for(attempt, right=True)
        actions.answer(learner=learner, attempt_id=attempt.pk, form=form, now=now)
    form = {"answer": slipped(attempt)[1]}
    actions.answer(learner=learner, attempt_id=attempt.pk, form=form, now=now)
    return Attempt.objects.get(pk=attempt.pk)
