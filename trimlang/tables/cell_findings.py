"""Reports what is wrong with a job file made from a table at the table's cells."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TypeAlias

from trimlang.compiler import check_job
from trimlang.diagnostics import Diagnostic, Severity, Span, Whole, say
from trimlang.diagnostics.code_pages import PAGES
from trimlang.diagnostics.place import Place
from trimlang.diagnostics.source import Source
from trimlang.language.parse import parse
from trimlang.record import record
from trimlang.tables.cells import Cell, TableRow


@record
class LinePart:
    """A part of a line that came from a cell: its first column (from 1), the table's column name.

    ``alone`` is the same line with sound text in place of all other cells, so that only this
    cell can be wrong in it.
    """

    start: int
    column: str
    cell: Cell
    alone: str


Made: TypeAlias = Mapping[int, tuple[TableRow, Sequence[LinePart]]]
"""By line number (from 1) of the job file: the row that it was made from, and its parts."""


def told_at_cells(
    path: Path, lines: Sequence[str], made: Made, *, rows_lost: bool
) -> list[Diagnostic]:
    """Return what is wrong with the job file's lines, each finding at the cell that caused it.

    ``rows_lost`` says that some rows of the table gave no line.
    """
    teller = _Teller(path, lines, made)
    teller.check(rows_lost=rows_lost)
    return teller.findings


def span_of(path: Path, cell: Cell) -> Span:
    """Return where a cell stands in the table's file."""
    return Span(path.name, cell.line, cell.column, cell.end)


class _Teller:
    def __init__(self, path: Path, lines: Sequence[str], made: Made) -> None:
        self._path = path
        self._lines = lines
        self._pieces = made
        self.findings: list[Diagnostic] = []

    def check(self, *, rows_lost: bool) -> None:
        """Check the job file, and report what is wrong with it at the cells."""
        text = "".join(f"{line}\n" for line in self._lines)
        _, unread = parse(Source(self._path.name, text))
        # Lines that cannot be read are reported first and alone: all that follows from them would
        # be false.
        lost = {one.span.line for one in unread if one.severity is Severity.ERROR}
        for number in sorted(lost):
            self._unread_cells(number, [one for one in unread if one.span.line == number])
        rows_lost = rows_lost or bool(lost)
        # Lines that cannot be read are left empty, so that the others keep their line numbers.
        sound = ("" if n in lost else line for n, line in enumerate(self._lines, start=1))
        text = "".join(f"{line}\n" for line in sound)
        result = check_job(text, path=self._path)
        known = any(line.split(None, 1)[:1] in (["trim"], ["include"]) for line in self._lines)
        # A table seldom says what its trims are, because another file will: what needs the trims
        # waits.
        not_whole = [Whole.WALLS] if rows_lost else []
        not_whole += [] if known else [Whole.TRIMS]
        for finding in result.diagnostics:
            if not finding.needs_any(not_whole):
                self._at_cell(finding)

    def _unread_cells(self, number: int, findings: list[Diagnostic]) -> None:
        """Report every cell of a row that cannot be read, trying each cell by itself."""
        at_a_cell = False
        if number in self._pieces:
            row, pieces = self._pieces[number]
            for piece in pieces:
                _, wrong = parse(Source(self._path.name, piece.alone))
                for one in wrong:
                    if one.severity is Severity.ERROR:
                        at_a_cell = True
                        self._unread(piece, row, one)
        # Each cell is sound by itself, so it is their combination that cannot be read: report the
        # line as it stands.
        if not at_a_cell:
            for finding in findings:
                self._at_cell(finding)

    def _at_cell(self, finding: Diagnostic) -> None:
        """Report a finding about a line at the cell that it came from."""
        found = self._pieces.get(finding.span.line)
        if finding.span.file != self._path.name or found is None or not found[1]:
            # It is about an included file, or about the table as a whole.
            place = finding.span
            if place.file == self._path.name:
                place = Span(self._path.name, 1, 1, 2)
            self.findings.append(replace(finding, span=place))
            return
        row, pieces = found
        facts = {name: self._in_table(fact) for name, fact in finding.facts}
        finding = say(finding.code, finding.span, **facts)
        remedy = PAGES[finding.code].in_a_table.format(**facts) or finding.remedy
        # The cell whose text begins last at or before the place that is marked.
        before = [piece for piece in pieces if piece.start <= finding.span.column]
        piece = before[-1] if before else pieces[0]
        message = f"row {row.number}, {piece.column}: {finding.message}"
        self.findings.append(
            replace(finding, span=span_of(self._path, piece.cell), message=message, remedy=remedy)
        )

    def _in_table(self, fact: object) -> object:
        """Return a fact with a line of the job file named by the table's row instead."""
        # The job file was never written to a disk: its line numbers mean nothing to whoever has the
        # table open.
        if not isinstance(fact, Place) or fact.span.file != self._path.name:
            return fact
        found = self._pieces.get(fact.span.line)
        return fact if found is None else f"row {found[0].number}"

    def _unread(self, piece: LinePart, row: TableRow, said: Diagnostic) -> None:
        span = span_of(self._path, piece.cell)
        facts = {"row": row.number, "column": piece.column}
        at_a_cell = say("T655", span, **facts, why=said.message, remedy=said.remedy)
        self.findings.append(at_a_cell)
