"""Walks round a room's walls as surveyed and tells where each one lies.

Paper coordinates: x to the right, y down, so a turn to the right adds to the
heading.  The room is on the right hand; an inside corner of θ turns right by
180° - θ, an outside corner left.  A corner that nobody measured counts as
square here: the usual 89° or 91° is the plaster's doing and not the wall's.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, hypot, radians, sin
from typing import Final

from trimlang.survey.job import End, Joint, Room, Run, Stretch

SQUARE: Final = 90.0
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Wall:
    """A run or gap where it lies, in inches; ``heading`` in degrees."""

    stretch: Stretch
    start: Point
    end: Point
    heading: float
    turn: float


def walls(room: Room) -> tuple[Wall, ...]:
    """Return every stretch of the room's walk, the first one heading right."""
    at: Point = (0.0, 0.0)
    heading = 0.0
    laid: list[Wall] = []
    count = len(room.walk)
    for index, stretch in enumerate(room.walk):
        long = float(stretch.length if isinstance(stretch, Run) else stretch.width)
        end = (at[0] + long * cos(radians(heading)), at[1] + long * sin(radians(heading)))
        following = room.walk[(index + 1) % count]
        turn = _turn(stretch.right, following.left)
        laid.append(Wall(stretch, at, end, heading, turn))
        at, heading = end, heading + turn
    return tuple(laid)


def misclosure(laid: tuple[Wall, ...]) -> float:
    """Return how far the walk's end is from its start, in inches."""
    if not laid:
        return 0.0
    (x1, y1), (x2, y2) = laid[0].start, laid[-1].end
    return hypot(x2 - x1, y2 - y1)


def _turn(one: End | None, other: End | None) -> float:
    corner = next(
        (end for end in (one, other) if end and end.joint in (Joint.IN_CORNER, Joint.OUT_CORNER)),
        None,
    )
    if corner is None:
        return 0.0
    angle = SQUARE if corner.corner is None else float(corner.corner)
    return 180 - angle if corner.joint is Joint.IN_CORNER else angle - 180
