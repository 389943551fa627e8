"""System checks for what the records rely on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.core.checks import CheckMessage, Error, register

from pressure.catalogue import families
from quizzes.competencies import COMPETENCIES, Competency
from quizzes.policy import DEFAULT, Policy
from quizzes.rules import RULES
from quizzes.subjects import WHOLE


@register()
def competencies_can_be_tested(**_: Any) -> list[CheckMessage]:
    """Every competency names families and a rule that exist."""
    return faults(COMPETENCIES)


@register()
def the_policy_suits_the_competencies(**_: Any) -> list[CheckMessage]:
    """The values the course comes with fit the competencies there are."""
    if WHOLE in COMPETENCIES:
        return [Error(f"No competency may be called {WHOLE!r}: it stands for the course.", id="quizzes.E004")]
    return [] if faults(COMPETENCIES) else misfits(DEFAULT)


def misfits(policy: Policy) -> list[CheckMessage]:
    """What keeps a policy from being put in force, an error each."""
    hint = "Mend the rule in quizzes/rules.py or the values in quizzes/policy.py."
    return [Error(trouble, hint=hint, id="quizzes.E003") for trouble in policy.troubles]


def faults(competencies: Mapping[str, Competency]) -> list[CheckMessage]:
    """What is wrong with them, an error each."""
    known = families()
    found: list[CheckMessage] = [
        Error(
            f"Competency {one.slug!r} names the problem family {slug!r}, which does not exist.",
            hint=f"Known families: {', '.join(sorted(known))}.",
            id="quizzes.E001",
        )
        for one in competencies.values()
        for slug in one.families
        if slug not in known
    ]
    found += [
        Error(
            f"Competency {one.slug!r} names the rule {one.tier!r}, which does not exist.",
            hint=f"Known rules: {', '.join(RULES)}.",
            id="quizzes.E002",
        )
        for one in competencies.values()
        if one.tier not in RULES
    ]
    return found
