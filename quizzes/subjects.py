"""What a sitting may be about: one competency, or the whole course at once. Pure."""

from __future__ import annotations

from collections.abc import Mapping

from quizzes.competencies import COMPETENCIES, Competency

WHOLE = "whole-course"
"""The slug under which records keep the check over the whole course; no competency may take it."""


def subject(slug: str) -> Competency:
    """The competency of a slug; the whole course reads like one more. Raises KeyError for neither."""
    return whole_course() if slug == WHOLE else COMPETENCIES[slug]


def whole_course() -> Competency:
    """The whole course as one subject, with every family there is."""
    return Competency(
        WHOLE,
        "The whole course",
        "Commands the pressure physics of the course, all of it at once.",
        tuple(dict.fromkeys(family for one in COMPETENCIES.values() for family in one.families)),
        "course",
    )


def paper_of(slug: str) -> dict[str, list[str]]:
    """What a check of the subject asks: competency → its families, as they are today.

    A family that two competencies share is asked under the first, so that an answer counts for one of them.
    """
    if slug != WHOLE:
        return {slug: list(COMPETENCIES[slug].families)}
    taken: set[str] = set()
    paper: dict[str, list[str]] = {}
    for one in COMPETENCIES.values():
        paper[one.slug] = [family for family in one.families if family not in taken]
        taken.update(one.families)
    return {slug: families for slug, families in paper.items() if families}


def kinds_of(paper: Mapping[str, list[str]]) -> list[str]:
    """What the first block holds once each: families of one competency, or else the competencies."""
    return list(paper) if len(paper) > 1 else [family for families in paper.values() for family in families]


def kind_in(paper: Mapping[str, list[str]], family: str) -> str:
    """The kind that a family stands for in the paper: itself, or else its competency."""
    if len(paper) <= 1:
        return family
    return next((slug for slug, families in paper.items() if family in families), family)
