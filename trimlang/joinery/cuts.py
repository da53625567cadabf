"""What each end joint asks of the saw, and what it adds to the length.

Geometry (plan view, thickness ``t``, mitre ``m`` from square): the two edges of a mitred end
differ by ``t × tan(m)``.  At an inside corner the back edge is the longer one and is as long as
the wall; at an outside corner the face edge is longer than the wall by that much.  A trim in
front of another meets its corners further out, by the thickness of the one behind it.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.crown import crown_cut, projection
from trimlang.joinery.meeting import Meeting, Meets
from trimlang.joinery.piece import Cut, Lean
from trimlang.joinery.wedges import crown_wedges, lean_of, wedge
from trimlang.joint_row import Edge, Fit
from trimlang.joints import Joint
from trimlang.joints_by_role import STOPPED
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import (
    RIGHT,
    STRAIGHT,
    arc_tangent,
    mitre_of_corner,
    saw_reading,
    tangent,
)
from trimlang.lengths.tape import NOTHING
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Trim

# Degrees from square: beyond, the tangent grows without limit and a doubt in the angle means
# nothing.
STEEPEST: Final = Fraction(89)


@record
class AnglesOfEnd:
    """The angles that an end's mitre can follow from (degrees); see ``EndAngles``."""

    end: End
    settings: Settings
    pitch: Fraction = NOTHING

    @property
    def half_corner(self) -> Fraction:
        """90° less half the corner, as measured or as the settings assume it."""
        if self.end.corner is not None:
            return mitre_of_corner(self.end.corner)
        return self.settings.mitre_in if self.end.joint.is_inside else self.settings.mitre_out

    @property
    def written(self) -> Fraction | None:
        """What the file gives with the joint."""
        return self.end.corner

    @property
    def bend(self) -> Fraction:
        """By how much the trim's pitch changes there."""
        return self.end.bend

    @property
    def scarf(self) -> Fraction:
        """At what angle the file has scarfs cut."""
        return self.settings.splice_angle


def exact_mitre(end: End, settings: Settings) -> Fraction:
    """Return the mitre in degrees from square; 0 for a square end."""
    # The mate of a cope runs square into the corner, whatever the corner's angle.
    if end.fit is Fit.SQUARE:
        return NOTHING
    return end.joint.mitre(AnglesOfEnd(end, settings))


def mitred_corner(end: End, settings: Settings) -> Fraction:
    """Return the corner that two pieces with this joint's mitre make (degrees).

    It is the walls' own corner but where a joint leaves a part of the turn to something else.
    """
    return STRAIGHT - 2 * end.joint.mitre(AnglesOfEnd(end, settings))


def meeting_cut(meeting: Meeting, side: Side, trim: Trim, settings: Settings, laps: Side) -> Cut:
    """Return the cut at one end of a piece of ``trim``; ``meeting`` says what it meets there.

    ``side`` and ``laps`` are as for ``end_cut``.
    """
    # First what butts, then what meets an unlike trim: neither follows half of the corner.
    if meeting.is_crooked:
        return _bevelled(meeting, side, trim, settings)
    if meeting.meets is Meets.UNLIKE and trim.thickness:
        return _unlike_mitre(meeting, side, trim.thickness, trim, settings)
    return end_cut(meeting.end, side, trim, settings, laps)


def _bevelled(meeting: Meeting, side: Side, trim: Trim, settings: Settings) -> Cut:
    """Return a cut along a wall or a face that the trim does not meet squarely."""
    back, face = meeting.edges(trim)
    long_edge = Edge.BACK if back > face else Edge.FACE
    corner = meeting.corner or RIGHT
    # The end lies flat against the wall, so the cut is off square by as much as the corner is: a
    # butt, not half of a mitre.
    exact = abs(RIGHT - corner)
    if trim.spring is not None:
        return _crown_mitre(meeting.end, side, trim, exact, long_edge, settings)
    setting = saw_reading(exact, settings.saw_step)
    return Cut(
        joint=meeting.end.joint,
        fit=meeting.end.fit,
        exact=exact,
        setting=setting,
        lean=lean_of(side, long_edge),
        long_edge=long_edge,
        inset=abs(back - face),
        gap=wedge(trim.thickness or NOTHING, exact, setting, pieces=1),
        # Set too steep, the cut touches the wall at its long edge first and stays open at the
        # other.
        opens_at=Edge.FACE if (setting > exact) == (long_edge is Edge.BACK) else Edge.BACK,
    )


def _unlike_mitre(
    meeting: Meeting, side: Side, thickness: Fraction, trim: Trim, settings: Settings
) -> Cut:
    """Return the mitre of two unlike trims: from where their backs meet to where their faces do."""
    back, face = meeting.edges(trim)
    # A right triangle along the wall: the thickness is one leg, and how much further the face
    # reaches than the back is the other leg; less than 0 where the back reaches further.
    own = arc_tangent((face - back) / thickness)
    # Both mitres share one line, so together they are what the walls turn by, which inside is the
    # other way: there the backs are the long edges.
    turn = 180 - (meeting.corner or NOTHING)
    mate = (turn if meeting.outside else -turn) - own
    setting, its = (_closed_at_face(mitre, settings) for mitre in (own, mate))
    gap = wedge(thickness, abs(own), setting, pieces=1)
    gap += wedge(meeting.thick, abs(mate), its, pieces=1)
    long_edge = Edge.FACE if face > back else Edge.BACK if back > face else Edge.BOTH
    return Cut(
        joint=meeting.end.joint,
        fit=meeting.end.fit,
        exact=abs(own),
        setting=setting,
        lean=lean_of(side, long_edge),
        long_edge=long_edge,
        inset=abs(face - back),
        gap=gap,
        assumed=meeting.end.corner is None,
        corner_error=meeting.end.corner_error,
        doubt=_doubt(meeting.end, abs(own), thickness),
        opens_at=Edge.BACK,
    )


