"""Mends that put something aside, as a remark, until a tape or the yard has told its figure."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.leaving_out import end_of_words
from trimlang.diagnostics.mend import Edit, Facts, Mend, marked

TO_MEASURE: Final = "to measure"
TO_ASK: Final = "to ask the yard"
"""What a remark begins with that says what is still to be done."""


def line_aside(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Make the whole line a remark until what it says is measured."""
    start = len(line) - len(line.lstrip())
    place = Span(span.file, span.line, start + 1, len(line) + 1)
    aside = Edit(place, f"# {TO_MEASURE}: {line.strip()}")
    yield Mend("Put the line aside until it is measured", (aside,))


def wall_aside(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Make a line a remark, but for one that other lines name: a trim's, or its stock."""
    if not re.match(r"\s*(?:trim|stock|block|assembly|head)\b", line, re.IGNORECASE):
        yield from line_aside(span, facts, line)


def remark(file: str, number: int, line: str, text: str) -> Edit:
    """Return what writes a remark behind a line, or adds it to the remark that is there."""
    has_remark = end_of_words(line) <= len(line.rstrip())
    at = len(line.rstrip()) + 1
    said = f"; {text}" if has_remark else f"  # {text}"
    return Edit(Span(file, number, at, len(line) + 1), said)


def corner_aside(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Take a corner as square for now, and keep what was measured of it in a remark."""
    opens, closes = span.column - 2, span.end - 1
    if line[opens : opens + 1] != "(" or line[closes : closes + 1] != ")":
        return
    note = f"{TO_MEASURE} again: {marked(span, line)}"
    # The later place first, so that the earlier one is still right when it is changed.
    edits = (
        remark(span.file, span.line, line, note),
        Edit(replace(span, column=opens + 1, end=closes + 2), ""),
    )
    yield Mend("Take the corner as square until it is measured again", edits)


def top_aside(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Keep a corner's angle at the floor, and put that at the trim's top into a remark."""
    found = re.match(r"(?P<floor>.*?)\s+at\s+floor\s*,\s*(?P<top>.*)", marked(span, line), re.I)
    if found is not None:
        note = f"{TO_MEASURE} again: {found['top']}"
        edits = (remark(span.file, span.line, line, note), Edit(span, found["floor"]))
        yield Mend("Keep the angle at the floor until both are measured again", edits)


def floor_aside(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Put a finished floor that hides the whole plate into a remark, until it is measured again."""
    file = finding.span.file
    for number, line in enumerate(lines, start=1):
        head = re.match(r"\s*nails:\s*", line, re.IGNORECASE)
        if head is None:
            continue
        said = line[head.end() : end_of_words(line) - 1]
        parts = [part.strip() for part in said.split(",")]
        floor = [part for part in parts if part.casefold().startswith("floor ")]
        if not floor:
            continue
        note = f"{TO_MEASURE} again: {floor[0]}"
        rest = ", ".join(part for part in parts if part not in floor)
        edits: tuple[Edit, ...]
        if rest:
            place = Span(file, number, head.end() + 1, head.end() + 1 + len(said))
            edits = (remark(file, number, line, note), Edit(place, rest))
        else:
            edits = (Edit(Span(file, number, 1, end_of_words(line)), f"# {note}"),)
        yield Mend("Put the floor aside until it is measured again", edits)
