"""What a slate asks every two seconds, against a view behind the same middleware that returns nothing."""

import pytest

from tests.benchmarks import bare_urls
from tests.course.classroom.conftest import Class, right

LIMIT, EACH, PHONES = 1.75, 20, 40


def asking(client, url, **headers):
    def work():
        for _ in range(EACH):
            client.get(url, headers=headers)

    return work


@pytest.fixture
def room(db, settings):
    """Forty phones, half of which have answered."""
    settings.ROOT_URLCONF = "tests.benchmarks.bare_urls"
    bare_urls.BYTES[0] = b""
    room = Class(size=PHONES)
    form = right(room.put_up())
    for number in range(PHONES // 2):
        room.answer(number, form)
    return room


@pytest.mark.benchmark
@pytest.mark.parametrize("name", ["hand-news", "wall-news"])
@pytest.mark.parametrize("kept", [False, True], ids=["204", "304"])
def test_asking_for_news_costs_little_more_than_a_bare_view(compare, room, name, kept):
    client = room.client(room.trainees[0] if name == "hand-news" else room.instructor)
    tag = client.get(room.url(name))["ETag"]
    url = f"{room.url(name)}?seen={tag.strip(chr(34))}"
    headers = {"if-none-match": tag} if kept else {}
    assert client.get(url, headers=headers).status_code == (304 if kept else 204)
    compare(
        f"{name}, {304 if kept else 204}:",
        asking(client, url, **headers),
        asking(client, "/bare/"),
        LIMIT,
        against="a bare view",
        each=EACH,
    )


@pytest.mark.benchmark
def test_an_answer_from_a_hand_slate_is_timed(compare, room):
    """The whole deed over the wire, with the card that comes back."""
    hand, form = room.client(room.trainees[-1]), right(room.showing) | {"showing": room.showing.pk}

    def answering():
        for _ in range(EACH):
            hand.post(room.url("answer"), form, headers={"HX-Request": "true"})

    compare("answer in class:", answering, asking(hand, "/bare/"), against="a bare view", each=EACH)
