"""The small level piece that joins level crown to crown that climbs with its ceiling.

Along a gable wall crown climbs with the ceiling; along the wall below or above the slope it may
hang at its own spring, level.  Between them, on the gable's wall, goes a level piece of the same
crown: mitred in the corner with the level run as in any room, and cut with the climbing one at
half of the slope, which makes them mirror images.  Both touch the ceiling only where the piece's
ceiling edge comes to a point.  With a crown that stands out p and hangs down h, in a corner θ and
below a ceiling that rises by φ away from it, that point lies p × tan(90° - θ/2) from the corner,
and the piece's wall edge is

    p × tan(90° - θ/2) + h × tan(φ/2)

long: the joint leans towards the corner by tan(φ/2) on the way up (geometry).  Where the ceiling
falls away from the corner φ counts as less than 0.  A fillet that stands out as far as the ceiling
edge is then in the way by its height × tan(φ/2), which is pared off (geometry).
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.crown import drop, projection
from trimlang.joinery.meeting import LevelPiece, Meeting, Meets
from trimlang.joinery.remarks import Remark, SaidLength
from trimlang.joinery.sloped_beads import CrownBehind, along_crown
from trimlang.joinery.sloped_ceilings import ceiling_beyond, under_ceiling
from trimlang.joint_row import Fit
from trimlang.joints_by_role import BEND
from trimlang.language.facts import Side
from trimlang.lengths.angles import RIGHT, tangent
from trimlang.lengths.tape import NOTHING, steps_nearest
from trimlang.marking import N_
from trimlang.settings.table import Settings
from trimlang.survey.job import Room, Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.over_openings import beyond

_BEGINS: Final = {
    Side.LEFT: N_("left: meets a level piece whose wall edge is {long} long, in the corner"),
    Side.RIGHT: N_("right: meets a level piece whose wall edge is {long} long, in the corner"),
}


def hung(
    met: Meeting,
    trim: Trim,
    *,
    room: Room,
    run: Run,
    at: int,
    side: Side,
    crown: CrownBehind,
    findings: Findings,
) -> Meeting:
    """Return how a trim meets at a corner below its ceiling; only crown and its bead mind that.

    ``met`` is how it would below a level ceiling, ``at`` the place in the walk that the corner
    lies beside, ``crown`` what a bead runs along.
    """
    if trim.spring is None and trim.before_crown is None:
        return met
    there = ceiling_beyond(room, at, trim, side)
    place = next((one for one in beyond(room, at, side.step)), None)
    mate = None if place is None else room.walk[place]
    comes_level = isinstance(mate, Run) and side.other in mate.turns_level
    if trim.before_crown is not None:
        if not (there or run.ceiling):
            return met
        # A level piece would have to come into the corner with its own bead.
        level = comes_level or side in run.turns_level
        bead = None if level else along_crown(met, run, there, side, crown)
        if bead is None:
            findings.say("T485", run.span, trim=trim.name, crown=trim.before_crown, run=run.label)
        return bead or met
    if side in run.turns_level and run.ceiling:
        return _climbing(
            met, trim, run=run, there=there, side=side, settings=room.settings, findings=findings
        )
    if isinstance(mate, Run) and comes_level and met.meets is Meets.MATE:
        # A level piece comes round the corner: this one hangs as below a level ceiling.
        across = mate.ceiling if side is Side.RIGHT else -mate.ceiling
        return replace(met, end=replace(met.end, fit=Fit.MITRED), roll=NOTHING, across=across)
    if place is not None and met.meets is Meets.MATE and not (run.ceiling or there):
        # Round a corner that is level both ways it hangs at its own spring, as its mate does.
        return replace(met, roll=NOTHING)
    return under_ceiling(met, run.ceiling, there, side)


def _climbing(
    met: Meeting,
    trim: Trim,
    *,
    run: Run,
    there: Fraction,
    side: Side,
    settings: Settings,
    findings: Findings,
) -> Meeting:
    """Return how climbing crown ends at the level piece that goes on into the corner."""
    if met.meets is not Meets.MATE or met.outside or there:
        findings.say("T480", met.end.span, trim=trim.name, run=run.label, side=side)
        return met
    spring, wide = trim.spring or NOTHING, trim.height or NOTHING
    # As one walks away from the corner: more than 0 where the ceiling rises.
    away = run.ceiling if side is Side.LEFT else -run.ceiling
    turn = tangent(RIGHT - (met.corner or RIGHT) / 2)
    long = projection(wide, spring) * turn + drop(wide, spring) * tangent(away / 2)
    if long <= 0:
        findings.say("T481", met.end.span, trim=trim.name, run=run.label, side=side)
        return met
    bend = run.ceiling if side is Side.LEFT else -run.ceiling
    rake = replace(met.end, joint=BEND, fit=Fit.MITRED, corner=None, bend=bend)
    begins = SaidLength(steps_nearest(long, settings.rounding_step), settings.unit)
    return Meeting(
        end=rake,
        meets=Meets.ITSELF,
        off=met.off,
        short=met.off * turn + long,
        level=LevelPiece(long=long, corner=replace(met.end, fit=Fit.MITRED)),
        remark=Remark(_BEGINS[side], (("long", begins),)),
    )
