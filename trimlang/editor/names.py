"""Where each name stands in a job: where it is given, and where it is used."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import fields, is_dataclass, replace
from enum import StrEnum
from typing import Any, Final

from trimlang.diagnostics import Span
from trimlang.record import record
from trimlang.survey.tags import room_tag
from trimlang.syntax import tree

_TRIM_FACTS: Final = frozenset({"trims", "also_trim", "without", "in_front_of", "cased"})
_KNOWN: Final = (
    tree.TrimLine,
    tree.StockLine,
    tree.OnHandLine,
    tree.RoomLine,
    tree.RunLine,
    tree.GapLine,
    tree.Heading,
    tree.Include,
    tree.SettingLine,
    tree.Unreadable,
)


class Sort(StrEnum):
    """What a name names."""

    TRIM = "trim"
    ROOM = "room"
    TAG = "tag"
    RUN = "run"


@record
class Name:
    """What is named: two mentions with equal names mean the same thing.

    ``room`` is the number of the room that a tag, room or run belongs to,
    counted from 0 along the file; None for trims.
    """

    sort: Sort
    text: str
    room: int | None = None


@record
class Mention:
    """One place where a name stands; ``gives`` where it is given and not used."""

    name: Name
    span: Span
    gives: bool = False


@record
class RoomNames:
    """A room's heading and the runs below it, as written."""

    heading: tree.RoomLine
    tag: str
    runs: tuple[tree.RunLine, ...]


@record
class Names:
    """All names of a job."""

    mentions: tuple[Mention, ...]
    rooms: tuple[RoomNames, ...]

    def at(self, file: str, line: int, column: int) -> Mention | None:
        """Return the mention at a place (counted from 1), its end included."""
        here = [
            one
            for one in self.mentions
            if one.span.line == line
            and one.span.file == file
            and one.span.column <= column <= one.span.end
        ]
        return here[-1] if here else None

    def of(self, name: Name) -> tuple[Mention, ...]:
        """Return where a name stands, in the order of the files."""
        return tuple(one for one in self.mentions if one.name == name)


def names_in(statements: Iterable[tree.Statement]) -> Names:
    """Return where the names of a job stand."""
    statements = tuple(statements)
    rooms = _rooms(statements)
    mentions: list[Mention] = []
    room = -1
    pieces = _Pieces(
        rooms, {line.name.text for line in statements if isinstance(line, tree.TrimLine)}
    )
    for line in statements:
        if isinstance(line, tree.TrimLine):
            mentions.append(_trim(line.name, gives=True))
        elif isinstance(line, tree.StockLine | tree.OnHandLine):
            mentions.append(_trim(line.name))
        elif isinstance(line, tree.RoomLine):
            room += 1
            mentions.append(Mention(Name(Sort.ROOM, "", room), _inside(line.name.span), True))
            if line.tag is not None:
                mentions.append(Mention(Name(Sort.TAG, "", room), line.tag.span, True))
        elif isinstance(line, tree.RunLine) and room >= 0:
            label = line.label.text.casefold()
            mentions.append(Mention(Name(Sort.RUN, label, room), line.label.span, True))
        elif not isinstance(line, _KNOWN):
            mentions.extend(pieces.mentioned(line))
        for fact in getattr(line, "facts", ()):
            if fact.kind in _TRIM_FACTS:
                mentions.extend(_trim(word) for word in fact.values if isinstance(word, tree.Word))
    return Names(tuple(mentions), rooms)


def _trim(word: tree.Word, *, gives: bool = False) -> Mention:
    return Mention(Name(Sort.TRIM, word.text), word.span, gives)


def _inside(span: Span) -> Span:
    """Return the place of a quoted text without its quotes."""
    return replace(span, column=span.column + 1, end=span.end - 1)


def _rooms(statements: tuple[tree.Statement, ...]) -> tuple[RoomNames, ...]:
    rooms: list[tuple[tree.RoomLine, str, list[tree.RunLine]]] = []
    tags: set[str] = set()
    for line in statements:
        if isinstance(line, tree.RoomLine):
            tag = line.tag.text if line.tag is not None else room_tag(line.name.text, tags)
            tags.add(tag)
            rooms.append((line, tag, []))
        elif isinstance(line, tree.RunLine) and rooms:
            rooms[-1][2].append(line)
    return tuple(RoomNames(heading, tag, tuple(runs)) for heading, tag, runs in rooms)


class _Pieces:
    """Knows trims and the ids of pieces, ``ST-N-base``, in lines that are about pieces."""

    def __init__(self, rooms: tuple[RoomNames, ...], trims: set[str]) -> None:
        self._trims = trims
        self._tags = {room.tag: number for number, room in enumerate(rooms)}
        self._labels = [{run.label.text.casefold() for run in room.runs} for room in rooms]

    def mentioned(self, node: Any) -> Iterator[Mention]:
        """Yield the tag, the run and the trim of each piece that a line names."""
        if isinstance(node, tree.Word):
            yield from self._parts(node)
        elif isinstance(node, tuple):
            for part in node:
                yield from self.mentioned(part)
        elif is_dataclass(node):
            for field in fields(node):
                yield from self.mentioned(getattr(node, field.name))

    def _parts(self, word: tree.Word) -> Iterator[Mention]:
        text, span = word.text, word.span
        if text in self._trims:
            yield _trim(word)
            return
        start = span.column + (1 if span.end - span.column == len(text) + 2 else 0)

        def at(first: int, last: int) -> Span:
            return replace(span, column=start + first, end=start + last)

        for tag, room in self._tags.items():
            if not text.startswith(f"{tag}-"):
                continue
            for label in self._labels[room]:
                run = len(tag) + 1
                end = run + len(label)
                if text[run:end].casefold() != label or text[end : end + 1] != "-":
                    continue
                trim = text[end + 1 :].split("-")[0]
                yield Mention(Name(Sort.TAG, "", room), at(0, len(tag)))
                yield Mention(Name(Sort.TRIM, trim), at(end + 1, end + 1 + len(trim)))
                yield Mention(Name(Sort.RUN, label, room), at(run, end))
                return
