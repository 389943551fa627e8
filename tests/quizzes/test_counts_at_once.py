"""Several people answer at the same moment; no count is lost."""

from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

import pytest
from django.db import connection

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.actions import tallying
from quizzes.competencies import COMPETENCIES
from quizzes.errors import Refused
from quizzes.items import asked
from quizzes.models import CountedBlock, ItemPause, ItemTally, Standing
from quizzes.models.pauses import paused_items
from quizzes.proofs import disagreements
from tests.quizzes.conftest import NOON, form_for, give, waiting

pytestmark = pytest.mark.django_db(transaction=True)
EIGHT = COMPETENCIES["boyle-at-work"]


def all_at_once(deeds):
    """Run the deeds in threads that set off together, each with a connection of its own."""
    together = Barrier(len(deeds))

    def run(deed):
        try:
            together.wait(timeout=20)
            return deed()
        finally:
            connection.close()

    with ThreadPoolExecutor(len(deeds)) as pool:
        return list(pool.map(run, deeds))


def one_short_of_a_block():
    learner = PersonFactory()
    Standing.objects.create(learner=learner, competency=EIGHT.slug, state="ready", streak=3)
    sitting = actions.start_check(learner=learner, competency=EIGHT, now=NOON)
    give(sitting, "+-" * (len(sitting.kinds) // 2))
    attempt = waiting(sitting)
    form = form_for(attempt, right=True)
    return lambda: actions.answer(learner=learner, attempt_id=attempt.pk, form=form, now=NOON)


def test_six_blocks_finished_at_the_same_moment_are_all_counted():
    all_at_once([one_short_of_a_block() for _ in range(6)])
    assert CountedBlock.objects.count() == 6
    counts = {row.item: row.counts.tally().split.answers for row in ItemTally.objects.all()}
    assert {counts[family] for family in EIGHT.families} == {6}
    assert list(disagreements()) == []


def test_answers_given_while_all_is_counted_anew_are_counted_once():
    deeds = [one_short_of_a_block() for _ in range(4)]
    all_at_once([deeds[0], tallying.rebuild, *deeds[1:], tallying.rebuild])
    assert list(disagreements()) == []


def test_two_who_pause_the_last_two_kinds_at_once_leave_one(db):
    staff = PersonFactory(role="instructor")

    def pause(item):
        try:
            return actions.pause(item=item, by=staff, why="Both look wrong.")
        except Refused as refusal:
            return str(refusal)

    families = COMPETENCIES["boyle"].families
    outcomes = all_at_once([lambda item=item: pause(item) for item in families])
    assert len(asked(families, paused_items())) == ItemPause.objects.count() == 1
    assert any("the last kind" in str(one) for one in outcomes)
