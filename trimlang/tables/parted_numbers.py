"""Joins numbers that their own decimal comma parted, where cells are parted by commas too.

“N,3,25” of an app that quotes nothing is a wall of 3.25, not one of 3 and one of 25.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from trimlang.tables.cells import Cell, TableRow

_BEFORE: Final = re.compile(r"(?:^|[\s:=])(\d{1,2})$")
_BEHIND: Final = re.compile(r"\d{1,3}(?:\s*[^\W\d_]{1,2})?")


def rejoined(rows: Sequence[TableRow]) -> list[TableRow] | None:
    """Return the rows with such numbers in one cell; None where no column holds parts of numbers.

    Every row must look so, and a heading must have one cell less.
    """
    headed = bool(rows) and not any(sign.isdigit() for one in rows[0].cells for sign in one.text)
    body = rows[1:] if headed else rows
    widths = {len(row.cells) for row in body}
    if len(widths) != 1 or (headed and len(rows[0].cells) + 1 not in widths):
        return None
    for at in range(max(widths) - 1):
        whole = [_BEFORE.search(row.cells[at].text.strip()) for row in body]
        part = [_BEHIND.fullmatch(row.cells[at + 1].text.strip()) for row in body]
        if not all(whole) or not all(part):
            continue
        # “Wall 1,25; Wall 2,40” counts its walls: there the comma parts cells.
        if [found and int(found[1]) for found in whole] == list(range(1, len(body) + 1)):
            continue
        return [*rows[: len(rows) - len(body)], *(_joined(row, at) for row in body)]
    return None


def _joined(row: TableRow, at: int) -> TableRow:
    one, two = row.cells[at], row.cells[at + 1]
    cell = Cell(f"{one.text.rstrip()},{two.text.lstrip()}", one.line, one.column, two.end)
    return replace(row, cells=(*row.cells[:at], cell, *row.cells[at + 2 :]))
