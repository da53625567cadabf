"""The names on an elevation: each piece's id and length beside it, and what openings are called."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from functools import partial
from math import cos, radians, sin
from typing import Final

from trimlang.joinery.piece import PieceKind
from trimlang.joinery.piece_in_place import PieceInPlace, Upon
from trimlang.joinery.wall_faces import BoxesInPlace, WallFace
from trimlang.sheets.drawing.elevation_lines import span_of
from trimlang.sheets.drawing.elevation_paper import ElevationPaper
from trimlang.sheets.drawing.lettering import SIZES, Wanted
from trimlang.sheets.drawing.polygons import Point, Shape, inside
from trimlang.sheets.drawing.typeface import run as wide_of
from trimlang.sheets.wording.elevation_words import said_of
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Job
from trimlang.survey.straight_walls import Spot

LONGEST: Final = 90.0
"""How far an id and a length may run (mm)."""
BESIDE: Final = SIZES["piece"] / 2 + 1.7
"""How far the middle of a name is from the edge that it stands beside (mm)."""
ALONG: Final = (0.5, 0.25, 0.75, 0.1, 0.9)
"""Where along a piece its number may stand, or a line to it begin, as parts of its length."""
STEPS: Final = (0.25, 0.4, 0.55, 0.7, 0.85, 1.0)
"""Where on the way to a number one looks for another piece, as parts of it."""
TAKEN: Final = 8.0
"""What the measure of an opening's height takes of its width (mm)."""


def named_pieces(job: Job, face: WallFace, paper: ElevationPaper, pen: Pen) -> Iterator[Wanted]:
    """Yield the name of each piece; the four sides of boxes are named once for their set."""
    shapes = [tuple(paper.of(one, at) for at in _corners(one)) for one in face.pieces]
    for number, (one, own) in enumerate(zip(face.pieces, shapes, strict=True), start=1):
        if one.piece.kind is not PieceKind.FRAME:
            # A name that has no room is replaced by a number, which the list below the drawing
            # explains.
            yield _named(job, one, own, pen, partial(_numbered, one, number, paper, shapes))


def _numbered(
    one: PieceInPlace, number: int, paper: ElevationPaper, shapes: Sequence[Shape]
) -> Wanted:
    """Return the number that stands for a piece whose name has no room: never turned.

    It stands in the piece or beside it, or at the end of a short line to its middle; of the
    parts of a head, one above the other, beside an end or with a line to it.  Beside a piece no
    other may lie between it and its number: a band round a casing would seem to be meant.
    """
    own = shapes[number - 1]
    between = [shape for shape in shapes if shape is not own]
    low_left, low_right, high_right, high_left = own
    left, right = _middle(low_left, high_left), _middle(low_right, high_right)
    aside = float(one.across) * paper.factor / 2 + BESIDE
    starts = tuple(_between(left, right, part) for part in ALONG)
    if one.piece.kind is PieceKind.HEAD:
        # Strips one above the other are thinner than a letter: a number in the middle of one would
        # cover its neighbours.
        places = [(end, (end[0] + way * BESIDE, end[1])) for end, way in ((right, 1), (left, -1))]
        starts = (*starts, right, left)
    else:
        turn = radians(float(one.turn))
        out = (-sin(turn) * aside, -cos(turn) * aside)
        # In the middle best; where names fill that, nearer to an end, which still needs no line.
        places = [
            (at, (at[0] + way * out[0], at[1] + way * out[1]))
            for at in starts
            for way in (0, 1, -1)
        ]
    # Asked one by one: most numbers stand at the first.
    first = (place for at, place in places if not _goes_over(at, place, between))
    return Wanted(
        look="piece",
        text=str(number),
        one=left,
        other=right,
        off=(0.0, -1.0),
        heading=0.0,
        first=first,
        over_lines=True,
        starts=starts,
    )


def _goes_over(at: Point, place: Point, between: Sequence[Shape]) -> bool:
    """Tell whether a line from a piece's middle to its number crosses another piece."""
    ways = (_between(at, place, part) for part in STEPS if at != place)
    return any(inside(point, shape) for point in ways for shape in between)


