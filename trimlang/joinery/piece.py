"""A piece of trim as it leaves the saw."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction
from typing import Final

from trimlang.joinery.crown import CrownCut
from trimlang.joint_row import Edge, Fit
from trimlang.joints import Joint
from trimlang.lengths.tape import NOTHING, Direction
from trimlang.record import record


class Lean(StrEnum):
    """Which way a cut runs from the fence towards you; a blade stood upright leans neither way.

    It is the same for trim that stands with its back to the fence and for trim that lies
    face up with its top edge there.
    """

    LEFT = "left"
    RIGHT = "right"
    UPRIGHT = "square"


class PieceKind(StrEnum):
    """A piece along a run, one that closes its profile, a part of a casing, or a loose piece."""

    RUN = "run"
    RETURN = "return"
    LEG = "leg"
    HEAD = "head"
    LOOSE = "loose"

    @property
    def of_casing(self) -> bool:
        """Whether it is part of a casing, which goes by its opening and not by a run."""
        return self is PieceKind.LEG or self is PieceKind.HEAD


@record
class Cut:
    """One end's cut.

    ``exact`` and ``setting`` are degrees from square: what the joint wants and
    what the saw can read.  ``inset`` is how far the short edge of the end lies
    inside the long point (inches); ``long_edge`` is ``back`` or ``face``, at cuts
    across the face ``top``, ``bottom`` or ``outer``, and ``both`` at a square
    end.  ``gap`` is what setting instead of exact leaves open (inches), ``opens_at`` the
    edge where it does.  ``corner_error`` is how many degrees a sixteenth makes in a
    corner that was measured by its diagonal, and ``doubt`` what that can open
    besides (inches).

    ``bevel`` tilts the blade (degrees from upright), as wanted and as the saw
    reads it; only crown has one, and its ``exact`` and ``setting`` are for lying
    flat.  ``crown`` tells all of a crown end's cut.  At crown ``back`` is the wall
    edge and ``face`` the ceiling edge.
    """

    joint: Joint
    fit: Fit
    exact: Fraction
    setting: Fraction
    lean: Lean
    long_edge: Edge
    inset: Fraction
    gap: Fraction = NOTHING
    assumed: bool = False
    corner_error: Fraction | None = None
    bevel: Fraction = NOTHING
    bevel_setting: Fraction = NOTHING
    crown: CrownCut | None = None
    doubt: Fraction = NOTHING
    opens_at: Edge = Edge.FACE

    @property
    def lies_flat(self) -> bool:
        """Whether the piece lies on the saw's table, and does not stand against the fence."""
        return bool(self.bevel) or self.long_edge.is_across


@record
class Rounding:
    """How the ticket's length came from the exact one.

    ``row`` is the row of the rounding table that decided; ``by`` is the ticket
    length less the exact one.
    """

    row: str
    direction: Direction
    exact: Fraction
    by: Fraction


class MeasuredOn(StrEnum):
    """Where on a piece its number is measured.

    ``POINTS`` is from the long point of one edge to that of the other: the left
    end is longest at one edge and the right end at the other.
    """

    BACK = "back"
    FACE = "face"
    EITHER = "either edge"
    POINTS = "long points"
    WALL = "wall edge"
    TOP = "top"
    BOTTOM = "bottom"
    OUTER = "outer edge"


_LONG_AT: Final = {
    Edge.BACK: MeasuredOn.BACK,
    Edge.FACE: MeasuredOn.FACE,
    Edge.TOP: MeasuredOn.TOP,
    Edge.BOTTOM: MeasuredOn.BOTTOM,
    Edge.OUTER: MeasuredOn.OUTER,
}


_ACROSS_FROM: Final = ({Edge.BACK, Edge.FACE}, {Edge.TOP, Edge.BOTTOM})


@record
class Remark:
    """What trimlang itself says of a piece: a text with named places, and what stands there."""

    text: str
    values: tuple[tuple[str, str], ...] = ()

    def __str__(self) -> str:
        return self.text.format(**dict(self.values))


