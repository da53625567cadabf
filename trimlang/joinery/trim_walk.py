"""Each trim's own walk round a room: where it begins, what stops it, what each end meets.

Base stops at a door; crown goes on over it, to the next run or into the corner that the door
stands in.  A trim in front of another follows that one's face.  At a corner a trim meets itself
on the next wall; or another trim in its place there, and then one of the two runs through and
the other dies into its face; or nothing, and then it ends at the wall.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache

from trimlang.joinery.at_blocks import at_corner_block, at_transition
from trimlang.joinery.beside_casing import (
    behind_a_return,
    beside_opening,
    into_its_corner,
    leg_in_corner,
)
from trimlang.joinery.bullnose import rounded
from trimlang.joinery.crown import drop
from trimlang.joinery.cuts import mitred_corner
from trimlang.joinery.level_turns import hung
from trimlang.joinery.limits import ask_of_scraps
from trimlang.joinery.meeting import FreeEnd, Meeting, Meets, at_plane
from trimlang.joinery.odd_corners import at_its_height
from trimlang.joinery.on_the_wall import in_its_place, round_its_crown, stands_off
from trimlang.joinery.remarks import Remark
from trimlang.joinery.slope_corners import AroundCorner, turned
from trimlang.joinery.sloped_beads import NO_CROWN, CrownBehind
from trimlang.joinery.sloped_ceilings import turned_by_beam
from trimlang.joinery.splice_lengths import lapping_side
from trimlang.joinery.strips import Strip, along, goes_on_over, past_a_door, run_of, strips
from trimlang.joinery.unlike_neighbours import UnlikeCorner, ask_of_scarf, with_another
from trimlang.joint_row import Fit
from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.record import record
from trimlang.survey.job import End, Gap, Job, Room, Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.outline import Outline, outline
from trimlang.survey.over_openings import beyond


@record
class Wall:
    """One trim's stretch of wall: its runs, and the openings that it goes on over.

    ``run`` is the first of its runs, but with the length of the whole stretch and the ends that
    this trim has.  ``index`` is the place in the walk at which it begins, ``drawn`` gives the
    room in plan.  ``before`` is how much of the stretch lies left of that run's own left end
    (inches).  ``left`` and ``right`` are what the trim meets at its ends, ``off`` is how far its
    back stands off the wall, ``crown`` what it runs along of that, where it is a bead.
    """

    job: Job
    room: Room
    run: Run
    index: int
    drawn: Callable[[], Outline]
    left: Meeting
    right: Meeting
    remarks: tuple[Remark, ...] = ()
    before: Fraction = NOTHING
    off: Fraction = NOTHING
    crown: CrownBehind = NO_CROWN

    def laps(self, at: Fraction) -> Side:
        """Return which piece laps over the other at a joint ``at`` inches from the left end."""
        plan = self.drawn()
        return lapping_side(plan.legs[self.index], plan.entrance, at - self.before)


def walls(
    job: Job, room: Room, findings: Findings, places: Iterable[int] | None = None
) -> Iterator[tuple[Wall, Trim]]:
    """Yield each stretch of each trim of a room, or those that begin at some places in its walk.

    Reports trims that cannot meet as the file says.
    """
    walk = TrimWalk(job, room, findings)
    for index in range(len(room.walk)) if places is None else places:
        for strip in walk.strips_from(index):
            yield walk.wall(strip), job.trim(strip.trim)


class TrimWalk:
    """Finds what each trim meets at its ends, in one room."""

    def __init__(self, job: Job, room: Room, findings: Findings) -> None:
        self._job = job
        self._room = room
        self._findings = findings
        self._names = dict.fromkeys(name for run in room.runs for name in run.trims)
        self._strips = {name: strips(room, job.trim(name)) for name in self._names}
        self._beginning = {(of, one.begins): one for of, its in self._strips.items() for one in its}
        # Only joints that lap ask for it: which side of theirs is seen from the entrance.
        self._drawn = cache(lambda: outline(room, job.trims))
        self._off: dict[tuple[tuple[str, ...], str], Fraction] = {}

    def strips_from(self, index: int) -> Iterator[Strip]:
        """Yield the strips that begin at a place in the walk, in the order of its run's trims."""
        stretch = self._room.walk[index]
        for name in stretch.trims if isinstance(stretch, Run) else self._names:
            if (name, index) in self._beginning:
                yield self._beginning[name, index]

    def wall(self, strip: Strip) -> Wall:
        """Return a strip as a stretch of wall with what it meets at both ends."""
        room, trim = self._room, self._job.trim(strip.trim)
        parts = [room.walk[place] for place in strip.places]
        runs = [part for part in parts if isinstance(part, Run)]
        left, right = self.meeting(strip, Side.LEFT), self.meeting(strip, Side.RIGHT)
        # Studs and the entrance are known from the first run's own end; a strip over a door may
        # begin further left.
        before = sum(map(along, parts[: strip.places.index(strip.begins)]), NOTHING)
        run = replace(
            run_of(room, strip, Side.LEFT),
            length=sum(map(along, parts), NOTHING),
            left=left.end,
            right=right.end,
            # One piece covers all its runs: a splice asked for on one is asked for on it, and one
            # forbidden on any of them is forbidden.
            must_splice=any(run.must_splice for run in runs),
            may_splice=all(run.may_splice for run in runs),
            floor_gap=max((run.floor_gap for run in runs), default=NOTHING),
        )
        remarks = [*goes_on_over(room, strip, trim)]
        # Of a wall that is spliced, each is told on the piece at its own end.
        for side, met in ((Side.LEFT, left), (Side.RIGHT, right)):
            remarks += [] if met.remark is None else [replace(met.remark, at=side)]
        ask_of_scraps(self._job, run, trim, self._findings)
        return Wall(
            job=self._job,
            room=room,
            run=run,
            index=strip.begins,
            drawn=self._drawn,
            left=left,
            right=right,
            remarks=tuple(remarks),
            before=before,
            off=self.stands_off(run, trim),
            crown=self._crown_behind(run, trim),
        )

    def meeting(self, strip: Strip, side: Side) -> Meeting:
        """Return what a strip's trim meets at one of its ends."""
        room, trim = self._room, self._job.trim(strip.trim)
        stretch = room.walk[strip.end(side)]
        end = side.of(stretch.left, stretch.right)
        assert end is not None  # noqa: S101  a run has both ends, and a door in a corner that one
        if isinstance(stretch, Gap):
            end = replace(end, over_scraps=False)  # an opening's width is never taken over scraps
        run = run_of(room, strip, side)
        at_block = at_corner_block(
            self._job, run, trim, side, self.stands_off(run, trim), self._findings
        )
        if at_block is not None and isinstance(stretch, Run):
            return at_block
        own = run.own_end(trim.name, side) if isinstance(stretch, Run) else None
        following = self._next(strip, side)
        if own is not None and end.joint.is_inside and not own.joint.is_corner:
            other = room.walk[following] if following is not None else None
            # It runs square into the corner, up to what stands on the next wall there.
            off = self.stands_off(other, trim) if isinstance(other, Run) else NOTHING
            return at_plane(self._corner(run, trim, end), off)
        at = FreeEnd(job=self._job, room=room, run=run, trim=trim, side=side, after=following)
        if own is None:
            end = past_a_door(room, following, trim, side, end)
            end = into_its_corner(end, at, self._findings)
        else:
            end = own
        end = turned_by_beam(room, following, trim, end)
        if not end.joint.is_corner:
            return self._without_corner(end, at)
        around = self._around(run, trim, following)
        if run.slope or around.slope:
            return turned(self._corner(run, trim, end), run, trim, around, side, self._findings)
        met = self._at_corner(run, trim, end, following, side)
        # One of the two ends at a rounded corner brings its small piece: the left of them.
        brings = side is Side.RIGHT or following is None
        met = rounded(met, trim, run.label, self._findings, brings=brings)
        if end.over_scraps and end.joint.is_outside:
            met = replace(met, scraps=self._scraps(run, end, strip, side))
        return hung(
            met,
            trim,
            room=room,
            run=run,
            at=strip.end(side),
            side=side,
            crown=self._crown_behind(run, trim),
            findings=self._findings,
        )

    def _around(self, run: Run, trim: Trim, following: int | None) -> AroundCorner:
        """Return what a trim meets on the next wall, its own kind or another in its place."""
        other = None if following is None else self._room.walk[following]
        if not isinstance(other, Run):
            return AroundCorner()
        there = trim if trim.name in other.trims else in_its_place(self._job, run, trim, other)
        off = self.stands_off(other, there or trim)
        return AroundCorner(run=other, trim=there, off=off, unit=self._room.settings.unit)

    def _without_corner(self, end: End, at: FreeEnd) -> Meeting:
        run, trim, side = at.run, at.trim, at.side
        off = self.stands_off(run, trim)
        ask_of_scarf(at, end, self._findings)
        met = beside_opening(end, at, off, self._findings)
        there = at_transition(at, off, self._findings)
        # A bead goes round the return of the crown that it runs along, where that is past the run.
        past = round_its_crown(self._job, run, trim, side) if met.end.joint.returns else NOTHING
        behind = behind_a_return(self._job, run, trim, side, off)
        return replace(met, remark=there or met.remark, off=behind, short=met.short - past)

    def _next(self, strip: Strip, side: Side) -> int | None:
        """Return the place in the walk of what comes next, None at the end of an open walk."""
        return next(beyond(self._room, strip.end(side), side.step), None)

    def _corner(self, run: Run, trim: Trim, end: End) -> Meeting:
        off = self.stands_off(run, trim)
        end = at_its_height(end, self._job, self._room, run, trim)
        return Meeting(
            end=end,
            meets=Meets.MATE,
            off=off,
            beyond=off,
            corner=mitred_corner(end, self._room.settings),
            outside=end.joint.is_outside,
        )

    def _at_corner(
        self, run: Run, trim: Trim, end: End, following: int | None, side: Side
    ) -> Meeting:
        plain = self._corner(run, trim, end)
        if following is None:
            return plain
        # First its own kind: a strip of the same trim that begins where this one ends.
        for strip in self._strips[trim.name]:
            if following == strip.end(side.other):
                other = run_of(self._room, strip, side.other)
                there = self._room.walk[following]
                alone = there.own_end(trim.name, side.other) if isinstance(there, Run) else None
                behind = self.stands_off(other, trim)
                met = plain if behind == plain.beyond else replace(plain, beyond=behind)
                # The neighbour's ends by itself, so nothing meets this one.
                if alone is not None and not alone.joint.is_corner:
                    return met if plain.outside else at_plane(plain, behind)
                mate = alone or side.other.of(there.left, there.right)
                # Of a coped corner one side runs square in; the other is coped to its face.
                if mate is not None and mate.fit is Fit.COPED and end.fit is not Fit.COPED:
                    return replace(met, end=replace(met.end, fit=Fit.SQUARE))
                return met
        other_stretch = self._room.walk[following]
        if isinstance(other_stretch, Gap) and trim.name in other_stretch.turns:
            # Along the beam's side stands what the beam turns, and nothing else is behind it there.
            side_of_beam = replace(run, trims=other_stretch.turns)
            return replace(plain, beyond=self.stands_off(side_of_beam, trim))
        if isinstance(other_stretch, Gap):
            facing = side.other.of(other_stretch.left, other_stretch.right)
            if facing is None or facing.joint is not end.joint:
                return plain
            # The door reaches the corner too: there is only its casing to meet, or the wall.
            inside = not plain.outside
            leg = leg_in_corner(self._job, run, trim, other_stretch) if inside else NOTHING
            return at_plane(plain, leg)
        corner = UnlikeCorner(
            job=self._job, room=self._room, run=run, trim=trim, other=other_stretch, side=side
        )
        return with_another(corner, plain, self._findings)

    def stands_off(self, run: Run, trim: Trim) -> Fraction:
        """Return how far a trim's back is from a run's wall (inches)."""
        # All that it goes by in one room; each end asks, and each neighbour of that end.
        key = (run.trims, trim.name)
        if key not in self._off:
            self._off[key] = stands_off(self._job, self._room, run, trim)
        return self._off[key]

    def _crown_behind(self, run: Run, trim: Trim) -> CrownBehind:
        """Return the crown that a bead runs along; nothing of other trim, or without one there."""
        crown = None if trim.before_crown is None else self._job.trim(trim.before_crown)
        if crown is None or crown.spring is None:
            return NO_CROWN
        out = self.stands_off(run, trim) - self.stands_off(run, crown)
        return CrownBehind(out, drop(crown.height or NOTHING, crown.spring)) if out else NO_CROWN

    def _scraps(self, run: Run, end: End, strip: Strip, side: Side) -> Fraction:
        """Return how far past the wall's end the scraps reached that the tape ran over (inches)."""
        name = end.scraps_of if end.scraps_of in self._names else run.trims[0]
        trim = self._job.trim(name)
        while end.scraps_of is None and trim.in_front_of and self.stands_off(run, trim):
            trim = self._job.trim(trim.in_front_of)  # scraps are of what stands on the wall
        plain = replace(end, over_scraps=False)
        mate = self._at_corner(run, trim, plain, self._next(strip, side), side)
        return mate.long_point(trim)
