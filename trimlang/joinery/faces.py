"""Cuts across the face of a trim that lies flat on the saw, for stairs and casings.

A mitre across the face makes the top and bottom edges differ by height × tan(mitre), as a
standing mitre makes back and face differ.  Between raking and level trim the mitre is half the
bend.  On a slope ``s`` a plumb cut is ``s`` from square, a level cut 90° - ``s``.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Cut
from trimlang.joinery.wedges import lean_of, wedge
from trimlang.joint_row import Edge, Fit, Mitre
from trimlang.joints import Joint
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import saw_reading, tangent
from trimlang.lengths.tape import NOTHING
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Trim

_HEAD_MITRE: Final = Fraction(45)


def face_mitre(end: End, slope: Fraction) -> Fraction:
    """Return the mitre across the face at a stair's end, in degrees from square."""
    follows = end.joint.mitre
    if follows is Mitre.HALF_THE_BEND:
        return abs(end.bend) / 2
    # Plumb is the pitch from square, and level is what that lacks of 90°.
    return abs(slope) if follows is Mitre.THE_PITCH else 90 - abs(slope)


def stair_end(end: End, side: Side, slope: Fraction, trim: Trim, settings: Settings) -> Cut:
    """Return the cut at a rake, plumb or level end of a run that rises by ``slope``."""
    exact = face_mitre(end, slope)
    if end.joint.bends:
        # Where the trim turns upwards the angle below the bend is the wide one: the bottom edge is
        # longer.
        long_edge = Edge.BOTTOM if end.bend > 0 else Edge.TOP
    else:
        # At the upper end a plumb cut leaves the top edge longer; a level cut, or the lower end,
        # turns that round.
        upper = (slope > 0) == (side is Side.RIGHT)
        plumb = end.joint.mitre is Mitre.THE_PITCH
        long_edge = Edge.TOP if upper == plumb else Edge.BOTTOM
    return face_cut(end.joint, side, exact, trim.height or NOTHING, long_edge, settings)


def casing_mitre(side: Side, wide: Fraction, settings: Settings) -> Cut:
    """Return the mitre where two members of a casing meet that are ``wide`` inches wide."""
    head = Joint.HEAD
    return face_cut(head, side, _HEAD_MITRE, wide, head.long_point, settings)


def face_cut(
    joint: Joint, side: Side, exact: Fraction, across: Fraction, long_edge: Edge, settings: Settings
) -> Cut:
    """Return a mitre across a face that is ``across`` inches from edge to edge.

    The piece lies face up with its top or outer edge away from you.
    """
    setting = saw_reading(exact, settings.saw_step)
    return Cut(
        joint=joint,
        fit=Fit.MITRED,
        exact=exact,
        setting=setting,
        lean=lean_of(side, long_edge if exact else Edge.BOTH),
        long_edge=long_edge if exact else Edge.BOTH,
        inset=across * tangent(exact),
        gap=wedge(across, exact, setting, pieces=1 if joint.row.on_slope else 2),
    )
