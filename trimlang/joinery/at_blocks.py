"""How trim ends at a block that fills a corner, or that stands in a wall between two trims.

It is cut square and as much shorter as the block covers of its wall, whatever stands on the other
side of the block: that is what lets two trims of unlike height or thickness meet.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Span
from trimlang.joinery.meeting import FreeEnd, Meeting, Meets
from trimlang.joinery.on_the_wall import foot_of, is_on_floor
from trimlang.joinery.remarks import Remark
from trimlang.joint_row import Fit
from trimlang.joints_by_role import STOPPED, UPRIGHT
from trimlang.language.facts import Side
from trimlang.lengths.tape import Unit, length_text
from trimlang.marking import N_
from trimlang.survey.job import Job, Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.on_walls import CasingBlock
from trimlang.survey.outline import depth_of

_AT_A_BLOCK: Final = {
    Side.LEFT: N_("its left end meets a block, “{block}”"),
    Side.RIGHT: N_("its right end meets a block, “{block}”"),
}


def meets_block(block: CasingBlock, side: Side) -> Remark:
    """Return what a ticket says of the block at one end."""
    return Remark(_AT_A_BLOCK[side], (("block", block.name),))


def at_corner_block(
    job: Job, run: Run, trim: Trim, side: Side, off: Fraction, findings: Findings
) -> Meeting | None:
    """Return how a trim ends at the block in a corner; None where none is, or it passes that trim.

    ``off`` is how far its back is from the wall (inches).
    """
    corner = run.side(side)
    if corner.block is None or not _is_stopped(job, run, trim, corner.block.stops):
        return None
    outside = corner.joint.is_outside
    block, out = corner.block.block, corner.block.stands_out(outside=outside)
    low = foot_of(job, run, trim)
    small = _too_small(block, out, trim, off, low, job.settings.unit)
    _say_small(small, block, run, trim, corner.span, findings)
    own = run.own_end(trim.name, side)
    square = replace(corner, joint=UPRIGHT if run.slope else STOPPED, fit=Fit.MITRED, bullnose=None)
    return Meeting(
        end=square if own is None else own,
        meets=Meets.ITSELF,
        short=corner.block.takes_up(outside=outside),
        remark=meets_block(block, side),
    )


def at_transition(at: FreeEnd, off: Fraction, findings: Findings) -> Remark | None:
    """Return what to say of the block in the wall that a trim stops at, None where none stands.

    ``off`` is how far the trim's back is from the wall (inches).
    """
    if at.gap is None:
        return None
    block = at.gap.trimmings.transition
    # Crown that ends above a block of the floor, in a return of its own, does not meet it.
    if block is None or at.gap.lets_past(at.trim):
        return None
    low = foot_of(at.job, at.run, at.trim)
    small = _too_small(block, block.thickness, at.trim, off, low, at.job.settings.unit)
    _say_small(small, block, at.run, at.trim, at.run.side(at.side).span, findings)
    return meets_block(block, at.side)


def _is_stopped(job: Job, run: Run, trim: Trim, stops: tuple[str, ...] | None) -> bool:
    return is_on_floor(job, run, trim) if stops is None else trim.name in stops


def _too_small(
    block: CasingBlock, out: Fraction | None, trim: Trim, off: Fraction, foot: Fraction, unit: Unit
) -> dict[str, str] | None:
    """Return in words how a block is lower, or stands out less, than the trim that ends at it."""
    # What hangs is held against its block by how far it stands out alone.
    tall = None if trim.hangs or trim.height is None else foot + trim.height
    for own, its, word in (
        (block.tall, tall, "tall"),
        (out, off + depth_of(trim), "thick"),
    ):
        if own is not None and its is not None and its > own:
            return {"own": length_text(own, unit), "its": length_text(its, unit), "word": word}
    return None


def _say_small(
    small: dict[str, str] | None, block: CasingBlock, run: Run, trim: Trim, at: Span, to: Findings
) -> None:
    if small is not None:
        to.say("T478", at, block=block.name, trim=trim.name, run=run.label, **small)
