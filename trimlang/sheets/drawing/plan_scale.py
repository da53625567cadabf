"""The scales of floor plans, and the lines that every plan is drawn with."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from itertools import pairwise
from math import ceil, cos, radians, sin
from typing import Final

from trimlang.lengths.tape import Unit
from trimlang.record import record
from trimlang.sheets.drawing.polygons import Point
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Room, Run, Stretch
from trimlang.survey.outline import Leg, Outline

# Millimetres on the paper: the most that a drawing takes across and down, and the margin around it.
WIDE: Final = 164.0
TALL: Final = 62.0
TALL_ALONE: Final = 118.0
DRAWN_AND_LISTED: Final = 180.0
"""What the drawing of a room that is alone and the list of its walls may take of a page."""
NARROWEST: Final = 60.0
"""A plan of a room has as much paper across (mm): names of short walls stand beside it."""
MARGIN: Final = 10.0
# n of 1 : n, from the largest drawing to the smallest; on an inch sheet 12/n inches are a foot: 48
# is 1/4 in = 1 ft.
SCALES: Final = {
    Unit.INCH: (16, 24, 32, 48, 64, 96, 128, 192, 384),
    Unit.MM: (10, 20, 25, 50, 75, 100, 200, 500),
}
MM_PER_INCH: Final = 25.4
DEGREES_A_STROKE: Final = 5.0
"""An arc is drawn in strokes that turn by this much at most: no eye sees them (at 1 : 16 a stroke
of four feet's radius stands 0.07 mm off)."""


@record
class DrawnWall:
    """A stretch of wall in place: inches, y downwards; ``heading`` in degrees, turning right.

    ``round_by`` are the points between its ends of a wall that curves.
    """

    stretch: Stretch
    start: Point
    end: Point
    heading: float
    round_by: tuple[Point, ...] = ()

    @property
    def points(self) -> tuple[Point, ...]:
        """The points of its line, from its start to its end."""
        return (self.start, *self.round_by, self.end)


def walls(room: Room, drawn: Outline) -> tuple[DrawnWall, ...]:
    """Return the walk of a room in a drawing's coordinates."""
    return tuple(
        DrawnWall(
            stretch=room.walk[leg.index],
            # The survey's y points up, a page's y points down.
            start=(float(leg.start.x), -float(leg.start.y)),
            end=(float(leg.end.x), -float(leg.end.y)),
            heading=float(leg.heading),
            round_by=_round_by(room.walk[leg.index], leg),
        )
        for leg in drawn.legs
    )


def _round_by(stretch: Stretch, leg: Leg) -> tuple[Point, ...]:
    """Return the points of a curved wall's arc between its ends; none of a straight one."""
    curve = stretch.curve if isinstance(stretch, Run) else None
    if curve is None:
        return ()
    turn, long = float(curve.turn_right), float(curve.chord)
    # Two at least, or a slight curve would be drawn as the straight wall that it is not.
    parts = max(ceil(abs(turn) / DEGREES_A_STROKE), 2)
    x, y, heading = float(leg.start.x), -float(leg.start.y), float(leg.heading) - turn / 2
    # Equal chords of one arc: each turns by an equal part, the first by half of one.
    step = long * sin(radians(turn / parts / 2)) / sin(radians(turn / 2))
    found: list[Point] = []
    for part in range(parts - 1):
        way = radians(heading + (part + 0.5) * turn / parts)
        x, y = x + step * cos(way), y + step * sin(way)
        found.append((x, y))
    return tuple(found)


@record
class DrawnLine:
    """A line on paper (mm), with a CSS class for its look (``run``, ``opening``, ``bare`` …)."""

    look: str
    x1: str
    y1: str
    x2: str
    y2: str


@record
class DrawnLabel:
    """A text on paper (mm), turned by ``turn`` degrees about its own place."""

    look: str
    x: str
    y: str
    turn: str
    text: str


class Paper:
    """Turns inches in the room into millimetres on the paper.

    The drawing is ``tall`` (mm, without margins) at most, and the scale 1 : ``least`` or smaller.
    ``beyond`` are points outside the walls that are to be on it too; the paper is ``narrow`` (mm)
    at least, with the drawing in its middle.
    """

    def __init__(
        self,
        laid: tuple[DrawnWall, ...],
        unit: Unit,
        tall: float = TALL,
        least: int = 0,
        *,
        beyond: Iterable[Point] = (),
        narrow: float = 0.0,
    ) -> None:
        points = [point for wall in laid for point in wall.points] + [*beyond]
        self._left = min(x for x, _ in points)
        self._top = min(y for _, y in points)
        across = max(x for x, _ in points) - self._left
        down = max(y for _, y in points) - self._top
        fits = [
            scale
            for scale in SCALES[unit]
            if scale >= least
            and across * MM_PER_INCH / scale <= WIDE
            and down * MM_PER_INCH / scale <= tall
        ]
        wanted = max(across / WIDE, down / tall) * MM_PER_INCH
        # The largest of the usual scales at which the room fits.
        self.scale = fits[0] if fits else _enough(max(wanted, least))
        self.factor = MM_PER_INCH / self.scale
        wide = across * self.factor + 2 * MARGIN
        self.wide = max(wide, narrow)
        self._inset = MARGIN + (self.wide - wide) / 2
        self.tall = down * self.factor + 2 * MARGIN

    def at(self, point: Point) -> Point:
        """Return the place on the paper (mm) of a point of the room (inches)."""
        return (
            (point[0] - self._left) * self.factor + self._inset,
            (point[1] - self._top) * self.factor + MARGIN,
        )


def _enough(ratio: float) -> int:
    """Return a round scale for a room too large for the usual ones."""
    scale = 1000
    while scale < ratio:
        scale *= 2
    return scale


def tall_alone(listed: float) -> float:
    """Return how tall a room that is alone is drawn above a list that is so tall (mm).

    A list that is longer than the page goes on overleaf, and the room is drawn as large as ever.
    """
    left = DRAWN_AND_LISTED - listed
    return min(left, TALL_ALONE) if left >= TALL else TALL_ALONE


def scale_text(scale: int, pen: Pen) -> str:
    """Write a scale as a carpenter reads it."""
    if pen.unit is Unit.MM:
        return f"1 : {scale}"
    return pen.words(
        "{inch} = 1 ft (1 : {scale})", inch=pen.length(Fraction(12, scale)), scale=scale
    )


def inward(wall: DrawnWall) -> Point:
    """Return the unit direction from a wall into the room, to the right of the walk."""
    # The walk goes along (cos, sin); a quarter turn to the right, with y downwards, gives this.
    return (-sin(radians(wall.heading)), cos(radians(wall.heading)))


def jamb(wall: DrawnWall, at: Point) -> DrawnLine:
    """Return the short stroke across the wall at an opening's side."""
    way = inward(wall)
    return line(
        "jamb", (at[0] - way[0] * 1.6, at[1] - way[1] * 1.6), (at[0] + way[0], at[1] + way[1])
    )


def wall_lines(look: str, wall: DrawnWall, paper: Paper) -> tuple[DrawnLine, ...]:
    """Return the line of a wall on the paper: one stroke, or those of its arc."""
    ends = pairwise(map(paper.at, wall.points))
    return tuple(line(look, one, other) for one, other in ends)


def line(look: str, one: Point, other: Point) -> DrawnLine:
    """Return a line between two points on the paper."""
    return DrawnLine(
        look=look, x1=fixed(one[0]), y1=fixed(one[1]), x2=fixed(other[0]), y2=fixed(other[1])
    )


def fixed(value: float) -> str:
    """Write a coordinate with two decimals, so that the same drawing gives the same bytes."""
    # Adding 0.0 turns a negative zero, which would be written -0.00, into a plain one.
    return f"{round(value, 2) + 0.0:.2f}"
