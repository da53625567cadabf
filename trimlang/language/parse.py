"""Reads a job file line by line, and goes on after every mistake."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import Final, TypeAlias

from lark.exceptions import UnexpectedInput

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.diagnostics.source import MOST_LINES, Source
from trimlang.language.broken_walls import with_parts_named
from trimlang.language.facts import Unread
from trimlang.language.grammar import parser
from trimlang.language.no_lengths import without_no_lengths
from trimlang.language.other_files import other_kind
from trimlang.language.retired import RETIRED, Retired, renewed
from trimlang.language.to_tree import LineBuilder
from trimlang.language.tree import (
    BoxesLine,
    EveryRoomLine,
    GapLine,
    LoosePieceLine,
    RoomLine,
    RunLine,
    Statement,
    Unreadable,
    WallsLine,
)

# Limits for files that are not job files: reading time must stay bounded for any text.
LONGEST_LINE: Final = 2000
MOST_MISTAKES: Final = 200
MOST_SLIPS: Final = 20
"""Mistakes reported of one line at most, since each costs reading the line again."""
LINES_KEPT: Final = 4096
"""How many lines are kept as they were read: those of a large job and of what it includes."""

# Compiled where a line cannot be read: few files have one.
_ENDS_A_WORD: Final = r"\s*[:,;=]\s*|\s+"
_A_HEADING: Final = r"(?i)(?<![#\"“])\broom\s+[\"“]"
_WITH_FACTS: Final = (EveryRoomLine, RoomLine, RunLine, GapLine, LoosePieceLine, BoxesLine)

ReadLine: TypeAlias = Callable[[str, str, int], tuple[Statement | None, tuple[Diagnostic, ...]]]
"""A function that reads a line, given its text, its file's name and its number (from 1)."""


# Two versions of a job, a job before and behind what is marked in its log, and jobs that include
# the same prices have most lines in common, and reading is half of what a check takes.
@lru_cache(LINES_KEPT)
def read_line(text: str, file: str, number: int) -> tuple[Statement | None, tuple[Diagnostic, ...]]:
    """Return what one line states (None for a comment), and what is wrong with its text."""
    statement, problems = _line(text, file, number)
    return statement, tuple(problems)


def parse(
    source: Source,
    retired: tuple[Retired, ...] = RETIRED,
    *,
    most: int = MOST_LINES,
    line: ReadLine = read_line,
) -> tuple[tuple[Statement, ...], tuple[Diagnostic, ...]]:
    """Return the statements of a file and what is wrong with its text.

    Words that are ``retired`` are read as the new words for them.

    A line that cannot be read completely keeps what could be read, so that one slip in a run does
    not also report the run as missing.  Where nothing could be read, an ``Unreadable`` takes the
    line's place.  A file of more than ``most`` lines, or of another kind, is not read at all.
    """
    statements: list[Statement] = []
    findings: list[Diagnostic] = []
    if source.line_count() > most:
        return (), (say("T117", Span(source.name, 1, 1, 2), most=MOST_LINES),)
    if (other := other_kind(source.text)) is not None:
        remedy = other.remedy.format(name=source.name)
        where = Span(source.name, 1, 1, 2)
        return (), (say("T600", where, path=source.name, what=other.what, remedy=remedy),)
    for number, text in enumerate(source.lines(), start=1):
        if not text or text.isspace():
            continue
        # Checked before the parser sees it: its time grows with the line.
        if len(text) > LONGEST_LINE:
            findings.append(say("T105", Span(source.name, number, 1, 2), most=LONGEST_LINE))
            continue
        if retired:
            text, renewals = renewed(text, source.name, number, retired)
            findings.extend(renewals)
        statement, problems = line(text, source.name, number)
        findings.extend(problems)
        if isinstance(statement, WallsLine):
            # Several walls in one line are several statements; what was lost among them leaves a
            # gap in the walk that must not be closed silently.
            statements.extend(statement.stretches)
            if statement.lost:
                statements.append(_unreadable(text, source.name, number))
        elif statement is not None:
            statements.append(statement)
        # A file with so many mistakes is not a job file.
        if len(findings) > MOST_MISTAKES:
            findings.append(say("T106", Span(source.name, number, 1, 2), most=MOST_MISTAKES))
            break
    return with_parts_named(statements), tuple(findings)


