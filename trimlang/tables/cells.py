"""Reads CSV and keeps where each cell stands, so that a mistake can be shown in its place."""

from __future__ import annotations

import re
from typing import Final

from trimlang.diagnostics.source import LINE_END
from trimlang.language.other_files import TABLE, other_kind
from trimlang.record import record
from trimlang.tables.old_encodings import in_an_old_page

# Python's csv module does not tell where a cell stands, so the cells are read here (RFC 4180, and
# the delimiters that spreadsheets write in countries with a decimal comma).
DELIMITERS: Final = (",", ";", "\t")
_LINES_ASKED: Final = 20
"""Lines from which the delimiter is told."""
_SEP: Final = re.compile(r"sep=(.)\s*(\r\n|\r|\n)", re.IGNORECASE)


class NoTableError(Exception):
    """The bytes are not CSV: why, and in which line and column (from 1)."""

    def __init__(self, why: str, line: int = 1, column: int = 1) -> None:
        super().__init__(why)
        self.why = why
        self.line = line
        self.column = column


@record
class Cell:
    """A cell's text and where it stands: line and columns from 1, ``end`` behind the last."""

    text: str
    line: int
    column: int
    end: int


@record
class TableRow:
    """A row of the table: its number as a spreadsheet counts (from 1), and its cells."""

    number: int
    cells: tuple[Cell, ...]


def table_text(data: bytes) -> tuple[str, tuple[str, ...]]:
    """Return the text of a CSV file, and what was guessed to read it.

    It is UTF-8, UTF-16 with a byte order mark, or one of the old code pages in which it makes
    sense.

    Raises:
        NoTableError: it is none of them, or a file of another kind, such as a plan.
    """
    # Some spreadsheets save “Unicode text” so. Without its mark UTF-16 cannot be told from rubbish.
    for mark, encoding in ((b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16")):
        if data.startswith(mark):
            try:
                return data.decode(encoding), ()
            except UnicodeDecodeError:
                raise NoTableError("it begins as UTF-16 and does not go on so") from None
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        old = in_an_old_page(data)
        if old is not None:
            told = f"the file is no UTF-8 and is read as {old.page}: “{old.sample}” stands in it"
            return old.text, (f"{told}. If that looks wrong, save it as “CSV UTF-8”",)
        line = data.count(b"\n", 0, error.start) + 1
        raise NoTableError(f"it is no UTF-8 text (byte {error.start})", line) from None
    # Valid UTF-8, but no text has a NUL: most likely a workbook that was not saved as CSV.
    if "\0" in text:
        raise NoTableError("it is no text", text.count("\n", 0, text.index("\0")) + 1)
    other = other_kind(text)
    if other is not None and other is not TABLE:
        raise NoTableError(f"it is {other.what}")
    return text, ()


def read_rows(text: str) -> tuple[str, list[TableRow]]:
    """Return the delimiter, and every row that has something in it.

    The delimiter is the one that a first line ``sep=;`` names, or else the one that stands most
    often in the heading.

    Raises:
        NoTableError: a quoted cell is never closed.
    """
    said = _SEP.match(text)
    begin = said.end() if said else 0
    delimiter = said.group(1) if said else _delimiter(text)
    reader = _CellReader(text, delimiter, begin, 2 if said else 1)
    return delimiter, [row for row in reader.rows() if any(cell.text.strip() for cell in row.cells)]


def _delimiter(text: str) -> str:
    lines = [line for line in LINE_END.split(text) if line.strip()][:_LINES_ASKED]
    # A comma within a quoted heading parts no columns.
    bare = [re.sub(r'"[^"]*"', "", line) for line in lines] or [""]
    counts = {sign: [line.count(sign) for line in bare] for sign in DELIMITERS}
    # A heading parts its names as the row below it parts its cells.
    as_below = any(len(one) == 1 or 0 < one[0] == one[1] for one in counts.values())
    if as_below or not any(map(any, counts.values())):
        # Of two that stand equally often the first in DELIMITERS is taken: a heading of one column
        # has none.
        return max(DELIMITERS, key=lambda sign: (counts[sign][0], -DELIMITERS.index(sign)))
    # A title may stand above the heading and hold any sign: most rows have as many of the sign that
    # parts them, and a comma may belong to their numbers.
    return max(DELIMITERS, key=lambda sign: (*_most_alike(counts[sign]), DELIMITERS.index(sign)))


def _most_alike(counts: list[int]) -> tuple[int, int]:
    """Return in how many lines a sign stands equally often, and how often."""
    return max(((counts.count(one), one) for one in counts if one), default=(0, 0))


class _CellReader:
    def __init__(self, text: str, delimiter: str, begin: int, line: int) -> None:
        self._text = text
        self._delimiter = delimiter
        self._at = begin
        self._line = line
        self._line_begin = begin

    def rows(self) -> list[TableRow]:
        rows: list[TableRow] = []
        cells: list[Cell] = []
        while self._at < len(self._text) or cells:
            cells.append(self._cell())
            if self._at < len(self._text) and self._text[self._at] == self._delimiter:
                self._at += 1
                if self._at == len(self._text):
                    # The text ends with a delimiter: an empty last cell follows it.
                    cells.append(self._made("", self._line, self._column, self._column))
                else:
                    continue
            rows.append(TableRow(len(rows) + 1, tuple(cells)))
            cells = []
            self._end_line()
        return rows

    @property
    def _column(self) -> int:
        return self._at - self._line_begin + 1

    def _end_line(self) -> None:
        ended = LINE_END.match(self._text, self._at)
        if ended:
            self._at = ended.end()
            self._line += 1
            self._line_begin = self._at

    def _cell(self) -> Cell:
        line, column = self._line, self._column
        if self._text[self._at : self._at + 1] == '"':
            return self._quoted(line, column)
        end = self._at
        while end < len(self._text) and self._text[end] not in (self._delimiter, "\r", "\n"):
            end += 1
        text = self._text[self._at : end]
        self._at = end
        return self._made(text, line, column, self._column)

    def _quoted(self, line: int, column: int) -> Cell:
        self._at += 1
        parts: list[str] = []
        first_end: int | None = None
        while True:
            if self._at >= len(self._text):
                raise NoTableError("a cell's quotation mark is not closed", line, column)
            sign = self._text[self._at]
            if sign == '"':
                self._at += 1
                # Two quotation marks within a quoted cell stand for one.
                if self._text[self._at : self._at + 1] != '"':
                    break
                parts.append('"')
                self._at += 1
            elif sign in "\r\n":
                # A cell may go on over several lines. Findings mark one line, so it is marked to
                # the end of its first.
                if first_end is None:
                    first_end = self._column
                self._end_line()
                parts.append("\n")
            else:
                parts.append(sign)
                self._at += 1
        # What follows the closing mark up to the delimiter is kept rather than lost.
        while self._at < len(self._text) and self._text[self._at] not in (
            self._delimiter,
            "\r",
            "\n",
        ):
            parts.append(self._text[self._at])
            self._at += 1
        return self._made("".join(parts), line, column, first_end or self._column)

    @staticmethod
    def _made(text: str, line: int, column: int, end: int) -> Cell:
        return Cell(text, line, column, max(end, column + 1))
