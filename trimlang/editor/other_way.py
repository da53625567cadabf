"""Lists a room's walls in the other direction: for one that was walked turning left.

The walls come in the reverse order, beginning with the same one, and each left end becomes a
right end.  So every joint stays between the two walls that it was said of.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import groupby
from typing import Final

from trimlang.diagnostics import Diagnostic, Span
from trimlang.diagnostics.mend import Edit, Facts, Mend, marked
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


def in_the_other_direction(reading: JobReading, file: str, line: int) -> tuple[Edit, ...]:
    """Return what lists the walls of the room that a line begins the other way round.

    Nothing where the line begins no room, or where something measured from one end is said of
    it (a diagonal, a first stud), or a line of it cannot be read.
    """
    below = _room(reading, file, line)
    walls = [one for one in below if isinstance(one, tree.RunLine | tree.GapLine)]
    if len(walls) < 2 or any(one.span.file != file for one in walls):
        return ()
    if any(isinstance(one, tree.DiagonalLine | tree.Unreadable) for one in below):
        return ()
    said = [fact for one in walls for fact in one.facts]
    if any(isinstance(fact, facts.FirstStud | facts.Unread) for fact in said):
        return ()
    heading = below[0]
    is_open = isinstance(heading, tree.RoomLine) and any(
        isinstance(fact, facts.OpenWalk) for fact in heading.facts
    )
    # A room that comes round may begin anywhere, so it goes on beginning with the same wall.
    turned = walls[::-1] if is_open else [walls[0], *walls[:0:-1]]
    written = _with_sides(walls, [reading.text(one.span) for one in walls])
    at_place = {id(one): _swapped(text) for one, text in zip(walls, written, strict=True)}
    texts = [at_place[id(one)] for one in turned]
    edits: list[Edit] = []
    for line_at, places in groupby(walls, key=lambda one: one.span.line):
        spans = [one.span for one in places]
        # walls that share a line get one each: a line cannot begin with a door and go on with walls
        indent = re.match(r"\s*", reading.text(spans[0]))
        between = "\n" + (indent[0] if indent else "")
        whole = Span(file, line_at, spans[0].column, spans[-1].end)
        edits.append(Edit(whole, between.join(texts.pop(0) for _ in spans)))
    return tuple(edits)


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


def _with_sides(walls: list[tree.RunLine | tree.GapLine], lines: list[str]) -> list[str]:
    """Return the walls' texts in which a corner said between two of them has its side.

    ``lines`` are those that the walls stand in.  Before an opening or bare wall the corner is
    that one's left end.
    """
    texts: list[str] = []
    of_next = ""
    for at, (wall, line) in enumerate(zip(walls, lines, strict=True)):
        begin, end = wall.span.column - 1, wall.span.end - 1
        said = (fact for fact in wall.facts if isinstance(fact, facts.AtEnd) and fact.between)
        corner = next((fact.span for fact in said), None)
        text, after = line[begin:end] + of_next, walls[(at + 1) % len(walls)]
        of_next = ""
        if corner is not None:
            before, word = line[begin : corner.column - 1], line[corner.column - 1 : corner.end - 1]
            rest = text[len(before) + len(word) :]
            if isinstance(wall, tree.RunLine) and isinstance(after, tree.GapLine):
                text, of_next = before.rstrip(" ,") + rest, f", left={word}"
            else:
                text = f"{before}right={word}{rest}"
        texts.append(text)
    texts[0] += of_next
    return texts


def _swapped(text: str) -> str:
    """Return a wall's text with left for right; what stands in quotes stays."""
    return _SIDE.sub(lambda found: found[1] or Side(found[2].lower()).other, text)
