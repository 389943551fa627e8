"""What is looked at and paused by itself: a family, or one question of it as ``family/question``. Pure."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from functools import cache

from pressure import catalogue
from pressure.draw import facts_at, walk
from pressure.errors import PressureError
from quizzes.competencies import COMPETENCIES


def item_of(family: str, question: str = "") -> str:
    return f"{family}/{question}" if question else family


def split(item: str) -> tuple[str, str]:
    """The family of an item and its question, empty for a whole family."""
    family, _, question = item.partition("/")
    return family, question


def exists(item: str) -> bool:
    family, question = split(item)
    if family not in catalogue.families():
        return False
    return question in questions_of(family) if "/" in item else True


@cache
def questions_of(family: str) -> tuple[str, ...]:
    """The ids of the family's questions, in order of the alphabet; none in a family that is computed.

    Raises UnknownFamily.
    """
    found = catalogue.family(family)
    system = found.systems[0]
    axes = found.axes[system]
    if len(axes) > 1:  # a question is a draw of its own, so their families have one axis
        return ()
    ids = {found.pose(system, facts_at(axes, place)).item for place in walk(found, system)}
    return tuple(sorted(ids - {""}))


@cache
def question_items(family: str) -> tuple[str, ...]:
    """The family's questions as items."""
    return tuple(item_of(family, question) for question in questions_of(family))


@cache
def place_of(item: str) -> tuple[str, int]:
    """The system and the seed that show the item: (system, seed). Raises LookupError if there is none."""
    family, question = split(item)
    found = catalogue.family(family)
    system = found.systems[0]
    if not question:
        return system, 1
    axes = found.axes[system]
    for seed, place in enumerate(walk(found, system)):
        if found.pose(system, facts_at(axes, place)).item == question:
            return system, seed
    raise LookupError(f"{family} has no question {question!r}.")


def title_of(item: str) -> str:
    """The family's title; a question by its id in plain words. What is no longer there keeps its name."""
    family, question = split(item)
    if question:
        return question.replace("-", " ").capitalize()
    try:
        return catalogue.family(family).title
    except PressureError:
        return family.replace("-", " ").capitalize()


def competencies_of(family: str) -> list[str]:
    """The competencies that the family tests."""
    return [slug for slug, one in COMPETENCIES.items() if family in one.families]


def asked(families: Sequence[str], paused: Collection[str]) -> list[str]:
    """The families that are not paused, nor all of whose questions are."""
    return [family for family in families if family not in paused]


def paper_without(paper: Mapping[str, Sequence[str]], paused: Collection[str]) -> dict[str, list[str]]:
    """A paper (competency → families) without what is paused; a competency with nothing left drops out."""
    left = {slug: asked(families, paused) for slug, families in paper.items()}
    return {slug: families for slug, families in left.items() if families}
