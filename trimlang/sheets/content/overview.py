"""The house overview: rooms joined by openings, drawn side by side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from trimlang.compiler import Result
from trimlang.record import record
from trimlang.sheets.drawing.door_leaf import Door
from trimlang.sheets.drawing.lettering import SIZES
from trimlang.sheets.drawing.neighbours import Link, Placed, around, links_of
from trimlang.sheets.drawing.plan_scale import (
    DrawnLabel,
    DrawnLine,
    DrawnWall,
    Paper,
    fixed,
    jamb,
    line,
    scale_text,
    wall_lines,
    walls,
)
from trimlang.sheets.drawing.polygons import reach, roomiest
from trimlang.sheets.drawing.typeface import run
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Room, Run
from trimlang.survey.outline import outline

TALL: Final = 200.0
"""How much of the page's height all drawings may take (mm), without 25 mm of text for each."""
LOWEST: Final = 40.0


@record
class Overview:
    """Rooms joined by openings, drawn as one; coordinates are millimetres on paper.

    ``leaves`` are doors that are hinged on a side, as the ``d`` of a path each; ``rooms`` lists
    tag and name of each room that is drawn.
    """

    scale: str
    wide: str
    tall: str
    lines: tuple[DrawnLine, ...]
    leaves: tuple[str, ...]
    labels: tuple[DrawnLabel, ...]
    rooms: tuple[tuple[str, str], ...]


@record
class House:
    """The overview's drawings (often one for a storey), and the rooms that are in none.

    ``apart`` names the rooms that no named opening joins to another, ``across``
    those whose opening is named but which would overlap another room.
    """

    groups: tuple[Overview, ...]
    apart: tuple[str, ...]
    across: tuple[str, ...]


def house(result: Result, pen: Pen) -> House:
    """Lay the rooms side by side through the openings that they share."""
    rooms = [room for room in result.job.rooms if room.walk]
    links = links_of(rooms)
    walks = [walls(room, outline(room, result.job.trims)) for room in rooms]
    groups, across = _grouped(rooms, walks, links)
    return House(
        _drawn(groups, rooms, pen),
        tuple(room.name for number, room in enumerate(rooms) if not links[number]),
        tuple(across),
    )


def side_by_side(
    rooms: Sequence[Room], walks: Sequence[tuple[DrawnWall, ...]]
) -> list[list[Placed]]:
    """Return the rooms in groups joined by openings, each room in its place."""
    groups, _ = _grouped(rooms, walks, links_of(rooms))
    held = {one.room for group in groups for one in group}
    alone = [[Placed(n, walk)] for n, walk in enumerate(walks) if n not in held]
    return sorted(groups + alone, key=lambda group: group[0].room)


def _grouped(
    rooms: Sequence[Room],
    walks: Sequence[tuple[DrawnWall, ...]],
    links: Sequence[Sequence[Link]],
) -> tuple[list[list[Placed]], list[str]]:
    """Return the groups of two and more rooms, and the names of rooms that fit in none."""
    groups: list[list[Placed]] = []
    left = {number for number in range(len(rooms)) if links[number]}
    across: list[str] = []
    while left:
        # The room with the most doors comes first: it is most likely the hall round which others
        # lie.
        root = min(left, key=lambda number: (-len(links[number]), number))
        placed = around(root, links, walks, left)
        if len(placed) > 1:
            groups.append(sorted(placed, key=lambda one: one.room))
        else:
            # Its neighbour's place was taken, or drawing it would put one room over another.
            across.append(rooms[root].name)
        left -= {one.room for one in placed}
    groups.sort(key=lambda group: group[0].room)
    return groups, across


def _drawn(
    groups: Sequence[Sequence[Placed]], rooms: Sequence[Room], pen: Pen
) -> tuple[Overview, ...]:
    """Draw all groups to one scale, the scale at which the largest fits."""
    unit = pen.unit
    tall = max(TALL / max(len(groups), 1) - 25 * (len(groups) > 1), LOWEST)
    walks = [tuple(wall for one in group for wall in one.walk) for group in groups]
    doors = [[door for wall in walk if (door := Door.of(wall)) is not None] for walk in walks]
    # A leaf that opens outwards may reach further than any wall.
    open_to = [[door.opened(1) for door in own] for own in doors]
    pairs = list(zip(walks, open_to, strict=True))
    least = max((Paper(walk, unit, tall, beyond=to).scale for walk, to in pairs), default=0)
    papers = [Paper(walk, unit, tall, least, beyond=to) for walk, to in pairs]
    return tuple(
        _draw(group, rooms, paper, own, pen)
        for group, paper, own in zip(groups, papers, doors, strict=True)
    )


def _draw(
    placed: Sequence[Placed], rooms: Sequence[Room], paper: Paper, doors: Sequence[Door], pen: Pen
) -> Overview:
    lines: list[DrawnLine] = []
    labels: list[DrawnLabel] = []
    for one in placed:
        lines += strokes(one.walk, paper)
        labels += _names(one, rooms[one.room], paper)
    return Overview(
        scale=scale_text(paper.scale, pen),
        wide=fixed(paper.wide),
        tall=fixed(paper.tall),
        lines=tuple(lines),
        leaves=tuple(door.drawn(paper).path for door in doors),
        labels=tuple(labels),
        rooms=tuple((rooms[one.room].tag, rooms[one.room].name) for one in placed),
    )


def strokes(walk: tuple[DrawnWall, ...], paper: Paper) -> Iterator[DrawnLine]:
    """Yield the lines of a room's walls, which show only where trim runs and where none does."""
    for wall in walk:
        ends = paper.at(wall.start), paper.at(wall.end)
        if isinstance(wall.stretch, Run):
            yield from wall_lines("wall", wall, paper)
        else:
            yield line(wall.stretch.kind, *ends)
            yield from (jamb(wall, end) for end in ends)


def _names(one: Placed, room: Room, paper: Paper) -> Iterator[DrawnLabel]:
    """Yield the tag in the middle of the floor, and the name below it where there is room."""
    place = roomiest(one.shape)
    x, y = paper.at(place)
    below = (place[0], place[1] + 3.0 / paper.factor)
    free = min(reach(below, one.shape), reach(place, one.shape)) * paper.factor
    # Free is the distance to the nearest wall on either side, at the tag's height and the name's.
    fits = run(room.name, SIZES["gap"]) / 2 < free
    yield DrawnLabel(
        look="run", x=fixed(x), y=fixed(y if fits else y + 1.1), turn="0.00", text=room.tag
    )
    if fits:
        yield DrawnLabel(look="gap", x=fixed(x), y=fixed(y + 3.8), turn="0.00", text=room.name)
