"""Guesses what the columns of a list of measurements hold, by their headings and their cells.

What a laser measure or a phone writes names its columns as it likes.  A heading is looked up
word by word; where there is none, the column whose cells read as lengths is the length's.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from types import MappingProxyType
from typing import Final

from trimlang.lengths.units import LengthUnit
from trimlang.record import record
from trimlang.tables.cells import TableRow
from trimlang.tables.written_length import UNITS, length_of

LENGTH, WALL, ROOM, NOTE, UNIT = "length", "wall", "room", "note", "unit"

_HEADINGS: Final = MappingProxyType(
    {
        word: column
        for column, words in {
            LENGTH: "length distance value measurement measure reading result dimension size",
            ROOM: "room place location space area folder group project",
            WALL: "wall name label id title point item no nr number pos index",
            NOTE: "note notes comment comments remark remarks description text memo",
            UNIT: "unit units",
        }.items()
        for word in words.split()
    }
)
"""The words that a heading may use for a column; those for the length first."""

_WORD: Final = re.compile(r"[^\W\d_]+|[″\"']+")


@record
class ListColumns:
    """The place of each column that is used, the unit that a heading names, and what to tell.

    ``begins`` is the first row (from 0) that is no heading.
    """

    places: dict[str, int]
    unit: LengthUnit | None
    begins: int
    remarks: tuple[str, ...]


def guess_columns(rows: Sequence[TableRow], *, comma_is_decimal: bool) -> ListColumns | None:
    """Return what the columns hold; None where no column can be the length's."""
    found = _by_heading(rows[0]) if rows else None
    if found is not None:
        return found
    return _by_cells(rows, comma_is_decimal=comma_is_decimal)


def _by_heading(heading: TableRow) -> ListColumns | None:
    places: dict[str, int] = {}
    unit: LengthUnit | None = None
    remarks: list[str] = []
    for place, cell in enumerate(heading.cells):
        words = [word.casefold() for word in _WORD.findall(cell.text)]
        # “Wall length” holds lengths: the first word that is known decides, and those for lengths
        # are asked first.
        column = next((_HEADINGS[word] for word in words if word in _HEADINGS), None)
        written = " ".join(cell.text.split())
        if not written:
            continue
        # The first column of a kind is taken. What is left out is said, so that nothing is lost
        # unseen.
        if column is None or column in places:
            remarks.append(f"column “{written}” is left out")
            continue
        places[column] = place
        of_heading = next((UNITS[word] for word in words if word in UNITS), None)
        if column == LENGTH and of_heading:
            unit = of_heading
            remarks.append(f"column “{written}” is read as the length, in {unit}")
        else:
            remarks.append(f"column “{written}” is read as the {column}")
    if LENGTH not in places:
        return None
    return ListColumns(places, unit, 1, tuple(remarks))


def _by_cells(rows: Sequence[TableRow], *, comma_is_decimal: bool) -> ListColumns | None:
    width = max((len(row.cells) for row in rows), default=0)
    reads = [
        sum(
            place < len(row.cells)
            and length_of(row.cells[place].text, None, comma_is_decimal=comma_is_decimal)
            is not None
            for row in rows
        )
        for place in range(width)
    ]
    # A single column would have lengths without a wall to give them to.
    if width < 2 or not max(reads, default=0):
        return None
    # a running number reads as a length too, so the last of the best is taken
    length = max(range(width), key=lambda place: (reads[place], place))
    # What stands beside a length is most often the wall's name, then a remark.
    others = [place for place in range(width) if place != length]
    places = {LENGTH: length, **dict(zip((WALL, NOTE), others, strict=False))}
    remarks = [f"column {place + 1} is read as the {column}" for column, place in places.items()]
    remarks += [f"column {place + 1} is left out" for place in others[2:]]
    return ListColumns(places, None, 0, ("there is no heading", *remarks))
