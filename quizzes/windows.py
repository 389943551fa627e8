"""Checks that were set for a learner at a time: whether they bind, and what they are held under. Pure.

Who sets them stands on the floor above, which hands a way to find them down at start-up; see ``enlist``.
A set check is an appointment: it opens nothing that practice has not opened, and while its window lasts
the check is held under its terms.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from quizzes.standing import Opening
from quizzes.subjects import WHOLE


@dataclass(frozen=True, slots=True)
class Window:
    """One check set for one learner, from ``opens_at`` until just before ``closes_at``, by the site's clock.

    ``only`` shuts the check to them outside the window; ``begun`` says whether they began one within it;
    ``taken_back`` is the reason why it holds no more.
    """

    subject: str
    title: str
    opens_at: datetime
    closes_at: datetime
    by_name: str
    only: bool = False
    supervised: bool = False
    extra_time_percent: int = 0
    note: str = ""
    begun: bool = False
    taken_back: str = ""

    def is_open(self, now: datetime) -> bool:
        return not self.taken_back and self.opens_at <= now < self.closes_at

    def is_coming(self, now: datetime) -> bool:
        return not self.taken_back and now < self.opens_at

    def is_over(self, now: datetime) -> bool:
        return not self.taken_back and self.closes_at <= now

    @property
    def about(self) -> str:
        return "the course check" if self.subject == WHOLE else f"the check of {self.title}"

    @property
    def span(self) -> str:
        """When, in words: ``3 December 2026, 09:00 to 11:00``; the second day is said where it differs."""
        first, last = _said(self.opens_at), _said(self.closes_at)
        same = self.opens_at.date() == self.closes_at.date()
        return f"{first} to {self.closes_at:%H:%M}" if same else f"{first} to {last}"


@dataclass(frozen=True, slots=True)
class Conditions:
    """What set checks ask of the next check of one subject."""

    supervised: bool = False
    extra_time_percent: int = 0
    shut_because: str = ""

    def narrow(self, opening: Opening) -> Opening:
        """The opening, shut where it stood open outside its only window."""
        return Opening(None, self.shut_because) if opening.purpose and self.shut_because else opening


def conditions(windows: Sequence[Window], now: datetime) -> Conditions:
    """What the windows of one subject come to; the one that was set last comes last.

    Of windows that are open together the stricter supervision and the longer time hold.
    """
    standing = [one for one in windows if not one.taken_back]
    inside = [one for one in standing if one.is_open(now)]
    if inside:
        return Conditions(
            supervised=any(one.supervised for one in inside),
            extra_time_percent=max(one.extra_time_percent for one in inside),
        )
    if coming := [one for one in standing if one.only and one.is_coming(now)]:
        first = min(coming, key=lambda one: one.opens_at)
        return Conditions(shut_because=f"This check is set for {first.span} and opens only then.")
    if standing and standing[-1].only and not standing[-1].begun:
        return Conditions(
            shut_because="The time that was set for this check is over, and it opens at no other. "
            "Ask your instructor to set it again."
        )
    return Conditions()


Finder = Callable[[int, bool], Sequence[Window]]
"""The windows of a learner, by their key; True locks what was set until the transaction ends."""

_finders: list[Finder] = []


def enlist(finder: Finder) -> None:
    """Hand down a way to find windows; twice is once."""
    if finder not in _finders:
        _finders.append(finder)


def windows_of(learner: int, *, lock: bool = False) -> list[Window]:
    """Every window of the learner that may matter still, in the order they were set."""
    return [one for finder in _finders for one in finder(learner, lock)]


def of_subject(windows: Sequence[Window], subject: str) -> list[Window]:
    """Those of one subject."""
    return [one for one in windows if one.subject == subject]


def conditions_of(learner: int, subject: str, now: datetime, *, lock: bool = False) -> Conditions:
    """What the windows of a learner ask of their next check of one subject."""
    return conditions(of_subject(windows_of(learner, lock=lock), subject), now)


def to_be_told(windows: Sequence[Window], now: datetime) -> list[tuple[Window, ...]]:
    """What the learner is reminded of, soonest first: neither begun nor over, taken back or not.

    Checks that were set together, for one time and on the same terms, come together.
    """
    together: dict[Window, list[Window]] = {}
    told = [one for one in windows if not one.begun and now < one.closes_at]
    for one in sorted(told, key=lambda one: one.opens_at):
        together.setdefault(replace(one, subject="", title=""), []).append(one)
    return [tuple(group) for group in together.values()]


def shut(windows: Sequence[Window], now: datetime) -> Mapping[str, str]:
    """Subject → why its check is shut now, where a window shuts it."""
    found = {one.subject: conditions(of_subject(windows, one.subject), now) for one in windows}
    return {subject: terms.shut_because for subject, terms in found.items() if terms.shut_because}


def _said(moment: datetime) -> str:
    return f"{moment.day} {moment:%B %Y, %H:%M}"
