"""Which trims stand where on a run's wall: on its floor, in front of that, or as crown above."""

from __future__ import annotations

from trimlang.survey.job import Job, Run, Trim


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
        trim = job.trim(trim.in_front_of)
    return floor is not None and trim.name == floor.name


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
