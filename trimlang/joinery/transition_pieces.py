"""The small piece of crown that turns a corner level, where crown climbs to that corner.

How long it is, and why it closes, stands in ``trimlang.joinery.level_turns``.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from trimlang.joinery.cuts import end_cut
from trimlang.joinery.meeting import Meeting, Meets
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.remarks import Remark
from trimlang.joinery.rounding import deciding_row, round_length
from trimlang.joinery.sloped_ceilings import upright_end
from trimlang.joinery.spliced_pieces import on_wall_edge
from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.marking import N_
from trimlang.settings.table import Settings
from trimlang.survey.job import Run, Trim

_TURNS: Final = {
    Side.LEFT: N_("goes level into the left corner of {run}, its ceiling edge a point; glue it"),
    Side.RIGHT: N_("goes level into the right corner of {run}, its ceiling edge a point; glue it"),
}


def level_piece(
    whole: Piece,
    met: Meeting,
    *,
    run: Run,
    trim: Trim,
    glued_to: Piece,
    side: Side,
    settings: Settings,
) -> Piece | None:
    """Return the level piece in the corner at one end of ``whole``, None where there is none.

    ``glued_to`` is the part of the climbing run that it is glued to.
    """
    if met.level is None:
        return None
    corner = end_cut(met.level.corner, side, trim, settings, Side.LEFT)
    # The piece itself is level; only its cut toward the crown follows the slope.
    level = replace(run, ceiling=NOTHING)
    rake = upright_end(
        Meeting(end=met.end, meets=Meets.ITSELF), side.other, level, NOTHING, trim, settings
    )
    row = deciding_row(met.level.corner, met.end, settings)
    length, rounding = round_length(met.level.long, row, settings)
    piece = replace(
        whole,
        id=f"{whole.id}-{side}-transition",
        kind=PieceKind.CORNER,
        at=side,
        length=length,
        wall=met.level.long,
        left=side.of(corner, rake),
        right=side.of(rake, corner),
        rounding=rounding,
        note=None,
        mates=(glued_to.id,),
        remarks=(Remark(_TURNS[side], (("run", whole.run),)),),
    )
    return on_wall_edge(piece, length, settings)
