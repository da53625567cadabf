"""The house overview: rooms side by side, as the openings between them tell.

Two rooms are joined where an opening of each is called after the other: "door
to hall" in the sitting room, "door to sitting room" in the hall.  The second
room is turned and moved until its opening faces the first one's, back to back.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import cos, hypot, radians, sin
from typing import Final

from trimlang.compiler import Result
from trimlang.sheets.floor import (
    Label,
    Line,
    Paper,
    Point,
    Wall,
    fixed,
    inward,
    jamb,
    line,
    scale_text,
    walls,
)
from trimlang.sheets.pen import Pen
from trimlang.survey.job import Gap, Room, Run
from trimlang.survey.outline import outline

TALL: Final = 200.0
"""What the drawings together may take of the page's height (mm); each has some 25 mm besides."""
LOWEST: Final = 40.0
GAP: Final = 5.0
"""The wall between two rooms as drawn (inches): about a partition; nobody measures it."""
GRID: Final = 12
"""How finely a room is searched for the middle of its floor."""
LETTER: Final = 0.65
"""About how wide a letter is beside its size."""
Shape = tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Overview:
    """Rooms that hang together, drawn as one; coordinates are millimetres on paper.

    ``rooms`` lists tag and name of each room that is drawn.
    """

    scale: str
    wide: str
    tall: str
    lines: tuple[Line, ...]
    labels: tuple[Label, ...]
    rooms: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class House:
    """The overview's drawings (often one a storey), and the rooms that are in none.

    ``apart`` names the rooms that no named opening joins to another, ``across``
    those whose opening is named but which would lie over another room.
    """

    groups: tuple[Overview, ...]
    apart: tuple[str, ...]
    across: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Link:
    """An opening of one room (its place in the walk) and the one of another that faces it."""

    own: int
    room: int
    other: int


@dataclass(frozen=True, slots=True)
class Placed:
    """A room, by its number, where it lies beside others."""

    room: int
    walk: tuple[Wall, ...]

    @property
    def shape(self) -> Shape:
        """The room's corners, in the order of the walk."""
        ends = (*(wall.start for wall in self.walk), self.walk[-1].end)
        # a walk that closes comes back to its start: that corner counts once
        return ends[:-1] if _far(ends[0], ends[-1]) < 1 else ends


def house(result: Result, pen: Pen) -> House:
    """Lay the rooms side by side through the openings that they share."""
    rooms = [room for room in result.job.rooms if room.walk]
    links = _links(rooms)
    walks = [walls(room, outline(room, result.job.trims)) for room in rooms]
    groups, across = _grouped(rooms, walks, links)
    return House(
        _drawn(groups, rooms, pen),
        tuple(room.name for number, room in enumerate(rooms) if not links[number]),
        tuple(across),
    )


def side_by_side(rooms: Sequence[Room], walks: Sequence[tuple[Wall, ...]]) -> list[list[Placed]]:
    """Return the rooms in groups that hang together through their openings, each in its place."""
    groups, _ = _grouped(rooms, walks, _links(rooms))
    held = {one.room for group in groups for one in group}
    alone = [[Placed(n, walk)] for n, walk in enumerate(walks) if n not in held]
    return sorted(groups + alone, key=lambda group: group[0].room)


def _grouped(
    rooms: Sequence[Room],
    walks: Sequence[tuple[Wall, ...]],
    links: Sequence[Sequence[_Link]],
) -> tuple[list[list[Placed]], list[str]]:
    """Return the groups of two rooms and more, and the names of rooms that fit in none."""
    groups: list[list[Placed]] = []
    left = {number for number in range(len(rooms)) if links[number]}
    across: list[str] = []
    while left:
        # the room with most doors is most likely the one that the others lie round
        root = min(left, key=lambda number: (-len(links[number]), number))
        placed = _around(root, links, walks, left)
        if len(placed) > 1:
            groups.append(sorted(placed, key=lambda one: one.room))
        else:
            across.append(rooms[root].name)
        left -= {one.room for one in placed}
    groups.sort(key=lambda group: group[0].room)
    return groups, across


