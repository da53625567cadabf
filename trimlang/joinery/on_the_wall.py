"""Which trims stand where on a run's wall: on its floor, in front of that, or as crown above."""

from __future__ import annotations

from fractions import Fraction

from trimlang.lengths.tape import NOTHING
from trimlang.survey.job import Job, Room, Run, Trim


def floor_trim(job: Job, run: Run) -> Trim | None:
    """Return the trim that stands on the floor along a run: the first that it names."""
    first = job.trim(run.trims[0]) if run.trims else None
    plain = first is not None and first.spring is None and first.in_front_of is None
    return first if plain else None


def is_on_floor(job: Job, run: Run, trim: Trim) -> bool:
    """Tell whether a trim stands on the floor along a run, or in front of what stands there."""
    floor = floor_trim(job, run)
    # Shoe on base is on the floor as base is; so is what stands in front of both.
    while trim.in_front_of is not None:
        # Shoe stands before whatever is on the floor, also before another trim than it was declared
        # in front of.
        if trim.in_front_of not in run.trims:
            return floor is not None and trim.spring is None
        trim = job.trim(trim.in_front_of)
    return floor is not None and trim.name == floor.name


def stands_off(job: Job, room: Room, run: Run, trim: Trim) -> Fraction:
    """Return how far a trim's back is from a run's wall: what is behind it there (inches).

    Behind shoe that is whatever stands on the floor.  In a room that gets no such trim, the
    trim behind it is taken to be on the walls already.
    """
    if trim.in_front_of is None:
        return NOTHING
    behind = job.trim(trim.in_front_of)
    if behind.name in run.trims:
        return (behind.thickness or NOTHING) + stands_off(job, room, run, behind)
    # Shoe stands before whatever is on the floor, also where that is another trim than the one
    # it was declared in front of.
    floor = floor_trim(job, run)
    if trim.spring is None and floor is not None and floor.name != trim.name:
        return floor.thickness or NOTHING
    kin = trim.spring is None and any(floor_trim(job, one) for one in room.runs)
    named = any(behind.name in one.trims for one in room.runs)
    return NOTHING if named or kin else behind.thickness or NOTHING


def in_its_place(job: Job, run: Run, trim: Trim, other: Run) -> Trim | None:
    """Return the next wall's trim that stands where this one would go on, if there is one."""
    if trim.spring is not None:
        # Like is compared with like: crown with crown, shoe with shoe, base with base.
        crowns = (one for one in map(job.trim, other.trims) if one.spring is not None)
        return next(crowns, None)
    if trim.in_front_of is not None:
        fronts = (
            one
            for one in map(job.trim, other.trims)
            if one.in_front_of is not None and one.spring is None
        )
        return next(fronts, None)
    floor = floor_trim(job, other)
    return floor if floor_trim(job, run) == trim else None
