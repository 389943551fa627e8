"""What the rules in force promise, laid out for the page: a curve, a table, and other rules beside them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from pressure.figures.curves import Curve, sketch
from pressure.figures.drawing import svg
from quizzes.competencies import COMPETENCIES
from quizzes.evidence import (
    break_even,
    course_of,
    fixed_length,
    lifetime_bound,
    met_chance,
    met_within,
    n_of_last_m,
)
from quizzes.policy import Policy
from quizzes.rules import Rule
from quizzes.subjects import WHOLE, kinds_of, paper_of, subject

_SHARES = (0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98)
_ACROSS = tuple(place / 100 for place in range(40, 101, 2))
_STUCK, _ABLE = 0.6, 0.9


@dataclass(frozen=True, slots=True)
class Line:
    """One share right in the long run, and what the rule makes of it; ready to be shown."""

    share: str
    first: str
    three: str
    ever: str
    mean: str
    most: int


@dataclass(frozen=True, slots=True)
class Promise:
    """One rule: who is under it, its curve and its table."""

    rule: Rule
    competencies: tuple[str, ...]
    pass_mark: str
    curve: str
    lines: tuple[Line, ...]
    bound: str
    block: str


def promises(policy: Policy) -> tuple[Promise, ...]:
    """Every rule of the policy that decides something."""
    found = []
    for name, rule in policy.rules.items():
        slugs = [
            slug for slug in (*COMPETENCIES, WHOLE) if policy.tiers.get(slug, subject(slug).tier) == name
        ]
        longest = max((len(kinds_of(paper_of(slug))) for slug in slugs), default=1)
        found.append(_promise(rule, tuple(subject(slug).title for slug in slugs), longest))
    return tuple(found)


@lru_cache(maxsize=32)
def _promise(rule: Rule, under: tuple[str, ...], longest: int) -> Promise:
    low = _SHARES[1] if rule.loss < 4 else _SHARES[2]
    counted = longest if rule.name == "course" else 1
    return Promise(
        rule=rule,
        competencies=under,
        pass_mark=_percent(break_even(rule)),
        curve=_curve(rule, counted),
        lines=tuple(_lines(rule, counted)),
        bound=f"Whoever is never better than {_percent(low)} is ever met in at most "
        f"{_percent(lifetime_bound(rule, low))} of cases, however often they try and however their answers "
        "depend on each other.",
        block=_block(rule, low, longest),
    )


def _block(rule: Rule, low: float, longest: int) -> str:
    if rule.name == "course":
        return f"The first block, one question of each of the {longest} competencies, is counted in."
    stuck, able = (_percent(met_chance(rule, share, longest)) for share in (low, _ABLE))
    return (
        f"The first block, each kind once, is always finished. With the longest, of {longest}, {stuck} of "
        f"those right {_percent(low)} of the time are met at the first try and {able} of those right "
        f"{_percent(_ABLE)} of the time: a little more than the table says, which leaves the block out."
    )


def _lines(rule: Rule, first: int) -> Iterator[Line]:
    for share in _SHARES:
        course = course_of(rule, share, first)
        yield Line(
            share=_percent(share),
            first=_percent(course.met),
            three=_percent(met_within(rule, share, 3, first)),
            ever=_percent(met_within(rule, share, None, first)),
            mean=f"{course.mean:.1f}",
            most=course.percentile(0.95),
        )


def _curve(rule: Rule, first: int) -> str:
    ticks = tuple(place / 10 for place in range(4, 11))
    curve = Curve(
        title=f"Chance of met at the first try, {rule.name} rule",
        across="share right in the long run",
        up="chance of met",
        xs=_ACROSS,
        ys=tuple(met_chance(rule, share, first) for share in _ACROSS),
        x_ticks=ticks,
        y_ticks=(0.0, 0.25, 0.5, 0.75, 1.0),
    )
    words = "A curve that rises steeply: " + "; ".join(
        f"{line.share} right is met in {line.first}" for line in _lines(rule, first)
    )
    return svg(f"promise-{rule.name}", sketch(curve), f"{words}. The table says the same in numbers.")


@lru_cache(maxsize=32)
def others(rule: Rule) -> tuple[tuple[str, str, str], ...]:
    """Other ways to decide, with the chance that they pass a trainee stuck at 60 % and an able one at 90 %.

    The fixed test is the shortest whose two errors are no larger than the rule's.
    """
    needed, length = _equal_test(rule)
    own = f"This rule, {rule.target} before {rule.floor}, at most {rule.maximum}"
    ways: tuple[tuple[str, Callable[[float], float]], ...] = (
        (own, lambda share: met_chance(rule, share)),
        (
            f"{needed} of {length}, a fixed test with the same errors",
            lambda share: fixed_length(needed, length, share),
        ),
        ("8 of 10, a fixed test", lambda share: fixed_length(8, 10, share)),
        ("15 of 20, a fixed test", lambda share: fixed_length(15, 20, share)),
        ("8 of the last 10, at most 30", lambda share: n_of_last_m(8, 10, share, 30)),
        ("5 in a row, at most 30", lambda share: n_of_last_m(5, 5, share, 30)),
    )
    return tuple((name, _percent(way(_STUCK)), _percent(way(_ABLE))) for name, way in ways)


def _equal_test(rule: Rule) -> tuple[int, int]:
    wrongly, rightly = met_chance(rule, _STUCK), met_chance(rule, _ABLE)
    for length in range(5, 120):
        for needed in range(1, length + 1):
            if fixed_length(needed, length, _STUCK) <= wrongly:
                if fixed_length(needed, length, _ABLE) >= rightly:
                    return needed, length
                break
    return rule.maximum, rule.maximum


def _percent(share: float) -> str:
    return f"{share * 100:.1f} %" if share < 0.995 else f"{share * 100:.2f} %"
