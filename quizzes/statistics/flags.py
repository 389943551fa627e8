"""When the figures of a question call for a look at it: the flags, their limits, the answers they need. Pure.

A test of mastery is meant to be passed: a share right of 0.85 to 0.98 after teaching is success. So an easy
question is not flagged for that, and discrimination is not judged among people who have all met the
competency, where it vanishes for every question alike.

Limits of discrimination: R. L. Ebel and D. A. Frisbie, Essentials of Educational Measurement (1991). Least
numbers of answers: S. M. Downing and R. Yudkowsky, Assessment in Health Professions Education (2009), where
figures are stable at 200, call for caution below 100 and are still of some use at 30. Both books as others
quote them. In simulation a good question (r = 0.31) fell below 0.20 in 35, 26, 13 and 6 % of samples of 10,
30, 100 and 200, which is why the upper limit must be low as well. The other limits are the project's own.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum, StrEnum
from types import MappingProxyType

from quizzes.statistics.drift import Drift
from quizzes.statistics.items import ItemStatistics
from quizzes.statistics.shares import Estimate, Share, difference


class Phase(Enum):
    """When the answers were given."""

    BEFORE_TEACHING = "before teaching"
    AFTER_TEACHING = "after teaching"
    ONCE_MET = "once the competency was met"


class Flag(StrEnum):
    """What the matter may be, as a heading."""

    SUSPECT = "key or wording suspect"
    TOO_HARD = "too hard after teaching"
    UNEXPLAINED = "wrong answers unexplained"
    TELLS_NOTHING = "tells nothing"
    SORTS_POORLY = "sorts people poorly"
    TEACHING_IDLE = "teaching makes no difference"
    DRIFT = "going wrong of late"


LEAST: Mapping[Flag, int] = MappingProxyType(
    {
        Flag.SUSPECT: 30, Flag.TOO_HARD: 30, Flag.UNEXPLAINED: 30, Flag.TELLS_NOTHING: 60,
        Flag.SORTS_POORLY: 100, Flag.TEACHING_IDLE: 50, Flag.DRIFT: 1,
    }
)  # fmt: skip
"""The answers below which a flag is never raised; wrong ones for "unexplained", each side for "teaching"."""

FIRM = 200
"""From so many answers on a flag stands firm; before, it is a reason to look."""

_SUSPECT_R, _SUSPECT_SHARE = 0.10, 0.30
_TOO_HARD, _UNEXPLAINED, _TELLS_NOTHING = 0.50, 0.50, 0.95
_POOR_R, _POOR_HIGH = 0.20, 0.30
_LEAST_GAIN = 0.10


@dataclass(frozen=True, slots=True)
class Finding:
    """A flag that is raised, the figures behind it in a sentence, the answers they rest on."""

    flag: Flag
    why: str
    answers: int

    @property
    def is_firm(self) -> bool:
        return self.answers >= FIRM or self.flag is Flag.DRIFT


@dataclass(frozen=True, slots=True)
class Case:
    """An item as the flags look at it. ``before`` is the share right of first answers before teaching."""

    item: ItemStatistics
    phase: Phase = Phase.AFTER_TEACHING
    before: Share | None = None
    drift: Drift | None = None


def findings(case: Case) -> list[Finding]:
    """The flags that the item's figures raise, in the order of ``Flag``."""
    found = []
    for flag, look in _LOOKS.items():
        said = look(case)
        if said and said[1] >= LEAST[flag]:
            found.append(Finding(flag, *said))
    return found


_Said = tuple[str, int] | None
"""The sentence, with the answers that it rests on."""


def _suspect(case: Case) -> _Said:
    """r below 0 with its upper limit below 0.10, or the share right certainly below 0.30."""
    right, r = case.item.right, case.item.discrimination
    if r and r.value < 0 and r.high < _SUSPECT_R and case.phase is not Phase.ONCE_MET:
        said = "Those who got the rest right got this one wrong more often"
        return f"{said} ({_shown_r(r)}). Check the key and the wording first.", r.of
    if right.high < _SUSPECT_SHARE and case.phase is not Phase.BEFORE_TEACHING:
        return f"Only {_shown(right)} got it right. Check the key and the wording first.", right.of
    return None


def _too_hard(case: Case) -> _Said:
    right = case.item.right
    if right.high < _TOO_HARD and case.phase is not Phase.BEFORE_TEACHING:
        return f"Fewer than half got it right after teaching: {_shown(right)}.", right.of
    return None


def _unexplained(case: Case) -> _Said:
    """The least number is of wrong answers: a share of three says nothing."""
    share = case.item.unexplained
    if share and share.value > _UNEXPLAINED:
        return f"No known slip explains {_shown(share)} of its wrong answers: look for one more.", share.of
    return None


def _tells_nothing(case: Case) -> _Said:
    """Possible from 73 answers on, all right: only then does the lower limit reach 0.95."""
    right = case.item.right
    if right.low > _TELLS_NOTHING and case.phase is Phase.BEFORE_TEACHING:
        return f"Nearly everybody gets it right before teaching: {_shown(right)}.", right.of
    return None


def _sorts_poorly(case: Case) -> _Said:
    r = case.item.discrimination
    if r and r.value < _POOR_R and r.high < _POOR_HIGH and case.phase is not Phase.ONCE_MET:
        return f"Getting it right says little about the rest: {_shown_r(r)}.", r.of
    return None


def _teaching_idle(case: Case) -> _Said:
    """Not where so much was right before that 0.10 more is beyond reach."""
    before, after = case.before, case.item.right
    if before is None or case.phase is Phase.BEFORE_TEACHING or before.value > 1 - _LEAST_GAIN:
        return None
    gain = difference(after, before)
    if gain.value >= _LEAST_GAIN:
        return None
    shares = f"{_percent(before.value)} got it right before teaching and {_percent(after.value)} after"
    points = f"{_points(gain.value)} points ({_points(gain.low)} to {_points(gain.high)})"
    return f"{shares}: a gain of {points}.", gain.of


def _drifting(case: Case) -> _Said:
    drift = case.drift
    if drift is None or drift.alarm is None:
        return None
    since = f"First answers have gone wrong unusually often since answer {drift.began + 1}"
    return f"{since}; the alarm sounded at answer {drift.alarm}. Look at what changed.", drift.answers


_LOOKS: Mapping[Flag, Callable[[Case], _Said]] = MappingProxyType(
    {
        Flag.SUSPECT: _suspect,
        Flag.TOO_HARD: _too_hard,
        Flag.UNEXPLAINED: _unexplained,
        Flag.TELLS_NOTHING: _tells_nothing,
        Flag.SORTS_POORLY: _sorts_poorly,
        Flag.TEACHING_IDLE: _teaching_idle,
        Flag.DRIFT: _drifting,
    }
)


def _percent(share: float) -> str:
    return f"{100 * share:.0f} %"


def _points(gain: float) -> str:
    return f"{100 * gain:.0f}".replace("-", "−")


def _shown_r(r: Estimate) -> str:
    return f"item-rest correlation {r.value:.2f}, at most {r.high:.2f}".replace(" -", " −")


def _shown(share: Share) -> str:
    return f"{_percent(share.value)} ({_percent(share.low)} to {_percent(share.high)}, {share.of} answers)"
