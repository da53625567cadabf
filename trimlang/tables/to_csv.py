"""Writes a job file as a table, from which the same job file can be made again."""

from __future__ import annotations

import csv
from collections.abc import Iterable
from io import StringIO

from trimlang.diagnostics import Diagnostic, Span
from trimlang.language import tree
from trimlang.language.parse import parse
from trimlang.language.source import Source
from trimlang.tables.table_columns import COLUMNS, guarded


def to_csv(source: Source) -> tuple[str, tuple[Diagnostic, ...]]:
    """Return the table of one job file, its comments left out, and what is wrong with the file.

    Lines that are no walls stand whole in the column ``line``; what a line includes
    stays in its own file.
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
            row = {"kind": "room", "room": room, "wall": tag, **_facts(one.facts, lines)}
        elif isinstance(one, tree.RunLine):
            long = _written(one.length.span, lines)
            row = {"kind": "run", "room": room, "wall": one.label.text, "length": long}
            row |= _facts(one.facts, lines)
        elif isinstance(one, tree.GapLine):
            wide = _written(one.width.span, lines)
            row = {"kind": one.kind, "room": room, "length": wide, **_facts(one.facts, lines)}
        else:
            row = {"kind": "line", "line": _written(one.span, lines)}
        out.writerow({column: guarded(cell) for column, cell in row.items()})
    return text.getvalue(), findings


def _facts(facts: Iterable[tree.Fact], lines: list[str]) -> dict[str, str]:
    """Return the cells of what a line says besides its name and length."""
    cells: dict[str, str] = {}
    trims: list[str] = []
    more: list[str] = []
    for fact in facts:
        value = fact.values[0] if fact.values else None
        if fact.kind in ("trims", "also_trim") and isinstance(value, tree.Word):
            trims.append(value.text)
        elif fact.kind == "side" and isinstance(value, tree.Word) and value.text not in cells:
            end = fact.values[1]
            assert isinstance(end, tree.End)  # noqa: S101 - the grammar says so
            cells[value.text] = _written(end.span, lines)
        elif (
            fact.kind in ("called", "note")
            and isinstance(value, tree.Word)
            and fact.kind not in cells
        ):
            cells[fact.kind] = value.text
        else:
            more.append(_written(fact.span, lines))
    if trims:
        cells["trims"] = ", ".join(trims)
    if more:
        cells["more"] = ", ".join(more)
    return cells


def _written(span: Span, lines: list[str]) -> str:
    return lines[span.line - 1][span.column - 1 : span.end - 1]
