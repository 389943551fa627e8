"""An apparatus as markup: on the page at the place its address asks for, or still in the booklet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache, lru_cache
from html import escape
from json import dumps
from typing import Any

from django.template.loader import render_to_string
from django.utils.http import urlencode
from django.utils.safestring import SafeString, mark_safe

from course.lessons.apparatus import address, catalogue
from course.lessons.apparatus.address import UNSAID, Asked
from course.lessons.apparatus.contract import Bench, Picture, Place, Row
from course.lessons.apparatus.moving import filled, said
from pressure.problem import System


def rendered(name: str, system: System, query: Mapping[str, str], names: Sequence[str]) -> str:
    """The apparatus where the address puts it; ``names`` are all the apparatus of the page."""
    asked = address.read(name, catalogue.bench(name, system), query)
    return _markup(name, system, asked, tuple(address.carried(query, list(names), name)))


@lru_cache(maxsize=256)
def _markup(name: str, system: System, asked: Asked, carried: tuple[tuple[str, str], ...]) -> SafeString:
    bench = catalogue.bench(name, system)
    row = bench.at(asked.place)
    context = {
        "name": name,
        "bench": bench,
        "asked": asked,
        "row": row,
        "carried": carried,
        "pictures": [_drawn(picture, row) for picture in bench.pictures],
        "unsaid": f"?{urlencode([*carried, (f'{name}-said', UNSAID)])}#{name}",
    }
    if asked.said:
        context |= _loose(name, bench, asked, carried) | {"data": data(name, system)}
    return render_to_string("lessons/_apparatus.html", context)


def still(name: str, system: System) -> SafeString:
    """The apparatus for print: as it starts, its question with the answer, and the table of its stops."""
    bench = catalogue.bench(name, system)
    row = bench.at(bench.start)
    drawn = [_drawn(picture, row, still=True) for picture in bench.pictures]
    context = {"name": name, "bench": bench, "pictures": drawn, "tables": _tables(bench), "row": row}
    return render_to_string("lessons/_still.html", context)


def _loose(name: str, bench: Bench, asked: Asked, carried: tuple[tuple[str, str], ...]) -> dict[str, Any]:
    """What the page shows once the guess is made: the controls, the reply, the table for this setting."""
    held = [*carried, (f"{name}-said", asked.said)]
    held += [
        (f"{name}-{switch.name}", option)
        for switch, option in zip(bench.switches, asked.place.set_to, strict=True)
    ]
    stops = bench.slider.stops
    links = [(stop, f"?{urlencode([*held, (name, stop.at)])}#{name}") for stop in stops]
    return {
        "stops": links,
        "before": next((link for link in reversed(links) if link[0].at < asked.place.at), None),
        "after": next((link for link in links if link[0].at > asked.place.at), None),
        "switches": list(zip(bench.switches, asked.place.set_to, strict=True)),
        "reply": _reply(bench, asked.said),
        "table": _lines(bench, asked.place.set_to),
    }


def _reply(bench: Bench, said_option: str) -> dict[str, Any] | None:
    options = dict(bench.guess.options)
    if said_option not in options:
        return None
    return {"text": options[said_option], "is_right": said_option == bench.guess.right}


def _lines(bench: Bench, set_to: tuple[str, ...]) -> list[list[tuple[str, str]]]:
    """The table's cells at each stop: what is written there, and its form for the script."""
    found = []
    for stop in bench.slider.stops:
        row = bench.at(Place(stop.at, set_to))
        found.append([(said(form, row), form) for _, form in bench.table])
    return found


def _tables(bench: Bench) -> list[dict[str, Any]]:
    """For print: the table as the apparatus starts, and as it stands where the question is answered."""
    settings = dict.fromkeys((bench.start.set_to, bench.guess.place.set_to))
    return [{"title": _setting(bench, each), "lines": _lines(bench, each)} for each in settings]


def _setting(bench: Bench, set_to: tuple[str, ...]) -> str:
    """How the switches stand, in words."""
    switches = zip(bench.switches, set_to, strict=True)
    return "; ".join(f"{switch.label}: {dict(switch.options)[option]}" for switch, option in switches)


def _drawn(picture: Picture, row: Row, *, still: bool = False) -> dict[str, Any]:
    parts = filled(picture.parts, row, still=still)
    return {"of": picture, "parts": mark_safe(parts), "still": still}  # noqa: S308 (our own parts, escaped)


@cache
def data(name: str, system: System) -> SafeString:
    """The table for the page's script, as JSON that stands as text in a hidden element.

    A script element would be left out of what htmx puts into the page.
    """
    bench = catalogue.bench(name, system)
    columns = list(bench.rows[0])
    table = {
        "top": bench.slider.top,
        "switches": [[switch.name, [option for option, _ in switch.options]] for switch in bench.switches],
        "stops": [stop.at for stop in bench.slider.stops],
        "columns": columns,
        "rows": [[row[column] for column in columns] for row in bench.rows],
    }
    text = dumps(table, ensure_ascii=False, separators=(",", ":"))
    return mark_safe(escape(text, quote=False))  # noqa: S308 (escaped; quotation marks are text here)
