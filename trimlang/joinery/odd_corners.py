"""What tickets say of corners that no plain mitre closes: out of plumb, or rounded and cut in two.

Geometry.  Walls whose angle changes from floor to ceiling are twisted, so no one mitre, with or
without a bevel, fits both ends of the joint: a cut is flat.  It is set for mid height; there the
angle is off by half of the difference at either end, and each piece's mitre by a quarter, which
opens the joint by the wedge of that (``wedges.wedge``).  Inside, a mitre too steep for its height
opens at the face and one too flat behind; outside it is the other way round.

In a room where crown goes up the two angles are those at the floor and at the ceiling.  Crown, its
frieze and its bead are no higher than a few inches of the wall, so they are set for the angle at
the ceiling, what stands on the floor for that at the floor, and only what is between for the mean.

Two mitred pieces round a corner of radius R, where the walls turn by φ, leave a hollow behind
their joint: on the line that halves the corner the round lies R ÷ cos(φ/2) - R behind the point
where the walls' faces would meet.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.cuts import mitred_corner
from trimlang.joinery.on_the_wall import is_on_floor
from trimlang.joinery.piece import Cut
from trimlang.joinery.remarks import Remark, SaidAngle, SaidLength, Value
from trimlang.joinery.wedges import wedge
from trimlang.joint_row import Fit
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import STRAIGHT, cosine
from trimlang.marking import N_
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Job, Room, Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.outline import depth_of

_TWISTED: Final = {
    Side.LEFT: N_(
        "left corner out of plumb by {twist}: set for mid height; it may open {gap} at the face, at"
        " the {where}"
    ),
    Side.RIGHT: N_(
        "right corner out of plumb by {twist}: set for mid height; it may open {gap} at the face,"
        " at the {where}"
    ),
}
_AT_ONE_END: Final = {
    (Side.LEFT, True): N_(
        "left corner out of plumb by {twist}: set for the angle at the ceiling; with that at the"
        " floor it would open {gap}; try scraps up there"
    ),
    (Side.RIGHT, True): N_(
        "right corner out of plumb by {twist}: set for the angle at the ceiling; with that at the"
        " floor it would open {gap}; try scraps up there"
    ),
    (Side.LEFT, False): N_(
        "left corner out of plumb by {twist}: set for the angle at the floor; with that at the"
        " ceiling it would open {gap}"
    ),
    (Side.RIGHT, False): N_(
        "right corner out of plumb by {twist}: set for the angle at the floor; with that at the"
        " ceiling it would open {gap}"
    ),
}
"""What is said of a trim that is set for one of two angles, by its side and whether it hangs."""
_HOLLOW: Final = {
    Side.LEFT: N_("rounded left corner, mitred in two: {hollow} hollow behind"),
    Side.RIGHT: N_("rounded right corner, mitred in two: {hollow} hollow behind"),
}
FLOOR: Final = N_("floor")
TOP: Final = N_("top")


def at_its_height(end: End, job: Job, room: Room, run: Run, trim: Trim) -> End:
    """Return an end with the angle that its corner has where the trim is.

    ``end`` has the mean of both angles where it is out of plumb.
    """
    if end.corner is None or not end.wider_below:
        return end
    low = _is_at_one_end(job, room, run, trim)
    if low is None:
        return end
    half = end.wider_below / 2
    # The mean and half of the difference are the angle at one end.
    return replace(end, corner=end.corner + (half if low else -half))


def _is_at_one_end(job: Job, room: Room, run: Run, trim: Trim) -> bool | None:
    """Tell whether a trim is at the floor, and not at the ceiling; None for any height between."""
    # Without crown in the room, the second angle was taken at the trim's own top.
    if not any(job.trim(name).hangs for one in room.runs for name in one.trims):
        return None
    if trim.hangs:
        return False
    return True if is_on_floor(job, run, trim) else None


def corner_remarks(
    job: Job, room: Room, run: Run, trim: Trim, cuts: tuple[Cut, Cut], findings: Findings
) -> Iterator[Remark]:
    """Yield what the ticket says of both ends of a run; a joint that opens too far is reported."""
    settings = room.settings
    for side, end, cut in zip(Side, (run.left, run.right), cuts, strict=True):
        if not end.joint.is_corner:
            continue
        low = _is_at_one_end(job, room, run, trim) if end.wider_below else None
        if low is not None and end.corner is not None:
            # Only a mitre can be set for the wrong angle: a cope is scribed to its mate.
            if cut.fit is Fit.MITRED:
                mitre = (STRAIGHT - end.corner) / 2
                there = mitre + end.wider_below / (2 if low else -2)
                opens = SaidLength(_up(wedge(depth_of(trim), there, mitre)))
                twist = SaidAngle(abs(end.wider_below))
                yield Remark(_AT_ONE_END[side, not low], (("twist", twist), ("gap", opens)))
            continue
        if trim.spring is not None:
            continue
        if end.bullnose is not None and end.two_pieces:
            # A corner that nobody measured is as wide as its mitre is made for.
            corner = mitred_corner(end, settings)
            hollow = {"hollow": SaidLength(_up(hollow_behind(end.bullnose, corner)))}
            yield Remark(_HOLLOW[side], tuple(hollow.items()))
        if end.corner is None:
            continue
        # A cope is scribed to its mate, whatever the angle.
        if end.wider_below and cut.fit is Fit.MITRED:
            gap = opens_at_ends(trim.thickness or Fraction(0), end.corner, end.wider_below)
            # Wider than at mid height: there the mitre is too steep.
            at_floor = (end.wider_below > 0) == end.joint.is_inside
            where = FLOOR if at_floor else TOP
            said: dict[str, Value] = {
                "twist": SaidAngle(abs(end.wider_below)),
                "gap": SaidLength(_up(gap)),
                "where": where,
            }
            yield Remark(_TWISTED[side], tuple(said.items()))
            # Caulk or filler hides a gap up to the job's limit; a wider one shows.
            if gap > _limit(end, settings):
                findings.say("T473", end.span, run=run.label, trim=trim.name, **said)


def opens_at_ends(thickness: Fraction, corner: Fraction, twist: Fraction) -> Fraction:
    """Return how far a joint set for mid height opens at its floor or its top (inches)."""
    mitre = (STRAIGHT - corner) / 2
    return max(wedge(thickness, mitre + part * twist / 4, mitre) for part in (1, -1))


def hollow_behind(radius: Fraction, corner: Fraction) -> Fraction:
    """Return how far a round lies behind the point of its corner (inches)."""
    return radius / cosine((STRAIGHT - corner) / 2) - radius


def _limit(end: End, settings: Settings) -> Fraction:
    return settings.gap_in if end.joint.is_inside else settings.gap_out


def _up(size: Fraction) -> Fraction:
    """Round up to a 64th, so that no gap is said to be too small."""
    return Fraction(-(-size * 64 // 1), 64)
