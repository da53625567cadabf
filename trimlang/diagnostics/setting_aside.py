"""Mends that put something aside, as a remark, until a tape or the yard has told its figure."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from enum import Enum
from typing import Final

from trimlang.diagnostics.diagnostic import Span
from trimlang.diagnostics.leaving_out import end_of_words
from trimlang.diagnostics.mend import Edit, Facts, Mend, marked

_Way = Callable[[Span, Facts, str], Iterator[Mend]]


class Until(Enum):
    """What is still to be done before a line can say its figure: the words of the remark."""

    MEASURED = "to measure"
    ASKED = "to ask the yard"


_WHOLE: Final = {
    Until.MEASURED: "Put the line aside until it is measured",
    Until.ASKED: "Put the line aside until the yard is asked",
}


def line_aside(until: Until) -> _Way:
    """Return what makes the whole line a remark that says what it waits for."""

    def offer(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
        start = len(line) - len(line.lstrip())
        place = Span(span.file, span.line, start + 1, len(line) + 1)
        yield Mend(_WHOLE[until], (Edit(place, f"# {until.value}: {line.strip()}"),))

    return offer


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
    note = f"{Until.MEASURED.value} again: {marked(span, line)}"
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
        note = f"{Until.MEASURED.value} again: {found['top']}"
        edits = (remark(span.file, span.line, line, note), Edit(span, found["floor"]))
        yield Mend("Keep the angle at the floor until both are measured again", edits)
