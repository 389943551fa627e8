"""The fields of a problem's form with what was typed in them. Pure, and made of what may be shown alone."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pressure.units import unit_text

Field = dict[str, Any]


def fields_of(
    shown: Mapping[str, Any], typed: Mapping[str, str], wrong: str = "", sentence: str = ""
) -> list[Field]:
    """One entry a field: name, label, value, and the error at the field named ``wrong``.

    A choice has one entry with ``options``; an order has an entry an item; a number that is wanted in one
    unit and no other has it as ``only``.
    """
    match shown.get("task", "number"):
        case "table":
            fields = [_text(f"answer-{n}", cell["text"]) for n, cell in enumerate(shown["cells"], start=1)]
        case "choice":
            fields = [{"name": "answer", "label": shown["question"], "options": shown["options"]}]
        case "ordering":
            fields = [_text(f"place-{one['letter']}", one["text"]) for one in shown["options"]]
        case _:
            fields = [_text("answer", shown["asked"]["text"]) | {"only": _only(shown["asked"])}]
    for field in fields:
        field["value"] = typed.get(field["name"], "")
        field["error"] = sentence if field["name"] == wrong else ""
    return fields


def _only(asked: Mapping[str, Any]) -> str:
    return unit_text(asked["unit"], asked["kind"]) if asked.get("only") else ""


def _text(name: str, label: str) -> Field:
    return {"name": name, "label": label}
