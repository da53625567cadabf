"""Crown below a ceiling that slopes: what its corners, its ends and its hang become.

Crown keeps its angle to the ceiling, so the ceiling is the plane to reckon from.  In it the two
edges along the walls make a corner θ', and the crowns turn that as an ordinary corner: they are
mitred for θ' at their own spring, and the saw's settings are those of a level ceiling with such a
corner.  What changes is how they lie against the wall: where wall and ceiling make 90° + ρ, the
crown leans by ρ less to the wall than its spring, and its bearing there is planed by ρ.  Along a
gable ρ is 0; along the walls below and above a single slope of q it is q and -q.  A wall whose two
ends want unlike ρ cannot have one crown: turned at one end it would stand off at the other.

With the walls' directions e and f in space, rising as the ceiling does, the ceiling is square to
c = e × f, and θ' is between -e and f.  Square to e lie "out" into the room and "up" the wall; ρ is
the angle whose tangent is -c·out ÷ c·up (vectors; the walls are upright).

An end that stops at something upright is cut in an upright plane.  In the axes of the piece that
lies flat (along, across its face from the wall's edge, out of its face) the plane's way out N gives
tan(mitre) = N·across ÷ N·along and tan(bevel) = N·out ÷ N·along × cos(mitre).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.crown import CrownCut
from trimlang.joinery.meeting import Meeting, Meets
from trimlang.joinery.piece import Cut
from trimlang.joinery.remarks import Remark, SaidLength, pitch_of
from trimlang.joinery.wedges import lean_of, wedge
from trimlang.joint_row import Edge, Fit
from trimlang.joints_by_role import USUAL
from trimlang.language.facts import Side
from trimlang.lengths.angles import (
    RIGHT,
    STRAIGHT,
    TENTH,
    arc_cosine,
    arc_tangent,
    cosine,
    degrees_text,
    saw_reading,
    sine,
    tangent,
)
from trimlang.lengths.tape import NOTHING, steps_nearest
from trimlang.marking import N_
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Gap, Room, Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.over_openings import beyond

ALIKE: Final = Fraction(1, 2)
"""Degrees that the hang wanted at a wall's two ends may differ by: caulk takes it (common practice,
no source)."""

OUT_OF_LEVEL: Final = Fraction(2)
"""Degrees up to which a ceiling is rather out of level than sloped, so that crown may be set level
and scribed to it (common practice, no source)."""

BEAM_CORNER: Final = USUAL
"""What crown makes with its piece along the side of a beam."""

_ALONG: Final = {
    Side.LEFT: N_("below a ceiling that rises {pitch} to the left: {long} along it"),
    Side.RIGHT: N_("below a ceiling that rises {pitch} to the right: {long} along it"),
}
_HANGS: Final = N_(
    "hangs {hang} from the wall, and {own} from the ceiling as ever: plane its wall bearing by"
    " {roll}"
)
_RISES_AWAY: Final = N_(
    "hangs level at its own spring, and the ceiling rises {pitch} from the wall: plane its ceiling"
    " bearing by that"
)
_FALLS_AWAY: Final = N_(
    "hangs level at its own spring, and the ceiling falls {pitch} from the wall: its ceiling edge"
    " alone bears"
)
_BEAD: Final = N_("follows the ceiling with its crown, and stands square to it")
_SCRIBE: Final = N_("or set it level and scribe up to {gap} off its ceiling edge")

Vector = tuple[Fraction, Fraction, Fraction]


@record
class CeilingCorner:
    """A corner in the plane of its ceiling: its angle there, and how the first wall's crown hangs.

    ``roll`` is by how much less than its spring it leans to that wall.  Degrees.
    """

    angle: Fraction
    roll: Fraction


def ceiling_corner(
    corner: Fraction, own: Fraction, other: Fraction, *, outside: bool
) -> CeilingCorner:
    """Return the corner at the right end of a wall below a ceiling.

    ``corner`` is between the walls in plan, through the room or, outside, through the wall;
    ``own`` and ``other`` are the ceiling's slopes along both, positive where they rise to the
    right.  All in degrees.
    """
    turn = STRAIGHT - corner
    turn = -turn if outside else turn
    first: Vector = (cosine(own), NOTHING, sine(own))
    second: Vector = (cosine(other) * cosine(turn), cosine(other) * sine(turn), sine(other))
    up = _cross(first, second)
    # Of the two ways square to a plane the one that points up is meant; outside corners give the
    # other.
    if up[2] < 0:
        up = (-up[0], -up[1], -up[2])
    # Square to the first wall's edge: out into the room, and up its wall.
    rising: Vector = (-sine(own), NOTHING, cosine(own))
    roll = arc_tangent(-up[1] / _dot(up, rising))
    return CeilingCorner(angle=arc_cosine(-_dot(first, second)), roll=roll)


def under_ceiling(met: Meeting, own: Fraction, other: Fraction, side: Side) -> Meeting:
    """Return how crown meets at a corner below its ceiling; as it was below a level one."""
    if not own and not other:
        return met
    # A left end is the mirror image of a right one, in which every slope goes the other way.
    way = 1 if side is Side.RIGHT else -1
    # What is assumed of a corner that nobody measured is drywall, not the room's shape: it is added
    # to the angle in the end.
    assumed = (met.corner or RIGHT) - RIGHT if met.end.corner is None else NOTHING
    corner = (met.corner or RIGHT) - assumed
    there = ceiling_corner(corner, way * own, way * other, outside=met.outside)
    angle = there.angle + assumed
    end = replace(met.end, corner=angle) if met.meets is Meets.MATE else met.end
    return replace(met, end=end, roll=there.roll)


def ceiling_beyond(room: Room, at: int, trim: Trim, side: Side) -> Fraction:
    """Return how the ceiling slopes along the wall round the corner (degrees).

    ``at`` is the place in the walk that the corner lies beside.  A beam that turns the trim is
    taken to be level.
    """
    for place in beyond(room, at, side.step):
        stretch = room.walk[place]
        if isinstance(stretch, Run):
            return stretch.ceiling
        if trim.name in stretch.turns:
            return NOTHING
    return NOTHING


def turned_by_beam(room: Room, following: int | None, trim: Trim, end: End) -> End:
    """Return how a trim ends beside a beam that turns it: in the corner that the beam makes."""
    beside = None if following is None else room.walk[following]
    if isinstance(beside, Gap) and trim.name in beside.turns:
        return replace(end, joint=BEAM_CORNER, corner=RIGHT)
    return end


def along_ceiling(
    run: Run, trim: Trim, ends: tuple[Meeting, Meeting], settings: Settings, findings: Findings
) -> tuple[Run, Fraction, tuple[Remark, ...]]:
    """Return a crown's run as long as it is along its ceiling, its roll, and what is said of both.

    A bead along a crown goes with it.  Reports a crown that would have to hang in two ways, or
    that no wall would hold.
    """
    rolls = [met.roll for met in ends if met.roll is not None]
    across = next((met.across for met in ends if met.across), NOTHING)
    if not run.ceiling and not any(rolls) and not across:
        return run, NOTHING, ()
    along = replace(run, length=run.length / cosine(run.ceiling))
    # By so little as both may differ it hangs as the steeper ceiling says, whichever end has that.
    roll = max(rolls, key=lambda one: (abs(one), one), default=NOTHING)
    if trim.spring is None:
        return (along, roll, (Remark(_BEAD, ()),)) if trim.before_crown else (run, NOTHING, ())
    spring = trim.spring
    if rolls and max(rolls) - min(rolls) > ALIKE:
        hangs = (degrees_text(steps_nearest(spring - one, TENTH)) for one in rolls)
        names = dict(zip(("left", "right"), hangs, strict=True))
        findings.say("T451", run.span, run=run.label, trim=trim.name, **names)
    elif not 0 < spring - roll < RIGHT:
        findings.say("T452", run.span, run=run.label, trim=trim.name)
        roll = NOTHING
    # A return turns square to the crown's own line, and that is not level here, so its profile
    # would not meet the wall.
    if any(met.end.joint.returns for met in ends) and run.ceiling:
        findings.say("T455", run.span, run=run.label, trim=trim.name)
    # What a level piece in a corner takes up is no part of what climbs.
    taken = sum((met.short for met in ends if met.level is not None), NOTHING)
    climbs = replace(along, length=along.length - taken / cosine(run.ceiling))
    said = (*_across(across), *_remarks(run, climbs, spring, roll, settings))
    return along, roll, said


def _across(slope: Fraction) -> Iterator[Remark]:
    """Yield how a crown that hangs at its own spring bears on a ceiling that slopes across it."""
    if slope:
        yield Remark(_RISES_AWAY if slope > 0 else _FALLS_AWAY, (("pitch", pitch_of(slope)),))


def _remarks(
    run: Run, along: Run, spring: Fraction, roll: Fraction, settings: Settings
) -> Iterator[Remark]:
    step, unit = settings.rounding_step, settings.unit
    if run.ceiling:
        side = Side.RIGHT if run.ceiling > 0 else Side.LEFT
        long = SaidLength(steps_nearest(along.length, step), unit, in_feet=True)
        yield Remark(_ALONG[side], (("pitch", pitch_of(run.ceiling)), ("long", long)))
    if steps_nearest(roll, TENTH):
        sizes = {"hang": spring - roll, "own": RIGHT - spring, "roll": roll}
        yield Remark(_HANGS, tuple((name, pitch_of(one)) for name, one in sizes.items()))
    if 0 < abs(run.ceiling) <= OUT_OF_LEVEL:
        gap = steps_nearest(run.length * tangent(abs(run.ceiling)), step)
        yield Remark(_SCRIBE, (("gap", SaidLength(gap, unit)),))


def stops_upright(met: Meeting) -> bool:
    """Tell whether a crown's end below a sloping ceiling is cut upright, at what it stops at."""
    # The mate of a cope stops at the wall as if nothing else were there.
    square_in = met.meets is Meets.MATE and met.end.fit is Fit.SQUARE
    plain = met.meets is not Meets.MATE and not (met.end.joint.laps or met.end.joint.returns)
    return square_in or plain


