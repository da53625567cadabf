"""Writes the job file of a list of measurements: rooms, walls, openings, and remarks."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

from trimlang.diagnostics import Diagnostic, say
from trimlang.language.vocabulary import not_a_label
from trimlang.record import record
from trimlang.tables.cell_findings import span_of
from trimlang.tables.cells import Cell, TableRow
from trimlang.tables.list_words import DIRECTIONS, gap_word

_QUOTES: Final = re.compile('["“”\\s]+')
_NOT_IN_A_NAME: Final = re.compile(r"[^\w.\-]+")


@record
class Listed:
    """The job file's lines, the rows that were left out, and what was guessed."""

    lines: tuple[str, ...]
    findings: tuple[Diagnostic, ...]
    remarks: tuple[str, ...]


def unquoted(text: str) -> str:
    """Return a text such that it can stand between quotation marks in a job file."""
    return _QUOTES.sub(" ", text).strip()


def _is_a_word(label: str) -> bool:
    """Tell whether a label is a word of the language that a reader would take for it.

    With its colon “left: 3 m” is read as a wall, by people too.
    """
    word = label.casefold()
    return word not in DIRECTIONS and not_a_label(label) == word


class ListWriter:
    """Collects a job file's lines, room by room, and tells of every row that gives none.

    A room that the list comes back to goes on where it ended.
    """

    def __init__(self, path: Path, include: str | None) -> None:
        self._path = path
        self._first = [] if include is None else [f'include "{include}"']
        self._rooms: dict[str, list[str]] = {}
        self._labels: dict[str, set[str]] = {}
        self._findings: list[Diagnostic] = []
        self._room: str | None = None
        self.remarks: list[str] = []
        self.says_ends = False

    def listed(self) -> Listed:
        """Return what was made."""
        lines = list(self._first)
        # Job files part their rooms by a blank line; the first line of all has none before it.
        for written in self._rooms.values():
            lines += ["", *written] if lines else written
        if not self.says_ends:
            self.remarks.append("how walls meet is not in the list: inside corners are written")
        return Listed(tuple(lines), tuple(self._findings), tuple(self.remarks))

    def has_room(self, name: str) -> bool:
        """Tell whether a room of that name has begun."""
        return name.casefold() in self._rooms

    def begin(self, room: str | None) -> None:
        """Begin a room where the list names another, or none has begun."""
        if room is None and self._room is not None:
            # A list that names its rooms once goes on in the room that has begun.
            return
        name = unquoted(room) if room is not None else ""
        if not name:
            # Measured rooms are often saved one a file, under the room's name.
            name = unquoted(self._path.stem) or "Room"
            if not self.has_room(name):
                self.remarks.append(f"no room is named: the walls are in room “{name}”")
        self._room = name.casefold()
        if self._room not in self._rooms:
            # Most corners are inside ones, and a remark tells that this was not measured.  Where a
            # list says its ends, one that it leaves out is asked about.
            ends = "" if self.says_ends else ", ends in"
            self._rooms[self._room] = [f'room "{name}"{ends}']
            self._labels[self._room] = set()

    def wall(self, name: str, long: str, note: str, ends: str = "") -> None:
        """Write a wall, or an opening where it is called one; a name that is no label is noted.

        ``ends`` is what the list says of how it meets its neighbours, as a job file does.
        """
        called = unquoted(name)
        word = gap_word(called)
        said = f', note "{note}"' if note else ""
        if word is not None:
            self._add(f'  {word} {long}, "{called}"{said}')
            return
        labels = self._labels[self._room or ""]
        # A label becomes part of ids on every sheet, so it is plain; the full name stays as a note.
        label = _NOT_IN_A_NAME.sub("-", called).strip("-.")
        if not label or not (label[0].isalpha() or label.isdigit()) or _is_a_word(label):
            # A wall without a usable name still needs one: every piece's id begins with it.
            label = f"W{len(labels) + 1}"
        plain, number = label, 2
        # Two walls may be called alike in the list, and never in a job.
        while label.casefold() in labels:
            label, number = f"{plain}-{number}", number + 1
            # A name that begins with a figure would be read as a length without its colon.
            label = label if label[0].isalpha() else f"W{label}"
        labels.add(label.casefold())
        if called and called != plain and not note:
            said = f', note "{called}"'
        self._add(f"  {label}: {long}{ends}{said}")

    def leave_out(self, row: TableRow, cell: Cell, why: str, text: str | None = None) -> None:
        """Tell of a row that is left out, and keep its place with a remark that holds its text."""
        self._findings.append(say("T650", span_of(self._path, cell), row=row.number, why=why))
        if text is None:
            text = " ".join(one.text for one in row.cells)
        # A wall that is missing without a trace would close the room over it.
        self._add(f"  # row {row.number} is left out: {' '.join(text.split())}")

    def ask(self, row: TableRow, column: str, cell: Cell, why: str) -> None:
        """Tell of an end that is not understood, and keep what its cell says as a remark."""
        said = unquoted(cell.text)
        span = span_of(self._path, cell)
        self._findings.append(say("T670", span, row=row.number, column=column, said=said, why=why))
        self._add(f"  # row {row.number}, {column}: {said}")

    def _add(self, line: str) -> None:
        lines = self._first if self._room is None else self._rooms[self._room]
        lines.append(line)
