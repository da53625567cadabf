"""Scribing to an uneven floor: how much comes off the bottom of a run.

A run is set level and its bottom edge is cut to the floor, so at the floor's highest place the
trim loses as much as the largest gap is.  Where two neighbours lose different amounts, their
tops no longer line up, unless both are cut alike.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from typing import Final

from trimlang.joinery.on_the_wall import floor_trim
from trimlang.lengths.tape import length_text
from trimlang.survey.job import Gap, Job, Room, Run, Trim
from trimlang.survey.measures import Findings

SEEN: Final = Fraction(1, 8)
"""Inches; tops that differ by more than this are noticed (common practice, no source)."""


def scribe(job: Job, run: Run, trim: Trim) -> Fraction:
    """Return the most that is scribed off the bottom of a trim (inches).

    0 for trim that does not stand on the floor, for shoe, which bends to the floor, and where
    shoe that is taller than the gap covers it.
    """
    # Most floors are level, and then there is nothing to look for.
    floor = floor_trim(job, run) if run.floor_gap else None
    if floor is None or floor.name != trim.name:
        return Fraction(0)
    covers = (
        other.height
        for other in map(job.trim, run.trims)
        if other.in_front_of == trim.name and other.height is not None
    )
    return Fraction(0) if any(tall > run.floor_gap for tall in covers) else run.floor_gap


def check_scribes(job: Job, room: Room, findings: Findings) -> None:
    """Report neighbours that lose visibly different amounts of their height."""
    walk = room.walk
    pairs = list(pairwise(walk))
    if not room.open_walk and len(walk) > 2:
        pairs.append((walk[-1], walk[0]))
    for one, other in pairs:
        if isinstance(one, Gap) or isinstance(other, Gap) or not one.trims or not other.trims:
            continue
        # Where nothing goes on in sight, no two tops have to be in line.
        if one.right.joint.row.stands_alone or other.left.joint.row.stands_alone:
            continue
        floor, its = floor_trim(job, one), floor_trim(job, other)
        # Unlike trims have tops of unlike height anyway.
        if floor is None or its is None or floor.name != its.name:
            continue
        losses = [scribe(job, run, floor) for run in (one, other)]
        if abs(losses[0] - losses[1]) > SEEN:
            findings.say(
                "T407",
                other.span,
                one=one.label,
                other=other.label,
                differ=length_text(abs(losses[0] - losses[1]), room.settings.unit),
                larger=length_text(max(losses), room.settings.unit),
                lesser=(one if losses[0] < losses[1] else other).span,
            )
