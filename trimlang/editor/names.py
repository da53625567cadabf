"""Finds each name in a job: where it is given, and where it is used."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from trimlang.diagnostics import Span
from trimlang.editor.block_names import blocks_in
from trimlang.editor.mention import Mention, Name, NameSort
from trimlang.joinery.cased_opening import OPENING_PARTS
from trimlang.language import tree
from trimlang.language.box_facts import BoxPlace
from trimlang.language.facts import named_trims
from trimlang.record import record
from trimlang.survey.room_tags import room_tag
from trimlang.survey.said_pieces import loose_label

# An opening without a name is called "after" or "before" the run beside it, in its pieces' ids.
_BY_A_RUN: Final = frozenset({"after", "before"})
_ON_RUNS: Final = (BoxPlace.ON, BoxPlace.ALONG)


@record
class RoomNames:
    """A room's heading and the runs below it, as written, and what loose pieces' ids call them."""

    heading: tree.RoomLine
    tag: str
    runs: tuple[tree.RunLine, ...]
    loose: tuple[str, ...] = ()


@record
class Names:
    """All the names of a job, and the rooms as they are written."""

    mentions: tuple[Mention, ...]
    rooms: tuple[RoomNames, ...]

    def at(self, file: str, line: int, column: int) -> Mention | None:
        """Return the mention at a place (counted from 1), its end included."""
        # Of two that touch, the later one: the end of a name is also where the next may begin.
        here = [
            one
            for one in self.mentions
            if one.span.line == line
            and one.span.file == file
            and one.span.column <= column <= one.span.end
        ]
        return here[-1] if here else None

    def of(self, name: Name) -> tuple[Mention, ...]:
        """Return all mentions of a name, in the order of the files."""
        return tuple(one for one in self.mentions if one.name == name)


def names_in(statements: Iterable[tree.Statement]) -> Names:
    """Return the names in a job's statements."""
    statements = tuple(statements)
    rooms = _rooms(statements)
    mentions = [*blocks_in(statements)]
    room = -1
    pieces = _Pieces(
        rooms, {line.name.text for line in statements if isinstance(line, tree.TrimLine)}
    )
    for line in statements:
        if isinstance(line, tree.TrimLine):
            mentions.append(_trim(line.name, gives=True))
        elif isinstance(line, tree.AssemblyLine):
            behind = (one.stands.trim for one in line.members if one.stands is not None)
            mentions += [_trim(line.name, gives=True), *map(_trim, (*line.trims, *behind))]
        elif isinstance(line, tree.HeadLine):
            mentions += [_trim(line.name, gives=True), *(_trim(one.trim) for one in line.members)]
        elif isinstance(line, tree.StockLine | tree.OnHandLine):
            mentions.append(_trim(line.name))
        elif isinstance(line, tree.RoomLine):
            room += 1
            # A room and its tag go by the room's number, as two rooms may have one name; a run goes
            # by its room and label.
            mentions.append(Mention(Name(NameSort.ROOM, "", room), _inside(line.name.span), True))
            if line.tag is not None:
                mentions.append(Mention(Name(NameSort.TAG, "", room), line.tag.span, True))
        elif isinstance(line, tree.RunLine) and room >= 0:
            label = line.label.text.casefold()
            mentions.append(Mention(Name(NameSort.RUN, label, room), line.label.span, True))
        elif isinstance(line, tree.BoxesLine) and room >= 0:
            ends = [line.wall.name] if line.wall.place in _ON_RUNS else []
            mentions.extend(
                Mention(Name(NameSort.RUN, word.text.casefold(), room), word.span)
                for word in (*ends, *([line.wall.last] if line.wall.last is not None else []))
            )
        elif isinstance(line, tree.LOG_LINES):
            mentions.extend(pieces.mentioned(line))
        for fact in getattr(line, "facts", ()):
            mentions.extend(_trim(word) for word in named_trims(fact))
    return Names(tuple(mentions), rooms)


def _trim(word: tree.Word, *, gives: bool = False) -> Mention:
    return Mention(Name(NameSort.TRIM, word.text), word.span, gives)


def _inside(span: Span) -> Span:
    """Return the place of a quoted text without its quotation marks."""
    return replace(span, column=span.column + 1, end=span.end - 1)


def _rooms(statements: tuple[tree.Statement, ...]) -> tuple[RoomNames, ...]:
    rooms: list[tuple[tree.RoomLine, str, list[tree.RunLine], list[str]]] = []
    tags: set[str] = set()
    for line in statements:
        if isinstance(line, tree.RoomLine):
            tag = line.tag.text if line.tag is not None else room_tag(line.name.text, tags)
            tags.add(tag)
            rooms.append((line, tag, [], []))
        elif isinstance(line, tree.RunLine) and rooms:
            rooms[-1][2].append(line)
        elif isinstance(line, tree.LoosePieceLine) and rooms:
            rooms[-1][3].append(line.name.text)
    return tuple(
        RoomNames(heading, tag, tuple(runs), _loose(called, runs))
        for heading, tag, runs, called in rooms
    )


def _loose(called: Iterable[str], runs: Iterable[tree.RunLine]) -> tuple[str, ...]:
    """Return what the ids of a room's loose pieces call them, in the order of the file."""
    runs_labels = [run.label.text for run in runs]
    labels: list[str] = []
    for name in called:
        labels.append(loose_label(name, [*runs_labels, *labels]))
    return tuple(labels)


