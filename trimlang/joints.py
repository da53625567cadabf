"""The joints: how an end of a trim is cut and what it meets, one row for each joint.

All other code asks a joint's row and names no joint, so that a new joint is written here once;
DEVELOPERS.md says what else it takes.  The names and the rounding: common practice, no source.

>>> Joint.OUT_CORNER.is_corner, Joint.OUT_CORNER.row.long_point
(True, <Edge.FACE: 'face'>)
>>> [joint.word for joint in Joint if joint.goes_on]
['splice', 'rake']
"""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction
from typing import Final

from trimlang.joint_row import Corner, Edge, EndAngles, Fit, JointRow, Mark, RoundedAs
from trimlang.lengths.angles import MITRE_OF_SQUARE, RIGHT
from trimlang.marking import N_

_WALLS: Final = "Rooms and walls"
_STAIRS: Final = "Stairs and floors"


class Joint(StrEnum):
    """How a trim ends, in the trade's terms; each member has a row."""

    _value_: str
    row: JointRow

    def __new__(cls, row: JointRow) -> Joint:  # noqa: D102 - not for callers: see ``of``
        # A member is its word, so that plan.json and messages write it as job files do; what else
        # is known hangs on it.
        member = str.__new__(cls, row.word)
        member._value_ = row.word
        member.row = row
        return member

    # The back runs right into the corner; the face stops short of it by what the mate is thick.
    IN_CORNER = JointRow(
        word="in-corner",
        shorts=("in", "inside", "ic", "in corner", "inside corner"),
        name=N_("inside corner"),
        meaning="The inside corner of two walls: mitred, or coped where it says so.",
        page=_WALLS,
        corner=Corner.INSIDE,
        mitre=lambda at: at.half_corner,
        long_point=Edge.BACK,
        rounds=RoundedAs.IN_CORNER,
        coped=RoundedAs.COPE,
        mark=Mark.DOT,
        gap_shows=Corner.INSIDE,
        on_loose_piece=True,
    )
    # The face goes on round the corner, so the end is longest there, by the thickness of the trim;
    # its seam is where everybody looks, and is filled.
    OUT_CORNER = JointRow(
        word="out-corner",
        shorts=("out", "outside", "oc", "out corner", "outside corner"),
        name=N_("outside corner"),
        meaning="The outside corner of two walls: mitred.",
        page=_WALLS,
        corner=Corner.OUTSIDE,
        mitre=lambda at: at.half_corner,
        long_point=Edge.FACE,
        rounds=RoundedAs.OUT_CORNER,
        mark=Mark.SQUARE,
        needs_thickness=True,
        filled=True,
        gap_shows=Corner.OUTSIDE,
        on_loose_piece=True,
    )
    BUTT = JointRow(
        word="butt",
        name=N_("butt"),
        meaning="Square, against casing, cabinet or floor stop.",
        page=_WALLS,
        rounds=RoundedAs.BUTT,
        stops=True,
        on_loose_piece=True,
        ends_alone=True,
    )
    RETURN = JointRow(
        word="return",
        name=N_("return"),
        meaning="The profile turns back to the wall with a small mitred piece.",
        page=_WALLS,
        mitre=lambda _: MITRE_OF_SQUARE,
        long_point=Edge.FACE,
        rounds=RoundedAs.RETURN,
        mark=Mark.RING,
        stands_alone=True,
        returns=True,
        on_level=True,
        needs_thickness=True,
        ends_alone=True,
    )
    # Nothing stands in its way, so it is rounded as a free end is.
    TAPER = JointRow(
        word="taper",
        name=N_("taper"),
        meaning="Slopes from the face to the wall; at a casing only what stands out past it.",
        page=_WALLS,
        mitre=lambda at: MITRE_OF_SQUARE if at.written is None else at.written,
        tapers=True,
        long_point=Edge.BACK,
        rounds=RoundedAs.OPEN,
        mark=Mark.RING,
        stands_alone=True,
        on_level=True,
        needs_thickness=True,
        ends_alone=True,
        on_loose_piece=True,
    )
    # Which edge is longest depends on which of the two pieces lies over the other, so it has no
    # long point here.
    SPLICE = JointRow(
        word="splice",
        name=N_("scarf"),
        meaning="A scarf to the next piece of the same wall; on a run: make two pieces of it.",
        page=_WALLS,
        mitre=lambda at: at.scarf,
        rounds=RoundedAs.SPLICE,
        goes_on=True,
        laps=True,
        needs_thickness=True,
        filled=True,
    )
    OPEN = JointRow(
        word="open",
        name=N_("open end"),
        meaning="Square and free.",
        page=_WALLS,
        rounds=RoundedAs.OPEN,
        mark=Mark.RING,
        stands_alone=True,
        on_loose_piece=True,
        ends_alone=True,
    )
    # Both runs lie in one plane and the seam is in plain sight, so it has the limit of inside
    # corners.
    RAKE = JointRow(
        word="rake",
        name=N_("rake"),
        meaning="Meets the trim of the same wall at another pitch: cut at half the bend on both.",
        page=_STAIRS,
        mitre=lambda at: abs(at.bend) / 2,
        across=True,
        bends=True,
        rounds=RoundedAs.RAKE,
        goes_on=True,
        needs_height=True,
        gap_shows=Corner.INSIDE,
    )
    PLUMB = JointRow(
        word="plumb",
        name=N_("plumb cut"),
        meaning="Cut upright, on a run that climbs.",
        page=_STAIRS,
        mitre=lambda at: abs(at.pitch),
        across=True,
        upright=True,
        rounds=RoundedAs.PLUMB,
        stands_alone=True,
        on_slope=True,
        needs_height=True,
    )
    LEVEL = JointRow(
        word="level",
        name=N_("level cut"),
        meaning="Cut level, on a run that climbs.",
        page=_STAIRS,
        mitre=lambda at: RIGHT - abs(at.pitch),
        across=True,
        rounds=RoundedAs.LEVEL,
        stands_alone=True,
        on_slope=True,
        needs_height=True,
    )
    # This and the next come of a casing or a box, which work out their own mitres.
    HEAD = JointRow(
        word="head",
        name=N_("casing corner"),
        meaning="Where a casing's leg and head meet; never written in a job file.",
        page="Casing",
        across=True,
        long_point=Edge.OUTER,
        rounds=RoundedAs.HEAD,
        written=False,
    )

    FRAME = JointRow(
        word="frame",
        name=N_("frame corner"),
        meaning="Where two sides of a box meet; never written in a job file.",
        page="Boxes",
        across=True,
        long_point=Edge.OUTER,
        rounds=RoundedAs.HEAD,
        written=False,
    )

    @classmethod
    def of(cls, word: str) -> Joint:
        """Return the joint with this word in a job file; the grammar lets no other through."""
        return next(joint for joint in cls if joint.word == word)

    @classmethod
    def at(cls, corner: Corner) -> Joint:
        """Return the joint of trim that goes round such a corner."""
        return next(joint for joint in cls if joint.row.corner is corner)

    @property
    def word(self) -> str:
        """Its word in a job file."""
        return self.row.word

    @property
    def is_corner(self) -> bool:
        """Whether the wall turns there."""
        return self.row.corner is not None

    @property
    def is_inside(self) -> bool:
        """Whether the wall turns towards the room; then one side may be coped."""
        return self.row.corner is Corner.INSIDE

    @property
    def is_outside(self) -> bool:
        """Whether the wall turns away from the room."""
        return self.row.corner is Corner.OUTSIDE

    @property
    def other_way(self) -> Joint:
        """What stands in the file where the way that the wall turns was mistaken; of a corner."""
        assert self.row.corner is not None  # noqa: S101  only a corner turns
        return Joint.at(self.row.corner.other)

    def mitre(self, at: EndAngles) -> Fraction:
        """Return its mitre at an end that has these angles, in degrees from square."""
        return self.row.mitre(at)

    @property
    def goes_on(self) -> bool:
        """Whether the same trim goes on past it along the same wall."""
        return self.row.goes_on

    @property
    def has_mate(self) -> bool:
        """Whether another piece of trim meets it there."""
        return self.is_corner or self.goes_on

    @property
    def laps(self) -> bool:
        """Whether one of its two pieces lies over the other."""
        return self.row.laps

    @property
    def stops(self) -> bool:
        """Whether something that is not trim stands in the way."""
        return self.row.stops

    @property
    def returns(self) -> bool:
        """Whether a small piece turns the profile back to the wall."""
        return self.row.returns

    def rounds(self, fit: Fit) -> RoundedAs:
        """Return the row of the rounding rule for an end with this fit."""
        # Only an inside corner has a row for copes; at any other joint the fit changes nothing.
        coped = self.row.coped if fit is Fit.COPED else None
        return coped or self.row.rounds
