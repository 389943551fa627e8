"""Numbers in a lesson's text: ``{gauge 2}`` becomes what the gauge reads under two atmospheres of sea.

So the text holds no number typed by hand, and reads in feet or in metres.
"""

from __future__ import annotations

import re

from course.lessons.sea import read, words
from pressure.problem import System
from pressure.units import shown, unit_text
from pressure.waters import ALLOWED

_INSERT = re.compile(r"\{([^{}]*)\}")
# A published figure that is given in both systems, such as {either 4 ft|1.2 m}; never a computed one.
_EITHER = re.compile(r"either (?P<us>[^|{}]+)\|(?P<metric>[^|{}]+)")
_AT_DEPTH = re.compile(r"(depth|gauge|absolute|ata|volume|part) ([0-9]{1,2})")
KNOWN = (
    "{depth 1}, {gauge 1}, {absolute 1}, {ata 1}, {volume 1}, {part 1}, {atmosphere}, {unit}, {convention}, "
    "{either 4 ft|1.2 m}"
)


class UnknownInsert(Exception):
    """Braces hold something that is not computed here."""


def fill(line: str, system: System) -> str:
    """The line with every insert computed. Raises UnknownInsert with a sentence that says what there is."""
    filled = _INSERT.sub(lambda found: _computed(found[1], system), line)
    if "{" in filled or "}" in filled:
        raise UnknownInsert("A brace stands alone. Open and close an insert on one line.")
    return filled


def _computed(insert: str, system: System) -> str:
    if either := _EITHER.fullmatch(insert):
        return either["us" if system == "us" else "metric"]
    water = ALLOWED[system, "sea"][0]
    if at_depth := _AT_DEPTH.fullmatch(insert):
        name, atmospheres = at_depth.groups()
        return words(system, read(system, int(atmospheres) * water.column))[name]
    match insert:
        case "atmosphere":
            return shown(water.surface, water.pressure_unit, given=True)
        case "unit":
            return unit_text(water.pressure_unit)
        case "convention":
            return water.sentence
    raise UnknownInsert(f"{{{insert}}} is not known. Known are: {KNOWN}.")
