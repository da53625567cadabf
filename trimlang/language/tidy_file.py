"""Formats a whole file: indents, blank lines, columns.  The rules are in docs/commands.md."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.source import Source
from trimlang.language.parse import LONGEST_LINE, parse
from trimlang.language.tidy_line import TidyLine, read_line
from trimlang.record import record

INDENT: Final = "  "
WALLS: Final = frozenset({"run", "opening", "bare", "beam", "transition", "walls"})
"""Rules of lines that belong below a room's heading wherever they are written."""

LONGEST_LABEL: Final = 12
WIDEST: Final = 76
"""Columns; a longer label, or a statement that reaches further, is not lined up with others."""


@record
class Tidied:
    """A formatted file, and why some of its lines could not be read and were left as they are."""

    text: str
    findings: tuple[Diagnostic, ...]


def tidy(source: Source) -> Tidied:
    """Return a file formatted; lines that cannot be read stay as they are."""
    read = [read_line(raw) for raw in source.lines()]
    left = {number for number, line in enumerate(read, start=1) if line.left}
    text = "".join(f"{line}\n" for line in _columns(_spaced(_indented(read))))
    # Only what kept a line from being formatted; everything else is for `trimlang check` to say.
    findings = parse(source)[1] if left else ()
    return Tidied(text, tuple(one for one in findings if one.span.line in left))


@record
class _Set:
    """A line and its indent."""

    line: TidyLine
    indent: str

    @property
    def is_blank(self) -> bool:
        return not self.line.raw

    @property
    def is_remark(self) -> bool:
        return not self.line.words and not self.line.left and not self.is_blank


def _indented(lines: Sequence[TidyLine]) -> list[_Set]:
    laid: list[_Set] = []
    in_room = False
    for line in lines:
        if line.rule == "room" or (line.left and line.raw.split()[0].casefold() == "room"):
            in_room = True
            inside = False
        else:
            known = line.rule in WALLS or (in_room and line.for_room)
            # A remark, or a statement that this module does not know, may belong to either: keep
            # its indent.
            inside = known or (in_room and line.indented)
        laid.append(_Set(line, INDENT if inside else ""))
    # A remark right above a statement gets that statement's indent; from below, so that several do.
    for index in range(len(laid) - 2, -1, -1):
        below = laid[index + 1]
        if laid[index].is_remark and not below.is_blank and not below.line.left:
            laid[index] = _Set(laid[index].line, below.indent)
    return laid


def _spaced(lines: list[_Set]) -> list[_Set]:
    """Return the lines with one blank line at most, none at either end, one above each room."""
    spaced: list[_Set] = []
    blank = _Set(TidyLine(""), "")
    for line in lines:
        if line.is_blank:
            if spaced and not spaced[-1].is_blank:
                spaced.append(blank)
            continue
        if line.line.rule == "room":
            above = len(spaced)
            # Remarks right above a heading belong to it: the blank line goes above them.
            while above and spaced[above - 1].is_remark:
                above -= 1
            if above and not spaced[above - 1].is_blank:
                spaced.insert(above, blank)
        spaced.append(line)
    while spaced and spaced[-1].is_blank:
        spaced.pop()
    return spaced


def _columns(lines: list[_Set]) -> list[str]:
    """Return the lines' text, a room's lengths and neighbouring remarks lined up in columns."""
    texts = [one.line.words for one in lines]
    for start, end in _rooms(lines):
        runs = [at for at in range(start, end) if lines[at].line.label]
        labels = {at: texts[at][: lines[at].line.label] for at in runs}
        # A long label would push all others' lengths far to the right, so it takes no part.
        short = [_width(label) for label in labels.values() if _width(label) <= LONGEST_LABEL]
        column = max(short, default=0)
        for at, label in labels.items():
            rest = texts[at][len(label) :].lstrip()
            texts[at] = f"{label}{' ' * max(column - _width(label), 0)} {rest}"
    written = [f"{one.indent}{text}" for one, text in zip(lines, texts, strict=True)]
    for group in _neighbours(
        [at for at, one in enumerate(lines) if one.line.words and one.line.comment]
    ):
        column = max((w for at in group if (w := _width(written[at])) <= WIDEST), default=0)
        for at in group:
            gap = " " * max(column - _width(written[at]), 0)
            written[at] += f"{gap}  {lines[at].line.comment}"
    return [_final(one, text) for one, text in zip(lines, written, strict=True)]


def _final(one: _Set, text: str) -> str:
    if one.line.left:
        return one.line.raw
    if one.is_remark:
        text = f"{one.indent}{one.line.comment}"
    # Lining up must not make a line longer than what can be read back.
    return text if len(text) <= LONGEST_LINE else one.line.raw


def _rooms(lines: list[_Set]) -> list[tuple[int, int]]:
    starts = [0, *(at for at, one in enumerate(lines) if one.line.rule == "room"), len(lines)]
    return list(pairwise(starts))


def _neighbours(places: list[int]) -> list[list[int]]:
    """Return rising numbers in groups without a gap: ``[1, 2, 5]`` gives ``[[1, 2], [5]]``."""
    groups: list[list[int]] = []
    for at in places:
        if groups and groups[-1][-1] == at - 1:
            groups[-1].append(at)
        else:
            groups.append([at])
    return groups


def _width(text: str) -> int:
    """Return how many columns a text takes up on a screen."""
    return sum(
        0 if unicodedata.combining(sign) else 2 if unicodedata.east_asian_width(sign) in "WF" else 1
        for sign in text
    )
