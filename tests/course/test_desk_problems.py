"""The staff look at any draw of any family; what is not on the shelf is not found."""

import pytest
from django.urls import reverse
from django.utils.html import conditional_escape

from pressure import catalogue, record
from pressure.draw import draw


@pytest.fixture
def desk(client, quay):
    client.force_login(quay.people["instructor"])
    return client


def test_every_family_is_on_the_shelf_in_each_of_its_systems(desk):
    text = desk.get(reverse("desks:families")).text
    for family in catalogue.families().values():
        for system in family.systems:
            assert reverse("desks:problem", args=[family.slug, system, 1]) in text


@pytest.mark.parametrize("slug", ["depth-to-volume", "air-table", "chain-of-events", "dial-reading"])
def test_a_draw_is_shown_with_answer_solution_and_how_many_there_are(desk, slug):
    text = desk.get(reverse("desks:problem", args=[slug, "metric", 5])).text
    key = record.key(draw(slug, 5, "metric"))
    assert conditional_escape(key["answer_text"]) in text
    assert conditional_escape(key["steps"][-1]["why"]) in text
    assert "different ones" in text


def test_a_draw_is_shown_in_another_unit_where_it_has_such_a_form(desk):
    url = reverse("desks:problem", args=["depth-to-gauge", "metric", 5])
    assert f"{url}?mixed=1" in desk.get(url).text
    text = desk.get(url, {"mixed": "1"}).text
    assert "in psi?" in text
    assert "1 bar is 14.5038 psi" in text
    plain = reverse("desks:problem", args=["air-table", "metric", 5])
    assert "mixed=1" not in desk.get(plain).text
    assert desk.get(plain, {"mixed": "1"}).status_code == 404


@pytest.mark.parametrize(
    "where",
    [
        ("no-such-family", "us", 1),
        ("air-table", "si", 1),
        ("air-table", "furlongs", 1),
        ("air-table", "us", 2**70),
    ],
)
def test_an_unknown_family_system_or_seed_is_not_found(desk, where):
    assert desk.get(reverse("desks:problem", args=where)).status_code == 404
