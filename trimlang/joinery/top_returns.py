"""The top of a trim that is taller than what it meets round an outside corner, returned.

Both are mitred for their two thicknesses, and what the taller one has above the other would show
its end.  That part is sawn back instead: square over the short point at its back its own mitre
begins, as at any return, and a small piece turns its profile to the wall.  The return's face is
then in one plane with the next wall, or with what stands behind the trim there (geometry).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.cuts import end_cut
from trimlang.joinery.meeting import Meeting
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.remarks import Remark, SaidAngle, SaidLength, Value
from trimlang.joinery.returns import return_piece
from trimlang.joints_by_role import RETURNED
from trimlang.language.facts import Side
from trimlang.lengths.angles import MITRE_OF_SQUARE
from trimlang.lengths.tape import NOTHING, SIXTEENTH, length_text, steps_nearest
from trimlang.marking import N_
from trimlang.settings.table import Settings
from trimlang.survey.job import Trim
from trimlang.survey.wall_end import End

_SAWN_BACK: Final = {
    Side.LEFT: N_(
        "left: saw its top {step} back {back} along the face, at {angle} for a return, and level"
        " below that"
    ),
    Side.RIGHT: N_(
        "right: saw its top {step} back {back} along the face, at {angle} for a return, and level"
        " below that"
    ),
}
_CLOSES: Final = {
    Side.LEFT: N_(
        "closes the top {step} of {piece} at its left end: clamp it and saw what is below that off"
        " by hand; glue, do not nail"
    ),
    Side.RIGHT: N_(
        "closes the top {step} of {piece} at its right end: clamp it and saw what is below that off"
        " by hand; glue, do not nail"
    ),
}


def sawn_tops(left: Meeting, right: Meeting, trim: Trim, settings: Settings) -> Iterator[Remark]:
    """Yield what a ticket says of a top that is sawn back at either end."""
    for side, met in ((Side.LEFT, left), (Side.RIGHT, right)):
        if not met.step:
            continue
        back, face = met.edges(trim)
        texts: dict[str, Value] = {
            "step": SaidLength(met.step, settings.unit),
            "back": SaidLength(steps_nearest(max(face - back, NOTHING), SIXTEENTH), settings.unit),
            "angle": SaidAngle(MITRE_OF_SQUARE),
        }
        yield Remark(_SAWN_BACK[side], tuple(texts.items()), at=side)


def top_return(
    whole: Piece, closed: Piece, side: Side, step: Fraction, trim: Trim, settings: Settings
) -> Piece:
    """Return the small piece that closes the top ``step`` inches of ``closed`` at one end."""
    end = End(joint=RETURNED, span=trim.span)
    cut = end_cut(end, side, trim, settings, Side.LEFT)
    mitred = side.of(replace(whole, left=cut), replace(whole, right=cut))
    said = (("step", length_text(step, settings.unit)), ("piece", closed.id))
    return replace(
        return_piece(mitred, closed, side, trim, settings),
        kind=PieceKind.CORNER,
        remarks=(Remark(_CLOSES[side], said),),
    )
