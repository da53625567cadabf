"""Lists a room's walls in the other direction: for one that was walked turning left.

The lines come in the reverse order, beginning with the same one, and so do the walls of each; each
left end becomes a right end.  So every joint stays between the two walls that it was said of.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import groupby, pairwise, zip_longest
from typing import Final

from trimlang.diagnostics import Diagnostic, Span
from trimlang.diagnostics.mend import Edit, Facts, Mend, marked
from trimlang.editor.mention import NameSort
from trimlang.editor.open_job import JobReading
from trimlang.language import facts, tree
from trimlang.language.end_facts import Side

_SIDE: Final = re.compile(r'("[^"]*"|“[^”]*”)|\b(left|right)\b', re.IGNORECASE)


OTHER_DIRECTION: Final = "List the walls in the other direction"


def listed_the_other_way(reading: JobReading, finding: Diagnostic) -> Iterator[Mend]:
    """Yield a mend for each room that a finding says may have been listed turning left."""
    facts: Facts = dict(finding.facts)
    headings: tuple[Span, ...] = facts.get("listed", ())
    for heading in headings:
        edits = in_the_other_direction(reading, finding.span.file, heading.line)
        if edits and heading.file == finding.span.file:
            of = "" if len(headings) == 1 else f" of {marked(heading, reading.text(heading))}"
            yield Mend(f"{OTHER_DIRECTION}{of}", edits)


def named_the_other_way(reading: JobReading, finding: Diagnostic) -> Iterator[Mend]:
    """Yield what swaps the names of east and west, where the walls only have the wrong names."""
    facts: Facts = dict(finding.facts)
    if "order" not in facts:
        return
    (heading,) = facts["listed"]
    rooms = [room.heading.span for room in reading.names.rooms]
    edits = tuple(
        Edit(one.span, _facing(text))
        for one in reading.names.mentions
        if one.name.sort is NameSort.RUN
        and one.name.room is not None
        and (rooms[one.name.room].file, rooms[one.name.room].line) == (heading.file, heading.line)
        and _facing(text := marked(one.span, reading.text(one.span))) != text
    )
    if edits:
        yield Mend("Swap the names of east and west", edits)


def _facing(label: str) -> str:
    """Return a wall's name with east for west; any other as it is."""
    said = re.match(r"(east|west|e|w)(?=\W?[0-9]*[a-z]?$)", label, re.IGNORECASE)
    if said is None:
        return label
    other = {"e": "w", "w": "e", "east": "west", "west": "east"}[said[0].lower()]
    word = other.upper() if said[0].isupper() else other
    return (word.title() if said[0].istitle() else word) + label[said.end() :]


def in_the_other_direction(reading: JobReading, file: str, line: int) -> tuple[Edit, ...]:
    """Return what lists the walls of the room that a line begins the other way round.

    Twice is the file as it was.  Nothing where the line begins no room, or where a stud is measured
    from one end, or a line of it cannot be read.
    """
    below = _room(reading, file, line)
    walls = [one for one in below if isinstance(one, tree.RunLine | tree.GapLine)]
    if len(walls) < 2 or any(one.span.file != file for one in walls):
        return ()
    said = [fact for one in walls for fact in one.facts]
    if any(isinstance(one, tree.Unreadable) for one in below) or any(
        isinstance(fact, facts.FirstStud | facts.Unread) for fact in said
    ):
        return ()
    texts = _turned(walls, [reading.text(one.span) for one in walls])
    lines = [list(of) for _, of in groupby(range(len(walls)), key=lambda at: walls[at].span.line)]
    heading = below[0]
    is_open = isinstance(heading, tree.RoomLine) and any(
        isinstance(fact, facts.OpenWalk) for fact in heading.facts
    )
    # A room that comes round may begin anywhere, so it goes on beginning with the same line; but a
    # wall that boxes go along may not begin at its end.
    along = any(isinstance(one, tree.BoxesLine) and one.wall.last for one in below)
    order = lines[::-1] if is_open or along else [lines[0], *lines[:0:-1]]
    edits = []
    for place, of in zip(lines, order, strict=True):
        number = walls[place[0]].span.line
        now, then = (reading.text(walls[one[0]].span) for one in (place, of))
        whole = Span(file, number, 1, len(now) + 1)
        edits.append(Edit(whole, _line(then, [walls[at].span for at in of], texts, of)))
    return (*edits, *(one for line in below for one in _other_ends(line, reading, walls)))


def _line(line: str, spans: list[Span], texts: list[str], places: list[int]) -> str:
    """Return a line with its walls in the other order, and all else of it as it was."""
    between = [line[one.end - 1 : other.column - 1] for one, other in pairwise(spans)]
    walls = [texts[at] for at in reversed(places)]
    said = "".join(map("".join, zip_longest(walls, reversed(between), fillvalue="")))
    return f"{line[: spans[0].column - 1]}{said}{line[spans[-1].end - 1 :]}"


def _other_ends(
    line: tree.Statement, reading: JobReading, walls: list[tree.RunLine | tree.GapLine]
) -> Iterator[Edit]:
    """Yield what names the same two walls of a diagonal, or of boxes along a wall, in turn."""
    if isinstance(line, tree.DiagonalLine):
        labels = {one.label.text.casefold() for one in walls if isinstance(one, tree.RunLine)}
        name = line.walls.text
        for at, sign in enumerate(name):
            first, last = name[:at], name[at + 1 :]
            if sign == "-" and {first.casefold(), last.casefold()} <= labels:
                yield Edit(line.walls.span, f"{last}-{first}")
                return
    elif isinstance(line, tree.BoxesLine) and line.wall.last is not None:
        one, other = line.wall.name, line.wall.last
        said = [marked(word.span, reading.text(word.span)) for word in (one, other)]
        # The later place first, so that the earlier one is still right when it is changed.
        yield from (Edit(other.span, said[0]), Edit(one.span, said[1]))


def _room(reading: JobReading, file: str, line: int) -> list[tree.Statement]:
    found: list[tree.Statement] = []
    for one in reading.gathered.statements:
        if isinstance(one, tree.RoomLine):
            if found:
                break
            if (one.span.file, one.span.line) == (file, line):
                found.append(one)
        elif found:
            found.append(one)
    return found


def _turned(walls: list[tree.RunLine | tree.GapLine], lines: list[str]) -> list[str]:
    """Return the walls' texts with left for right; ``lines`` are those that they stand in.

    A corner that is said between two walls stands behind the one that now comes first.
    """
    texts: list[str] = []
    corners: dict[int, str] = {}
    for at, (wall, line) in enumerate(zip(walls, lines, strict=True)):
        begin, end = wall.span.column - 1, wall.span.end - 1
        said = (fact for fact in wall.facts if isinstance(fact, facts.AtEnd) and fact.between)
        corner = next((fact.span for fact in said), None)
        text = line[begin:end]
        if corner is not None:
            before = line[begin : corner.column - 1].rstrip(" ,")
            corners[(at + 1) % len(walls)] = line[corner.column - 1 : corner.end - 1]
            text = before + line[corner.end - 1 : end]
        texts.append(_SIDE.sub(lambda found: found[1] or Side(found[2].lower()).other, text))
    for at, corner_said in corners.items():
        # a wall with a colon stands in a line of its own, where each end has its side
        has_colon = re.match(r"[^\s:,]+\s*:", texts[at]) is not None
        texts[at] += f", right={corner_said}" if has_colon else f", {corner_said}"
    return texts
