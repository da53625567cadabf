"""How a piece lies at the saw for a cut: the only place that decides an orientation.

You stand before the saw; the fence is on its far side.  A table of ways to lie, a row each,
says which way the face looks, which edge is at the fence and at which of your hands the
piece's left end is.  A cut is a plane, said by where the end is longest; the row turns that
plane with the piece.  From the turned plane it follows to which side the table swings, to
which the blade leans, and on which side of the blade the piece lies.  Tickets, stick layouts
and saw sheet draw and say only what this module returns.

The table swings right when its handle goes to your right, so that the cut runs to the right
on its way from the fence towards you; the blade leans left when its top does.  Common saw
terms, no source; ``tests/sheets/test_solids_from_words.py`` checks that what is printed in
them gives the piece that the room needs.
"""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum
from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Cut, Piece
from trimlang.joint_row import Edge
from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.record import record
from trimlang.settings.setting_kinds import Bevels
from trimlang.settings.table import Settings
from trimlang.survey.job import Trim


class Hand(StrEnum):
    """Your left or your right at the saw."""

    LEFT = "left"
    RIGHT = "right"


class Lay(StrEnum):
    """A way to lie at the saw."""

    STANDING = "standing"
    FLAT = "flat"
    RAKING = "raking"
    TURNING = "turning"
    CASING = "casing"
    CROWN = "crown"
    SCARF = "scarf"
    NESTED = "nested"


class Facing(StrEnum):
    """Which way a piece's face looks."""

    YOU = "to you"
    UP = "up"


class Against(StrEnum):
    """What of a piece lies against the fence."""

    BACK = "back"
    TOP = "top edge"
    BOTTOM = "bottom edge"
    OUTER = "outer edge"
    CEILING = "ceiling edge"
    WALL = "wall edge"


@record
class Pose:
    """How a piece lies.

    ``turned`` end for end: its left end is at your right hand.  What was up on the wall
    is then down where the face looks to you, and near you where it looks up.
    """

    facing: Facing
    fence: Against
    turned: bool = False


@record
class LayRow:
    """A way to lie: its poses, the preferred one first; some saws can cut only the other."""

    way: Lay
    poses: tuple[Pose, ...]


LAYS: Final = {
    row.way: row
    for row in (
        LayRow(Lay.STANDING, (Pose(Facing.YOU, Against.BACK),)),
        # Too tall to stand at the fence: the blade is tilted by what the table would be turned by.
        LayRow(
            Lay.FLAT,
            (Pose(Facing.UP, Against.TOP), Pose(Facing.UP, Against.BOTTOM, turned=True)),
        ),
        LayRow(Lay.RAKING, (Pose(Facing.UP, Against.TOP),)),
        # Round a corner on a slope: mitred across the face, and the blade tilted.
        LayRow(
            Lay.TURNING,
            (Pose(Facing.UP, Against.TOP), Pose(Facing.UP, Against.BOTTOM, turned=True)),
        ),
        LayRow(Lay.CASING, (Pose(Facing.UP, Against.OUTER),)),
        LayRow(
            Lay.CROWN,
            (Pose(Facing.UP, Against.CEILING), Pose(Facing.UP, Against.WALL, turned=True)),
        ),
        LayRow(
            Lay.SCARF,
            (Pose(Facing.UP, Against.CEILING), Pose(Facing.UP, Against.WALL, turned=True)),
        ),
        # Upside down: the fence stands for the wall, the table for the ceiling.
        LayRow(Lay.NESTED, (Pose(Facing.YOU, Against.WALL, turned=True),)),
    )
}


@record
class AtSaw:
    """One end's cut at the saw.

    ``swing`` and ``mitre`` are what the table is turned by, ``tilt`` and ``bevel`` the blade
    (degrees, and the side; None where they stand straight); ``piece`` is the side of the
    blade on which the piece lies.
    """

    way: Lay
    pose: Pose
    piece: Hand
    swing: Hand | None
    mitre: Fraction
    tilt: Hand | None
    bevel: Fraction

    @property
    def is_square(self) -> bool:
        """Whether table and blade stand straight; then any way to lie will do."""
        return self.swing is None and self.tilt is None


@record
class MitreSaw:
    """What a saw can do with one trim: which ways its blade tilts, whether the trim can stand."""

    tilts: tuple[Hand, ...]
    stands: bool = True


_THROUGH: Final = {Edge.FACE: 1, Edge.BACK: -1}

TILTS: Final = {
    Bevels.LEFT: (Hand.LEFT,),
    Bevels.RIGHT: (Hand.RIGHT,),
    Bevels.BOTH: (Hand.LEFT, Hand.RIGHT),
}


