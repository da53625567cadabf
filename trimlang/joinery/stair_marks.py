"""What is marked on a piece that climbs: its length as taken, its steps, a notch for a newel.

Steps of rise ``r`` and run ``g`` lie along the top edge of an open side √(r² + g²) apart, which is
g ÷ cos of the pitch: a framing square with r and g on its legs is stepped off so.  What is left of
a board ``h`` tall below each notch is h - r × cos of the pitch (geometry: the height of the
right triangle over its longest side is r × g ÷ √(r² + g²)).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Piece
from trimlang.joinery.remarks import Remark, SaidLength
from trimlang.language.facts import LengthTaken, Side
from trimlang.lengths.angles import cosine
from trimlang.lengths.tape import (
    NOTHING,
    length_text,
    steps_down,
    steps_nearest,
    steps_up,
)
from trimlang.marking import N_
from trimlang.settings.table import Settings
from trimlang.survey.job import Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.stair_work import NewelNotch

_TAKEN: Final = {
    LengthTaken.LEVEL: N_("taken level, {read}: along the slope {long}"),
    LengthTaken.UPRIGHT: N_("taken upright, {read}: along the slope {long}"),
}
_STEPS: Final = N_(
    "open side: step off {n} of {rise} by {run}, {apart} apart along the top edge;"
    " {left} stays below each"
)
_NOTCH: Final = {
    Side.LEFT: N_("notch the left end's foot for the newel: {level} level by {up} up,"
                  " {along} along the bottom edge"),
    Side.RIGHT: N_("notch the right end's foot for the newel: {level} level by {up} up,"
                   " {along} along the bottom edge"),
}  # fmt: skip

LEAST_LEFT: Final = Fraction(1, 2)
"""Inches of a board that must stay below its steps; less breaks (common practice, no source)."""


def stair_remarks(run: Run, settings: Settings) -> Iterator[Remark]:
    """Yield what a climbing run's tickets say of how it was measured."""
    work = run.stair
    if work.measured is not None:
        step, unit = settings.rounding_step, settings.unit
        read, along = (
            SaidLength(steps_nearest(one, step), unit, in_feet=True)
            for one in (work.measured, run.length)
        )
        yield Remark(_TAKEN[work.taken], (("read", read), ("long", along)))


def stepped(
    pieces: Sequence[Piece], run: Run, trim: Trim, settings: Settings, findings: Findings
) -> list[Piece]:
    """Return a run's pieces, each with a remark on the steps that its top edge is sawn to.

    Only trim that stands on the steps is: the run's first.  Reports a board too low for them.
    """
    work = run.stair
    if not work.open_side or work.steps is None or run.trims[0] != trim.name:
        return list(pieces)
    step, unit = settings.rounding_step, settings.unit
    rise, going = work.steps.rise, work.steps.run
    apart = going / cosine(run.slope)
    left = (trim.height or NOTHING) - rise * cosine(run.slope)
    if left < LEAST_LEFT:
        needs = length_text(steps_up(rise * cosine(run.slope) + LEAST_LEFT, step), unit)
        findings.say("T446", run.span, run=run.label, trim=trim.name, needs=needs)
        return list(pieces)
    sizes = {"rise": rise, "run": going, "apart": apart, "left": left}
    texts = [(name, SaidLength(steps_nearest(size, step), unit)) for name, size in sizes.items()]
    made: list[Piece] = []
    for piece in pieces:
        # A whole run's steps are counted along the wall, not along a piece that its mitre makes
        # longer.
        along = run.length if piece.parts == 1 else piece.length
        count = int(steps_down(along / apart, Fraction(1)))
        remark = Remark(_STEPS, (("n", str(count)), *texts))
        made.append(piece.with_remark(remark))
    return made


def notched(
    pieces: Sequence[Piece], run: Run, trim: Trim, settings: Settings, findings: Findings
) -> list[Piece]:
    """Return a run's pieces with a remark on the notch at each end that has one.

    Reports a notch that leaves no wood beside it.

    Only trim that stands on the floor or the steps is notched: the run's first.
    """
    made = list(pieces)
    if run.trims[0] != trim.name:
        return made
    for notch in run.stair.notches:
        # Of a spliced run the notch is in the piece at that end.
        at = 0 if notch.side is Side.LEFT else -1
        along = notch.level / cosine(run.slope)
        upright = (trim.height or NOTHING) / cosine(run.slope)
        if along >= made[at].length or (trim.height is not None and notch.up >= upright):
            findings.say("T447", run.span, run=run.label, trim=trim.name, side=notch.side)
            continue
        made[at] = made[at].with_remark(_notch_remark(notch, along, settings))
    return made


def _notch_remark(notch: NewelNotch, along: Fraction, settings: Settings) -> Remark:
    sizes = {"level": notch.level, "up": notch.up, "along": along}
    return Remark(
        _NOTCH[notch.side],
        tuple(
            (name, SaidLength(steps_nearest(size, settings.rounding_step), settings.unit))
            for name, size in sizes.items()
        ),
    )