def _links(rooms: Sequence[Room]) -> list[list[_Link]]:
    """Return for each room the openings that face one of another room."""
    named = [dict(_named(room, rooms)) for room in rooms]
    found: list[list[_Link]] = [[] for _ in rooms]
    for one, doors in enumerate(named):
        for other in sorted({room for room in doors.values() if room > one}):
            back = [own for own, room in named[other].items() if room == one]
            ahead = [own for own, room in doors.items() if room == other]
            if not back:
                continue
            own, facing = min(
                ((a, b) for a in ahead for b in back),
                key=lambda pair: (_unlike(rooms[one], pair[0], rooms[other], pair[1]), pair),
            )
            found[one].append(_Link(own, other, facing))
            found[other].append(_Link(facing, one, own))
    return found


def _unlike(one: Room, own: int, other: Room, facing: int) -> float:
    """How much two openings differ in width."""
    first, second = one.walk[own], other.walk[facing]
    assert isinstance(first, Gap)  # noqa: S101 - _named gives openings only
    assert isinstance(second, Gap)  # noqa: S101
    return abs(float(first.width - second.width))


def _named(room: Room, rooms: Sequence[Room]) -> Iterator[tuple[int, int]]:
    """Yield each opening that is called after another room: its place, and that room's."""
    for place, stretch in enumerate(room.walk):
        if not isinstance(stretch, Gap) or stretch.kind != "opening" or not stretch.called:
            continue
        called = stretch.called.casefold()
        fits = [
            (-len(other.name), number)
            for number, other in enumerate(rooms)
            if other.name != room.name
            and re.search(rf"(?<!\w){re.escape(other.name.casefold())}(?!\w)", called)
        ]
        if fits:
            yield place, min(fits)[1]


def _around(
    root: int,
    links: Sequence[Sequence[_Link]],
    walks: Sequence[tuple[Wall, ...]],
    left: set[int],
) -> list[Placed]:
    """Place the rooms of ``left`` that hang on ``root``, nearest first, where none overlap."""
    placed = [Placed(root, walks[root])]
    known = {root}
    for one in placed:  # grows on the way
        for link in links[one.room]:
            if link.room in known or link.room not in left:
                continue
            walk = _facing(one.walk[link.own], walks[link.room], link.other)
            moved = Placed(link.room, walk)
            if not any(_overlap(moved.shape, other.shape) for other in placed):
                known.add(link.room)
                placed.append(moved)
    return placed


def _facing(door: Wall, walk: tuple[Wall, ...], place: int) -> tuple[Wall, ...]:
    """Turn and move a walk so that its wall ``place`` faces ``door`` from behind."""
    own = walk[place]
    turn = door.heading + 180 - own.heading
    way = inward(door)
    to = _middle(door.start, door.end)
    to = (to[0] - way[0] * GAP, to[1] - way[1] * GAP)
    middle = _middle(own.start, own.end)
    across, along = sin(radians(turn)), cos(radians(turn))

    def moved(point: Point) -> Point:
        x, y = point[0] - middle[0], point[1] - middle[1]
        return (to[0] + x * along - y * across, to[1] + x * across + y * along)

    return tuple(
        replace(
            wall,
            start=moved(wall.start),
            end=moved(wall.end),
            heading=(wall.heading + turn) % 360,
        )
        for wall in walk
    )


def _overlap(one: Shape, other: Shape) -> bool:
    """Whether two rooms lie over each other."""
    if any(
        max(p[axis] for p in one) <= min(p[axis] for p in other)
        or max(p[axis] for p in other) <= min(p[axis] for p in one)
        for axis in (0, 1)
    ):
        return False
    if any(_inside(point, other) for point in _sample(one)):
        return True
    if any(_inside(point, one) for point in _sample(other)):
        return True
    return any(_cross(*a, *b) for a in _sides(one) for b in _sides(other))


def _sample(shape: Shape) -> Iterator[Point]:
    """A room's corners, the middles of its sides, and the middle of its floor."""
    yield from shape
    yield from (_middle(a, b) for a, b in _sides(shape))
    yield roomiest(shape)


