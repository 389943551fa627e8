"""Where an apparatus stands by the page's address: ``?box=33&box-air=shut&box-said=half``, all untrusted."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from course.lessons.apparatus.contract import Bench, Place

_POSITION = re.compile(r"-?[0-9]{1,6}(?:\.[0-9]{1,6})?")
UNSAID = "-"
"""What the address holds when the reader wants to look without a guess; no option has that name."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What an address asks for: the place, what was guessed (empty: not yet asked), a sentence on changes."""

    place: Place
    said: str = ""
    note: str = ""


def read(name: str, bench: Bench, query: Mapping[str, str]) -> Asked:
    """The nearest sound place to what the address asks for; never an error."""
    said = query.get(f"{name}-said", "")
    options = [option for option, _ in bench.guess.options]
    moved = name in query or any(f"{name}-{switch.name}" in query for switch in bench.switches)
    if said not in (*options, UNSAID):
        said = UNSAID if moved else ""
    rest = bench.guess.place if said in options and not moved else bench.start
    at, note = _position(bench, query.get(name, ""), rest.at)
    chosen = zip(bench.switches, rest.set_to, strict=True)
    set_to = tuple(
        [
            _option([option for option, _ in switch.options], query.get(f"{name}-{switch.name}", ""), default)
            for switch, default in chosen
        ]
    )
    return Asked(Place(at, set_to), said, note)


def _option(options: list[str], asked: str, default: str) -> str:
    return asked if asked in options else default


def _position(bench: Bench, asked: str, rest: int) -> tuple[int, str]:
    if not asked:
        return rest, ""
    top = bench.slider.top
    reach = f"This apparatus goes from {_told(bench, 0)} to {_told(bench, top)} in even steps"
    if not _POSITION.fullmatch(asked):
        return rest, f"That was not a number. {reach}; it stands at {_told(bench, rest)}."
    at = min(max(round(float(asked)), 0), top)
    return at, "" if at == float(asked) else f"{reach}; it stands at {_told(bench, at)}, the nearest."


def _told(bench: Bench, at: int) -> str:
    """A position as the slider says it."""
    return bench.at(Place(at, bench.start.set_to))[bench.slider.column]


def carried(query: Mapping[str, str], names: list[str], but: str) -> list[tuple[str, str]]:
    """What the address holds for the page's other apparatus, so that they stay where they are."""
    others = tuple(f"{name}-" for name in names if name != but)
    exact = {name for name in names if name != but}
    return [
        (key, value[:40])
        for key, value in query.items()
        if key in exact or (key.startswith(others) and not key.startswith(f"{but}-"))
    ][:20]
