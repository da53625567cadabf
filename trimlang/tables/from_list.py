"""Makes a job file of a list of measurements: a laser measure's CSV, or notes on a phone.

Such a list names walls, lengths and perhaps rooms, never how walls meet; “ends in” says that
for now.  Every row is in the job file or told as left out, and a remark stands in its place.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path
from typing import Final

from trimlang.diagnostics import Diagnostic, say
from trimlang.language.vocabulary import GAP_WORDS, not_a_label
from trimlang.lengths.units import LengthUnit
from trimlang.record import record
from trimlang.tables.cell_findings import span_of
from trimlang.tables.cells import Cell, TableRow
from trimlang.tables.list_columns import LENGTH, NOTE, ROOM, UNIT, WALL, guess_columns
from trimlang.tables.written_length import UNITS, length_of

_QUOTES: Final = re.compile('["“”\\s]+')
_NOT_IN_A_NAME: Final = re.compile(r"[^\w.\-]+")
_NOTED: Final = re.compile(
    r"^(?:(?P<name>\d+(?=\s*[:)])|[^\W\d_].*?)[\s:=,)]+)?(?P<long>[\d¼-¾⅐-⅞].*)$"
)
"""A line of notes: a name, then what begins with a figure."""

_BARE: Final = re.compile(r"\d+")
_LEAST_BARE: Final = 12
"""“Bedroom 2” names a room: a smaller number without a unit is not taken for a wall's length."""


@record
class Listed:
    """The job file's lines, the rows that were left out, and what was guessed."""

    lines: tuple[str, ...]
    findings: tuple[Diagnostic, ...]
    remarks: tuple[str, ...]


def from_list(
    rows: Sequence[TableRow], path: Path, include: str | None, delimiter: str
) -> Listed | None:
    """Return the job file that a list of measurements makes, None where it is no such list."""
    comma_is_decimal = delimiter != ","
    columns = guess_columns(rows, comma_is_decimal=comma_is_decimal)
    headed = columns is not None and columns.begins > 0
    # a comma in a line of notes parts no cells
    as_notes = not headed and path.suffix.lower() == ".txt" and delimiter == ","
    if as_notes or all(len(row.cells) == 1 for row in rows):
        return _Notes(path, include, comma_is_decimal=True).made(rows)
    if columns is None:
        return None
    reader = _List(path, include, comma_is_decimal=comma_is_decimal)
    reader.remarks += columns.remarks
    reader.unit = columns.unit
    for row in rows[columns.begins :]:
        cells = {
            name: row.cells[place]
            for name, place in columns.places.items()
            if place < len(row.cells) and row.cells[place].text.strip()
        }
        reader.row(row, cells)
    if not columns.unit and UNIT not in columns.places:
        reader.remarks.append(
            "a number without a unit is inches; “unit mm” above the rooms says mm"
        )
    return reader.listed()


