"""How trim ends beside a cased opening: against its plinth at the floor, its casing above.

A run is measured to where the floor's trim stops, so to the plinth where a leg stands on one.
Plinth and casing have their inner edges in line, so trim above the plinth goes on past it by what
the plinth is wider (geometry).
"""

from __future__ import annotations

from typing import Final

from trimlang.joinery.meeting import Meeting, Meets
from trimlang.joinery.on_the_wall import is_on_floor
from trimlang.joinery.piece import Remark
from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.marking import N_
from trimlang.survey.block_fits import casing_with_band
from trimlang.survey.job import End, Gap, Job, Room, Run, Trim

_AT_A_BLOCK: Final = {
    Side.LEFT: N_("its left end meets a block, “{block}”"),
    Side.RIGHT: N_("its right end meets a block, “{block}”"),
}


def beside_opening(
    job: Job, room: Room, run: Run, trim: Trim, end: End, following: int | None, side: Side
) -> Meeting:
    """Return what a run's trim meets at an end without a corner.

    ``following`` is the place in the walk of what comes after that end, None where nothing does.
    """
    met = Meeting(end=end, meets=Meets.ITSELF)
    gap = room.walk[following] if following is not None else None
    if not isinstance(gap, Gap) or gap.casing is None or gap.trimmings.plinth is None:
        return met
    plinth = gap.trimmings.plinth
    if is_on_floor(job, run, trim):
        told = Remark(_AT_A_BLOCK[side], (("block", plinth.name),))
        return Meeting(end=end, meets=Meets.ITSELF, remark=told)
    by_name = {one.name: one for one in job.trims}
    leg = casing_with_band(job.trim(gap.casing), gap.trimmings, by_name, room.settings)
    # negative: it does not end short of the run's own end but goes on past it
    return Meeting(end=end, meets=Meets.ITSELF, short=min(leg - plinth.wide, NOTHING))
