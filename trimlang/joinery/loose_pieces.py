"""Pieces that stand on no wall of the walk: cleats, door stops, jambs, toe kicks.

The file gives the length of the piece itself, from long point to long point, so its ends add
nothing; for crown it is the length of the wall edge, as on every crown ticket.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from trimlang.joinery.cuts import end_cut
from trimlang.joinery.limits import check_gaps, check_reach
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.remarks import Remark
from trimlang.joinery.rounding import deciding_row, round_length
from trimlang.joinery.spliced_pieces import on_wall_edge
from trimlang.language.facts import Side
from trimlang.lengths.tape import feet_text
from trimlang.marking import N_
from trimlang.survey.job import Job, LoosePiece, Room
from trimlang.survey.measures import Findings
from trimlang.survey.sticks import next_stick

_ONE: Final = N_("“{piece}”")
_ONE_OF: Final = N_("“{piece}”, {n} of {all}")


def loose_pieces(job: Job, room: Room, findings: Findings) -> Iterator[Piece]:
    """Yield a room's loose pieces, those of one kind one after another."""
    for loose in room.loose:
        first = _piece(job, room, loose)
        longest = job.trim(loose.trim).longest_stick(job.settings)
        # All pieces of one kind are alike, so one is checked for all of them.
        if first.vanishes:
            findings.say("T122", loose.span, part=f"“{loose.called}”", trim=loose.trim)
            continue
        if longest is not None and first.length > longest:
            findings.say(
                "T420",
                loose.span,
                piece=loose.called,
                need=feet_text(first.length, first.unit),
                trim=loose.trim,
                longest=feet_text(longest, first.unit),
                stick=next_stick(job.trim(loose.trim).offers, first.length, first.unit),
                half=feet_text(loose.length / 2, first.unit),
            )
        # A bench piece goes through the same saw as a wall's.
        check_reach(first, loose, room.settings, findings)
        check_gaps(first, loose, room.settings, findings)
        for number in range(1, loose.count + 1):
            yield _numbered(first, loose, number)


def _piece(job: Job, room: Room, loose: LoosePiece) -> Piece:
    trim, settings = job.trim(loose.trim), room.settings
    length, rounding = round_length(
        loose.length, deciding_row(loose.left, loose.right, settings), settings
    )
    left, right = (
        end_cut(end, side, trim, settings, Side.LEFT)
        for end, side in ((loose.left, Side.LEFT), (loose.right, Side.RIGHT))
    )
    whole = Piece(
        id=f"{room.tag}-{loose.label}-{trim.name}",
        kind=PieceKind.LOOSE,
        room=room.name,
        run=loose.label,
        trim=trim.name,
        length=length,
        wall=loose.length,
        left=left,
        right=right,
        rounding=rounding,
        note=loose.note,
        unit=settings.unit,
    )
    return whole if trim.spring is None else on_wall_edge(whole, length, settings)


def _numbered(piece: Piece, loose: LoosePiece, number: int) -> Piece:
    """Return one of the pieces of its kind, told from the others by its number."""
    if loose.count == 1:
        return replace(piece, remarks=(Remark(_ONE, (("piece", loose.called),)),))
    values = (("piece", loose.called), ("n", str(number)), ("all", str(loose.count)))
    return replace(piece, id=f"{piece.id}-{number}", remarks=(Remark(_ONE_OF, values),))
