"""Questions in figures: against its raw SQL, and at a million answers against ten thousand."""

from math import log
from statistics import median

import pytest
from django.db import connection
from django.test import Client, override_settings
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from course.demo.factories import PersonFactory
from course.desks import statistics
from tests.benchmarks import items_floor
from tests.benchmarks.floor import timed
from tests.benchmarks.ready_counts import fill

pytestmark = [pytest.mark.benchmark, pytest.mark.django_db]
OVER_SQL, OVER_BYTES, GROWTH, EACH, OFTEN = 3, 8, 1.5, 10, 50
AGAINST = "the same SQL and bytes behind the same middleware"


@pytest.fixture
def officer(client):
    person = PersonFactory(role="officer")
    client.force_login(person)
    other = Client()
    other.force_login(person)
    return client, other


def opening(client, query=""):
    url = reverse("desks:items") + query

    def work():
        for _ in range(EACH):
            client.get(url)

    return work


def on_the_floor(client):
    def work():
        with override_settings(ROOT_URLCONF="tests.benchmarks.items_floor"):
            for _ in range(EACH):
                assert client.get("/items/").status_code == 200

    return work


@pytest.mark.parametrize("wish", [statistics.Wish(), statistics.Wish(show=statistics.QUESTIONS)])
def test_the_table_costs_at_most_three_times_its_raw_sql(db, compare, wish):
    fill(people=140)

    def ours():
        for _ in range(OFTEN):
            statistics.sheet(wish)

    def raw():
        for _ in range(OFTEN):
            items_floor.read(wish.show)

    compare(f"questions in figures, {wish.show}:", ours, raw, OVER_SQL, against="raw SQL", each=OFTEN)


@pytest.mark.parametrize("query", ["", "?show=questions"])
def test_the_page_costs_little_more_than_its_sql_and_its_bytes(officer, compare, query):
    fill(people=140)
    ours, other = officer
    items_floor.BYTES[0] = ours.get(reverse("desks:items") + query).content
    items_floor.SHOW[0] = statistics.QUESTIONS if query else statistics.KINDS
    name = f"questions in figures {query or '?show=kinds'}:"
    compare(name, opening(ours, query), on_the_floor(other), OVER_BYTES, against=AGAINST, each=EACH)


def unremembered(client):
    """One opening with every figure worked out anew."""
    statistics.figures.cache_clear()
    statistics._line.cache_clear()
    assert client.get(reverse("desks:items")).status_code == 200


def test_the_page_takes_no_longer_at_a_million_answers(officer, say):
    client, seconds, answers = officer[0], [], []
    for people, times in ((140, 1), (2000, 7)):
        answers.append(fill(people, times))
        unremembered(client)
        seconds.append(median(timed(lambda: unremembered(client)) for _ in range(9)))
    ratio = seconds[1] / seconds[0]
    exponent = log(ratio) / log(answers[1] / answers[0])
    say(
        f"questions in figures: {answers[1]:,} answers {ratio:.2f}x {answers[0]:,} (limit {GROWTH}x), "
        f"exponent {exponent:.3f}; {seconds[1] * 1e3:.0f} ms with nothing remembered"
    )
    assert answers[1] > 900_000
    assert ratio <= GROWTH


def test_the_table_reads_counts_and_no_answer(db):
    fill(people=3)
    with CaptureQueriesContext(connection) as captured:
        statistics.sheet(statistics.Wish())
    assert len(captured) == 2
    assert not [one["sql"] for one in captured if "quizzes_attempt" in one["sql"]]
