"""What the training staff set: the rules and the periods of the course. Pure.

No regulation found fixes a pass mark, an interval or a number of tries for theory; all of it is policy,
versioned, and kept with each decision.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass, field
from datetime import date, timedelta
from typing import Any

from dateutil.relativedelta import relativedelta

from quizzes.competencies import COMPETENCIES, Competency
from quizzes.rules import RULES, Rule
from quizzes.subjects import WHOLE, kinds_of, paper_of, subject

CONFIRMATION = Rule("confirmation", "2026-1", target=6, loss=3, floor=-6, maximum=18, rise=0)
"""The short check: on another day before sign-off, and again when a competency falls due."""

_LONGEST_MINUTES = 24 * 60


@dataclass(frozen=True, slots=True)
class Policy:
    """The values in force. Raises ValueError, with a sentence, for values that cannot work together.

    ``tiers`` overrides the tier a competency names; ``supervised`` names what is checked only under a code;
    periods are in the unit their name ends in, and 0 switches a time limit off.
    """

    edition: int = 1
    rules: Mapping[str, Rule] = field(default_factory=lambda: dict(RULES))
    confirmation: Rule = CONFIRMATION
    tiers: Mapping[str, str] = field(default_factory=dict)
    in_a_row: int = 3
    cool_down_days: int = 1
    confirm_after_days: int = 1
    currency_months: int = 12
    notice_days: int = 60
    holds_before_instructor: int = 3
    review_weeks: tuple[int, ...] = (1, 4, 12, 26)
    time_limit_minutes: int = 0
    course_time_limit_minutes: int = 0
    supervised: tuple[str, ...] = ()
    code_minutes: int = 30

    def __post_init__(self) -> None:
        if missing := RULES.keys() - self.rules.keys():
            raise ValueError(f"The rules {', '.join(sorted(missing))} are missing; checks need them.")
        if self.in_a_row < 1 or self.holds_before_instructor < 1 or self.currency_months < 1:
            raise ValueError("Right answers in a row, holds and months of currency are at least 1.")
        periods = (self.cool_down_days, self.confirm_after_days, self.notice_days)
        if min(*periods, self.time_limit_minutes, self.course_time_limit_minutes) < 0:
            raise ValueError("Days and minutes are not negative; 0 switches a period off.")
        if list(self.review_weeks) != sorted(set(self.review_weeks)) or min(self.review_weeks, default=1) < 1:
            raise ValueError("Reviews come at growing intervals of at least a week.")
        for slug, tier in self.tiers.items():
            if tier not in self.rules:
                raise ValueError(f"{slug} names the rule {tier!r}; there are {', '.join(self.rules)}.")

    @property
    def troubles(self) -> tuple[str, ...]:
        """Why this may not be put in force, a sentence each; a version that once was must still read back."""
        return (*self._about_rules(), *self._about_names(), *self._about_times())

    def _about_rules(self) -> Iterator[str]:
        for rule in (*self.rules.values(), self.confirmation):
            if rule.trouble:
                yield rule.trouble
        for slug in (*COMPETENCIES, WHOLE):
            rule, kinds = self.rule_for(subject(slug), 0), len(kinds_of(paper_of(slug)))
            shortest = min(rule.maximum, self.confirmation.maximum) if slug != WHOLE else rule.maximum
            if shortest < kinds:
                yield (
                    f"{subject(slug).title} has {kinds} kinds of question, each asked once before anything "
                    f"is decided; a check of at most {shortest} questions is too short for them."
                )

    def _about_names(self) -> Iterator[str]:
        for slug in (*self.tiers, *self.supervised):
            if slug not in COMPETENCIES and slug != WHOLE:
                yield f"There is no competency {slug!r}; there are {', '.join((*COMPETENCIES, WHOLE))}."

    def _about_times(self) -> Iterator[str]:
        if self.notice_days >= 28 * self.currency_months:
            yield (
                f"A notice of {self.notice_days} days would begin before the competency is met: it falls due "
                f"after {self.currency_months} months. Give fewer days."
            )
        if max(self.time_limit_minutes, self.course_time_limit_minutes) > _LONGEST_MINUTES:
            yield f"A time limit is at most {_LONGEST_MINUTES} minutes; 0 switches it off."
        if not 1 <= self.code_minutes <= _LONGEST_MINUTES:
            yield f"A code for supervised checks is good for 1 to {_LONGEST_MINUTES} minutes."

    def limit_for(self, slug: str) -> int:
        """Minutes that a check of the subject may take; 0 is without limit."""
        return self.course_time_limit_minutes if slug == WHOLE else self.time_limit_minutes

    def rule_for(self, competency: Competency, holds: int) -> Rule:
        """The rule of a check after so many holds."""
        return self.rules[self.tiers.get(competency.slug, competency.tier)].after(holds)

    def opens_again_on(self, held_on: date) -> date:
        return held_on + timedelta(days=self.cool_down_days)

    def confirms_on(self, met_on: date) -> date:
        return met_on + timedelta(days=self.confirm_after_days)

    def due_on(self, met_on: date) -> date:
        return met_on + relativedelta(months=self.currency_months)

    def notice_on(self, due_on: date) -> date:
        return due_on - timedelta(days=self.notice_days)

    def review_on(self, since: date, done: int) -> date | None:
        """The day of the next review set after ``done`` of them; None when there are no more."""
        return since + timedelta(weeks=self.review_weeks[done]) if done < len(self.review_weeks) else None

    def as_record(self) -> dict[str, Any]:
        return asdict(self)

    @classmethod
    def from_record(cls, record: Mapping[str, Any]) -> Policy:
        """The policy of a stored version. Raises ValueError for values that cannot work."""
        values = dict(record)
        kept = {name: Rule.from_record(rule) for name, rule in values["rules"].items()}
        values["rules"] = {**RULES, **kept}  # a rule younger than the version has its first numbers
        values["confirmation"] = Rule.from_record(values["confirmation"])
        values["review_weeks"] = tuple(values["review_weeks"])
        values["supervised"] = tuple(values["supervised"])
        return cls(**values)


DEFAULT = Policy()
