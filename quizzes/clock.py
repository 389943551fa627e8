"""The time of a check in words: what is told before it begins, and what is left of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from django.utils import timezone

if TYPE_CHECKING:
    from quizzes.models import Accommodation, Sitting


@dataclass(frozen=True, slots=True)
class Clock:
    """The time of one check that runs; ``ends_at`` is None where there is no limit."""

    ends_at: datetime | None
    seconds: int
    is_over: bool

    @classmethod
    def of(cls, sitting: Sitting, now: datetime) -> Clock:
        ends_at = sitting.ends_at
        left = max(0, int((ends_at - now).total_seconds())) if ends_at else 0
        return cls(timezone.localtime(ends_at) if ends_at else None, left, sitting.is_over(now))

    @property
    def left(self) -> str:
        return said(self.seconds)


@dataclass(frozen=True, slots=True)
class Terms:
    """What a check will be held under: the time it may take in words, empty without a limit, and the rest."""

    time: str
    extra: int
    other: str


def terms(minutes: int, accommodation: Accommodation | None, appointed: int = 0) -> Terms:
    """``appointed`` is the extra time of a set check, in per cent; the longer of the two holds."""
    extra = max(accommodation.extra_time_percent if accommodation else 0, appointed)
    time = said(round(minutes * 60 * (100 + extra) / 100)) if minutes else ""
    return Terms(time, extra, accommodation.other if accommodation else "")


def said(seconds: int) -> str:
    """A span of time in words: "1 hour 5 minutes", "4 minutes", "50 seconds"."""
    if seconds < 60:
        return _counted(seconds, "second")
    hours, minutes = divmod(seconds // 60, 60)
    parts = [_counted(hours, "hour")] if hours else []
    return " ".join([*parts, *([_counted(minutes, "minute")] if minutes else [])])


def _counted(count: int, word: str) -> str:
    return f"{count} {word}" if count == 1 else f"{count} {word}s"