class _List:
    """Writes a job file row by row."""

    def __init__(self, path: Path, include: str | None, *, comma_is_decimal: bool) -> None:
        self._path = path
        self._comma = comma_is_decimal
        self._lines = [] if include is None else [f'include "{include}"']
        self._findings: list[Diagnostic] = []
        self._room: str | None = None
        self._names: set[str] = set()
        self.remarks: list[str] = []
        self.unit: LengthUnit | None = None

    def listed(self) -> Listed:
        """Return what was made."""
        remarks = (*self.remarks, "how walls meet is not in the list: inside corners are written")
        return Listed(tuple(self._lines), tuple(self._findings), remarks)

    def row(self, row: TableRow, cells: dict[str, Cell]) -> None:
        """Write a row's wall or opening, or tell why it is left out."""
        long = cells.get(LENGTH)
        first = next(iter(row.cells))
        if long is None:
            self.leave_out(row, first, "it has no length")
            return
        # A unit in the row's own cell is nearer to the number than one in the heading, so it wins.
        unit = self.unit
        if UNIT in cells:
            said = cells[UNIT].text.strip().casefold().rstrip(".")
            if said not in UNITS:
                self.leave_out(row, cells[UNIT], f"“{said}” is no unit of length")
                return
            unit = UNITS[said]
        written = length_of(long.text, unit, comma_is_decimal=self._comma)
        if written is None:
            shown = _QUOTES.sub(" ", long.text).strip()
            self.leave_out(row, long, f"“{shown}” is no length of a wall")
            return
        self.begin(cells[ROOM].text if ROOM in cells else None)
        note = _QUOTES.sub(" ", cells[NOTE].text).strip() if NOTE in cells else ""
        self.wall(cells[WALL].text if WALL in cells else "", written, note)

    def begin(self, room: str | None) -> None:
        """Begin a room where the list names another, or none has begun."""
        name = _QUOTES.sub(" ", room).strip() if room is not None else self._room
        if name is None:
            name = _QUOTES.sub(" ", self._path.stem).strip() or "Room"
            self.remarks.append(f"no room is named: the walls are in room “{name}”")
        if name == self._room:
            return
        self._lines += (
            ["", f'room "{name}", ends in'] if self._lines else [f'room "{name}", ends in']
        )
        self._room = name
        self._names = set()

    def wall(self, name: str, long: str, note: str) -> None:
        """Write a wall, or an opening where it is called one; a name that is no label is noted."""
        called = _QUOTES.sub(" ", name).strip()
        word = next((one for one in called.casefold().split() if one in GAP_WORDS), None)
        said = f', note "{note}"' if note else ""
        if word is not None:
            self._lines.append(f'  {word} {long}, "{called}"{said}')
            return
        # A label becomes part of ids on every sheet, so it is plain; the full name stays as a note.
        label = _NOT_IN_A_NAME.sub("-", called).strip("-.")
        if not label or not (label[0].isalpha() or label.isdigit()) or not_a_label(label):
            # A wall without a usable name still needs one: every piece's id begins with it.
            label = f"W{len(self._names) + 1}"
        plain, number = label, 2
        # Two walls may be called alike in the list, and never in a job.
        while label.casefold() in self._names:
            label, number = f"{plain}-{number}", number + 1
            label = label if label[0].isalpha() else f"W{label}"
        self._names.add(label.casefold())
        if called and called != plain and not note:
            said = f', note "{called}"'
        self._lines.append(f"  {label}: {long}{said}")

    def leave_out(self, row: TableRow, cell: Cell, why: str) -> None:
        """Tell of a row that is left out, and keep its place with a remark."""
        self._findings.append(say("T650", span_of(self._path, cell), row=row.number, why=why))
        text = " ".join(" ".join(one.text for one in row.cells).split())
        # A wall that is missing without a trace would close the room over it.
        self._lines.append(f"  # row {row.number} is left out: {text}")


class _Notes(_List):
    """Notes: a line with a figure is a wall, any other begins a room."""

    def made(self, rows: Sequence[TableRow]) -> Listed | None:
        """Return what the lines make, None where none of them has a length."""
        read = 0
        for row in rows:
            first, last = row.cells[0], row.cells[-1]
            whole = ",".join(one.text for one in row.cells)
            cell = Cell(whole, first.line, first.column, last.end)
            text = cell.text.strip().lstrip("-*•– ")
            found = _NOTED.match(text)
            if found is None:
                self.begin(text.rstrip(":"))
                continue
            name, long = found["name"] or "", found["long"]
            # “Bed 2” may be a room; a small bare number is no wall unless a unit says so.
            if _BARE.fullmatch(long) and int(long) < _LEAST_BARE:
                self.leave_out(row, cell, f"“{text}” may be a name or a length without its unit")
                continue
            written = length_of(long, None, comma_is_decimal=True)
            if written is None or (name and name.split()[-1].casefold() in UNITS):
                self.leave_out(row, cell, f"“{_QUOTES.sub(' ', text).strip()}” holds no one length")
                continue
            read += 1
            self.begin(None)
            self.wall(name, written, "")
        self.remarks.insert(
            0, "each line is read as a name and a length, one without a length as a room"
        )
        return self.listed() if read else None