def _corners(one: PieceInPlace) -> tuple[Spot, Spot, Spot, Spot]:
    """Return the ends of a piece's edges: steps and notches may have been cut between them."""
    turn = float(one.turn)
    down = (Fraction(sin(radians(turn))) * one.across, Fraction(-cos(radians(turn))) * one.across)
    left, right = one.edge
    below = (Spot(x=at.x + down[0], y=at.y + down[1]) for at in (left, right))
    low_left, low_right = below
    return low_left, low_right, right, left


def _named(
    job: Job, one: PieceInPlace, shape: Shape, pen: Pen, instead: Callable[[], Wanted]
) -> Wanted:
    low_left, low_right, high_right, high_left = shape
    near, far = (low_left, low_right), (high_left, high_right)
    trim = job.trim(one.piece.trim)
    # Out of the piece over its top or outer edge; y points down on paper.
    turn = float(one.turn)
    out = (-sin(radians(turn)), -cos(radians(turn)))
    inwards = (-out[0], -out[1])
    # A name goes where bare wall is: below a crown, above a base. A shoe has the base above it, and
    # below it only the floor.
    hangs = one.upon is Upon.CEILING or one.piece.kind is PieceKind.APRON
    lies_low = trim.in_front_of is not None and one.piece.kind is PieceKind.RUN
    # Crown on a frieze leaves no room below itself: that is the frieze's.
    over = one.upon is Upon.CEILING and trim.in_front_of is not None
    # Legs and jambs, since boxes have names of their own.
    at_a_side = one.piece.kind.stands_in_pairs
    inner = ((hangs or lies_low) and not over) or at_a_side
    edge, off = (near, inwards) if inner else (far, out)
    heading = -turn
    middle = _middle(*near, *far)
    first: list[Point] = [middle]
    if at_a_side:
        # On the wall beside its outer edge, or else within the opening.
        first = [_moved(_middle(*far), out), _moved(_middle(*near), inwards)]
    return Wanted(
        look="piece",
        text=said_of(one.piece, pen),
        one=edge[0],
        other=edge[1],
        off=off,
        heading=heading,
        first=tuple(first),
        longest=LONGEST,
        instead=instead,
    )


def named_openings(face: WallFace, paper: ElevationPaper) -> Iterator[Wanted]:
    """Yield what each opening is called, across it."""
    for opening in face.openings:
        if opening.gap.called:
            low, high = span_of(opening, face, paper)
            y = low + (high - low) * 0.6
            one = paper.point(float(opening.left), y)
            other = paper.point(float(opening.right), y)
            # A door is often narrower on paper than its name is long; turned upright the name has
            # room.
            upright = wide_of(opening.gap.called, SIZES["name"]) > other[0] - one[0] - TAKEN
            middle = _middle(one, other)
            if upright:
                up = (high - low) * paper.factor * 0.3
                one, other = (middle[0], middle[1] + up), (middle[0], middle[1] - up)
            yield Wanted(
                look="name",
                text=opening.gap.called,
                one=one,
                other=other,
                off=(1.0, 0.0) if upright else (0.0, -1.0),
                heading=90.0 if upright else 0.0,
                first=((middle[0] + TAKEN / 2, middle[1]), middle),
                # A beam is too narrow for its name: near it, across a line, is better than far off.
                over_lines=True,
            )


def numbered_boxes(boxes: BoxesInPlace, paper: ElevationPaper) -> Iterator[Wanted]:
    """Yield the number of each box, in its middle."""
    wide, tall = float(boxes.boxes.wide) / 2, float(boxes.boxes.tall) / 2
    slope = radians(float(boxes.boxes.slope))
    for number, corner in enumerate(boxes.corners, start=1):
        x = float(corner.x) + wide * cos(slope)
        at = paper.point(x, float(corner.y) + wide * sin(slope) + tall)
        aside = wide * paper.factor * 0.6
        yield Wanted(
            look="name",
            text=str(number),
            one=(at[0] - 2, at[1]),
            other=(at[0] + 2, at[1]),
            off=(0.0, -1.0),
            heading=0.0,
            first=(at, (at[0] + aside, at[1]), (at[0] - aside, at[1])),
        )


def _middle(*points: Point) -> Point:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)


def _between(one: Point, other: Point, part: float) -> Point:
    return one[0] + (other[0] - one[0]) * part, one[1] + (other[1] - one[1]) * part


def _moved(at: Point, way: Point) -> Point:
    return at[0] + way[0] * BESIDE, at[1] + way[1] * BESIDE
