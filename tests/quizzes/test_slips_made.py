"""The slips of a group, by person: how often made, and how often they could have been."""

import pytest

from quizzes.models import AnswerCount
from quizzes.slips_made import slips_of
from quizzes.statistics.ranking import ranked


@pytest.fixture
def counts(learner, stranger):
    rows = [
        (learner, "depth-to-gauge", "right", "", "", 6),
        (learner, "depth-to-gauge", "slip", "atmosphere-omitted", "Atmosphere left out", 2),
        (learner, "lake-depth", "slip", "fresh-for-salt", "Fresh for salt", 1),
        (stranger, "depth-to-gauge", "right", "", "", 5),
        (stranger, "depth-to-absolute", "slip", "atmosphere-omitted", "Atmosphere left out", 3),
        (stranger, "depth-to-absolute", "wrong", "", "", 1),
    ]
    names = ("learner", "family", "verdict", "slip", "label", "answers")
    AnswerCount.objects.bulk_create(AnswerCount(**dict(zip(names, row, strict=True))) for row in rows)
    return [learner.pk, stranger.pk]


def test_a_slip_is_counted_over_every_family_it_was_made_in(counts):
    found = slips_of(counts)["atmosphere-omitted"]
    assert found.label == "Atmosphere left out"
    assert found.families == {"depth-to-gauge": 2, "depth-to-absolute": 3}
    assert sorted(found.people) == [(2, 8), (3, 9)]


def test_whoever_never_met_a_family_could_not_slip_in_it(counts):
    assert slips_of(counts)["fresh-for-salt"].people == [(1, 1)]


def test_nobody_outside_the_group_is_counted(counts):
    found = slips_of(counts[:1])
    assert found["atmosphere-omitted"].people == [(2, 8)]
    assert "" not in found


def test_it_is_one_query_and_ranks_at_once(counts, django_assert_num_queries):
    with django_assert_num_queries(1):
        found = slips_of(counts)
    order = [row.name for row in ranked({name: one.people for name, one in found.items()})]
    assert order == ["atmosphere-omitted", "fresh-for-salt"]