class _Pieces:
    """Finds the names within the ids of pieces and sticks: ``ST-N-base``, ``base-1``."""

    def __init__(self, rooms: tuple[RoomNames, ...], trims: Iterable[str]) -> None:
        # The longest first, so that "base-cap" is not taken for "base".
        self._trims = sorted(trims, key=len, reverse=True)
        self._rooms = rooms
        # An opening's name may hold a trim's name, so it is taken as short as it can be.
        names = "|".join(map(re.escape, self._trims)) or r"(?!)"
        parts = "|".join(OPENING_PARTS)
        self._casing = re.compile(rf"(?P<opening>.+?)-(?P<trim>{names})-(?:{parts})(?:-|$)")
        self._box = re.compile(rf"(?:^|-)(?P<trim>{names})-\d+-(?:top|bottom|left|right)$")
        self._loose = re.compile(rf"(?P<label>.+)-(?P<trim>{names})(?:-\d+)?$")

    def mentioned(self, line: tree.LogLine | tree.BoughtLine | tree.RackLine) -> Iterator[Mention]:
        """Yield the tag, the run and the trim in each piece's id, and the trim in each stick's."""
        if isinstance(line, tree.BoughtLine):
            yield from (_trim(one.trim) for one in line.purchases)
        elif isinstance(line, tree.RackLine):
            yield _trim(line.name)
        else:
            for sawn in line.pieces:
                yield from self._of_piece(sawn.piece)
                if sawn.source is not None and sawn.source.stick is not None:
                    yield from self._of_stick(sawn.source.stick)

    def _of_stick(self, word: tree.Word) -> Iterator[Mention]:
        trim, _, number = word.text.rpartition("-")
        if trim and number.isdecimal():
            yield Mention(Name(NameSort.TRIM, trim), _part(word.span, 0, len(trim)))

    def _of_piece(self, word: tree.Word) -> Iterator[Mention]:
        ways = [
            way
            for number, room in enumerate(self._rooms)
            if word.text.startswith(f"{room.tag}-")
            for way in self._ways(word.text, number)
        ]
        if not ways:
            return
        # Names may hold hyphens too: ST-N-2-base is of run N-2 where there is one. The surest way
        # is taken, and of those the one with the longest tag and run.
        way = max(ways, key=lambda one: (one.sure, one.tag + one.run[1] - one.run[0]))
        yield Mention(Name(NameSort.TAG, "", way.room), _part(word.span, 0, way.tag))
        yield Mention(Name(NameSort.TRIM, word.text[slice(*way.trim)]), _part(word.span, *way.trim))
        if way.label is not None:
            run = Name(NameSort.RUN, way.label.casefold(), way.room)
            yield Mention(run, _part(word.span, *way.run))

    def _ways(self, text: str, number: int) -> Iterator[_Way]:
        yield from self._on_a_run(text, number)
        yield from self._on_an_opening(text, number)
        yield from self._on_no_wall(text, number)

    def _on_no_wall(self, text: str, number: int) -> Iterator[_Way]:
        """Take apart the id of a loose piece: ``ST-closet-cleat-pine-2``."""
        room = self._rooms[number]
        start = len(room.tag) + 1
        found = self._loose.match(text, start)
        if found is not None and found["label"] in room.loose:
            yield _Way(
                sure=1,
                room=number,
                tag=start - 1,
                label=None,
                run=(start, start),
                trim=found.span("trim"),
            )

    def _on_a_run(self, text: str, number: int) -> Iterator[_Way]:
        room = self._rooms[number]
        start = len(room.tag) + 1
        for run in room.runs:
            label = run.label.text
            end = start + len(label)
            # Labels are compared without case, as the survey does.
            if text[start:end].casefold() != label.casefold() or text[end : end + 1] != "-":
                continue
            after = text[end + 1 :]
            # A trim that has a line is surer than a word that only stands where a trim's name
            # would.
            known = next((one for one in self._trims if f"{after}-".startswith(f"{one}-")), None)
            box = self._box.search(after)
            trim = box["trim"] if box else known or after.split("-")[0]
            first = end + 1 + (box.start("trim") if box else 0)
            yield _Way(
                sure=2 if known or box else 0,
                room=number,
                tag=start - 1,
                label=label,
                run=(start, end),
                trim=(first, first + len(trim)),
            )

    def _on_an_opening(self, text: str, number: int) -> Iterator[_Way]:
        room = self._rooms[number]
        start = len(room.tag) + 1
        found = self._casing.match(text, start)
        if found is None:
            return
        opening, place = found["opening"], found.span("trim")
        # An opening without a name is called by the run beside it.
        where, _, label = opening.partition("-")
        for run in room.runs if where in _BY_A_RUN else ():
            written = run.label.text
            if re.fullmatch(re.escape(written) + r"(-\d+)?(-far)?", label):
                at = start + len(where) + 1
                yield _Way(
                    sure=1,
                    room=number,
                    tag=start - 1,
                    label=written,
                    run=(at, at + len(written)),
                    trim=place,
                )
        yield _Way(sure=1, room=number, tag=start - 1, label=None, run=(start, start), trim=place)


@record
class _Way:
    """One way to take a piece's id apart; places within it count from 0.

    ``tag`` is the tag's length and ``label`` the run's label, None where the id names none.
    """

    sure: int
    room: int
    tag: int
    label: str | None
    run: tuple[int, int]
    trim: tuple[int, int]


def _part(span: Span, first: int, last: int) -> Span:
    return replace(span, column=span.column + first, end=span.column + last)
