"""Which trims stand where on a run's wall: on its floor, in front of that, or as crown above."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.survey.in_front import height_below
from trimlang.survey.job import Job, Room, Run, Trim
from trimlang.survey.outline import depth_of


def floor_trim(job: Job, run: Run) -> Trim | None:
    """Return the trim that stands on the floor along a run: the first that it names there.

    Crown and its frieze may be named before it, since they hang.
    """
    first = next((one for one in map(job.trim, run.trims) if not one.hangs), None)
    return first if first is not None and first.in_front_of is first.upon is None else None


def is_on_floor(job: Job, run: Run, trim: Trim) -> bool:
    """Tell whether a trim stands on the floor along a run, or in front of what stands there."""
    if trim.hangs:
        return False
    floor = floor_trim(job, run)
    # Shoe at base is on the floor as base is; so is what stands in front of both, or on them.
    while (below := trim.in_front_of or trim.upon) is not None:
        # Shoe stands before whatever is on the floor, also before another trim than it was declared
        # in front of. A cap lies on its own base or on none.
        if below not in run.trims:
            return floor is not None and trim.in_front_of is not None
        trim = job.trim(below)
    return floor is not None and trim.name == floor.name


def foot_of(job: Job, run: Run, trim: Trim) -> Fraction:
    """Return how high a cap begins above what its base stands on; 0 for other trim (inches)."""
    return height_below(trim, {one.name: one for one in job.trims}, run.trims)


def stands_off(job: Job, room: Room, run: Run, trim: Trim) -> Fraction:
    """Return how far a trim's back is from a run's wall: what is behind it there (inches).

    Behind shoe that is whatever stands on the floor.  In front of crown it is all by which that
    stands out.  In a room that gets no such trim, the trim behind it is taken to be on the walls
    already.
    """
    if trim.in_front_of is None:
        return NOTHING
    behind = job.trim(trim.in_front_of)
    further = stands_off(job, room, run, behind)
    if behind.name in run.trims:
        return depth_of(behind) + further
    named = any(behind.name in one.trims for one in room.runs)
    if trim.hangs:
        # Without its frieze a run's crown goes on the wall, as its bead does without its crown.
        return further if named else depth_of(behind) + further
    # Shoe stands before whatever is on the floor, also where that is another trim than the one
    # it was declared in front of.
    floor = floor_trim(job, run)
    if floor is not None and floor.name != trim.name:
        return depth_of(floor)
    kin = any(floor_trim(job, one) for one in room.runs)
    return NOTHING if named or kin else depth_of(behind)


def round_its_crown(job: Job, run: Run, trim: Trim, side: Side) -> Fraction:
    """Return how far trim in front of a crown goes past an end at which that crown is returned.

    The crown's ceiling edge ends as far past the run as the crown stands out; its bead goes round
    that, its face further by its own thickness (inches).  0 where nothing returns there.
    """
    if trim.before_crown not in run.trims or not run.end_of(trim.before_crown, side).joint.returns:
        return NOTHING
    out = NOTHING
    while trim.spring is None and trim.in_front_of is not None:
        out += depth_of(trim) if trim.name in run.trims else NOTHING
        trim = job.trim(trim.in_front_of)
    return out + depth_of(trim)


def in_its_place(job: Job, run: Run, trim: Trim, other: Run) -> Trim | None:
    """Return the next wall's trim that stands where this one would go on, if there is one."""
    if not trim.hangs and trim.in_front_of is trim.upon is None:
        floor = floor_trim(job, other)
        # What both walls have meets itself there, so it is in no other's place.
        alone = floor is not None and floor.name not in run.trims
        # Where a taller trim is named after the first, which of them is on the floor is not sure.
        sure = not any(_order_is_doubtful(job, one) for one in (run, other))
        return floor if alone and sure and floor_trim(job, run) == trim else None
    # Like is compared with like: crown with crown, shoe with shoe, frieze with frieze.
    return next((one for one in map(job.trim, other.trims) if _place(one) == _place(trim)), None)


def may_meet(job: Job, run: Run, trim: Trim, other: Run) -> Iterator[Trim]:
    """Yield the next wall's trims that may stand at this one's height: only the file can tell.

    Those are on the wall itself, and on one of the two walls alone.  What is on the floor meets
    none above it, unless a taller one is named after it, so that its place is not sure.
    """
    if trim.name in other.trims or not _on_wall_itself(trim):
        return
    sure = all(_floor_is_sure(job, one) for one in (run, other))
    for there in map(job.trim, other.trims):
        low = floor_trim(job, run) == trim or floor_trim(job, other) == there
        if there.name not in run.trims and _on_wall_itself(there) and not (sure and low):
            yield there


def _on_wall_itself(trim: Trim) -> bool:
    return not trim.hangs and trim.in_front_of is trim.upon is None


def _order_is_doubtful(job: Job, run: Run) -> bool:
    """Tell whether a run names a taller trim after the first that stands on the wall itself."""
    tall = [one.height or NOTHING for one in map(job.trim, run.trims) if _on_wall_itself(one)]
    return NOTHING not in tall and tall[:1] < [max(tall, default=NOTHING)]


def _floor_is_sure(job: Job, run: Run) -> bool:
    """Tell whether the first trim that a run names is also its tallest, or the only one."""
    tall = [one.height or NOTHING for one in map(job.trim, run.trims) if _on_wall_itself(one)]
    return len(tall) < 2 or (tall[0] == max(tall) and NOTHING not in tall)


def _place(trim: Trim) -> tuple[bool, bool, bool, bool, bool]:
    """Return where a trim is in what goes up together: crown, or above, in front or behind, on."""
    crown = trim.spring is not None
    front = trim.in_front_of is not None and not crown
    return crown, trim.hangs, front, trim.before_crown is not None, trim.upon is not None