def _line(text: str, file: str, number: int) -> tuple[Statement | None, list[Diagnostic]]:
    problems: list[Diagnostic] = []
    written = text
    # Each turn replaces the part between commas that is wrong with blanks, and reads the line
    # again: columns stay right, and all mistakes of the line are found.
    for _ in range(min(text.count(",") + 2, MOST_SLIPS)):
        try:
            parsed = parser().parse(text)
        except UnexpectedInput as error:
            from trimlang.language.mistakes import explain

            problem = explain(error, text, file, number)
            at = slice(problem.span.column - 1, problem.span.end - 1)
            if text[at] != written[at]:
                # It is told of a part that was blanked, and its remedy would leave that out.
                return _unreadable(text, file, number), problems
            problems.append(problem)
            shorter = _without_part(text, problem.span.column - 1, problem.span.end - 1)
            # The first part says what kind of line it is; without it nothing is known of the rest.
            if shorter is None:
                return _unreadable(text, file, number), problems
            text = shorter
        else:
            builder = LineBuilder(file, number)
            statement: Statement | None = builder.transform(parsed)
            lost = tuple(Unread(problem.span) for problem in problems)
            if builder.no_walls:
                from trimlang.language.mistakes import as_known_slip

                builder.problems += [as_known_slip(text, one) for one in builder.no_walls]
            statement, told = without_no_lengths(statement, builder.problems)
            if statement is None and told:
                return _unreadable(text, file, number), problems + told
            if isinstance(statement, WallsLine):
                first = statement.stretches[0].facts if statement.stretches else ()
                if problems and any(isinstance(one, Unread) for one in first):
                    # What may follow its first word is known only once that is spelled right.
                    return replace(statement, lost=True), told
                statement = replace(statement, lost=statement.lost or bool(lost))
            elif isinstance(statement, _WITH_FACTS) and lost:
                # What was blanked may be what a later pass would find missing.
                statement = replace(statement, facts=statement.facts + lost)
            return statement, problems + told
    return _unreadable(text, file, number), problems


def _unreadable(text: str, file: str, number: int) -> Unreadable:
    # A room's heading is one all the same where its words stand in another order.
    heading = re.search(_A_HEADING, text)
    said = text if heading is None else text[heading.start() :]
    words = tuple(re.split(_ENDS_A_WORD, said.strip())[:2])
    return Unreadable(words, Span(file, number, 1, len(text) + 1))


def _without_part(text: str, at: int, until: int) -> str | None:
    """Return the line with the parts between commas from ``at`` to ``until`` blanked.

    None where that begins with the first part.
    """
    commas = _commas(text)
    # Where reading stopped at a comma, the part before it lacks something: that is the one to
    # blank.
    before = [comma for comma in commas if comma < at]
    # Of a loose piece the length is as needful as the name, and stands behind a comma too.
    needful = 2 if text.lstrip()[:5].casefold() == "piece" else 1
    if len(before) < needful:
        return None
    start = before[-1]
    end = next((comma for comma in commas if comma >= max(at, until)), len(text))
    return text[:start] + " " * (end - start) + text[end:]


def _commas(text: str) -> list[int]:
    """Return where the commas outside quotes, brackets and comments are (from 0)."""
    commas: list[int] = []
    quoted, depth = False, 0
    for index, sign in enumerate(text):
        if sign in "“”" or (sign == '"' and (quoted or not _is_inch_mark(text, index))):
            quoted = not quoted
        elif not quoted:
            if sign == "#":
                break
            depth += (sign == "(") - (sign == ")")
            if sign == "," and depth <= 0:
                commas.append(index)
    return commas


# A quotation mark right behind a number is an inch mark, and opens no quoted text.
def _is_inch_mark(text: str, index: int) -> bool:
    before = text[:index].rstrip()
    return bool(before) and (before[-1].isdigit() or before[-1].isnumeric())
