"""All that is said of a wrong number: what mends it, how far off it is, what it would have meant."""

from __future__ import annotations

from collections.abc import Mapping
from math import log10
from typing import Any

from pressure.marking import Judged
from pressure.meanings import meaning
from pressure.units import rounded

_NEAR, _CLOSE = 0.01, 0.05
"""As near to a power of ten a number has its point in the wrong place; as close it was rounded away."""


def told_more(judged: Judged, prompt: Mapping[str, Any], key: Mapping[str, Any]) -> Judged:
    """A wrong number with all that is to be said of it in ``mend``, a line each.

    What mends the slip, or how the number lies to the answer where none is known; then what it would have
    meant. Everything else comes back as it was.
    """
    if judged.verdict == "right" or judged.value is None:
        return judged
    first = judged.mend or difference(key["answer"], judged.value)
    lines = (first, meaning(prompt, key["answer"], judged.value))
    return judged._replace(mend="\n".join(filter(None, lines)))


def difference(answer: float, value: float) -> str:
    """How far a number lies from the answer, where that helps to find out why."""
    if value <= 0.0:
        return "The answer is above nought."
    ratio = value / answer
    power = round(log10(ratio))
    if power and abs(ratio / 10**power - 1) < _NEAR:
        way = "large" if power > 0 else "small"
        return f"It is {10 ** abs(power):,} times too {way}: look where the decimal point went."
    if abs(ratio - 1) < _CLOSE:
        way = "large" if ratio > 1 else "small"
        return f"It is {rounded(abs(ratio - 1) * 100, 1)} % too {way}: keep every figure, round at the end."
    if ratio > 1:
        return f"It is too large: about {rounded(ratio, 2)} times the answer."
    return f"It is too small: the answer is about {rounded(1 / ratio, 2)} times as much."