def upright_end(
    met: Meeting, side: Side, run: Run, roll: Fraction, trim: Trim, settings: Settings
) -> Cut:
    """Return the cut of a crown at something upright: a casing, a beam, a wall or, coped, a mate.

    At a ridge (a rake) it is cut at half of what the ceiling bends by.  A bead is cut as crown that
    is square to the ceiling.
    """
    spring = (trim.spring or NOTHING) - roll
    way = 1 if side is Side.RIGHT else -1
    slope = way * run.ceiling
    if met.end.joint.row.bends:
        # Half of what it bends by is on each side, whichever end this is.
        normal, slope = (Fraction(1), NOTHING), -met.end.bend / 2
    elif met.meets is Meets.ITSELF or met.corner is None:
        normal = (Fraction(1), NOTHING)
    else:
        normal = (sine(met.corner), cosine(met.corner) * (-1 if met.outside else 1))
    along = normal[0] * cosine(slope)
    rising = -normal[0] * sine(slope)
    across = (sine(spring) * normal[1] + cosine(spring) * rising) / along
    through = (cosine(spring) * normal[1] - sine(spring) * rising) / along
    mitre = arc_tangent(abs(across))
    bevel = arc_tangent(abs(through) * cosine(mitre))
    step = settings.saw_step
    readings = saw_reading(mitre, step), saw_reading(bevel, step)
    wide, thick = trim.height or NOTHING, trim.thickness or NOTHING
    long_edge = _longer(across)
    ceiling = {Edge.BACK: Edge.BOTTOM, Edge.FACE: Edge.TOP}.get(long_edge, long_edge)
    gap = wedge(wide, mitre, readings[0], pieces=1) + wedge(thick, bevel, readings[1], pieces=1)
    cut = Cut(
        joint=met.end.joint,
        fit=met.end.fit,
        exact=mitre,
        setting=readings[0],
        lean=lean_of(side, ceiling),  # lying face up its ceiling edge is the top
        long_edge=long_edge,
        inset=wide * abs(across),
        gap=gap,
        bevel=bevel,
        bevel_setting=readings[1],
        through=thick * abs(through),
        through_edge=_longer(through),
    )
    if trim.spring is None:
        return replace(cut, long_edge=ceiling, inset=cut.inset + cut.through)
    crown = CrownCut(
        mitre=mitre,
        mitre_setting=readings[0],
        bevel=bevel,
        bevel_setting=readings[1],
        nested=None,
        nested_setting=None,
    )
    return replace(cut, crown=crown)


def _longer(outwards: Fraction) -> Edge:
    """Return the edge at which an end is longest whose plane leans outwards by so much."""
    return Edge.BOTH if not outwards else Edge.BACK if outwards > 0 else Edge.FACE


def _cross(one: Vector, other: Vector) -> Vector:
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )


def _dot(one: Vector, other: Vector) -> Fraction:
    return sum((a * b for a, b in zip(one, other, strict=True)), NOTHING)
