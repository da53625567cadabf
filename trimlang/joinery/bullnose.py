"""Rounded outside corners: two mitres of half the size, and a small piece between them.

Geometry (plan view, walls that turn by φ = 180° less the corner, rounded with radius R): the small
piece lies against the middle of the round, and its back meets the walls' faces R × tan(φ/4) ÷
cos(φ/2) before the corner that they would make.  There each of the two joints turns by φ/2, so
it is an outside corner of 180° - φ/2, and the small piece's back is 2 R × tan(φ/4) long from joint
to joint.  In front of another trim it is all as much further out: the round is that much larger.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.cuts import end_cut
from trimlang.joinery.meeting import Meeting, Meets
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.remarks import Remark
from trimlang.joinery.rounding import deciding_row, round_length
from trimlang.language.facts import Side
from trimlang.lengths.angles import STRAIGHT, cosine, tangent
from trimlang.lengths.tape import NOTHING, SIXTEENTH, length_text, steps_nearest
from trimlang.marking import N_
from trimlang.settings.table import Settings
from trimlang.survey.job import Trim
from trimlang.survey.measures import Findings

DEEPEST_HOLLOW: Final = Fraction(1, 4)
"""Inches from a round corner to its small piece: more is seen (common practice, no source)."""

_BETWEEN: Final = {
    Side.LEFT: N_("goes round the rounded corner left of {run}; glue, do not nail"),
    Side.RIGHT: N_("goes round the rounded corner right of {run}; glue, do not nail"),
}


def rounded(met: Meeting, trim: Trim, run: str, findings: Findings, *, brings: bool) -> Meeting:
    """Return how a trim ends at a corner that may be rounded: before it, at half its turn.

    ``brings`` says that the small piece of the corner is this end's.
    Crown, and trims that meet an unlike one there, go round no bullnose; that is reported.
    """
    radius, corner = met.end.bullnose, met.corner
    # Two pieces meet in one mitre as at a sharp corner; only the hollow behind them differs.
    if radius is None or corner is None or not met.outside or met.end.two_pieces:
        return met
    # A small piece between two unlike profiles would have to change from one to the other.
    if trim.spring is not None or trim.before_crown is not None or met.meets is not Meets.MATE:
        findings.say("T421", met.end.span, trim=trim.name, run=run)
        return met
    turn = STRAIGHT - corner
    half = STRAIGHT - turn / 2
    hollow = radius * (1 / cosine(turn / 4) - 1)
    if brings and hollow > DEEPEST_HOLLOW:
        findings.say("T723", met.end.span, hollow=length_text(steps_nearest(hollow, SIXTEENTH)))
    return replace(
        met,
        end=replace(met.end, corner=half),
        corner=half,
        beyond=met.off,
        short=radius * tangent(turn / 4) / cosine(turn / 2),
        brings_corner=brings,
    )


def corner_piece(
    whole: Piece, glued_to: Piece, side: Side, met: Meeting, trim: Trim, settings: Settings
) -> Piece:
    """Return the small piece that goes round a corner at one end of ``whole``.

    ``glued_to`` is the part of the run that it is glued to.
    """
    mitre = (STRAIGHT - (met.corner or STRAIGHT)) / 2
    # The docstring's 2 R tan(φ/4): the mitre here is half of φ/2, and R grows by what is behind.
    back = 2 * ((met.end.bullnose or NOTHING) + met.off) * tangent(mitre)
    exact = back + 2 * (trim.thickness or NOTHING) * tangent(mitre)
    length, rounding = round_length(exact, deciding_row(met.end, met.end, settings), settings)
    left, right = (end_cut(met.end, end, trim, settings, Side.LEFT) for end in Side)
    return replace(
        whole,
        id=f"{whole.id}-{side}-bullnose",
        kind=PieceKind.CORNER,
        at=side,
        length=length,
        wall=back,
        left=left,
        right=right,
        rounding=rounding,
        note=None,
        mates=(glued_to.id,),
        remarks=(Remark(_BETWEEN[side], (("run", whole.run),)),),
    )
