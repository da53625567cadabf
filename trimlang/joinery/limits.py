"""Warns of cuts that the saw cannot make, or cannot make closely enough."""

from __future__ import annotations

from math import ceil

from trimlang.joinery.piece import Piece
from trimlang.joint_row import Edge, Fit
from trimlang.lengths.angles import degrees_text
from trimlang.lengths.tape import MM, SIXTEENTH, length_text, sixty_fourths
from trimlang.settings.table import Settings
from trimlang.survey.job import LoosePiece, Run
from trimlang.survey.measures import Findings


def check_reach(
    piece: Piece, run: Run | LoosePiece, settings: Settings, findings: Findings
) -> None:
    """Report the ends of a piece whose mitre is further from square than the saw can turn."""
    for side, cut, end in (("left", piece.left, run.left), ("right", piece.right, run.right)):
        if cut.setting > settings.saw_reach:
            findings.say(
                "T404",
                end.span,
                side=side,
                run=run.label,
                mitre=degrees_text(cut.exact),
                reach=degrees_text(settings.saw_reach),
            )


def check_gaps(piece: Piece, run: Run | LoosePiece, settings: Settings, findings: Findings) -> None:
    """Report mitred corners that the saw's step leaves open further than the file allows.

    The doubt that measuring the corner leaves counts too.  A coped or square end has no mitre, so
    nothing opens there.
    """
    limits = {"out-corner": settings.gap_out, "in-corner": settings.gap_in}
    for side, cut, end in (("left", piece.left, run.left), ("right", piece.right, run.right)):
        shows = cut.joint.row.gap_shows
        limit = limits[shows] if shows else None
        # A joint that opens at the back is hidden; only the face is seen.
        gap = cut.doubt + (cut.gap if cut.opens_at is Edge.FACE else 0)
        if limit is not None and cut.fit is Fit.MITRED and gap > limit:
            step = MM if piece.unit == "mm" else SIXTEENTH
            findings.say(
                "T405",
                end.span,
                side=side,
                run=run.label,
                trim=piece.trim,
                gap=sixty_fourths(gap),
                joint=shows,
                wider=length_text(ceil(gap / step) * step, piece.unit),
                exact=degrees_text(cut.exact),
                setting=degrees_text(cut.setting),
            )
