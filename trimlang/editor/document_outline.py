"""The outline of a file: its rooms and their walls, its trims, its settings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from enum import StrEnum
from typing import Final

from trimlang.diagnostics import Span
from trimlang.editor.open_job import JobReading
from trimlang.language import tree
from trimlang.language.facts import Called
from trimlang.record import record


class EntrySort(StrEnum):
    """What an entry of the outline stands for."""

    JOB = "job"
    FILE = "file"
    TRIM = "trim"
    STOCK = "stock"
    SETTING = "setting"
    ROOM = "room"
    RUN = "run"
    GAP = "gap"
    PIECE = "piece"
    LINE = "line"


_BELOW_ROOM: Final = (EntrySort.RUN, EntrySort.GAP, EntrySort.PIECE, EntrySort.SETTING)


@record
class Entry:
    """One line of the outline.

    ``span`` is the name to select; ``whole`` begins what belongs to it, down to ``last_line``.
    """

    text: str
    detail: str
    sort: EntrySort
    span: Span
    whole: Span
    last_line: int
    below: tuple[Entry, ...] = ()


def outline(reading: JobReading, file: str) -> tuple[Entry, ...]:
    """Return the outline of one file of a job, rooms with their walls below them."""
    top: list[Entry] = []
    for line in reading.gathered.statements:
        if line.span.file != file:
            continue
        entry = _entry(reading, line)
        if entry is None:
            continue
        if top and top[-1].sort is EntrySort.ROOM and entry.sort in _BELOW_ROOM:
            room = top[-1]
            # Entries are frozen: the room is made again with the wall below it, and now reaches
            # down to that wall's line.
            top[-1] = replace(room, below=(*room.below, entry), last_line=entry.last_line)
        else:
            top.append(entry)
    return tuple(top)


def _entry(reading: JobReading, line: tree.Statement) -> Entry | None:
    for text, detail, sort, span in _named(reading, line):
        return Entry(
            # The protocol refuses an entry without a name.
            text=text or "…",
            detail=detail,
            sort=sort,
            span=span,
            whole=line.span,
            last_line=line.span.line,
        )
    return None


def _named(reading: JobReading, line: tree.Statement) -> Iterator[tuple[str, str, EntrySort, Span]]:
    written = _written(reading, line.span)
    if isinstance(line, tree.Heading):
        yield line.word.text, line.topic, EntrySort.JOB, line.word.span
    elif isinstance(line, tree.TrimLine):
        yield line.name.text, _after_colon(written), EntrySort.TRIM, line.name.span
    elif isinstance(line, tree.BlockLine | tree.HeadLine):
        yield written.split(":")[0].strip(), _after_colon(written), EntrySort.TRIM, line.name.span
    elif isinstance(line, tree.StockLine):
        yield f"stock {line.name.text}", _after_colon(written), EntrySort.STOCK, line.name.span
    elif isinstance(line, tree.OnHandLine):
        yield f"on-hand {line.name.text}", _after_colon(written), EntrySort.STOCK, line.name.span
    elif isinstance(line, tree.RoomLine):
        tag = line.tag.text if line.tag is not None else ""
        yield line.name.text, tag, EntrySort.ROOM, line.name.span
    elif isinstance(line, tree.RunLine):
        yield line.label.text, _written(reading, line.length.span), EntrySort.RUN, line.label.span
    elif isinstance(line, tree.GapLine):
        called = next(
            (fact.text.text for fact in line.facts if isinstance(fact, Called)), line.kind.value
        )
        yield called, _written(reading, line.width.span), EntrySort.GAP, line.span
    elif isinstance(line, tree.LoosePieceLine):
        count = "" if line.count is None else f"{line.count.value} of "
        long = count + _written(reading, line.length.span)
        yield line.name.text, long, EntrySort.PIECE, line.name.span
    elif isinstance(line, tree.BoxesLine):
        yield written.split(":")[0].strip(), _after_colon(written), EntrySort.PIECE, line.span
    elif isinstance(line, tree.SettingLine):
        yield written.split(":")[0].strip(), _after_colon(written), EntrySort.SETTING, line.span
    # A line that is only half typed would come and go in the outline at each key stroke.
    elif not isinstance(line, tree.Unreadable | tree.Include):
        yield written, "", EntrySort.LINE, line.span


def _written(reading: JobReading, span: Span) -> str:
    return reading.text(span)[span.column - 1 : span.end - 1].strip()


def _after_colon(written: str) -> str:
    return written.partition(":")[2].strip()
