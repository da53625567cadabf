"""A piece of trim as it leaves the saw."""

from __future__ import annotations

from dataclasses import replace
from enum import StrEnum
from fractions import Fraction
from typing import Final

from trimlang.joinery.crown import CrownCut
from trimlang.joinery.remarks import Remark
from trimlang.joint_row import Edge, Fit, RoundedAs
from trimlang.joints import Joint
from trimlang.language.end_facts import Side
from trimlang.lengths.tape import NOTHING, Direction, Unit
from trimlang.record import record
from trimlang.survey.on_walls import Foot


class Lean(StrEnum):
    """Which way a cut runs from the fence towards you; a square cut runs straight.

    It holds both for trim that stands with its back to the fence and for trim that lies face up
    with its top edge at the fence.
    """

    LEFT = "left"
    RIGHT = "right"
    UPRIGHT = "square"


class PieceKind(StrEnum):
    """A run, a return that closes its profile, a part of a casing, or a loose piece."""

    RUN = "run"
    RETURN = "return"
    LEG = "leg"
    HEAD = "head"
    LOOSE = "loose"
    STOOL = "stool"
    APRON = "apron"
    JAMB = "jamb"
    FRAME = "frame"
    CORNER = "corner"

    @property
    def is_glued(self) -> bool:
        """Whether it is a small piece that is glued to another one."""
        return self is PieceKind.RETURN or self is PieceKind.CORNER

    @property
    def is_caulked(self) -> bool:
        """Whether it lies along a wall that it is caulked to."""
        return self is not PieceKind.LOOSE and self is not PieceKind.JAMB

    @property
    def of_casing(self) -> bool:
        """Whether it is part of a casing, which is named after its opening and not after a run."""
        return self in _ROUND_AN_OPENING

    @property
    def stands_in_pairs(self) -> bool:
        """Whether one like it stands up at the other side of an opening or a box."""
        return self in _IN_PAIRS


_ROUND_AN_OPENING: Final = frozenset(
    {PieceKind.LEG, PieceKind.HEAD, PieceKind.STOOL, PieceKind.APRON, PieceKind.JAMB}
)
_IN_PAIRS: Final = frozenset({PieceKind.LEG, PieceKind.JAMB, PieceKind.FRAME})


@record
class Cut:
    """The cut at one end of a piece.

    ``exact`` and ``setting`` are degrees from square: what the joint wants and
    what the saw can read.  ``inset`` is how far the short edge of the end lies
    inside the long point (inches); ``long_edge`` is ``back`` or ``face``, at cuts
    across the face ``top``, ``bottom`` or ``outer``, and ``both`` at a square
    end.  ``gap`` is what setting instead of exact leaves open (inches), ``opens_at`` the
    edge where it does.  ``corner_error`` is how many degrees a sixteenth makes in a
    corner that was measured by its diagonal, and ``doubt`` what that can open
    besides (inches).

    ``bevel`` tilts the blade (degrees from upright), as wanted and as the saw
    reads it; for crown ``exact`` and ``setting`` are for lying flat.  ``crown`` tells
    all of a crown end's cut; there ``back`` is the wall edge and ``face`` the ceiling
    edge.  Flat trim that turns a corner on a slope has a bevel too: ``through`` of its
    inset is along the thickness, longest at ``through_edge``.
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
    through: Fraction = NOTHING
    through_edge: Edge = Edge.BOTH

    @property
    def lies_flat(self) -> bool:
        """Whether the piece lies on the saw's table, and does not stand against the fence."""
        return bool(self.bevel) or self.long_edge.is_across


@record
class Rounding:
    """How the ticket's length was made from the exact one.

    ``row`` is the row of the rounding table that decided.  ``by`` is the ticket's length less the
    exact one (inches).
    """

    row: RoundedAs
    direction: Direction
    exact: Fraction
    by: Fraction