def _closed_at_face(mitre: Fraction, settings: Settings) -> Fraction:
    """Return the next setting that leaves a piece longer at its face, where the corner is seen.

    ``mitre`` is less than 0 where the back is the long edge; the gentler setting does that then.
    """
    return abs(saw_reading(mitre, settings.saw_step, steeper=True))


def end_cut(end: End, side: Side, trim: Trim, settings: Settings, laps: Side) -> Cut:
    """Return the cut at one end of a piece of ``trim``.

    ``laps`` says, for a scarf, which of its two pieces lies over the other.
    """
    if trim.spring is not None:
        return _crown_end(end, side, trim, settings, laps)
    exact = exact_mitre(end, settings)
    setting = corner_reading(end, exact, settings)
    thickness = trim.thickness or NOTHING
    if end.joint.laps:
        # Of the two parallel cuts, the one on the piece that laps over is longer at the face.
        long_edge = Edge.BACK if side == laps else Edge.FACE
    else:
        long_edge = end.joint.row.long_point if exact else Edge.BOTH
    return Cut(
        joint=end.joint,
        fit=end.fit,
        exact=exact,
        setting=setting,
        lean=lean_of(side, long_edge),
        long_edge=long_edge,
        inset=thickness * tangent(exact) if exact else NOTHING,
        # Both cuts of a scarf are made with one setting and stay parallel, so nothing opens.
        gap=NOTHING if end.joint.laps else wedge(thickness, exact, setting),
        assumed=end.corner is None and end.joint.is_corner,
        corner_error=end.corner_error,
        doubt=_doubt(end, exact, thickness),
        opens_at=_opens_at(end, exact, setting),
    )


def corner_reading(end: End, exact: Fraction, settings: Settings) -> Fraction:
    """Return the setting that the saw can read: the nearest, or the steeper one outside.

    At an outside corner the steeper one closes at the face, where the corner is seen.
    """
    return saw_reading(exact, settings.saw_step, steeper=end.joint.is_outside)


def _opens_at(end: End, exact: Fraction, setting: Fraction) -> Edge:
    """Return the edge where a joint opens: inside, a too steep mitre touches at the back first."""
    return Edge.FACE if (setting > exact) == end.joint.is_inside else Edge.BACK


def _doubt(end: End, exact: Fraction, thickness: Fraction) -> Fraction:
    """Return what a sixteenth in the corner's diagonal can open at the face (inches)."""
    if end.corner_error is None or not exact:
        return NOTHING
    # Each of the two pieces is off by half of the corner's error.
    off = min(exact + end.corner_error / 2, STEEPEST)
    return wedge(thickness, exact, off)


def _crown_end(end: End, side: Side, trim: Trim, settings: Settings, laps: Side) -> Cut:
    """Return the cut at one end of a crown, with mitre and bevel for lying flat."""
    standing, step = exact_mitre(end, settings), settings.saw_step
    thickness = trim.thickness or NOTHING
    if end.joint.laps:
        # A scarf is cut straight across the face, so for a crown that lies flat only the blade is
        # tilted.
        long_edge = Edge.BACK if side == laps else Edge.FACE
        return replace(
            square_cut(end.joint),
            lean=lean_of(side, long_edge),
            long_edge=long_edge,
            inset=thickness * tangent(standing),
            bevel=standing,
            bevel_setting=saw_reading(standing, step),
        )
    # A square end needs neither mitre nor bevel, so it lies any way and has no crown's cut.
    if standing == 0:
        return square_cut(end.joint, end.fit)
    return _crown_mitre(end, side, trim, standing, end.joint.row.long_point, settings)


def _crown_mitre(
    end: End, side: Side, trim: Trim, standing: Fraction, long_edge: Edge, settings: Settings
) -> Cut:
    """Return the cut of a crown that is mitred by ``standing`` degrees as it hangs on the wall."""
    thickness, width = trim.thickness or NOTHING, trim.height or NOTHING
    spring, step = trim.spring or NOTHING, settings.saw_step
    inside = long_edge is Edge.BACK
    cut = crown_cut(spring, standing, step)
    at_face, at_back = crown_wedges(
        (width, thickness),
        (cut.mitre, cut.bevel),
        (cut.mitre_setting, cut.bevel_setting),
        standing,
        inside=inside,
    )
    return Cut(
        joint=end.joint,
        fit=end.fit,
        exact=cut.mitre,
        setting=cut.mitre_setting,
        # lying face up the ceiling edge is its top
        lean=lean_of(side, Edge.BOTTOM if inside else Edge.TOP),
        long_edge=long_edge,
        # Seen from above, the crown is as deep as it stands out from the wall.
        inset=projection(width, spring) * tangent(standing),
        gap=at_face or at_back,
        opens_at=Edge.FACE if at_face else Edge.BACK,
        assumed=end.corner is None and end.joint.is_corner,
        corner_error=end.corner_error,
        bevel=cut.bevel,
        bevel_setting=cut.bevel_setting,
        crown=cut,
    )


def square_cut(joint: Joint = STOPPED, fit: Fit = Fit.MITRED) -> Cut:
    """Return a square cut, which adds and takes nothing."""
    return Cut(
        joint=joint,
        fit=fit,
        exact=NOTHING,
        setting=NOTHING,
        lean=Lean.UPRIGHT,
        long_edge=Edge.BOTH,
        inset=NOTHING,
    )


def scarf_lap(trim: Trim, settings: Settings) -> Fraction:
    """Return how far one piece of a scarf lies over the other along the wall (inches)."""
    return (trim.thickness or NOTHING) * tangent(settings.splice_angle)
