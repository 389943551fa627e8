"""Problems as plain JSON: what is kept of them, and what marking reads back.

Stored attempts are read through these forms for ever, so members are only ever added, and nothing here
asks a family anything once the form is written.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pressure import catalogue
from pressure.problem import Asked, Given, Key, Line, Problem, Slip, Step
from pressure.units import shown as text_of
from pressure.units import spoken as words_of
from pressure.units import unit_spoken, unit_text


def shown(problem: Problem) -> dict[str, Any]:
    """All of a problem that may be seen before it is marked. Holds no answer.

    Every given's ``text`` stands in ``situation`` word for word; ``words`` is the same for a voice.
    """
    return {
        "family": problem.family,
        "edition": problem.edition,
        "seed": problem.seed,
        "system": problem.system,
        "number": problem.number,
        "facts": dict(problem.facts),
        "situation": problem.situation,
        "convention": problem.convention,
        "givens": [_given(given) for given in problem.givens],
        "asked": _asked(problem.asked),
        "caution": problem.caution,
    }


def key(problem: Problem) -> dict[str, Any]:
    """All that marking and the worked solution need. Not for the browser before the answer is marked."""
    marking, asked = problem.key, problem.asked
    return {
        "answer": marking.answer,
        "answer_text": text_of(marking.answer, asked.unit, asked.kind),
        "answer_words": words_of(marking.answer, asked.unit, asked.kind),
        "unit": asked.unit,
        "kind": asked.kind,
        "low": marking.low,
        "high": marking.high,
        "slips": [_slip(slip) for slip in marking.slips],
        "sense": problem.sense,
        "steps": [_step(step) for step in catalogue.solve(problem)],
    }


def key_from(shown: Mapping[str, Any], key: Mapping[str, Any]) -> Key:
    """The key for marking, rebuilt from the two stored forms without the family."""
    asked = shown["asked"]
    return Key(
        asked=Asked(asked["symbol"], asked["meaning"], asked["dimension"], asked["unit"], asked["kind"]),
        answer=key["answer"],
        low=key["low"],
        high=key["high"],
        slips=tuple([Slip(s["name"], s["label"], s["mend"], s["low"], s["high"]) for s in key["slips"]]),
    )


def _given(given: Given) -> dict[str, Any]:
    value, unit, kind = given.quantity.value, given.quantity.unit, given.quantity.kind
    return {
        "symbol": given.symbol,
        "meaning": given.meaning,
        "value": value,
        "unit": unit,
        "kind": kind,
        "text": text_of(value, unit, kind, given=True),
        "words": words_of(value, unit, kind, given=True),
    }


def _asked(asked: Asked) -> dict[str, Any]:
    meaning = asked.meaning[0].upper() + asked.meaning[1:]
    return {
        "symbol": asked.symbol,
        "meaning": asked.meaning,
        "dimension": asked.dimension,
        "unit": asked.unit,
        "kind": asked.kind,
        "text": f"{meaning}, in {unit_text(asked.unit)}",
        "words": f"{meaning}, in {unit_spoken(asked.unit)}",
    }


def _slip(slip: Slip) -> dict[str, Any]:
    return {"name": slip.name, "label": slip.label, "mend": slip.mend, "low": slip.low, "high": slip.high}


def _step(step: Step) -> dict[str, Any]:
    return {
        "why": step.why,
        "relation": _line(step.relation),
        "substitution": _line(step.substitution),
        "result": _line(step.result),
    }


def _line(line: Line) -> dict[str, str]:
    return {"mathml": line.mathml, "words": line.words}
