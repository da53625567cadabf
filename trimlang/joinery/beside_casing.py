"""How trim ends beside a cased opening: against its plinth at the floor, its casing above.

A run is measured to where the floor's trim stops, so to the plinth where a leg stands on one.
Plinth and casing have their inner edges in line, so trim above the plinth goes on past it by what
the plinth is wider (geometry).  Trim that stands out further than what it ends at shows its end;
a taper takes off the part that does, from the casing's face forwards.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.at_blocks import meets_block
from trimlang.joinery.cuts import exact_mitre
from trimlang.joinery.meeting import FreeEnd, Meeting, Meets
from trimlang.joinery.on_the_wall import is_on_floor
from trimlang.joinery.remarks import Remark, SaidAngle, SaidLength
from trimlang.joint_row import Fit
from trimlang.joints import Joint
from trimlang.language.facts import Side
from trimlang.lengths.angles import tangent
from trimlang.lengths.tape import NOTHING, length_text
from trimlang.marking import N_
from trimlang.survey.block_fits import casing_with_band
from trimlang.survey.job import End, Gap, Job, Run, Trim
from trimlang.survey.measured_walk import called
from trimlang.survey.measures import Findings
from trimlang.survey.outline import depth_of

_STANDS_OUT: Final = {
    Side.LEFT: N_("left: saw it square, then bevel {proud} off its front corner at {angle}"),
    Side.RIGHT: N_("right: saw it square, then bevel {proud} off its front corner at {angle}"),
}
_EASED: Final = Fraction(1, 16)
"""Inches; what stands out by no more is eased by hand (common practice, no source)."""


def beside_opening(end: End, at: FreeEnd, off: Fraction, findings: Findings) -> Meeting:
    """Return how a run's trim ends where the walls do not turn, with what its ticket says of it.

    ``off`` is how far its back is from the wall (inches).
    """
    proud = _proud(at, off)
    met = _standing_out(_beside_plinth(_as_it_stands_out(end, at, proud), at), at, proud, findings)
    short = _short_of_tapers(at, off)
    return replace(met, short=met.short + short) if short else met


def _beside_plinth(end: End, at: FreeEnd) -> Meeting:
    """Return what a run's trim meets at an end without a corner."""
    met, gap, job = Meeting(end=end, meets=Meets.ITSELF), at.gap, at.job
    if gap is None or gap.casing is None or gap.trimmings.plinth is None:
        return met
    plinth = gap.trimmings.plinth
    # Down at the floor the plinth is what it meets, and nothing else changes.
    if is_on_floor(job, at.run, at.trim):
        return replace(met, remark=meets_block(plinth, at.side))
    by_name = {one.name: one for one in job.trims}
    leg = casing_with_band(job.trim(gap.casing), gap.trimmings, by_name, at.room.settings)
    # negative: it does not end short of the run's own end but goes on past it
    return replace(met, short=min(leg - plinth.wide, NOTHING))


def leg_in_corner(job: Job, run: Run, trim: Trim, gap: Gap) -> Fraction:
    """Return how far the casing of an opening in a corner keeps trim on the next wall from it.

    The leg there stands on the opening's wall up to the corner, as far out as it is thick (inches;
    0 without a casing, and for trim on the floor below a window).
    """
    below = gap.sill is not None and is_on_floor(job, run, trim)
    if below or gap.lets_past(trim):
        return NOTHING
    return _thickness_there(job, run, trim, gap) or NOTHING


def into_its_corner(end: End, at: FreeEnd, findings: Findings) -> End:
    """Return the corner that a run butts into where the casing of an opening stands in it.

    A run's length is its wall, from the corner on, so what stops at the leg there is shorter.
    Whether it was measured so is asked, once a run.
    """
    corner = None if at.gap is None else at.side.other.of(at.gap.left, at.gap.right)
    if at.gap is None or corner is None or not corner.joint.is_inside or not end.joint.stops:
        return end
    leg = leg_in_corner(at.job, at.run, at.trim, at.gap)
    if not leg:
        return end
    stopped = (
        one for one in at.run.trims if leg_in_corner(at.job, at.run, at.job.trim(one), at.gap)
    )
    if at.trim.name == next(stopped):
        unit = at.room.settings.unit
        findings.say(
            "T326",
            end.span,
            run=at.run.label,
            gap=called(at.gap),
            leg=length_text(leg, unit),
            side=at.side,
            trim=at.trim.name,
            whole=length_text(at.run.length + leg, unit),
        )
    return replace(corner, fit=Fit.MITRED, span=end.span)


