"""An alarm for a family that is going wrong: its key, its wording, or what people have heard of it. Pure.

E. S. Page's cumulative sum (Biometrika 41 (1954) 100) over first answers in the order given: a wrong answer
adds three, a right one takes one, never below nought; at 24 it sounds. The break-even is a share right of
0.75, the pass mark of the standard rule. By chance it sounds once in so many answers on average:

=========== ====== ===== ==== ==== ====
share right   0.85  0.80 0.75 0.70 0.60
answers     16,700 1,060  211   89   38
=========== ====== ===== ==== ==== ====

so it suits a family answered right in 0.85 or more; one that is harder by nature sounds by itself.
A database has the sum from two window functions: with S the running sum of +3 and -1, the score is
S - min(0, S so far).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

WRONG, RIGHT, ALARM = 3, 1, 24


@dataclass(frozen=True, slots=True)
class Drift:
    """Where the sum stands after so many ``answers``; four numbers that can be kept with the family.

    ``began``: the answers before the sum last left nought, Page's guess at when things changed; ``alarm``:
    the answer at which it first sounded, None until then.
    """

    score: int = 0
    answers: int = 0
    began: int = 0
    alarm: int | None = None


def watch(rights: Iterable[bool], start: Drift | None = None) -> Drift:
    """The sum carried on from ``start`` over further answers. Once it has sounded it rests as it was.

    Whoever has looked into an alarm begins anew with a fresh ``Drift``.
    """
    now = start or Drift()
    if now.alarm is not None:
        return now
    score, answers, began = now.score, now.answers, now.began
    for is_right in rights:
        answers += 1
        if is_right:
            score = max(0, score - RIGHT)
        else:
            score += WRONG
        if not score:
            began = answers
        elif score >= ALARM:
            return Drift(score, answers, began, answers)
    return Drift(score, answers, began)


def answers_to_alarm(right: float) -> float:
    """How many answers pass on average before the alarm, with a steady share right (0 <= right < 1).

    Exact: the mean L of the chain over the scores, L(s) = 1 + p L(s - 1) + (1 - p) L(s + 3) and nought from
    the alarm on (D. Brook and D. A. Evans, Biometrika 59 (1972) 539), solved upwards and back.
    """
    if not 0 <= right < 1:
        raise ValueError("A share right from 0 to below 1 is wanted: without wrong answers nothing sounds.")
    wrong = 1 - right
    # L(s) = constant + near L(s+1) + further L(s+2) + far L(s+3)
    rows = [(1 / wrong, 0.0, 0.0, 1.0)]
    for _ in range(1, ALARM):
        constant, near, further, far = rows[-1]
        stay = 1 - right * near
        rows.append(((1 + right * constant) / stay, right * further / stay, right * far / stay, wrong / stay))
    above = (0.0, 0.0, 0.0)
    for constant, near, further, far in reversed(rows):
        here = constant + near * above[0] + further * above[1] + far * above[2]
        above = (here, above[0], above[1])
    return above[0]