def _sides(shape: Shape) -> list[tuple[Point, Point]]:
    return list(zip(shape, (*shape[1:], shape[0]), strict=True))


def _inside(point: Point, shape: Shape) -> bool:
    x, y = point
    found = False
    for (ax, ay), (bx, by) in _sides(shape):
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            found = not found
    return found


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def _reach(point: Point, shape: Shape) -> float:
    """How far it is from a place on the floor to the nearest wall on the left or right."""
    x, y = point
    return min(
        (
            abs(ax + (bx - ax) * (y - ay) / (by - ay) - x)
            for (ax, ay), (bx, by) in _sides(shape)
            if (ay > y) != (by > y)
        ),
        default=0.0,
    )


def roomiest(shape: Shape) -> Point:
    """Return the place on the floor furthest from every wall."""
    left, top = min(x for x, _ in shape), min(y for _, y in shape)
    wide, tall = max(x for x, _ in shape) - left, max(y for _, y in shape) - top
    places = [
        (left + wide * (column + 0.5) / GRID, top + tall * (row + 0.5) / GRID)
        for row in range(GRID)
        for column in range(GRID)
    ]
    free = [
        (round(min(_distance(place, *side) for side in _sides(shape)), 6), -number)
        for number, place in enumerate(places)
        if _inside(place, shape)
    ]
    if not free:
        return _middle(shape[0], shape[len(shape) // 2])
    return places[-max(free)[1]]


def _distance(point: Point, a: Point, b: Point) -> float:
    dx, dy = b[0] - a[0], b[1] - a[1]
    size = dx * dx + dy * dy
    along = ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / size if size else 0.0
    along = min(max(along, 0.0), 1.0)
    return _far(point, (a[0] + along * dx, a[1] + along * dy))


def _far(a: Point, b: Point) -> float:
    return hypot(a[0] - b[0], a[1] - b[1])


def _middle(a: Point, b: Point) -> Point:
    return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)


def _drawn(
    groups: Sequence[Sequence[Placed]], rooms: Sequence[Room], pen: Pen
) -> tuple[Overview, ...]:
    """Draw all groups to one scale, that which the largest of them wants."""
    unit = pen.unit
    tall = max(TALL / max(len(groups), 1) - 25 * (len(groups) > 1), LOWEST)
    walks = [tuple(wall for one in group for wall in one.walk) for group in groups]
    least = max((Paper(walk, unit, tall).scale for walk in walks), default=0)
    return tuple(
        _draw(group, rooms, Paper(walk, unit, tall, least), pen)
        for group, walk in zip(groups, walks, strict=True)
    )


def _draw(placed: Sequence[Placed], rooms: Sequence[Room], paper: Paper, pen: Pen) -> Overview:
    lines: list[Line] = []
    labels: list[Label] = []
    for one in placed:
        for wall in one.walk:
            ends = paper.at(wall.start), paper.at(wall.end)
            if isinstance(wall.stretch, Run):
                lines.append(line("wall", *ends))
            else:
                lines += [line(wall.stretch.kind, *ends), *(jamb(wall, end) for end in ends)]
        labels += _names(one, rooms[one.room], paper)
    return Overview(
        scale_text(paper.scale, pen),
        fixed(paper.wide),
        fixed(paper.tall),
        tuple(lines),
        tuple(labels),
        tuple((rooms[one.room].tag, rooms[one.room].name) for one in placed),
    )


def _names(one: Placed, room: Room, paper: Paper) -> Iterator[Label]:
    """The tag in the middle of the floor, and the name below it where there is room."""
    place = roomiest(one.shape)
    x, y = paper.at(place)
    below = (place[0], place[1] + 2.6 / paper.factor)
    free = min(_reach(below, one.shape), _reach(place, one.shape)) * paper.factor
    fits = len(room.name) * LETTER * 2.4 / 2 < free
    yield Label("run", fixed(x), fixed(y if fits else y + 1.1), "0.00", room.tag)
    if fits:
        yield Label("gap", fixed(x), fixed(y + 3.4), "0.00", room.name)
