"""The walls that one trim runs along: crown goes on over openings, base stops at them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Remark
from trimlang.joinery.splice_lengths import lapping_side
from trimlang.joints import Fit, Joint
from trimlang.lengths.tape import NOTHING
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.job import End, Gap, Job, Room, Run, Trim
from trimlang.survey.outline import Leg, Outline, Point
from trimlang.survey.over_openings import goes_on_at

NEARLY_SQUARE: Final = 5
"""Degrees: a square end that butts against a wall as crooked as that is closed with caulk."""


@record
class Wall:
    """A run with what lies around it: its job and room, its place in the plan, the entrance.

    ``last`` is the place in the walk of the run that it reaches to, over openings;
    ``alone`` the sides where it runs into an inside corner that its trim has no mate in;
    ``trims`` all that any wall of the room gets.
    """

    job: Job
    room: Room
    run: Run
    leg: Leg
    entrance: Point | None
    remarks: tuple[Remark, ...] = ()
    last: int | None = None
    alone: frozenset[str] = frozenset()
    trims: frozenset[str] = frozenset()

    def beside(self, side: str) -> Run | None:
        """Return the run that meets this one at its end; None where none does.

        A room of one wall meets itself.
        """
        walk, own = self.room.walk, self.leg.index
        at = own - 1 if side == "left" else (own if self.last is None else self.last) + 1
        if self.room.open_walk and not 0 <= at < len(walk):
            return None
        other = walk[at % len(walk)]
        return other if isinstance(other, Run) else None

    def under(self, trim: Trim, side: str) -> tuple[Fraction, Fraction]:
        """How far a trim stands off the wall at an end, and off the next wall at their corner.

        Both by the thickness of the trim that it stands in front of, where the wall has it.
        In a room that gets none of that, it is on the walls already.
        """
        behind = trim.in_front_of
        if behind is None:
            return NOTHING, NOTHING
        deep = self.job.trim(behind).thickness or NOTHING
        if behind not in self.trims:
            return deep, deep
        own = deep if behind in self.run.trims else NOTHING
        other = self.beside(side)
        return own, own if other is None else deep if behind in other.trims else NOTHING

    def laps(self, at: Fraction) -> str:
        """Return which piece laps over the other at a joint ``at`` inches from the left."""
        return lapping_side(self.leg, self.entrance, at)


def walls(job: Job, room: Room, drawn: Outline) -> Iterator[tuple[Wall, Trim]]:
    """Yield each run of a room with each of its trims, in the order of the walk.

    Crown that meets an opening from both sides, its ends butts, goes on over it:
    such runs are one for the crown, under the first one's label.
    """
    over: dict[str, set[int]] = {}
    trims = frozenset(name for run in room.runs for name in run.trims)
    for leg in drawn.legs:
        run = room.walk[leg.index]
        if not isinstance(run, Run):
            continue
        for name in run.trims:
            trim = job.trim(name)
            if leg.index in over.get(name, ()):
                continue
            wall = Wall(job=job, room=room, run=run, leg=leg, entrance=drawn.entrance, trims=trims)
            if trim.spring is not None:
                wall, reached = _over_openings(wall, name)
                over.setdefault(name, set()).update(reached)
            yield _without_mates(wall, trim), trim


def _without_mates(wall: Wall, trim: Trim) -> Wall:
    """Return the wall whose trim runs square into an inside corner that it meets none in."""
    run = wall.run
    alone = frozenset(
        side
        for side, end in (("left", run.left), ("right", run.right))
        if end.joint.is_inside
        and (end.corner is None or abs(end.corner - 90) <= NEARLY_SQUARE)
        and (other := wall.beside(side)) is not None
        and trim.name not in other.trims
    )
    if not alone:
        return wall
    left = _square(run.left) if "left" in alone else run.left
    right = _square(run.right) if "right" in alone else run.right
    return replace(wall, run=replace(run, left=left, right=right), alone=alone)


def _square(end: End) -> End:
    return replace(end, joint=Joint.BUTT, fit=Fit.MITRED)


def _over_openings(wall: Wall, name: str) -> tuple[Wall, list[int]]:
    """Return the wall with the runs that the trim reaches over openings, and their places."""
    walk, run, index = wall.room.walk, wall.run, wall.leg.index
    reached: list[int] = []
    remarks: list[Remark] = []
    while (at := goes_on_at(wall.room, index, name)) is not None:
        gaps = [stretch for stretch in walk[index + 1 : at] if isinstance(stretch, Gap)]
        after = walk[at]
        assert isinstance(after, Run)  # noqa: S101  goes_on_at says so
        index = at
        reached.append(at)
        names = [gap.called for gap in gaps]
        if None in names:
            goes_on = Remark(N_("goes on over the opening to {run}"), (("run", after.label),))
        else:
            over = ", ".join(filter(None, names))
            values = (("over", over), ("run", after.label))
            goes_on = Remark(N_("goes on over {over} to {run}"), values)
        remarks.append(goes_on)
        run = replace(
            run,
            length=run.length + sum((gap.along for gap in gaps), Fraction(0)) + after.length,
            right=after.right,
            must_splice=run.must_splice or after.must_splice,
            may_splice=run.may_splice and after.may_splice,
        )
    last = reached[-1] if reached else None
    return replace(wall, run=run, remarks=tuple(remarks), last=last), reached
