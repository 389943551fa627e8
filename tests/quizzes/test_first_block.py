"""The first block of a check: always finished, counted, and marked so that statistics can use it alone."""

from importlib import import_module

import pytest
from django.db import connection
from django.db.migrations.loader import MigrationLoader

from quizzes import actions
from quizzes.competencies import COMPETENCIES
from quizzes.models import Attempt, Sitting, Standing
from quizzes.papers import family_at
from quizzes.rules import RULES, Outcome, decide
from tests.quizzes.conftest import NOON, give

EIGHT = COMPETENCIES["boyle-at-work"]


@pytest.fixture
def sitting(learner):
    Standing.objects.create(learner=learner, competency=EIGHT.slug, state="ready", streak=3)
    return actions.start_check(learner=learner, competency=EIGHT, now=NOON)


def marked(sitting):
    return [one.number for one in sitting.attempts.order_by("number") if one.diagnostic]


def test_the_first_block_is_finished_however_low_the_score_falls(sitting):
    kinds = len(sitting.kinds)
    give(sitting, "-" * (kinds - 1))
    sitting.refresh_from_db()
    assert (sitting.ended, sitting.score) == (None, -3 * (kinds - 1))
    give(sitting, "-")
    sitting.refresh_from_db()
    assert (sitting.outcome, sitting.score) == ("held", -3 * kinds)
    assert marked(sitting) == list(range(1, kinds + 1))
    assert sorted(sitting.attempts.values_list("family", flat=True)) == sorted(sitting.kinds)


def test_a_target_out_of_reach_ends_a_check_only_after_the_first_block():
    kinds = [str(number) for number in range(12)]
    marks = [(kind, False) for kind in kinds]
    assert decide(RULES["standard"], kinds, marks[:11]).outcome is Outcome.UNDECIDED
    assert decide(RULES["standard"], kinds, marks).outcome is Outcome.HELD


def test_the_first_block_counts_and_what_follows_is_not_marked(sitting):
    kinds = len(sitting.kinds)
    give(sitting, "+" * (kinds + 1))
    sitting.refresh_from_db()
    assert sitting.score == kinds + 1
    assert marked(sitting) == list(range(1, kinds + 1))


def test_nothing_in_practice_is_marked(learner, boyle):
    give(actions.start_practice(learner=learner, competency=boyle, now=NOON), "+++")
    assert not Attempt.objects.filter(diagnostic=True).exists()


def test_a_check_goes_on_with_the_kinds_it_began_with(sitting):
    dealt = sitting.attempts.get().family
    other = next(family for family in EIGHT.families if family != dealt)
    orders = ([dealt, other], [other, dealt])  # the one that deals the other kind second
    kinds = next(order for order in orders if family_at(sitting.seed, order, 1) == other)
    Sitting.objects.filter(pk=sitting.pk).update(paper=[[EIGHT.slug, kinds]])
    give(Sitting.objects.get(pk=sitting.pk), "--")
    assert Sitting.objects.get(pk=sitting.pk).outcome == "held"


def test_first_blocks_of_older_checks_are_found_by_the_first_family_that_came_again(sitting):
    give(sitting, "+" * (len(sitting.kinds) + 1))
    with connection.cursor() as cursor:
        cursor.execute("UPDATE quizzes_attempt SET diagnostic = %s", [False])
    then = MigrationLoader(connection).project_state(("quizzes", "0003_mark_first_blocks")).apps
    import_module("quizzes.migrations.0003_mark_first_blocks").mark(then, Editor)
    assert marked(sitting) == list(range(1, len(sitting.kinds) + 1))


class Editor:
    """What the data migration asks of a schema editor."""

    connection = connection
