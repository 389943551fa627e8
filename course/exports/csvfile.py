"""Writes rows as CSV by RFC 4180, with text cells that a spreadsheet cannot take for a formula."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Sequence
from itertools import islice

from course.exports.contract import Cell

_RUN_AS_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")
_BATCH = 500


def guarded(cell: Cell) -> Cell:
    """The cell, with an apostrophe before text that begins like a formula (OWASP ASVS 5.0, V1.2.10).

    Numbers are our own and stay numbers.
    """
    return f"'{cell}" if isinstance(cell, str) and cell.startswith(_RUN_AS_FORMULA) else cell


def lines(header: Sequence[str], rows: Iterable[Sequence[Cell]]) -> Iterator[str]:
    """The file in pieces of some hundred lines, the header first."""
    yield _written([header])
    remaining = iter(rows)
    while batch := list(islice(remaining, _BATCH)):
        yield _written(batch)


def _written(rows: Iterable[Sequence[Cell]]) -> str:
    piece = io.StringIO(newline="")
    csv.writer(piece, lineterminator="\r\n").writerows([guarded(cell) for cell in row] for row in rows)
    return piece.getvalue()
