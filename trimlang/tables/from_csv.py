"""Makes a job file of a survey in CSV, and tells of every cell that cannot be right."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from string import Formatter
from typing import Final

from trimlang.diagnostics import Diagnostic, Span, has_errors, say
from trimlang.diagnostics.source import Source
from trimlang.diagnostics.suggestion import did_you_mean
from trimlang.formulas import is_formula, unguarded
from trimlang.record import record
from trimlang.tables.cell_findings import LinePart, span_of, told_at_cells
from trimlang.tables.cells import Cell, NoTableError, TableRow, read_rows, table_text
from trimlang.tables.from_list import from_list
from trimlang.tables.list_columns import below_its_title, is_a_list
from trimlang.tables.table_columns import ALSO, COLUMNS, NEEDED, SOUND, RowKind

_QUOTES: Final = re.compile('["“”]')
_QUOTED: Final = re.compile(r'["“][^"“”]*["”]')
# "1,234" is a thousand in one country and one and a bit in another.
_TWO_WAYS: Final = re.compile(r"(?<!\d)\d{1,3},\d{3}(?!\d)")
_DECIMAL_COMMA: Final = re.compile(r"(?<=\d),(?=\d)")
_ONCE: Final = "Take one of them out, or give it another name."
_TEXTS: Final = ("room", "called", "note")


@record
class Made:
    """The job file's text, what is wrong with the table, and the table's own text.

    ``remarks`` is what was guessed: columns of a list that names none, an old code page.
    """

    text: str
    findings: tuple[Diagnostic, ...]
    source: Source
    remarks: tuple[str, ...] = ()


def from_csv(data: bytes, path: Path, include: str | None = None) -> Made:
    """Return the job file that a table (the bytes of a CSV file) describes.

    ``path`` is the table's own path, beside which includes are looked for.  ``include`` names a
    file that the job file includes in its first line, such as the prices.
    """
    try:
        text, guessed = table_text(data)
        delimiter, rows = read_rows(text)
    except NoTableError as error:
        span = Span(path.name, error.line, error.column, error.column + 1)
        finding = say("T651", span, path=path.name, why=error.why)
        return Made("", (finding,), Source(path.name, data.decode("utf-8", "replace")))
    source, comma = Source(path.name, text), delimiter != ","
    rows, above = below_its_title(rows, comma_is_decimal=comma)
    guessed += above
    # The heading decides: a survey names its columns as a table does, a laser's list as it likes.
    if rows and is_a_list(rows, comma_is_decimal=comma):
        listed = from_list(rows, path, include, delimiter)
        if listed is not None:
            text = "".join(f"{line}\n" for line in listed.lines)
            return Made(text, listed.findings, source, (*guessed, *listed.remarks))
    made = _Table(path, delimiter, rows).made(include)
    return replace(made, source=source, remarks=guessed)


class _Table:
    def __init__(self, path: Path, delimiter: str, rows: list[TableRow]) -> None:
        self._path = path
        # Where cells are parted by something else, a comma in a number may be a decimal comma.
        self._comma_is_decimal = delimiter != ","
        self._rows = rows
        self._findings: list[Diagnostic] = []
        self._lines: list[str] = []
        self._pieces: dict[int, tuple[TableRow, list[LinePart]]] = {}
        self._room: str | None = None

    def made(self, include: str | None) -> Made:
        names = self._heading()
        if names is not None:
            self._lines += [f'include "{include}"'] if include is not None else []
            for row in self._rows[1:]:
                self._row(row, names)
        text = "".join(f"{line}\n" for line in self._lines)
        if names is not None:
            lost = has_errors(self._findings)
            # The job file is checked as any other would be; the table needs no rules of its own for
            # what a wall may be.
            self._findings += told_at_cells(self._path, self._lines, self._pieces, rows_lost=lost)
        # The table's own findings come first, in the order of the sheet.
        order = sorted(self._findings, key=lambda one: (one.span.file != self._path.name, one.span))
        return Made(text, tuple(dict.fromkeys(order)), Source(self._path.name, ""))

    def _say(self, code: str, cell: Cell, **facts: object) -> None:
        self._findings.append(say(code, span_of(self._path, cell), **facts))

    # ---- the heading ----------------------------------------------------------------

    def _heading(self) -> list[str] | None:
        """Return each column's name, "" for a blank or wrong one; None without a heading."""
        if not self._rows:
            self._say("T653", Cell("", 1, 1, 2), columns=" and ".join(NEEDED))
            return None
        names: list[str] = []
        heading = self._rows[0]
        for cell in heading.cells:
            word = cell.text.strip().lower()
            name = ALSO.get(word, word)
            if name and name not in COLUMNS:
                known = f"The columns are {', '.join(COLUMNS)}."
                remedy = did_you_mean(word, COLUMNS, known)
                self._say("T652", cell, word=f"no column is called “{word}”", remedy=remedy)
                # Passed over, so that one wrong heading does not bring up a finding a row.
                name = ""
            elif name and name in names:
                self._say("T652", cell, word=f"two columns are called “{name}”", remedy=_ONCE)
                name = ""
            names.append(name)
        missing = [name for name in NEEDED if name not in names]
        if missing:
            self._say("T653", heading.cells[0], columns=" and ".join(missing))
            return None
        return names

    # ---- rows -----------------------------------------------------------------------

    def _row(self, row: TableRow, names: list[str]) -> None:
        cells: dict[str, Cell] = {}
        for place, cell in enumerate(row.cells):
            if not cell.text.strip():
                continue
            # Said once for the row: what follows has no heading either.
            if place >= len(names):
                self._say("T654", cell, row=row.number, columns=len(names))
                break
            if names[place]:
                cells[names[place]] = cell
        if not cells:
            return
        kind = self._kind(row, cells)
        if kind is RowKind.LINE:
            self._add(row, [("line", cells["line"])], "{line}")
        elif kind is RowKind.ROOM:
            self._room_row(row, cells)
        elif kind is not None:
            self._wall_row(kind, row, cells)

    def _kind(self, row: TableRow, cells: dict[str, Cell]) -> RowKind | None:
        cell = cells.get("kind")
        if cell is None:
            # A row with nothing but the column "line" is a line of the job file; any other row
            # without a kind is a run.
            return RowKind.LINE if set(cells) == {"line"} else RowKind.RUN
        word = cell.text.strip().lower()
        if word not in list(RowKind):
            remedy = did_you_mean(word, tuple(RowKind), f"The kinds are {', '.join(RowKind)}.")
            self._say("T659", cell, row=row.number, word=word, remedy=remedy)
            return None
        if word == RowKind.LINE and "line" not in cells:
            self._missing(row, cells, "line")
            return None
        return RowKind(word)

    def _missing(self, row: TableRow, cells: dict[str, Cell], column: str) -> None:
        self._say("T656", next(iter(cells.values())), row=row.number, column=column)

    def _room_row(self, row: TableRow, cells: dict[str, Cell]) -> None:
        if "room" not in cells:
            self._missing(row, cells, "room")
            return
        self._room = self._text("room", cells["room"], row)
        parts = [("room", cells["room"])]
        form = 'room "{room}"'
        if "wall" in cells:
            parts.append(("wall", cells["wall"]))
            form += " as {wall}"
        self._add_facts(row, cells, parts, form, ("trims", "note", "more"), indent="")

    def _wall_row(self, kind: RowKind, row: TableRow, cells: dict[str, Cell]) -> None:
        # an opening or bare wall has no name, and an end that is empty is its neighbour's to say
        needed = ["length"] if kind is not RowKind.RUN else ["wall", "length"]
        room = cells.get("room")
        if room is not None:
            # Compared without capitals: a spreadsheet that completes words may change them.
            name = self._text("room", room, row)
            # The first row of a new room begins it; the rows below may leave the room blank or
            # repeat it.
            if self._room is None or name.casefold() != self._room.casefold():
                self._room = name
                self._add(row, [("room", room)], 'room "{room}"')
        elif self._room is None:
            needed.insert(0, "room")
        lacking = [column for column in needed if column not in cells]
        for column in lacking:
            self._missing(row, cells, column)
        if lacking:
            return
        if kind is RowKind.RUN:
            parts, form = [("wall", cells["wall"])], "{wall}: {length}"
        else:
            parts, form = [], f"{kind} {{length}}"
        parts.append(("length", cells["length"]))
        also = ("left", "right", "called", "trims", "note", "more")
        self._add_facts(row, cells, parts, form, also, indent="  ")

    def _add_facts(
        self,
        row: TableRow,
        cells: dict[str, Cell],
        parts: list[tuple[str, Cell]],
        form: str,
        also: tuple[str, ...],
        *,
        indent: str,
    ) -> None:
        said = {
            "left": "left={left}",
            "right": "right={right}",
            "called": '"{called}"',
            "trims": "trim {trims}",
            "note": 'note "{note}"',
            "more": "{more}",
        }
        for column in also:
            if column in cells:
                parts.append((column, cells[column]))
                form += f", {said[column]}"
        self._add(row, parts, indent + form)

    def _add(self, row: TableRow, parts: list[tuple[str, Cell]], form: str) -> None:
        """Write a line of the job file, and remember which cell each part of it came from."""
        texts: dict[str, str] = {}
        for column, cell in parts:
            read = self._text if column in _TEXTS else self._word
            text = read(column, cell, row)
            if text is not None:
                texts[column] = text
        # A cell was refused, and the finding is made: the line would only bring up a second one.
        if len(texts) < len(parts):
            return
        line, pieces = "", []
        cell_of = dict(parts)
        for literal, column in _parsed(form):
            line += literal
            if column:
                start = len(line) + 1
                line += texts[column]
                others = {name: SOUND.get(name) or texts[name] for name in texts}
                alone = form.format(**{**others, column: texts[column]})
                pieces.append(LinePart(start, column, cell_of[column], alone))
        if line.startswith("room ") and self._lines:
            self._lines.append("")
        self._lines.append(line)
        self._pieces[len(self._lines)] = (row, pieces)

    def _text(self, column: str, cell: Cell, row: TableRow) -> str:
        """Return free text such that it can stand between quotation marks in a job file."""
        text = unguarded(cell.text.strip())
        plain = _QUOTES.sub("″", " ".join(text.split("\n")))
        if plain != text:
            self._say("T658", cell, row=row.number, column=column, text=plain)
        return plain

    def _word(self, column: str, cell: Cell, row: TableRow) -> str | None:
        """Return a cell's text as the language reads it, None where it must be refused."""
        text = " ".join(cell.text.split())
        if column == "line":
            # A whole line keeps its inner blanks, since they may stand within quotation marks.
            text = " ".join(cell.text.strip().splitlines())
        elif is_formula(text):
            self._say("T657", cell, row=row.number, column=column, written=text)
            return None
        elif "#" in _QUOTED.sub("", text):
            why = "“#” would begin a comment and hide what follows"
            self._unread(cell, row, column, why, "Write it without the “#”.")
            return None
        # Two trims in one cell are parted by whatever the writer likes; a comma would have parted
        # the cells.
        if column == "trims":
            text = re.sub(r"\s*[,;+/]\s*", ", ", text)
        elif column in ("length", "left", "right") and self._comma_is_decimal:
            if _TWO_WAYS.search(text):
                why = f"“{text}” may mean thousands or a decimal comma"
                self._unread(cell, row, column, why, "Write it without the comma, or with a point.")
                return None
            text = _DECIMAL_COMMA.sub(".", text)
        return text

    def _unread(self, cell: Cell, row: TableRow, column: str, why: str, remedy: str) -> None:
        self._say("T655", cell, row=row.number, column=column, why=why, remedy=remedy)


def _parsed(form: str) -> Iterator[tuple[str, str]]:
    """Yield the literal parts of a form, each with the column that follows it ("" for none)."""
    for literal, column, _, _ in Formatter().parse(form):
        yield literal, column or ""
