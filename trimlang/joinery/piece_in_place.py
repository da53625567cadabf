"""A piece where it is on its wall, as one sees it from the room: its outline, and its cut ends.

A piece lies in a frame of its own: ``u`` along it to the right, ``v`` across its face from the
bottom or inner edge to the top or outer one.  Each end is longest at the edges that its cut
names, and shorter at the others by the cut's insets.  What is seen from the front is the back and
the face together; where the back reaches further, as into an inside corner, the cut end is seen
between the two.
"""

from __future__ import annotations

from enum import Enum, auto
from fractions import Fraction
from typing import Final

from trimlang.joinery.crown import drop
from trimlang.joinery.piece import Cut, Piece
from trimlang.joint_row import Edge
from trimlang.lengths.angles import RIGHT, cosine, sine
from trimlang.lengths.tape import NOTHING
from trimlang.record import record
from trimlang.survey.job import Trim
from trimlang.survey.straight_walls import Spot


class Upon(Enum):
    """What a piece's height on its wall is counted from."""

    FLOOR = auto()
    CEILING = auto()
    """From the ceiling at the wall's left end: how high that is, no file says."""
    NOTHING_MEASURED = auto()
    """From the floor, but nobody wrote how high: a rail."""


@record
class PieceInPlace:
    """A piece on its wall: ``outline`` round all that is seen of it, ``seams`` the lines within.

    ``edge`` is its top or outer edge from its left end to its right end as it lies at the saw,
    ``across`` how wide it looks, ``turn`` how far it is turned to the left from lying level
    (degrees).
    """

    piece: Piece
    outline: tuple[Spot, ...]
    seams: tuple[tuple[Spot, Spot], ...]
    edge: tuple[Spot, Spot]
    across: Fraction
    turn: Fraction
    upon: Upon = Upon.FLOOR


@record
class _SeenEnd:
    """How far the four edges of an end lie inside its long point (inches)."""

    back: tuple[Fraction, Fraction]
    face: tuple[Fraction, Fraction]

    @property
    def seen(self) -> tuple[Fraction, Fraction]:
        """What reaches furthest, at the bottom and at the top."""
        return min(self.back[0], self.face[0]), min(self.back[1], self.face[1])


def seen_height(trim: Trim) -> Fraction:
    """Return how tall a trim looks on its wall (inches); 0 where the file does not say."""
    tall = trim.height or NOTHING
    # Sprung trim leans out from the wall, so it looks lower than it is wide.
    return tall if trim.spring is None else drop(tall, trim.spring)


def placed(
    piece: Piece,
    trim: Trim,
    at: Spot,
    *,
    turn: Fraction = NOTHING,
    by_outer: bool = False,
    across: Fraction | None = None,
    upon: Upon = Upon.FLOOR,
) -> PieceInPlace:
    """Return a piece with its left long point at ``at``, turned by ``turn`` degrees to the left.

    That point is on its bottom or inner edge, or ``by_outer`` on the other one.  For crown it is
    the left end of its wall edge.  ``across`` is how wide it looks, where that is not its height:
    a stool is seen on its edge.
    """
    tall = seen_height(trim) if across is None else across
    crown = trim.spring is not None
    long = piece.to_mark
    left, right = (_end(cut, crown=crown) for cut in (piece.left, piece.right))
    along, up = cosine(turn), sine(turn)
    # A leg is hung by its outer edge, while its own frame counts from the inner one.
    base = Spot(x=at.x + up * tall, y=at.y - along * tall) if by_outer else at

    def spot(u: Fraction, v: Fraction) -> Spot:
        if not turn:
            return Spot(x=base.x + u, y=base.y + v)
        return Spot(x=base.x + u * along - v * up, y=base.y + u * up + v * along)

    (low_left, high_left), (low_right, high_right) = left.seen, right.seen
    outline = (
        spot(low_left, NOTHING),
        spot(long - low_right, NOTHING),
        spot(long - high_right, tall),
        spot(high_left, tall),
    )
    seams = []
    for end, from_left, way in ((left, NOTHING, 1), (right, long, -1)):
        # The back reaches further somewhere: the face's end is a line on what is seen.
        if end.face != end.seen:
            low, high = (from_left + way * inset for inset in end.face)
            seams.append((spot(low, NOTHING), spot(high, tall)))
    return PieceInPlace(
        piece=piece,
        outline=outline,
        seams=tuple(seams),
        edge=(outline[3], outline[2]),
        across=tall,
        turn=turn,
        upon=upon,
    )


def _end(cut: Cut, *, crown: bool) -> _SeenEnd:
    if crown:
        return _crown_end(cut)
    long, through = cut.long_edge, NOTHING
    across = {Edge.BOTTOM: NOTHING, Edge.TOP: NOTHING}
    # What the cut takes through the thickness is not seen across the face.
    inset = cut.inset - cut.through
    if long.is_across:
        # The outer edge of a casing is its top, away from you at the saw.
        short = Edge.TOP if long is Edge.BOTTOM else Edge.BOTTOM
        across[short] = inset
        deep, through = cut.through_edge, cut.through
    else:
        deep, through = long, cut.inset
    behind = through if deep is Edge.FACE else NOTHING
    before = through if deep is Edge.BACK else NOTHING
    low, high = across[Edge.BOTTOM], across[Edge.TOP]
    return _SeenEnd(back=(low + behind, high + behind), face=(low + before, high + before))


def _crown_end(cut: Cut) -> _SeenEnd:
    """Return a crown's end: from its wall edge, where it is measured, to its ceiling edge."""
    # Without a setting for crown the end is square.
    if cut.crown is None:
        return _SeenEnd(back=(NOTHING, NOTHING), face=(NOTHING, NOTHING))
    # Longest at the back it is shorter at the ceiling, longest at the face it is longer there.
    way = {Edge.BACK: 1, Edge.FACE: -1}.get(cut.long_edge, 0)
    ends = (NOTHING, way * cut.inset)
    return _SeenEnd(back=ends, face=ends)


LEVEL: Final = NOTHING
UPRIGHT_LEFT: Final = RIGHT
"""Turned so that its outer edge is at the left: a left leg, whose top is its right end."""
UPRIGHT_RIGHT: Final = -RIGHT
UPSIDE_DOWN: Final = 2 * RIGHT
