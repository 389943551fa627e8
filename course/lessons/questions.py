"""The questions beside a lesson, read from its ``questions.toml``; whatever is wrong is told by line.

    title = "…"   competency = "…"   edition = 1

    [[question]]               id, scene, ask, sense, reason (a list), source
    [question.slots]           name = ["…", "…"]: every combination is a draw
    [[question.cases]]         slots that move together
    [question.right]           text, why
    [[question.wrong]]         three of them: name, label, text, why

A question of ``kind = "order"`` has four or more ``[[question.item]]`` in their right order instead.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from course.lessons.errors import LessonError
from course.lessons.scenarios import NAME, TAKEN, Fault, Question, Sheet, Values, combinations, gaps
from pressure.airspaces import misreadings
from pressure.problem import Option
from pressure.record import LETTERS
from pressure.slips import LABELS
from quizzes.competencies import COMPETENCIES

KNOWN_LABELS: Mapping[str, str] = {**LABELS, **misreadings.LABELS}
FEWEST_DRAWS = 6
_WRONG, _FEWEST_ITEMS = 3, 4
_SLUG = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_HEAD = {"title", "competency", "edition", "question"}
_TEXTS = ("id", "scene", "ask", "sense", "source")
_CHOICE, _ORDER = {"right", "wrong"}, {"item"}
_COMMON = {*_TEXTS, "reason", "kind", "slots", "cases"}
_BRACES = re.compile(r"\{[^{}]*\}")
_MARKUP = re.compile(r"[<>*`\\#\n\t]|&\w+;")


def read(path: Path) -> tuple[Sheet | None, list[LessonError]]:
    """The questions in that file, and what is wrong with it: the first fault of each question."""
    try:
        text = path.read_text(encoding="utf-8")
        told = tomllib.loads(text)
    except UnicodeDecodeError:
        return None, [LessonError(path, 1, "The file is not UTF-8 text. Save it as UTF-8.")]
    except tomllib.TOMLDecodeError as error:
        return None, [LessonError(path, _syntax_line(text, str(error)), f"This is not TOML: {error}.")]
    faults = [LessonError(path, *fault) for fault in _faults_of_head(text, told)]
    if faults:
        return None, faults
    found: list[Question] = []
    lines = _lines(text)
    for at, table in enumerate(told["question"]):
        try:
            found.append(_question(table, line := lines[at] if at < len(lines) else 1))
        except Fault as fault:
            named = f"Question {table['id']!r}: " if isinstance(table.get("id"), str) else ""
            faults.append(LessonError(path, line, f"{named}{fault}"))
    return Sheet(path, told["title"], told["competency"], told["edition"], tuple(found)), faults


def _syntax_line(text: str, said: str) -> int:
    found = re.search(r"at line (\d+)", said)
    return int(found[1]) if found else text.count("\n") + 1


def _lines(text: str) -> list[int]:
    """The line of each question's id; of its heading where it has none."""
    found: list[int] = []
    has_id = True
    for number, line in enumerate(text.split("\n"), start=1):
        if re.match(r"\s*\[\[\s*question\s*\]\]", line):
            found.append(number)
            has_id = False
        elif not has_id and re.match(r"\s*id\s*=", line):
            found[-1], has_id = number, True
    return found


def _faults_of_head(text: str, told: Mapping[str, Any]) -> Iterator[tuple[int, str]]:
    for name in told:
        if name not in _HEAD:
            yield _line_of(text, name), f"{name!r} is not known. Known are: {', '.join(sorted(_HEAD))}."
    if not isinstance(told.get("title"), str) or not told["title"].strip():
        yield _line_of(text, "title"), "Give the file a title: title = “What its questions are about”."
    if type(told.get("edition")) is not int or told["edition"] < 1:
        yield _line_of(text, "edition"), "Give the file an edition, a whole number from 1: edition = 1."
    if (named := told.get("competency")) not in list(COMPETENCIES):
        known = ", ".join(COMPETENCIES)
        yield _line_of(text, "competency"), f"There is no competency {named!r}. There are: {known}."
    questions = told.get("question")
    if not (questions and isinstance(questions, list) and all(isinstance(one, dict) for one in questions)):
        yield _line_of(text, "question"), "The file holds no question. Begin each with a line [[question]]."


def _line_of(text: str, name: str) -> int:
    found = re.search(rf"^\s*\[*\s*[\"']?{re.escape(name)}\b", text, re.MULTILINE)
    return text[: found.end()].count("\n") + 1 if found else 1


def _question(table: Mapping[str, Any], line: int) -> Question:
    kind = table.get("kind", "choice")
    if kind not in ("choice", "order"):
        raise Fault(f"The kind {kind!r} is not known. Leave it out for a choice, or write kind = “order”.")
    is_order = kind == "order"
    _only(
        table,
        _COMMON | (_ORDER if is_order else _CHOICE),
        "a question that orders" if is_order else "a choice",
    )
    texts = {name: _text(table, name, "The question") for name in _TEXTS}
    if not _SLUG.fullmatch(texts["id"]):
        raise Fault("An id is small letters, digits and hyphens, such as held-breath-in-shallow-water.")
    question = Question(
        **texts,
        line=line,
        is_order=is_order,
        reason=_list(table.get("reason"), "“reason”"),
        options=_items(table) if is_order else _options(table),
        draws=_draws(table),
    )
    _check_texts(question)
    return question


