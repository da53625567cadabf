"""Casings that reach into an inside corner: what stands there already, and what goes past them.

Two casings that both reach into one corner would stand in one place, as far out from either wall
as they are thick.  The one at the corner's left runs up to the wall, and the other is ripped
narrower, so that its edge stands against the first one's face.  For a horn, or a head that goes
past its legs, there is no room: it is sawn off at the wall.  (Geometry; that the right one gives
way: common practice, no source.)
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from trimlang.joinery.cased_opening import CasedOpening
from trimlang.joinery.meeting import Meeting, Meets
from trimlang.joinery.remarks import Remark, SaidLength
from trimlang.language.facts import Side
from trimlang.lengths.angles import RIGHT
from trimlang.lengths.tape import NOTHING, length_text, on_mark, steps_up
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.block_fits import casing_with_band
from trimlang.survey.job import End, Gap, Job, Room
from trimlang.survey.measured_walk import called
from trimlang.survey.measures import Findings
from trimlang.survey.over_openings import beyond

_RIP: Final = N_("rip {by} off its outer edge: in the corner it meets the casing of {other}")
_SAW_OFF: Final = {
    Side.LEFT: N_("in the corner saw {off} off its left end"),
    Side.RIGHT: N_("in the corner saw {off} off its right end"),
}


def check_corners(job: Job, room: Room, findings: Findings) -> None:
    """Report casings that overlap in an inside corner of a room."""
    for place, gap in enumerate(room.walk):
        if isinstance(gap, Gap) and (overlap := in_the_way(job, room, gap, place)):
            by = length_text(overlap.by, room.settings.unit)
            findings.say("T330", gap.span, gap=called(gap), other=called(overlap.other), by=by)


def ripped(opening: CasedOpening) -> Iterator[Remark]:
    """Yield what an opening's left leg gives way to in a corner of the room."""
    if opening.far:
        return
    place = opening.room.walk.index(opening.gap)
    overlap = in_the_way(opening.job, opening.room, opening.gap, place)
    if overlap is not None:
        by = SaidLength(overlap.by, opening.room.settings.unit)
        yield Remark(_RIP, (("by", by), ("other", called(overlap.other))))


def sawn_off(opening: CasedOpening, past: Fraction) -> Iterator[Remark]:
    """Yield where a level part is sawn off that goes ``past`` the casing at both sides (inches)."""
    job, room, gap = opening.job, opening.room, opening.gap
    place = room.walk.index(gap)
    overlap = in_the_way(job, room, gap, place)
    for side in Side:
        if opening.far or _corner(room, place, side) is None:
            continue
        off = past + (overlap.by if overlap is not None and side is Side.LEFT else 0)
        if off > 0:
            yield Remark(_SAW_OFF[side], (("off", SaidLength(off, room.settings.unit)),))


@record
class Overlap:
    """A casing that takes up ``by`` inches of the width of another's leg, round a corner."""

    other: Gap
    by: Fraction


def in_the_way(job: Job, room: Room, gap: Gap, place: int) -> Overlap | None:
    """Return the casing round an opening's left corner that its own leg would overlap, if any.

    ``place`` is the opening's in the walk.
    """
    corner, before = _corner(room, place, Side.LEFT), next(beyond(room, place, -1), None)
    other = None if before is None else room.walk[before]
    if corner is None or not isinstance(other, Gap):
        return None
    (deep, off), (there, off_there) = (_leg(job, room, one) for one in (gap, other))
    # Either of them may keep clear of the other, by the plinth that it stands on.
    if not deep or not there or off_there >= deep:
        return None
    square = RIGHT if corner.corner is None else corner.corner
    met = Meeting(end=corner, meets=Meets.PLANE, beyond=there, corner=square)
    # Its back and its face reach the other one's face at unlike depths where that is not square.
    by = -min(met.past(NOTHING), met.past(deep)) - off
    by = steps_up(on_mark(by, room.settings.rounding_step), room.settings.rounding_step)
    return Overlap(other, by) if by > 0 else None


def _corner(room: Room, place: int, side: Side) -> End | None:
    """Return the inside corner that an opening stands in at one side, if it does."""
    gap, after = room.walk[place], next(beyond(room, place, side.step), None)
    own = side.of(gap.left, gap.right)
    if own is None and after is not None and isinstance(there := room.walk[after], Gap):
        own = side.other.of(there.left, there.right)
    return own if own is not None and own.joint.is_inside else None


def _leg(job: Job, room: Room, gap: Gap) -> tuple[Fraction, Fraction]:
    """Return how far an opening's leg stands out, and how far it ends before what is below it."""
    if gap.casing is None:
        return NOTHING, NOTHING
    by_name = {one.name: one for one in job.trims}
    wide = casing_with_band(by_name[gap.casing], gap.trimmings, by_name, room.settings)
    plinth = gap.trimmings.plinth
    edge = by_name[gap.trimmings.backband or gap.casing]
    return edge.thickness or NOTHING, max(plinth.wide - wide, NOTHING) if plinth else NOTHING
