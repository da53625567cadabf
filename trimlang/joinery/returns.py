"""Returns: the small pieces that turn a profile back to the wall."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.crown import crown_cut
from trimlang.joinery.cuts import square_cut
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.remarks import Remark
from trimlang.joinery.rounding import round_length
from trimlang.joinery.spliced_pieces import on_wall_edge
from trimlang.joinery.wedges import lean_of
from trimlang.joint_row import Edge, RoundedAs
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import MITRE_OF_SQUARE
from trimlang.lengths.tape import NOTHING
from trimlang.marking import N_
from trimlang.settings.table import Settings
from trimlang.survey.job import Trim
from trimlang.survey.outline import depth_of

_CLOSES: Final = {
    Side.LEFT: N_("closes the left end of {piece}; glue, do not nail"),
    Side.RIGHT: N_("closes the right end of {piece}; glue, do not nail"),
}


def return_piece(
    whole: Piece,
    closed: Piece,
    side: Side,
    trim: Trim,
    settings: Settings,
    behind: Fraction = NOTHING,
) -> Piece:
    """Return the small piece that turns the profile back to the wall.

    It is as long, at its long point, as the trim is thick or the crown stands out, and as what
    is ``behind`` the trim there (inches).  It is mitred where it meets the run and square where it
    meets the wall; a crown's return is as long at the wall edge as what is behind.
    """
    deep = depth_of(trim)
    along_back = behind and trim.spring is not None
    exact = behind + (0 if along_back else deep)
    length, rounding = round_length(exact, RoundedAs.RETURN, settings)
    run_end = side.of(whole.left, whole.right)
    # Both sides of the joint have the same mitre, mirrored.
    # A crown's number runs along the wall edge, from which its ceiling edge reaches further by all
    # that it stands out.
    inset = deep if along_back else length - behind
    mitred = replace(run_end, inset=inset, lean=lean_of(side.other, run_end.long_edge))
    if trim.spring is not None:
        crown = crown_cut(trim.spring, MITRE_OF_SQUARE, settings.saw_step)
        # Lying face up, the ceiling edge is its top.
        mitred = replace(mitred, crown=crown, lean=lean_of(side.other, Edge.TOP))
    square = square_cut()
    piece = replace(
        whole,
        id=f"{whole.id}-{side}-return",
        kind=PieceKind.RETURN,
        at=side,
        length=length,
        wall=deep + behind,
        left=square if side is Side.LEFT else mitred,
        right=mitred if side is Side.LEFT else square,
        rounding=rounding,
        mates=(closed.id,),
        wall_edge=None,
        note=None,
        remarks=(Remark(_CLOSES[side], (("piece", closed.id),)),),
    )
    return on_wall_edge(piece, length, settings) if along_back else piece
