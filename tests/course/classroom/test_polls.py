"""What slates ask every two seconds: cheap, and silent while nothing has changed (RFC 9110, 13.1.2)."""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.course.classroom.conftest import right

SLATES = {"hand-news": "hand", "wall-news": "wall"}


@pytest.fixture(params=SLATES)
def slate(request, room):
    """Asks for news the way a page does: with what it shows already, and the last tag."""
    person = room.trainees[0] if request.param == "hand-news" else room.instructor
    client = room.client(person)

    def news(seen="", tag=""):
        return client.get(room.url(request.param), {"seen": seen}, headers={"if-none-match": tag})

    news.client, news.name = client, request.param
    return news


def token(answer):
    return answer["ETag"].strip('"')


def test_no_news_is_204_and_for_who_keeps_the_tag_304(room, slate):
    room.put_up()
    first = slate()
    assert first.status_code == 200
    again = slate(seen=token(first))
    assert (again.status_code, again.content) == (204, b"")
    unchanged = slate(seen=token(first), tag=first["ETag"])
    assert (unchanged.status_code, unchanged.content, unchanged["ETag"]) == (304, b"", first["ETag"])
    assert "private" in first["Cache-Control"]
    assert "no-store" not in first["Cache-Control"]


def test_a_page_shows_what_its_own_address_for_news_says(room, slate):
    room.put_up()
    page = slate.client.get(room.url(SLATES[slate.name])).text
    assert f'hx-get="{room.url(slate.name)}?seen={token(slate())}"' in page


@pytest.mark.parametrize("stages", [["closed"], ["closed", "spread"], ["down"]])
def test_a_move_is_news_to_every_slate(room, slate, stages):
    room.put_up()
    first = slate()
    room.move(*stages)
    told = slate(seen=token(first), tag=first["ETag"])
    assert told.status_code == 200
    assert told.headers.get("HX-Trigger") == "wall-moved" or told.headers.get("HX-Refresh") == "true"


def test_an_answer_is_news_to_the_wall_alone(room):
    showing = room.put_up()
    wall, hand = room.client(room.instructor), room.client(room.trainees[1])
    before = {
        name: token(client.get(room.url(name))) for name, client in zip(SLATES, (hand, wall), strict=True)
    }
    room.answer(0, right(showing))
    assert hand.get(room.url("hand-news"), {"seen": before["hand-news"]}).status_code == 204
    told = wall.get(room.url("wall-news"), {"seen": before["wall-news"]})
    assert "<strong>1</strong> of 4 has answered" in told.text
    assert "HX-Refresh" not in told


def test_a_bare_wall_is_a_state_like_any_other(room, slate):
    bare = slate()
    assert slate(seen=token(bare)).status_code == 204
    room.put_up()
    assert slate(seen=token(bare)).status_code == 200


def test_asking_costs_one_query_beside_those_that_every_page_makes(room, slate, settings):
    settings.ROOT_URLCONF = "tests.benchmarks.bare_urls"
    room.put_up()
    seen = token(slate())
    with CaptureQueriesContext(connection) as bare:
        slate.client.get("/bare/")
    for said in ({"seen": seen}, {"seen": "old"}, {"seen": seen, "tag": f'"{seen}"'}):
        with CaptureQueriesContext(connection) as asked:
            slate(**said)
        assert len(asked) == len(bare) + 1
