"""Problems as plain JSON: what is kept of them, and what marking reads back.

Stored attempts are read through these forms for ever, so members are only ever added, and nothing here
asks a family anything once the form is written.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from pressure import catalogue, mixed
from pressure.figures.solutions import figure_for
from pressure.problem import (
    AnyKey,
    Asked,
    ChoiceKey,
    Figure,
    Given,
    Key,
    Line,
    Option,
    OrderKey,
    Problem,
    Slip,
    Step,
    TableKey,
)
from pressure.units import shown as text_of
from pressure.units import spoken as words_of
from pressure.units import unit_spoken, unit_text

LETTERS = "abcdefghijkl"
"""How options are told apart on the page, in the order shown."""

_TASKS = {Key: "number", TableKey: "table", ChoiceKey: "choice", OrderKey: "ordering"}


def shown(problem: Problem) -> dict[str, Any]:
    """All of a problem that may be seen before it is marked. Holds no answer.

    Every given's ``text`` stands in ``situation`` word for word; ``words`` is the same for a voice.
    ``mixed`` is the problem's own unit where the answer is wanted in another.
    """
    return {
        "task": _TASKS[type(problem.key)],
        "family": problem.family,
        "item": problem.item,
        "mixed": mixed.plain(problem).asked.unit if isinstance(problem, mixed.Mixed) else "",
        "edition": problem.edition,
        "seed": problem.seed,
        "system": problem.system,
        "number": problem.number,
        "facts": dict(problem.facts),
        "situation": problem.situation,
        "convention": problem.convention,
        "givens": [_given(given) for given in problem.givens],
        "caution": problem.caution,
        "figure": _figure(problem.figure),
        **_asked_in(problem.key),
    }


def _asked_in(key: AnyKey) -> dict[str, Any]:
    """What is asked. Options go by letters, since their names would say which is right."""
    if isinstance(key, Key):
        return {"asked": _asked(key.asked)}
    if isinstance(key, TableKey):
        return {"cells": [_asked(cell.asked) for cell in key.cells]}
    options = key.options if isinstance(key, ChoiceKey) else key.items
    return {
        "question": key.question,
        "options": [
            {"letter": letter, "text": one.text} for letter, one in zip(LETTERS, options, strict=False)
        ],
    }


def key(problem: Problem) -> dict[str, Any]:
    """All that marking and the worked solution need. Not for the browser before the answer is marked."""
    return {
        **_key(problem.key),
        "sense": problem.sense,
        "steps": [_step(step) for step in mixed.solve(problem)],
        "figure": _figure(figure_for(mixed.plain(problem), catalogue.family(problem.family).topic)),
    }


def _key(key: AnyKey) -> dict[str, Any]:
    if isinstance(key, Key):
        return _number(key)
    if isinstance(key, TableKey):
        cells = [_number(cell) for cell in key.cells]
        return {"cells": cells, "answer_text": "; ".join(cell["answer_text"] for cell in cells)}
    if isinstance(key, ChoiceKey):
        texts = {option.name: option.text for option in key.options}
        return {
            "options": [_option(one) for one in key.options],
            "right": key.right,
            "answer_text": texts[key.right],
        }
    texts = {item.name: item.text for item in key.items}
    return {
        "options": [_option(one) for one in key.items],
        "right": list(key.right),
        "answer_text": "; ".join(f"{place}. {texts[name]}" for place, name in enumerate(key.right, start=1)),
    }


def _number(key: Key) -> dict[str, Any]:
    asked = key.asked
    return {
        "answer": key.answer,
        "answer_text": text_of(key.answer, asked.unit, asked.kind),
        "answer_words": words_of(key.answer, asked.unit, asked.kind),
        "unit": asked.unit,
        "kind": asked.kind,
        "low": key.low,
        "high": key.high,
        "slips": [_slip(slip) for slip in key.slips],
    }


def key_from(shown: Mapping[str, Any], key: Mapping[str, Any]) -> AnyKey:
    """The key for marking, rebuilt from the two stored forms without the family."""
    match shown.get("task", "number"):
        case "table":
            return TableKey(
                tuple([_number_from(*cell) for cell in zip(shown["cells"], key["cells"], strict=True)])
            )
        case "choice":
            return ChoiceKey(shown["question"], _options_from(key["options"]), key["right"])
        case "ordering":
            return OrderKey(shown["question"], _options_from(key["options"]), tuple(key["right"]))
        case _:
            return _number_from(shown["asked"], key)


def _number_from(asked: Mapping[str, Any], key: Mapping[str, Any]) -> Key:
    return Key(
        asked=_asked_from(asked),
        answer=key["answer"],
        low=key["low"],
        high=key["high"],
        slips=tuple([Slip(s["name"], s["label"], s["mend"], s["low"], s["high"]) for s in key["slips"]]),
    )


def _asked_from(asked: Mapping[str, Any]) -> Asked:
    symbol, meaning, dimension = asked["symbol"], asked["meaning"], asked["dimension"]
    return Asked(symbol, meaning, dimension, asked["unit"], asked["kind"], asked.get("only", False))


def _options_from(options: Sequence[Mapping[str, Any]]) -> tuple[Option, ...]:
    return tuple([Option(one["name"], one["text"], one["why"], one["label"]) for one in options])


def _option(option: Option) -> dict[str, Any]:
    return {"name": option.name, "text": option.text, "why": option.why, "label": option.label}


def _figure(figure: Figure | None) -> dict[str, Any] | None:
    return {"name": figure.name, "facts": dict(figure.facts), "words": figure.words} if figure else None


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
        "only": asked.only,
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


def _line(line: Line | None) -> dict[str, str] | None:
    return {"mathml": line.mathml, "words": line.words} if line else None
