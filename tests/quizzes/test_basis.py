"""What a competency rests on, worked out from its decisions alone, agrees with the standing kept in step."""

from contextlib import suppress
from datetime import date, timedelta
from random import Random

import pytest
from django.utils import timezone

from course.demo.factories import PersonFactory
from quizzes import actions
from quizzes.actions.restanding import settled
from quizzes.errors import Refused
from quizzes.models import DecisionRecord, Sitting, Standing
from quizzes.reviews import Basis, Entry, basis, counted
from tests.quizzes.conftest import NOON, give

DAY, DUE = date(2026, 3, 2), date(2027, 3, 2)
NEXT = DAY + timedelta(days=1)


def after(*words):
    return basis(Entry(word, DAY if n == 0 else NEXT, DUE) for n, word in enumerate(words))


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        (("held", "held"), Basis(holds=2)),
        (("held", "met"), Basis(NEXT, DUE)),
        (("met", "held"), Basis(DAY, DUE)),
        (("met", "confirmed"), Basis(DAY, DUE, NEXT)),
        (("undecided", "confirmed"), Basis()),
        (("held", "confirmed", "renewed"), Basis(holds=1)),
        (("met", "renewed"), Basis(NEXT, DUE)),
        (("met", "reopened"), Basis()),
        (("granted", "revoked"), Basis()),
        (("granted", "signed", "supervise"), Basis(DAY, DUE, DAY)),
    ],
)
def test_what_the_decisions_come_to(words, expected):
    assert after(*words) == expected


@pytest.mark.parametrize(
    ("verdict", "ruled", "counts"),
    [
        ("wrong", "", "wrong"),
        ("slip", "right", "right"),
        ("right", "set aside", ""),
        ("slip", "left", "slip"),
        ("", "", ""),
    ],
)
def test_what_counts_is_the_verdict_with_the_ruling_applied(verdict, ruled, counts):
    assert counted(verdict, ruled) == counts


def play(sitting, sign, now):
    while not Sitting.objects.get(pk=sitting.pk).ended:
        give(sitting, sign, now)


def live(learner, boyle, by, rng):
    """Fifteen days over two years: practice, checks passed or failed, decisions by hand, whatever is open."""
    about = {"learner": learner, "competency": boyle}
    for day in range(0, 15 * 50, 50):
        now = NOON + timedelta(days=day)
        with suppress(Refused):
            if rng.random() < 0.5:
                deed = rng.choice([actions.open_check_again, actions.grant, actions.revoke])
                deed(**about, by=by, why="Seen.", now=now)
        with suppress(Refused):
            give(actions.start_practice(**about, now=now), "+++", now)
            play(actions.start_check(**about, now=now), rng.choice("++-"), now)


@pytest.mark.parametrize("seed", range(6))
def test_the_decisions_of_a_life_come_to_the_standing_kept_in_step(learner, boyle, seed):
    live(learner, boyle, PersonFactory(), Random(seed))
    row, records = Standing.objects.get(), DecisionRecord.objects.select_related("sitting").order_by("pk")
    entries = [Entry(one.decided, timezone.localdate(one.at), one.due_on) for one in settled(records)]
    assert len(entries) > 3
    assert basis(entries) == Basis(row.met_on, row.due_on, row.confirmed_on, row.holds)
