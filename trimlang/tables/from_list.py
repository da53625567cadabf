"""Makes a job file of a list of measurements: a laser measure's CSV, or notes on a phone.

Such a list names walls, lengths and perhaps rooms, never how walls meet; “ends in” says that
for now.  Every row is in the job file or told as left out, and a remark stands in its place.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Final

from trimlang.tables.cells import Cell, TableRow
from trimlang.tables.list_columns import ListColumns, columns_by_cells, columns_by_heading
from trimlang.tables.list_words import ListColumn, is_a_sum, room_and_wall
from trimlang.tables.list_writer import Listed, ListWriter, unquoted
from trimlang.tables.listed_ends import end_of, says_nothing
from trimlang.tables.notes import from_notes, from_titled_notes
from trimlang.tables.parted_numbers import rejoined
from trimlang.tables.unsaid_unit import UnsaidUnit, unsaid_unit
from trimlang.tables.written_length import UNITS, length_of

_OF_ENDS: Final = frozenset({ListColumn.LEFT, ListColumn.RIGHT, ListColumn.CORNER})


def from_list(
    rows: Sequence[TableRow], path: Path, include: str | None, delimiter: str
) -> Listed | None:
    """Return the job file that a list of measurements makes, None where it is no such list."""
    comma_is_decimal = delimiter != ","
    headed = columns_by_heading(rows, comma_is_decimal=comma_is_decimal) if rows else None
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
        self.says_ends = bool(columns.places.keys() & _OF_ENDS)
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
        body = list(zip(rows, cells_of, strict=True))[self._columns.begins :]
        # Some instruments write the units in a row below the heading.
        if body and self._units_row(body[0][1]):
            del body[0]
        if self._columns.unit is None and ListColumn.FEET not in self._columns.places:
            no_unit = [
                one[ListColumn.LENGTH].text
                for _, one in body
                if ListColumn.LENGTH in one and ListColumn.UNIT not in one
            ]
            self._unsaid = unsaid_unit(no_unit, comma_is_decimal=self._comma)
            self.remarks += [self._unsaid.remark] if self._unsaid.remark else []
        for row, cells in body:
            self._row(row, cells)
        return self.listed()

    def _units_row(self, cells: dict[ListColumn, Cell]) -> bool:
        """Read a first row that holds the unit of the lengths below it, and nothing else."""
        said = cells[ListColumn.LENGTH].text.strip(" .()[]") if ListColumn.LENGTH in cells else ""
        if said.casefold() not in UNITS or len(cells) > 1:
            return False
        self._columns = replace(self._columns, unit=UNITS[said.casefold()])
        self.remarks.append(f"the row below the heading gives the unit: {self._columns.unit}")
        return True

    def _row(self, row: TableRow, cells: dict[ListColumn, Cell]) -> None:
        """Write a row's wall or opening, or tell why it is left out."""
        long = cells.get(ListColumn.LENGTH)
        feet = cells.get(ListColumn.FEET)
        if long is not None and feet is not None:
            long = replace(long, text=f"{feet.text.strip()} ft {long.text.strip()}")
        elif feet is not None:
            long = replace(feet, text=f"{feet.text.strip()} ft")
        named = [cells[one] for one in (ListColumn.WALL, ListColumn.ROOM) if one in cells]
        if any(is_a_sum(cell.text) for cell in named):
            self.leave_out(row, named[0], "it is a sum of others")
            return
        if long is None and cells.keys() == {ListColumn.ROOM}:
            # A room in a row of its own: the walls below it leave its column blank.
            self.begin(cells[ListColumn.ROOM].text)
            return
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
        ends = self._ends(row, cells)
        note = unquoted(cells[ListColumn.NOTE].text) if ListColumn.NOTE in cells else ""
        self.wall(name, written, note, ends)

    def _ends(self, row: TableRow, cells: dict[ListColumn, Cell]) -> str:
        """Return what the job file says of the wall's ends; ask about what is not understood."""
        said = ""
        for side, column in (("left", ListColumn.LEFT), ("right", ListColumn.RIGHT)):
            cell = cells.get(column)
            if cell is None or says_nothing(cell.text):
                continue
            end = end_of(cell.text)
            if end is None:
                self.ask(row, column, cell, "is not understood as an end")
            else:
                said += f", {side}={end}"
        corner = cells.get(ListColumn.CORNER)
        if corner is not None and not says_nothing(corner.text):
            self.ask(row, self._columns.corner, corner, "does not say which end it is")
        return said
