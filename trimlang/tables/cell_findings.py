"""Tells of a table's cells what the language says of the job file that was made of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TypeAlias

from trimlang.compiler import check_job
from trimlang.diagnostics import Diagnostic, Severity, Span, Whole, say
from trimlang.diagnostics.place import Place
from trimlang.language.parse import parse
from trimlang.language.source import Source
from trimlang.record import record
from trimlang.tables.cells import Cell, TableRow


@record
class LinePart:
    """A part of a line: where it starts there, and the table's column and cell that it came from.

    ``alone`` is the line with all its other cells sound.
    """

    start: int
    column: str
    cell: Cell
    alone: str


Made: TypeAlias = Mapping[int, tuple[TableRow, Sequence[LinePart]]]
"""The lines that rows of the table were made to: each line's row and pieces."""


def told_at_cells(
    path: Path, lines: Sequence[str], made: Made, *, rows_lost: bool
) -> list[Diagnostic]:
    """Return what is wrong with the job file's lines, each finding at the cell it is about.

    ``rows_lost`` tells that rows of the table are missing among the lines.
    """
    teller = _Teller(path, lines, made)
    teller.check(rows_lost=rows_lost)
    return teller.findings


def span_of(path: Path, cell: Cell) -> Span:
    """Return where a cell stands in its file."""
    return Span(path.name, cell.line, cell.column, cell.end)


class _Teller:
    def __init__(self, path: Path, lines: Sequence[str], made: Made) -> None:
        self._path = path
        self._lines = lines
        self._pieces = made
        self.findings: list[Diagnostic] = []

    def check(self, *, rows_lost: bool) -> None:
        """Have the job file checked, and tell what is wrong with it at the cells it came from."""
        text = "".join(f"{line}\n" for line in self._lines)
        _, unread = parse(Source(self._path.name, text))
        lost = {one.span.line for one in unread if one.severity is Severity.ERROR}
        for number in sorted(lost):
            self._unread_cells(number, [one for one in unread if one.span.line == number])
        rows_lost = rows_lost or bool(lost)
        # the lines that can be read are checked too, each in its place
        kept = ("" if n in lost else line for n, line in enumerate(self._lines, start=1))
        text = "".join(f"{line}\n" for line in kept)
        result = check_job(text, path=self._path)
        known = any(line.split(None, 1)[:1] in (["trim"], ["include"]) for line in self._lines)
        # a table seldom says what its trims are: another file will
        not_whole = [Whole.WALLS] if rows_lost else []
        not_whole += [] if known else [Whole.TRIMS]
        for finding in result.diagnostics:
            if not finding.needs_any(not_whole):
                self._at_cell(finding)

    def _unread_cells(self, number: int, findings: list[Diagnostic]) -> None:
        """Tell of every cell of a row that cannot be read, each tried by itself."""
        told = False
        if number in self._pieces:
            row, pieces = self._pieces[number]
            for piece in pieces:
                _, wrong = parse(Source(self._path.name, piece.alone))
                for one in wrong:
                    if one.severity is Severity.ERROR:
                        told = True
                        self._unread(piece, row, one)
        if not told:
            for finding in findings:
                self._at_cell(finding)

    def _at_cell(self, finding: Diagnostic) -> None:
        """Tell what was found in a line at the cell that it came from."""
        found = self._pieces.get(finding.span.line)
        if finding.span.file != self._path.name or found is None or not found[1]:
            # of an included file, or of the table as a whole
            place = finding.span
            if place.file == self._path.name:
                place = Span(self._path.name, 1, 1, 2)
            self.findings.append(replace(finding, span=place))
            return
        row, pieces = found
        facts = {name: self._in_table(fact) for name, fact in finding.facts}
        finding = say(finding.code, finding.span, **facts)
        before = [piece for piece in pieces if piece.start <= finding.span.column]
        piece = before[-1] if before else pieces[0]
        message = f"row {row.number}, {piece.column}: {finding.message}"
        self.findings.append(
            replace(finding, span=span_of(self._path, piece.cell), message=message)
        )

    def _in_table(self, fact: object) -> object:
        """Name a place in the job file by the row that its line came from."""
        if not isinstance(fact, Place) or fact.span.file != self._path.name:
            return fact
        found = self._pieces.get(fact.span.line)
        return fact if found is None else f"row {found[0].number}"

    def _unread(self, piece: LinePart, row: TableRow, said: Diagnostic) -> None:
        span = span_of(self._path, piece.cell)
        facts = {"row": row.number, "column": piece.column}
        told = say("T655", span, **facts, why=said.message, remedy=said.remedy)
        self.findings.append(told)