class MeasuredOn(StrEnum):
    """Where on a piece the ticket's length is measured.

    ``POINTS`` is from the long point of one edge to that of the other, where the left end is
    longest at one edge and the right end at the other.
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
class Piece:
    """One piece; ``length`` is what it takes of the stick, from long point to long point.

    ``wall`` is the length as surveyed; ``back`` and ``face`` are the two edges of the piece as
    cut.  ``part`` counts the pieces of a spliced run from its left end and is 1 of 1 without a
    splice.  ``mates`` are the ids of the pieces joined to it on the same wall: at a scarf, or a
    return and the piece that it closes.  ``wall_edge`` is set only for crown: it is the length
    to mark along the lower edge, while ``length`` is what the stick must give.  ``note`` is the
    surveyor's and ``remarks`` are trimlang's.  ``scribe`` is the most that comes off its foot to
    fit the floor.  ``at`` is the end of its run, or the side of its opening, that it belongs to.
    ``foot`` is what it stands on if it is a leg.
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
    unit: Unit = Unit.INCH
    mates: tuple[str, ...] = ()
    wall_edge: Fraction | None = None
    scribe: Fraction = NOTHING
    remarks: tuple[Remark, ...] = ()
    at: Side | None = None
    foot: Foot = Foot.FLOOR

    @property
    def all_notes(self) -> str:
        """The note and all remarks in one line; empty where there are none."""
        return "; ".join([*([self.note] if self.note else []), *map(str, self.remarks)])

    @property
    def to_mark(self) -> Fraction:
        """The length on the ticket, along the edge that ``measured_on`` names (inches)."""
        return self.length if self.wall_edge is None else self.wall_edge

    def with_remark(self, remark: Remark) -> Piece:
        """Return the piece with one more thing that its ticket says."""
        return replace(self, remarks=(*self.remarks, remark))

    @property
    def back(self) -> Fraction:
        """The length of the edge against the wall (inches)."""
        if self.wall_edge is not None:
            return self.wall_edge
        # An end that is longest at the face is shorter at the back, by its inset.
        return self._less_ends_at(Edge.FACE)

    @property
    def face(self) -> Fraction:
        """The length of the edge that is seen; of a crown, the ceiling edge (inches)."""
        if self.wall_edge is not None:
            crown = [cut for cut in (self.left, self.right) if cut.crown]
            longer = sum((cut.inset for cut in crown if cut.long_edge is Edge.FACE), NOTHING)
            return (
                self.wall_edge
                + longer
                - sum((cut.inset for cut in crown if cut.long_edge is Edge.BACK), NOTHING)
            )
        return self._less_ends_at(Edge.BACK)

    def _less_ends_at(self, across: Edge) -> Fraction:
        """Return one edge's length; ``across`` is the opposite edge, where an end may be longer."""
        length = self.length
        for cut in (self.left, self.right):
            if cut.long_edge is across:
                length -= cut.inset
        return length

    @property
    def measured_on(self) -> MeasuredOn:
        """The edge that the ticket's length is measured on."""
        if self.wall_edge is not None:
            return MeasuredOn.WALL
        # Square ends are as long at either edge and decide nothing.
        long = {cut.long_edge for cut in (self.left, self.right)} - {Edge.BOTH}
        if len(long) == 2:
            return MeasuredOn.POINTS
        return _LONG_AT[long.pop()] if long else MeasuredOn.EITHER

    @property
    def vanishes(self) -> bool:
        """Whether the cuts cross, so that one of its edges has less than no length."""
        if self.length <= 0:
            return True
        # Where not even the short points meet, no edge is less than nothing.
        insets = (self.left.inset, self.right.inset)
        if self.wall_edge is None and min(insets) >= 0 <= self.short_points:
            return False
        # The bottom edge is tested too: it is the edge that the tape ran along.
        if min(self.back, self.face, self._less_ends_at(Edge.BOTTOM)) < 0:
            return True
        # At a step in the wall both cuts run the same way, and their short points may pass each
        # other.
        return self.short_points < 0 and not self._cut_alike

    @property
    def _cut_alike(self) -> bool:
        """Whether one end is longest at one edge and the other at the opposite edge."""
        if Fit.COPED in (self.left.fit, self.right.fit):  # a cope ends at its mate's face
            return False
        return {self.left.long_edge, self.right.long_edge} in _ACROSS_FROM

    @property
    def short_points(self) -> Fraction:
        """The length from short point to short point, such as a casing's inner edge (inches)."""
        # Insets count from the long points, whichever edge those are on.
        return self.length - self.left.inset - self.right.inset

    @property
    def shim(self) -> Fraction:
        """How much to pack out an inside corner, where rounding cut the piece short (inches)."""
        inside = any(
            cut.joint.is_inside and cut.fit is Fit.MITRED for cut in (self.left, self.right)
        )
        # Only a mitre inside shows what is missing; a butt's gap is covered or caulked.
        if not inside or self.wall_edge is not None:
            return Fraction(0)
        # Rounding down is the only reason for a gap that is known: the piece is short by that much.
        return max(-self.rounding.by, Fraction(0))
