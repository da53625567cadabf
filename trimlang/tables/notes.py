"""Reads notes: lines of a name and a length, as a phone holds them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Final

from trimlang.record import record
from trimlang.tables.cells import Cell, TableRow
from trimlang.tables.list_words import ListColumn, is_a_sum, room_and_wall
from trimlang.tables.list_writer import Listed, ListWriter, unquoted
from trimlang.tables.unsaid_unit import unsaid_unit
from trimlang.tables.written_length import UNITS, length_of

_NOTED: Final = re.compile(
    # A number is a name only with a sign behind it: “2: 96” is wall 2, “2 96” may be feet and
    # inches.
    r"^(?:(?P<name>\d+(?=\s*[:)])|[^\W\d_].*?)[\s:=,)]+)?(?P<long>[\d¼-¾⅐-⅞].*)$"
)
"""A line of notes: a name, then what begins with a figure."""

_MARK_OF_A_LIST: Final = re.compile(r"^[\s\-*•–#>]*(?:\[[ xX]?\]\s*)?")
_BARE: Final = re.compile(r"\d+")
_LEAST_BARE: Final = 12
"""“Bedroom 2” names a room: a smaller number without a unit is not taken for a wall's length."""


@record
class NoteLine:
    """A line of notes: the row that it stands in, its place and text, its name and its length.

    ``long`` is None for a line without a figure.  ``title`` says that the line is a note's title.
    """

    row: TableRow
    cell: Cell
    name: str
    long: str | None
    title: bool = False

    @property
    def text(self) -> str:
        """The line without a list's mark before it."""
        return _MARK_OF_A_LIST.sub("", self.cell.text).strip()


def from_notes(rows: Sequence[TableRow], path: Path, include: str | None) -> Listed | None:
    """Return the job file that lines of notes make, None where none of them has a length."""
    lines = [_line(row, _whole(row)) for row in rows]
    told = "each line is read as a name and a length, one without a length as a room"
    return _Notes(path, include).made(lines, told)


def from_titled_notes(
    rows: Sequence[TableRow], places: dict[ListColumn, int], path: Path, include: str | None
) -> Listed | None:
    """Return the job file of notes that stand whole in a cell each, with a title beside it.

    None where no line of them has a length.
    """
    # The column of titles may be headed as rooms or as walls, by what the writer thought of.
    title = places.get(ListColumn.ROOM, places.get(ListColumn.WALL))
    lines: list[NoteLine] = []
    for row in rows:
        if title is not None and title < len(row.cells) and row.cells[title].text.strip():
            # A title may run over several lines, but a room's name stands in one.
            cell = row.cells[title]
            lines.append(NoteLine(row, cell, " ".join(cell.text.split()), None, title=True))
        if places[ListColumn.NOTE] < len(row.cells):
            lines += [_line(row, cell) for cell in _cell_lines(row.cells[places[ListColumn.NOTE]])]
    told = "each line of a note is read as a name and a length, its title as a room"
    return _Notes(path, include).made(lines, told)


def _whole(row: TableRow) -> Cell:
    first, last = row.cells[0], row.cells[-1]
    # A comma within a note parted it into cells as if it were a table: they are joined again.
    return Cell(",".join(one.text for one in row.cells), first.line, first.column, last.end)


def _cell_lines(cell: Cell) -> Iterator[Cell]:
    """Yield the lines of a cell that have something in them, each with its place in the file."""
    texts = cell.text.split("\n")
    # a cell of several lines is quoted, and its first line begins behind the quotation mark
    column = cell.column + (len(texts) > 1)
    for below, text in enumerate(texts):
        if text.strip():
            yield Cell(text, cell.line + below, column, column + max(len(text), 1))
        column = 1


def _line(row: TableRow, cell: Cell) -> NoteLine:
    text = _MARK_OF_A_LIST.sub("", cell.text).strip()
    found = _NOTED.match(text)
    if found is None:
        # The colon behind a heading is no part of the room's name.
        return NoteLine(row, cell, text.rstrip(":"), None)
    return NoteLine(row, cell, found["name"] or "", found["long"])


class _Notes(ListWriter):
    """A line with a figure is a wall, any other begins a room."""

    def __init__(self, path: Path, include: str | None) -> None:
        super().__init__(path, include)
        self._heading: NoteLine | None = None
        self._headed = False
        self._read = 0

    def made(self, lines: Sequence[NoteLine], told: str) -> Listed | None:
        """Return what the lines make, None where none of them has a length."""
        # No comma parts columns in notes, so one between figures is a decimal point.
        unsaid = unsaid_unit((one.long or "" for one in lines), comma_is_decimal=True)
        for line in lines:
            if line.long is None:
                # A room without walls is told now, before the next heading takes its place.
                self._no_wall_follows()
                self._heading = line
                continue
            text, long = line.text, line.long
            # “Bed 2” may be a room; a small bare number is no wall unless a unit says so.
            if _BARE.fullmatch(long) and int(long) < _LEAST_BARE and unsaid.unit is None:
                why = f"“{text}” may be a name or a length without its unit"
            elif is_a_sum(line.name):
                why = f"“{unquoted(text)}” is a sum of others"
            elif unsaid.doubtful(long):
                why = f"“{unquoted(text)}” has no unit, and the other numbers are in {unsaid.unit}"
            else:
                why = f"“{unquoted(text)}” holds no one length"
                written = length_of(long, unsaid.unit, comma_is_decimal=True)
                if written is not None and not _ends_with_a_unit(line.name):
                    self._wall(line.name, written)
                    continue
            # What is left out is shown in the room that it stands in, so that begins first.
            self._begin_headed()
            self.leave_out(line.row, line.cell, why, line.cell.text)
        self._no_wall_follows()
        # How the lines were read comes before what was wrong with single ones.
        self.remarks[:0] = [told, unsaid.remark] if unsaid.remark else [told]
        return self.listed() if self._read else None

    def _wall(self, name: str, written: str) -> None:
        self._read += 1
        parts = room_and_wall(name)
        # Below a room's own line “Closet north” is one of its walls, unless there is such a room.
        if parts is not None and (self.has_room(parts[0]) or not self._headed_now):
            self._no_wall_follows()
            self.begin(parts[0])
            name = parts[1]
        else:
            self._begin_headed()
            self.begin(None)
        self.wall(name, written, "")

    @property
    def _headed_now(self) -> bool:
        return self._headed or self._heading is not None

    def _begin_headed(self) -> None:
        """Begin the room that a line named, now that a wall follows it."""
        if self._heading is not None:
            self.begin(self._heading.name)
            self._headed = True
        self._heading = None

    def _no_wall_follows(self) -> None:
        if self._heading is not None:
            line, self._heading = self._heading, None
            why = f"no wall follows “{unquoted(line.name)}”"
            self.leave_out(line.row, line.cell, why, line.cell.text)


def _ends_with_a_unit(name: str) -> bool:
    return bool(name) and name.split()[-1].casefold() in UNITS
