"""Drawing a problem: at least 5,000 a second of every family in every system, on one core."""

from random import Random

import pytest

from pressure.catalogue import families
from pressure.draw import draw

AT_LEAST = 5_000
DRAWS = 1_000


def drawing(family, system):
    def work():
        for seed in range(DRAWS):
            draw(family, seed, system)

    return work


def bare():
    """A draw with nothing around it: one random number, one depth, one pressure."""
    dice = Random(33)
    for _ in range(DRAWS):
        depth_ft = dice.random() * 165
        _pressure_psi = (depth_ft / 33 + 1) * 14.7


@pytest.mark.benchmark
@pytest.mark.parametrize(
    ("slug", "system"), [(slug, system) for slug, family in families().items() for system in family.systems]
)
def test_five_thousand_problems_are_drawn_in_a_second(slug, system, compare, say):
    timing = compare(
        f"draws, {slug} {system}:", drawing(slug, system), bare, rounds=9, against="random()+sum", each=DRAWS
    )
    a_second = DRAWS / timing.ours
    say(f"  {a_second:,.0f} a second (at least {AT_LEAST:,})")
    assert a_second >= AT_LEAST
