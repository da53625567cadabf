"""The lines that the log will want: what to write once a piece is cut or fitted as planned."""

from __future__ import annotations

from collections.abc import Iterable

from trimlang.joinery.piece import Piece
from trimlang.planning.layout import TrimPlan
from trimlang.record import record
from trimlang.site_log.written_out import sawn_words
from trimlang.survey.job import Job


@record
class LinesAhead:
    """A piece's lines: ``cut PO-N-base 29 3/4 in from base-1 of 12 ft``, ``fitted PO-N-base``."""

    cut: str
    fitted: str


def lines_ahead(
    job: Job, pieces: Iterable[Piece], plans: Iterable[TrimPlan]
) -> dict[str, LinesAhead]:
    """Return by its id the lines of each piece that lies on a stick.

    They are in full, so that they mean the same whatever is planned or measured later.
    """
    sticks = {
        # By piece, since a ticket knows its piece and asks for the stick.
        place.piece: stick
        for plan in plans
        for stick in plan.sticks
        for place in stick.places
    }
    return {
        piece.id: LinesAhead(
            cut="cut "
            + sawn_words(
                piece.id,
                piece.to_mark,
                piece.unit,
                stick=sticks[piece.id].id,
                stick_length=sticks[piece.id].length,
                unit=job.settings.unit,
            ),
            fitted=f"fitted {piece.id}",
        )
        for piece in pieces
        if piece.id in sticks
    }