def _only(table: Mapping[str, Any], known: set[str], what: str) -> None:
    for name in table:
        if name not in known:
            raise Fault(f"{name!r} is not known in {what}. Known are: {', '.join(sorted(known))}.")


def _text(table: Mapping[str, Any], name: str, what: str) -> str:
    found = table.get(name)
    if not isinstance(found, str) or not found.strip():
        raise Fault(
            f"{what} needs {name!r} as a text. What belongs to the question stands above [question.slots]."
        )
    if found != found.strip():
        raise Fault(f"{name!r} begins or ends in a space. Take it out.")
    return found


def _list(found: Any, what: str) -> tuple[str, ...]:
    if not isinstance(found, list) or not found or not all(isinstance(one, str) and one for one in found):
        raise Fault(f"{what} must be a list of texts in square brackets.")
    return tuple(found)


def _options(table: Mapping[str, Any]) -> tuple[Option, ...]:
    right, wrong = table.get("right"), _tables(table, "wrong")
    if not isinstance(right, dict):
        raise Fault("A choice needs one [question.right] with text and why.")
    if len(wrong) != _WRONG:
        raise Fault(f"A choice has exactly three [[question.wrong]]. This has {len(wrong)}.")
    _only(right, {"text", "why"}, "the right option")
    return (
        Option("right", *[_text(right, name, "The right option") for name in ("text", "why")]),
        *[_wrong(one) for one in wrong],
    )


def _tables(table: Mapping[str, Any], name: str) -> list[dict[str, Any]]:
    found = table.get(name, [])
    if not isinstance(found, list) or not all(isinstance(one, dict) for one in found):
        raise Fault(f"Write each under a line [[question.{name}]].")
    return found


def _wrong(table: Mapping[str, Any]) -> Option:
    _only(table, {"name", "label", "text", "why"}, "a wrong option")
    name, text, why = (_text(table, key, "A wrong option") for key in ("name", "text", "why"))
    label = table.get("label", KNOWN_LABELS.get(name))
    if not isinstance(label, str) or not label.strip():
        raise Fault(f"The wrong option {name!r} needs a label: a few words that can follow “last time”.")
    if label != KNOWN_LABELS.get(name, label):
        raise Fault(f"{name!r} has the label “{KNOWN_LABELS[name]}” already. Leave the label out.")
    if not label[0].islower() or label.endswith("."):
        raise Fault(f"The label of {name!r} follows “last time”: begin it small, end it without a full stop.")
    return Option(_slug(name), text, why, label)


def _items(table: Mapping[str, Any]) -> tuple[Option, ...]:
    items = _tables(table, "item")
    if not _FEWEST_ITEMS <= len(items) <= len(LETTERS):
        raise Fault(f"An order has at least four [[question.item]] and at most {len(LETTERS)}.")
    for one in items:
        _only(one, {"name", "text", "why"}, "an item")
    return tuple(
        Option(
            _slug(_text(one, "name", "An item")), _text(one, "text", "An item"), _text(one, "why", "An item")
        )
        for one in items
    )


def _slug(name: str) -> str:
    if not _SLUG.fullmatch(name) or name == "right":
        raise Fault(f"{name!r} is no name for an option. Use small letters, digits and hyphens; not “right”.")
    return name


def _draws(table: Mapping[str, Any]) -> tuple[Values, ...]:
    told, cases = table.get("slots", {}), _tables(table, "cases")
    if not isinstance(told, dict):
        raise Fault("Write the slots under a line [question.slots], each as a list.")
    slots = {name: _list(texts, f"The slot {name!r}") for name, texts in told.items()}
    _check_cases(cases, slots)
    for name in [*slots, *(cases[0] if cases else ())]:
        if not NAME.fullmatch(name) or name in TAKEN:
            raise Fault(f"{name!r} is no name for a slot. Use small letters and _; not {', '.join(TAKEN)}.")
    draws = combinations(slots, cases)
    if len(draws) < FEWEST_DRAWS:
        raise Fault(f"Slots and cases make {len(draws)} combinations. At least {FEWEST_DRAWS} are needed.")
    return draws


def _check_cases(cases: Sequence[Mapping[str, Any]], slots: Mapping[str, object]) -> None:
    for case in cases:
        if case.keys() != cases[0].keys():
            raise Fault("Every case must fill the same slots.")
        if both := case.keys() & slots.keys():
            raise Fault(f"{min(both)!r} is filled by the cases and by the slots. Keep one of them.")
        for name in case:
            _text(case, name, "A case")


def _check_texts(question: Question) -> None:
    used = set().union(*(gaps(text) for text in question.texts))
    if unfilled := sorted(used - question.draws[0].keys() - set(TAKEN)):
        raise Fault(f"Nothing fills {{{unfilled[0]}}}. Add the slot, or mend its name.")
    if idle := sorted(question.draws[0].keys() - used):
        raise Fault(f"The slot {idle[0]!r} is filled and stands nowhere. Use {{{idle[0]}}} or take it out.")
    values = {text for draw in question.draws for text in draw.values()}
    labels = {one.label for one in question.options}
    for text in (*question.texts, *sorted(values), *labels):
        if found := _MARKUP.search(text):
            raise Fault(f"“{text}” holds {found[0]!r}. A question is plain text on one line.")
        if found := re.search(r"\d+", _BRACES.sub("", text)):
            raise Fault(f"“{text}” holds the number {found[0]}. Write an insert, or a count in words.")
    if len({one.name for one in question.options}) < len(question.options):
        raise Fault("Two options share a name. Give each its own.")
