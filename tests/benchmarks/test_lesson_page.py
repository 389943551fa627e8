"""A lesson's page, signed in, against a view behind the same middleware that returns the same bytes."""

import pytest
from django.urls import reverse

from course.demo.factories import PersonFactory
from course.lessons import library
from tests.benchmarks import bare_urls

LIMIT, EACH = 2.0, 20


def opening(client, url):
    def work():
        for _ in range(EACH):
            client.get(url)

    return work


@pytest.fixture
def reader(db, client, settings):
    settings.ROOT_URLCONF = "tests.benchmarks.bare_urls"
    client.force_login(PersonFactory())
    return client


@pytest.mark.benchmark
@pytest.mark.parametrize("slug", library.lessons())
def test_a_lesson_costs_at_most_twice_the_same_bytes(slug, compare, reader):
    url = reverse("lessons:lesson", args=[slug])
    bare_urls.BYTES[0] = reader.get(url).content
    compare(
        f"lesson {slug}:", opening(reader, url), opening(reader, "/bare/"), LIMIT, against="bytes", each=EACH
    )
