"""Writes a job file as a table from which the same job file can be made again."""

from __future__ import annotations

import csv
from collections.abc import Iterable
from dataclasses import replace
from io import StringIO

from trimlang.diagnostics import Diagnostic, Span
from trimlang.diagnostics.source import Source
from trimlang.formulas import guarded
from trimlang.language import facts, tree
from trimlang.language.parse import parse
from trimlang.tables.table_columns import COLUMNS, RowKind


def to_csv(source: Source) -> tuple[str, tuple[Diagnostic, ...]]:
    """Return one job file as a table, without its comments, and what is wrong with the file.

    A line that is no room or wall stands whole in the column ``line``.  Included files are not
    read: their lines stay in them.
    """
    statements, findings = parse(source)
    lines = source.lines()
    text = StringIO()
    out = csv.DictWriter(text, COLUMNS, restval="", lineterminator="\n")
    out.writeheader()
    room = ""
    for one in statements:
        if isinstance(one, tree.RoomLine):
            room = one.name.text
            tag = one.tag.text if one.tag else ""
            row = {"kind": RowKind.ROOM, "room": room, "wall": tag, **_facts(one.facts, lines)}
        elif isinstance(one, tree.RunLine):
            # The radius of a wall that curves is told from a length by the word behind it.
            radius = (fact for fact in one.facts if isinstance(fact, facts.RadiusGiven))
            end = next((fact.span.end for fact in radius), one.length.span.end)
            long = _written(replace(one.length.span, end=end), lines)
            row = {"kind": RowKind.RUN, "room": room, "wall": one.label.text, "length": long}
            row |= _facts(one.facts, lines)
        elif isinstance(one, tree.GapLine) and not _has_no_row(one):
            wide = _written(one.width.span, lines)
            row = {"kind": one.kind, "room": room, "length": wide, **_facts(one.facts, lines)}
        else:
            # Settings, trims and stock have no columns: as whole lines they come back as they were.
            row = {"kind": RowKind.LINE, "line": _written(one.span, lines)}
        out.writerow({column: guarded(cell) for column, cell in row.items()})
    return text.getvalue(), findings


def _has_no_row(line: tree.GapLine) -> bool:
    # No column says that an opening is a beam, or a wall's stretch a block: the line stands as it
    # was written.
    beam = any(isinstance(fact, facts.BeamAcross) for fact in line.facts)
    return beam or isinstance(line.width, tree.Word)


def _facts(said: Iterable[facts.Fact], lines: list[str]) -> dict[str, str]:
    """Return the cells for what a line says besides its name and length."""
    cells: dict[str, str] = {}
    trims: list[str] = []
    more: list[str] = []
    for fact in said:
        match fact:
            case facts.NamedTrim(trim=trim):
                trims.append(trim.text)
            # A fact that is said twice is wrong; the second goes into "more", so that reading it
            # back says so.
            case facts.AtEnd(side=side, end=end) if side not in cells:
                cells[side.value] = _written(end.span, lines)
            case facts.TrimEnd(trim=trim, side=facts.Side() as side, end=end):
                # in a row the sides stand in columns, and no end before it tells which it is of
                more.append(f"{trim.text} {side}={_written(end.span, lines)}")
            case facts.Called(text=text) if "called" not in cells:
                cells["called"] = text.text
            case facts.Note(text=text) if "note" not in cells:
                cells["note"] = text.text
            case facts.RadiusGiven():
                pass  # it stands with the length
            case _:
                more.append(_written(fact.span, lines))
    if trims:
        cells["trims"] = ", ".join(trims)
    if more:
        cells["more"] = ", ".join(more)
    return cells


def _written(span: Span, lines: list[str]) -> str:
    return lines[span.line - 1][span.column - 1 : span.end - 1]
