"""Places rooms side by side by the openings between them.

Two rooms are joined where an opening of each is called after the other: "door
to hall" in the sitting room, "door to sitting room" in the hall.  The second
room is turned and moved until its opening faces the first one's, back to back.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import cos, radians, sin
from typing import Final

from trimlang.language.tree import GapKind
from trimlang.record import record
from trimlang.sheets.drawing.plan_scale import DrawnWall, inward
from trimlang.sheets.drawing.polygons import Point, Shape, far, middle, overlap
from trimlang.survey.job import Gap, Room

GAP: Final = 5.0
"""The wall between two rooms as drawn (inches): about a partition; nobody measures it."""


@record
class Link:
    """An opening of one room (its place in the walk) and the opening of another that faces it."""

    own: int
    room: int
    other: int


@record
class Placed:
    """A room by its number, and its walk moved to its place in the drawing."""

    room: int
    walk: tuple[DrawnWall, ...]

    @property
    def shape(self) -> Shape:
        """The room's floor."""
        ends = (*(at for wall in self.walk for at in wall.points[:-1]), self.walk[-1].end)
        # A walk that closes ends where it starts: that corner counts once.
        return ends[:-1] if far(ends[0], ends[-1]) < 1 else ends


def links_of(rooms: Sequence[Room]) -> list[list[Link]]:
    """Return for each room the openings that face one of another room."""
    named = [dict(_named(room, rooms)) for room in rooms]
    found: list[list[Link]] = [[] for _ in rooms]
    for one, doors in enumerate(named):
        for other in sorted({room for room in doors.values() if room > one}):
            back = [own for own, room in named[other].items() if room == one]
            ahead = [own for own, room in doors.items() if room == other]
            # Both rooms must name each other; otherwise nothing says which openings belong
            # together.
            if not back:
                continue
            # Of several openings between two rooms, those most alike in width face each other.
            own, facing = min(
                ((a, b) for a in ahead for b in back),
                key=lambda pair: (_unlike(rooms[one], pair[0], rooms[other], pair[1]), pair),
            )
            found[one].append(Link(own, other, facing))
            found[other].append(Link(facing, one, own))
    return found


def _unlike(one: Room, own: int, other: Room, facing: int) -> float:
    """Return by how much two openings differ in width (inches)."""
    first, second = one.walk[own], other.walk[facing]
    assert isinstance(first, Gap)  # noqa: S101 - _named gives openings only
    assert isinstance(second, Gap)  # noqa: S101
    return abs(float(first.width - second.width))


def _named(room: Room, rooms: Sequence[Room]) -> Iterator[tuple[int, int]]:
    """Yield each opening that is named after another room: its place, and that room's number."""
    for place, stretch in enumerate(room.walk):
        if (
            not isinstance(stretch, Gap)
            or stretch.kind is not GapKind.OPENING
            or not stretch.called
        ):
            continue
        called = stretch.called.casefold()
        fits = [
            # The longest name that fits: "hall closet" before "hall".
            (-len(other.name), number)
            for number, other in enumerate(rooms)
            if other.name != room.name
            and re.search(rf"(?<!\w){re.escape(other.name.casefold())}(?!\w)", called)
        ]
        if fits:
            yield place, min(fits)[1]


def around(
    root: int,
    links: Sequence[Sequence[Link]],
    walks: Sequence[tuple[DrawnWall, ...]],
    left: set[int],
) -> list[Placed]:
    """Place the rooms of ``left`` joined to ``root``, nearest first, if they overlap no other."""
    placed = [Placed(root, walks[root])]
    known = {root}
    # Nearest first: an error of a corner adds up from room to room, and in this order no chain is
    # longer than it must be.
    for one in placed:  # grows on the way
        for link in links[one.room]:
            if link.room in known or link.room not in left:
                continue
            walk = _facing(one.walk[link.own], walks[link.room], link.other)
            moved = Placed(link.room, walk)
            # A room that would lie over another was measured wrong or joined wrong; it is drawn by
            # itself instead of hiding one.
            if not any(overlap(moved.shape, other.shape) for other in placed):
                known.add(link.room)
                placed.append(moved)
    return placed


def _facing(door: DrawnWall, walk: tuple[DrawnWall, ...], place: int) -> tuple[DrawnWall, ...]:
    """Return a walk turned and moved so that its opening ``place`` backs onto ``door``."""
    own = walk[place]
    # Two openings that face each other have opposite headings, as both rooms turn right.
    turn = door.heading + 180 - own.heading
    way = inward(door)
    to = middle(door.start, door.end)
    # Out of the first room by the thickness of the wall between them.
    to = (to[0] - way[0] * GAP, to[1] - way[1] * GAP)
    centre = middle(own.start, own.end)
    across, along = sin(radians(turn)), cos(radians(turn))

    def moved(point: Point) -> Point:
        x, y = point[0] - centre[0], point[1] - centre[1]
        return (to[0] + x * along - y * across, to[1] + x * across + y * along)

    return tuple(
        replace(
            wall,
            start=moved(wall.start),
            end=moved(wall.end),
            round_by=tuple(map(moved, wall.round_by)),
            heading=(wall.heading + turn) % 360,
        )
        for wall in walk
    )