def _as_it_stands_out(end: End, at: FreeEnd, proud: Fraction | None) -> End:
    """Return how trim ends that butts a casing: as the file says of all that stands out past one.

    ``proud`` is as from ``_proud``.
    """
    said = at.room.settings.proud_ends
    if not said or proud is None or proud <= _EASED or not end.joint.stops:
        return end
    # What the file says of this one trim goes before what it says of all.
    return end if at.run.own_end(at.trim.name, at.side) else replace(end, joint=Joint.of(said))


def _standing_out(met: Meeting, at: FreeEnd, proud: Fraction | None, findings: Findings) -> Meeting:
    """Return how a trim ends at a casing that it may stand out from, with what its ticket says.

    ``proud`` is as from ``_proud``.
    """
    run, trim, side, settings, end = at.run, at.trim, at.side, at.room.settings, met.end
    if proud is None or trim.thickness is None:
        return met
    texts = {"trim": trim.name, "run": run.label}
    if end.joint.row.tapers:
        # It stands no further out than what it ends at, so there is nothing to slope off.
        if proud <= 0:
            findings.say("T443", end.span, **texts)
        angle = SaidAngle(exact_mitre(end, settings))
        # All of its thickness stands out, so the taper that the file asks for is the whole end.
        if proud >= trim.thickness:
            return met
        # A taper of less than the whole thickness is a second cut, made after a square one.
        square = replace(met, end=replace(end, corner=NOTHING))
        said = (("proud", SaidLength(proud, settings.unit)), ("angle", angle))
        return replace(square, remark=Remark(_STANDS_OUT[side], said)) if proud > 0 else square
    if end.joint.stops and not settings.proud_ends and proud > _EASED:
        sizes = {"proud": length_text(proud, settings.unit)}
        findings.say("T442", end.span, side=side, **texts, **sizes)
    return met


def _short_of_tapers(at: FreeEnd, off: Fraction) -> Fraction:
    """Return how far before its run's end what a trim stands on ends at its face (inches).

    That is what tapers behind it slope over: from the wall, or from the face of the casing there.
    """
    name = at.trim.in_front_of
    if name not in at.run.trims or at.trim.hangs:
        return NOTHING
    behind = replace(at, trim=at.job.trim(name))
    deep = depth_of(behind.trim)
    short = _short_of_tapers(behind, off - deep)
    proud = _proud(behind, off - deep)
    end = _as_it_stands_out(at.run.end_of(name, at.side), behind, proud)
    if not end.joint.row.tapers:
        return short
    sloped = deep if proud is None else min(max(proud, NOTHING), deep)
    return short + sloped * tangent(exact_mitre(end, at.room.settings))


def behind_a_return(job: Job, run: Run, trim: Trim, side: Side, off: Fraction) -> Fraction:
    """Return how far the return of what hangs reaches behind it, round what is behind (inches).

    ``off`` is how far its back is from the wall.  Where its crown or its frieze goes on, or stops
    at a wall, it only closes itself against that.
    """
    if not run.end_of(trim.name, side).joint.returns or trim.in_front_of not in run.trims:
        return NOTHING
    behind = job.trim(trim.in_front_of)
    if trim.spring is not None:
        return NOTHING if run.end_of(behind.name, side).joint.stops else off
    if trim.before_crown is None or not run.end_of(behind.name, side).joint.returns:
        return NOTHING
    # Round the crown's own return, which may itself reach round a frieze.
    return depth_of(behind) + behind_a_return(job, run, behind, side, off - depth_of(behind))


def _proud(at: FreeEnd, off: Fraction) -> Fraction | None:
    """Return how far trim stands out past the casing that it ends at, None where it meets none.

    ``off`` is how far its back is from the wall (inches).
    """
    # What hangs with a crown ends far above a casing.
    if at.gap is None or at.trim.hangs:
        return None
    past = _thickness_there(at.job, at.run, at.trim, at.gap)
    return None if past is None else off + depth_of(at.trim) - past


def _thickness_there(job: Job, run: Run, trim: Trim, gap: Gap) -> Fraction | None:
    """Return how far what a trim ends at stands out from the wall, None where that is not known."""
    if gap.casing is None:
        return None
    if gap.trimmings.plinth is not None and is_on_floor(job, run, trim):
        return gap.trimmings.plinth.thickness
    # A backband is the outermost edge, and what runs up to it meets that.
    edge = job.trim(gap.trimmings.backband or gap.casing)
    return edge.thickness
