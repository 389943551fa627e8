"""Families are dealt in shuffled blocks, each once a block."""

from collections import Counter

from hypothesis import given
from hypothesis import strategies as st

from quizzes.papers import family_at

FIVE = ("a", "b", "c", "d", "e")


@given(seed=st.integers(0, 2**40), block=st.integers(0, 200))
def test_every_block_holds_each_family_once(seed, block):
    assert sorted(family_at(seed, FIVE, block * 5 + place) for place in range(5)) == list(FIVE)


def test_the_same_seed_deals_the_same_order_on_every_machine():
    assert [family_at(7, FIVE, place) for place in range(10)] == list("ebacdbcdea")


def test_the_first_place_is_shared_out_evenly():
    first = Counter(family_at(seed, FIVE, 0) for seed in range(2000))
    # Each is expected 400 times; five standard deviations of the binomial are 89.
    assert all(abs(count - 400) < 89 for count in first.values())
