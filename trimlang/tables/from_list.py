"""Makes a job file of a list of measurements: a laser measure's CSV, or notes on a phone.

Such a list names walls, lengths and perhaps rooms, never how walls meet; “ends in” says that
for now.  Every row is in the job file or told as left out, and a remark stands in its place.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from trimlang.tables.cells import Cell, TableRow
from trimlang.tables.list_columns import ListColumns, columns_by_cells, columns_by_heading
from trimlang.tables.list_words import ListColumn, room_and_wall
from trimlang.tables.list_writer import Listed, ListWriter, unquoted
from trimlang.tables.notes import from_notes, from_titled_notes
from trimlang.tables.parted_numbers import rejoined
from trimlang.tables.unsaid_unit import UnsaidUnit, unsaid_unit
from trimlang.tables.written_length import UNITS, length_of


def from_list(
    rows: Sequence[TableRow], path: Path, include: str | None, delimiter: str
) -> Listed | None:
    """Return the job file that a list of measurements makes, None where it is no such list."""
    comma_is_decimal = delimiter != ","
    headed = columns_by_heading(rows[0]) if rows else None
    # a comma in a line of notes parts no cells
    as_notes = headed is None and path.suffix.lower() == ".txt" and delimiter == ","
    if as_notes or all(len(row.cells) == 1 for row in rows):
        return from_notes(rows, path, include)
    if headed is not None and ListColumn.LENGTH not in headed.places:
        listed = from_titled_notes(rows[headed.begins :], headed.places, path, include)
        if listed is not None:
            return listed
        headed = None
    if delimiter == ",":
        joined = rejoined(rows)
        if joined is not None and all(len(row.cells) == 1 for row in joined):
            return from_notes(joined, path, include)
        if joined is not None:
            rows, comma_is_decimal = joined, True
    columns = headed or columns_by_cells(rows, comma_is_decimal=comma_is_decimal)
    if columns is None:
        return None
    return _List(path, include, columns, comma_is_decimal=comma_is_decimal).made(rows)


class _List(ListWriter):
    """Writes a job file row by row."""

    def __init__(
        self, path: Path, include: str | None, columns: ListColumns, *, comma_is_decimal: bool
    ) -> None:
        super().__init__(path, include)
        self._columns = columns
        self._comma = comma_is_decimal
        self.says_ends = ListColumn.LEFT in columns.places
        self._unsaid = UnsaidUnit()

    def made(self, rows: Sequence[TableRow]) -> Listed:
        """Return the job file of the rows below the heading."""
        self.remarks += self._columns.remarks
        cells_of = [
            {
                name: row.cells[place]
                for name, place in self._columns.places.items()
                if place < len(row.cells) and row.cells[place].text.strip()
            }
            for row in rows
        ]
        if self._columns.unit is None:
            no_unit = [
                one[ListColumn.LENGTH].text
                for one in cells_of
                if ListColumn.LENGTH in one and ListColumn.UNIT not in one
            ]
            self._unsaid = unsaid_unit(no_unit, comma_is_decimal=self._comma)
            self.remarks += [self._unsaid.remark] if self._unsaid.remark else []
        for row, cells in list(zip(rows, cells_of, strict=True))[self._columns.begins :]:
            self._row(row, cells)
        return self.listed()

    def _row(self, row: TableRow, cells: dict[ListColumn, Cell]) -> None:
        """Write a row's wall or opening, or tell why it is left out."""
        long = cells.get(ListColumn.LENGTH)
        if long is None:
            self.leave_out(row, row.cells[0], "it has no length")
            return
        # A unit in the row's own cell is nearer to the number than one in the heading, so it wins.
        unit = self._columns.unit or self._unsaid.unit
        if ListColumn.UNIT in cells:
            said = cells[ListColumn.UNIT].text.strip().casefold().rstrip(".")
            if said not in UNITS:
                self.leave_out(row, cells[ListColumn.UNIT], f"“{said}” is no unit of length")
                return
            unit = UNITS[said]
        elif self._unsaid.doubtful(long.text):
            why = f"“{long.text.strip()}” has no unit, and the other numbers are in {unit}"
            self.leave_out(row, long, why)
            return
        written = length_of(long.text, unit, comma_is_decimal=self._comma)
        if written is None:
            self.leave_out(row, long, f"“{unquoted(long.text)}” is no length of a wall")
            return
        room = cells[ListColumn.ROOM].text if ListColumn.ROOM in cells else None
        name = cells[ListColumn.WALL].text if ListColumn.WALL in cells else ""
        parts = room_and_wall(name) if ListColumn.ROOM not in self._columns.places else None
        if parts is not None:
            room, name = parts
        self.begin(room)
        ends = [
            f", {side}={cells[side].text.strip()}"
            for side in (ListColumn.LEFT, ListColumn.RIGHT)
            if side in cells
        ]
        note = unquoted(cells[ListColumn.NOTE].text) if ListColumn.NOTE in cells else ""
        self.wall(name, written, note, "".join(ends))
