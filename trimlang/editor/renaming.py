"""Renames a trim, a room, its tag or a run in every place where the name stands.

The new text is compiled: a rename that would cause an error that was not there before is
refused, with that error's words.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from trimlang.diagnostics import Diagnostic, Span
from trimlang.diagnostics.mend import Edit
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.source import Source
from trimlang.editor.mention import Mention, Name, NameSort
from trimlang.editor.names import Names
from trimlang.editor.open_job import JobReading, read_job
from trimlang.incremental.cached_steps import CachedSteps
from trimlang.language import tree
from trimlang.language.parse import read_line
from trimlang.survey.room_tags import room_tag


class CannotRenameError(Exception):
    """The name cannot be changed to this one; the message says why."""


def rename(reading: JobReading, mention: Mention, new: str) -> tuple[Edit, ...]:
    """Return the edits, in all files, that rename what ``mention`` names to ``new``.

    Raises:
        CannotRenameError: ``new`` cannot be such a name, or already means something else.
    """
    # A blank before or behind a typed name is never meant.
    new = new.strip()
    edits = list(_edits(reading.names, mention, new))
    _check(reading, mention, new, edits)
    return tuple(edits)


def _edits(names: Names, mention: Mention, new: str) -> Iterable[Edit]:
    for one in names.of(mention.name):
        yield Edit(one.span, new)
    if mention.name.sort is NameSort.RUN:
        yield from _kept_parts(names, mention.name)
    if mention.name.sort in (NameSort.ROOM, NameSort.TAG):
        yield from _kept_tags(names, mention.name, new)


def _kept_parts(names: Names, named: Name) -> Iterable[Edit]:
    """Write out what the parts of a wall are called that bear its name alone behind a door."""
    wall = named.text.rstrip("0123456789-")
    for run in names.rooms[named.room or 0].runs:
        label = run.label.text
        by_number = run.label.span.end - run.label.span.column != len(label)
        same_wall = label.casefold().rstrip("0123456789-") == wall
        if by_number and same_wall and label.casefold() != named.text:
            yield Edit(run.label.span, label)


def _kept_tags(names: Names, named: Name, new: str) -> Iterable[Edit]:
    """Write out a room's tag where log lines name its pieces and its name alone gave the tag.

    Otherwise those lines would name pieces that no longer exist.  Rooms further down may be
    concerned as well: one of them may have a number only because this one had its tag.
    """
    used = {
        one.name.room for one in names.mentions if one.name.sort is NameSort.TAG and not one.gives
    }
    taken: set[str] = set()
    for number, room in enumerate(names.rooms):
        renamed = named.sort if number == named.room else None
        tag = new if renamed is NameSort.TAG else room.tag
        if room.heading.tag is None:
            made = room_tag(new if renamed is NameSort.ROOM else room.heading.name.text, taken)
            # No log line names a piece of this room, so its tag may change with its name.
            if number not in used:
                tag = made
            elif made != tag:
                span = room.heading.name.span
                yield Edit(replace(span, column=span.end), f" as {tag}")
        taken.add(tag)


def _check(reading: JobReading, mention: Mention, new: str, edits: list[Edit]) -> None:
    if mention.name.sort is NameSort.ROOM:
        if not new or any(sign in new for sign in '"“”\n\r'):
            raise CannotRenameError("A room's name is a text without quotation marks.")
    else:
        label = mention.name.sort is NameSort.RUN
        # The language itself is asked whether it reads the name as one.
        line = f"{new}: 1 in" if label else f"trim {new}: 1 in thick"
        statement, problems = read_line(line, "", 1)
        named = statement.label if isinstance(statement, tree.RunLine) else (
            statement.name if isinstance(statement, tree.TrimLine) else None
        )  # fmt: skip
        if problems or named is None or named.text != new:
            kind = "a word or a number" if label else "a word"
            raise CannotRenameError(f"“{new}” is no name for a {mention.name.sort}: write {kind}.")
    # Errors that were there already do not stand in the way. They are counted, since two alike on
    # one line are two.
    before = Counter(_place(error) for error in _errors(reading))
    for error in _errors(_tried(reading, edits)):
        if before[_place(error)] <= 0:
            raise CannotRenameError(f"“{new}” cannot stand there: {error.message}.")
        before[_place(error)] -= 1


def _errors(reading: JobReading) -> list[Diagnostic]:
    return [one for one in reading.result.diagnostics if one.severity is Severity.ERROR]


def _place(error: Diagnostic) -> tuple[str, str, int]:
    # Neither the message (it may hold the name) nor the columns: a rename changes no line's number.
    return error.code, error.span.file, error.span.line


def _tried(reading: JobReading, edits: Iterable[Edit]) -> JobReading:
    texts: dict[Path, str] = {}
    by_file: dict[str, list[Edit]] = {}
    for edit in edits:
        by_file.setdefault(edit.span.file, []).append(edit)
    for name, source in reading.result.sources.items():
        path = reading.path(name) or Path(reading.file)
        texts[path] = edited(source.text, by_file.get(name, ()))
    return read_job(reading.job, reading.file, texts, CachedSteps())


def edited(text: str, edits: Iterable[Edit]) -> str:
    """Return a file's text after edits that do not overlap, with each line's end kept."""
    mark = "\ufeff" if text.startswith("\ufeff") else ""
    lines = Source("", text).lines()
    ends = _ends(text.removeprefix("\ufeff"), lines)
    # From the end of the file to its beginning, so that no edit moves the place of a later one.
    for edit in sorted(edits, key=lambda one: one.span, reverse=True):
        span: Span = edit.span
        line = lines[span.line - 1]
        lines[span.line - 1] = line[: span.column - 1] + edit.text + line[span.end - 1 :]
    return mark + "".join(line + end for line, end in zip(lines, ends, strict=True))


def _ends(text: str, lines: list[str]) -> list[str]:
    """Return the characters that end each line: a file may mix CRLF and LF."""
    ends: list[str] = []
    at = 0
    for line in lines:
        at += len(line)
        end = text[at : at + 2] if text[at : at + 2] == "\r\n" else text[at : at + 1]
        ends.append(end)
        at += len(end)
    return ends