@record
class Piece:
    """One piece: ``length`` is what the ticket says, long point to long point.

    ``wall`` is the length as surveyed; ``back`` and ``face`` the two edges of
    the piece as cut.  ``part`` counts the pieces of a spliced run from its left
    end, 1 of 1 where there is no splice.  ``mates`` are the ids of the pieces
    that are joined to it on the same wall: at a scarf, or a return and the
    piece that it closes.  ``wall_edge`` is set for crown alone: the length to
    mark along its lower edge, while ``length`` is what the stick must give.
    ``note`` is the surveyor's own and ``remarks`` are trimlang's.
    ``scribe`` is the most that comes off its foot to fit the floor.
    Lengths in inches.
    """

    id: str
    kind: PieceKind
    room: str
    run: str
    trim: str
    length: Fraction
    wall: Fraction
    left: Cut
    right: Cut
    rounding: Rounding
    part: int = 1
    parts: int = 1
    over_scraps: bool = False
    note: str | None = None
    unit: str = "in"
    mates: tuple[str, ...] = ()
    wall_edge: Fraction | None = None
    scribe: Fraction = NOTHING
    remarks: tuple[Remark, ...] = ()

    @property
    def told(self) -> str:
        """All that is to be said of the piece besides its measures; empty for nothing."""
        return "; ".join([*([self.note] if self.note else []), *map(str, self.remarks)])

    @property
    def to_mark(self) -> Fraction:
        """The ticket's number: along the edge that ``measured_on`` names."""
        return self.length if self.wall_edge is None else self.wall_edge

    @property
    def back(self) -> Fraction:
        """Length of the edge against the wall."""
        if self.wall_edge is not None:
            return self.wall_edge
        return self._less_ends_at(Edge.FACE)

    @property
    def face(self) -> Fraction:
        """Length of the edge that is seen; at crown, of the ceiling edge."""
        if self.wall_edge is not None:
            return self.wall_edge + sum(
                (
                    _inset(cut, Edge.FACE) - _inset(cut, Edge.BACK)
                    for cut in (self.left, self.right)
                    if cut.crown
                ),
                Fraction(0),
            )
        return self._less_ends_at(Edge.BACK)

    def _less_ends_at(self, across: Edge) -> Fraction:
        """Length of one edge; ``across`` is the opposite one, which the ends may be longest at."""
        return self.length - _inset(self.left, across) - _inset(self.right, across)

    @property
    def measured_on(self) -> MeasuredOn:
        """Which edge the ticket's number is measured on."""
        if self.wall_edge is not None:
            return MeasuredOn.WALL
        long = {cut.long_edge for cut in (self.left, self.right)} - {Edge.BOTH}
        if len(long) == 2:
            return MeasuredOn.POINTS
        return _LONG_AT[long.pop()] if long else MeasuredOn.EITHER

    @property
    def vanishes(self) -> bool:
        """Whether the cuts cross, so that there is less than nothing of one of its edges."""
        # the lower edge is the one that the tape read
        if self.length <= 0 or min(self.back, self.face, self._less_ends_at(Edge.BOTTOM)) < 0:
            return True
        # round a step in the wall both cuts run one way: its short points may pass each other
        return self.short_points < 0 and not self._cut_alike

    @property
    def _cut_alike(self) -> bool:
        """Whether one end is longest at one edge, and the other at the edge across from it."""
        if Fit.COPED in (self.left.fit, self.right.fit):  # it ends at its mate's face
            return False
        return {self.left.long_edge, self.right.long_edge} in _ACROSS_FROM

    @property
    def short_points(self) -> Fraction:
        """Length from short point to short point: a casing's inner edge, for one."""
        return self.length - self.left.inset - self.right.inset

    @property
    def shim(self) -> Fraction:
        """How much to pack out an inside corner at the bottom, where the piece is cut short."""
        inside = any(
            cut.joint.is_inside and cut.fit is Fit.MITRED for cut in (self.left, self.right)
        )
        if not inside or self.wall_edge is not None:
            return Fraction(0)
        return max(-self.rounding.by, Fraction(0))


def _inset(cut: Cut, long_edge: Edge) -> Fraction:
    return cut.inset if cut.long_edge is long_edge else Fraction(0)