def saw_for(trim: Trim, settings: Settings) -> MitreSaw:
    """Return what the job's saw can do with a trim."""
    tall = trim.height or NOTHING
    return MitreSaw(
        tilts=TILTS[settings.saw_bevels],
        # A saw whose height nobody said is taken to hold any trim at its fence.
        stands=not settings.saw_stands or tall <= settings.saw_stands,
    )


def at_saw(cut: Cut, side: Side, saw: MitreSaw) -> AtSaw:
    """Return how one end of a piece lies for its cut."""
    way, angles = lay_of(cut), (cut.setting, cut.bevel_setting)
    if way is Lay.STANDING and not saw.stands:
        # Laid flat the same plane is cut by tilting the blade, with the table straight.
        way, angles = Lay.FLAT, (NOTHING, cut.setting)
    return _posed(way, _leans(cut), side, angles, saw)


def both_ends(piece: Piece, saw: MitreSaw) -> tuple[AtSaw, AtSaw]:
    """Return how a piece lies for the cut of its left end, and for that of its right end."""
    return at_saw(piece.left, Side.LEFT, saw), at_saw(piece.right, Side.RIGHT, saw)


def nested(cut: Cut, side: Side) -> AtSaw | None:
    """Return how a crown's end lies nested; None where it is not mitred, or no crown."""
    if cut.crown is None or cut.crown.nested_setting is None:
        return None
    # It leans as it does on the wall, so the cut slopes only in plan, as at a standing trim.
    leans = (0, _leans(cut)[1])
    return _posed(Lay.NESTED, leans, side, (cut.crown.nested_setting, NOTHING), MitreSaw(()))


def lie_alike(ends: Iterable[AtSaw]) -> bool:
    """Whether a piece lies one way for all cuts that are not square, its left at your left."""
    # A square cut comes out the same either way, so it has no say.
    poses = {one.pose for one in ends if not one.is_square}
    return len(poses) <= 1 and not any(pose.turned for pose in poses)


def lay_of(cut: Cut) -> Lay:
    """Return how a piece lies for a cut, where the saw can take it so."""
    if cut.crown is not None:
        return Lay.CROWN
    if cut.bevel:
        return Lay.TURNING if cut.long_edge.is_across else Lay.SCARF
    if cut.long_edge is Edge.OUTER:
        return Lay.CASING
    return Lay.RAKING if cut.long_edge.is_across else Lay.STANDING


def _leans(cut: Cut) -> tuple[int, int]:
    """Where an end is longest: up (1) or down (-1) its face, and at face (1) or back (-1)."""
    longest = cut.long_edge
    if longest.is_across:
        return (-1 if longest is Edge.BOTTOM else 1), _THROUGH.get(cut.through_edge, 0)
    across = _THROUGH.get(longest, 0)
    if cut.crown is None:
        return 0, across
    # A crown's ceiling edge is both its upper edge and the one that stands out; where its end is
    # cut upright below a sloping ceiling, its face may be longest at the other one.
    return across, across if cut.through_edge is Edge.BOTH else _THROUGH[cut.through_edge]


def _posed(
    way: Lay, leans: tuple[int, int], side: Side, angles: tuple[Fraction, Fraction], saw: MitreSaw
) -> AtSaw:
    """Take the first pose for which the saw's blade leans to the side that it must."""
    turned = [_turned(way, pose, leans, side, angles) for pose in LAYS[way].poses]
    # Where no pose suits the saw the usual one is shown; the tilt tells what the saw must do.
    return next((one for one in turned if one.tilt is None or one.tilt in saw.tilts), turned[0])


def _turned(
    way: Lay,
    pose: Pose,
    leans: tuple[int, int],
    side: Side,
    angles: tuple[Fraction, Fraction],
) -> AtSaw:
    """Turn the plane of a cut with the piece, and read off what the saw does.

    On the wall the plane's way out of the piece is (±1, -across, -through): along to the
    end, up its face, and out from its back.
    """
    mitre, bevel = angles
    across, through = leans
    turn = -1 if pose.turned else 1
    # Turned end for end, the left end is at your right hand.
    right = turn * side.step
    if pose.facing is Facing.UP:  # the face's up is away from you, its out is up
        away, up = -across * turn, -through
    else:  # its up is up or down, its out is towards you
        away, up = through, -across * turn
    swing, tilt = (away * right if mitre else 0), (-up * right if bevel else 0)
    return AtSaw(
        way=way,
        pose=pose,
        piece=Hand.LEFT if right > 0 else Hand.RIGHT,
        swing=_side(swing),
        mitre=mitre if swing else NOTHING,
        # A cut face that looks down overhangs: the blade's top leans the way that the face looks.
        tilt=_side(tilt),
        bevel=bevel if tilt else NOTHING,
    )


def _side(way: int) -> Hand | None:
    return None if way == 0 else Hand.RIGHT if way > 0 else Hand.LEFT
