"""The walls that one trim runs along: crown goes on over openings, base stops at them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from trimlang.joinery.piece import Remark
from trimlang.joinery.splices import lapping_side
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.job import Gap, Job, Room, Run, Trim
from trimlang.survey.outline import Leg, Outline, Point
from trimlang.survey.spans import goes_on_at


@record
class Wall:
    """A run with what lies around it: its job and room, its place in the plan, the entrance."""

    job: Job
    room: Room
    run: Run
    leg: Leg
    entrance: Point | None
    remarks: tuple[Remark, ...] = ()

    def laps(self, at: Fraction) -> str:
        """Return which piece laps over the other at a joint ``at`` inches from the left."""
        return lapping_side(self.leg, self.entrance, at)


def walls(job: Job, room: Room, drawn: Outline) -> Iterator[tuple[Wall, Trim]]:
    """Yield each run of a room with each of its trims, in the order of the walk.

    Crown that meets an opening from both sides, its ends butts, goes on over it:
    such runs are one for the crown, under the first one's label.
    """
    over: dict[str, set[int]] = {}
    for leg in drawn.legs:
        run = room.walk[leg.index]
        if not isinstance(run, Run):
            continue
        for name in run.trims:
            trim = job.trim(name)
            if leg.index in over.get(name, ()):
                continue
            wall = Wall(job, room, run, leg, drawn.entrance)
            if trim.spring is not None:
                wall, reached = _over_openings(wall, name)
                over.setdefault(name, set()).update(reached)
            yield wall, trim


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
    return replace(wall, run=run, remarks=tuple(remarks)), reached
