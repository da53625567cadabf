"""Cuts across the face of a trim that lies flat on the saw, for stairs and casings.

A mitre across the face makes the top and bottom edges differ by height × tan(mitre), as a
standing mitre makes back and face differ.  Between raking and level trim the mitre is half the
bend.  On a slope ``s`` a plumb cut is ``s`` from square, a level cut 90° - ``s``.

In a corner the cut of climbing trim is an upright plane.  Where it stands ``m`` from square in
plan, the piece that lies flat is mitred by ``s`` and bevelled by ``m``: with the face's axes
u = (cos s, 0, sin s), v = (-sin s, 0, cos s) and out n, the plane's normal (cos m, 0, 0) + n sin m
is cos m (cos s u - sin s v) + sin m n, which is a blade swung by s and tilted by m.  Through the
thickness t the end then runs t × tan m ÷ cos s along the piece.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from trimlang.joinery.cuts import AnglesOfEnd
from trimlang.joinery.meeting import Meeting, Meets
from trimlang.joinery.piece import Cut
from trimlang.joinery.wedges import lean_of, wedge
from trimlang.joint_row import Edge, Fit
from trimlang.joints import Joint
from trimlang.joints_by_role import CASING_CORNER
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import MITRE_OF_SQUARE, RIGHT, cosine, saw_reading, tangent
from trimlang.lengths.tape import NOTHING
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Trim


def stair_end(end: End, side: Side, slope: Fraction, trim: Trim, settings: Settings) -> Cut:
    """Return the cut at a rake, plumb or level end of a run that rises by ``slope``."""
    exact = end.joint.mitre(AnglesOfEnd(end, settings, slope))
    if end.joint.row.bends:
        # Where the trim turns upwards the angle below the bend is the wide one: the bottom edge is
        # longer.
        long_edge = Edge.BOTTOM if end.bend > 0 else Edge.TOP
    else:
        # At the upper end a plumb cut leaves the top edge longer; a level cut, or the lower end,
        # turns that round.
        upper = (slope > 0) == (side is Side.RIGHT)
        long_edge = Edge.TOP if upper == end.joint.row.upright else Edge.BOTTOM
    return face_cut(end.joint, side, exact, trim.height or NOTHING, long_edge, settings)


def casing_mitre(side: Side, wide: Fraction, settings: Settings) -> Cut:
    """Return the mitre where two members of a casing meet that are ``wide`` inches wide."""
    at = CASING_CORNER
    return face_cut(at, side, MITRE_OF_SQUARE, wide, at.row.long_point, settings)


def plumb_corner(met: Meeting, side: Side, slope: Fraction, trim: Trim, settings: Settings) -> Cut:
    """Return the upright cut of climbing trim at a corner: at its mate, at a wall or at a face."""
    back, face = met.edges(trim)
    corner = RIGHT if met.corner is None else met.corner
    # Against a wall or a face the whole corner is cut on this piece; with a mate each takes half.
    if met.meets is Meets.PLANE:
        bevel = abs(RIGHT - corner) if met.is_crooked else NOTHING
    else:
        bevel = RIGHT - corner / 2
    upper = (slope > 0) == (side is Side.RIGHT)
    plumb = face_cut(
        met.end.joint,
        side,
        abs(slope),
        trim.height or NOTHING,
        Edge.TOP if upper else Edge.BOTTOM,
        settings,
    )
    thick = trim.thickness or NOTHING
    through = thick * tangent(bevel) / cosine(slope)
    setting = saw_reading(bevel, settings.saw_step)
    pieces = 1 if met.meets is Meets.PLANE else 2
    return replace(
        plumb,
        fit=met.end.fit,
        inset=plumb.inset + through,
        through=through,
        through_edge=(Edge.FACE if face > back else Edge.BACK) if bevel else Edge.BOTH,
        bevel=bevel,
        bevel_setting=setting,
        gap=plumb.gap + wedge(thick, bevel, setting, pieces=pieces),
        assumed=met.end.corner is None and met.end.joint.is_corner,
        corner_error=met.end.corner_error,
    )


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
