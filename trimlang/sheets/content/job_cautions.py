"""The cautions of work at the saw that only some jobs have: kerfs, scribes, stairs, slopes.

Common practice, as all cautions of the checklist.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.piece import PieceKind
from trimlang.sheets.wording.quantities import Pen

THIN: Final = Fraction(3, 8)
"""Trim no thicker than this is backed where it is sawn (inches; common practice, no source)."""


def cautions_of_job(result: Result, pen: Pen) -> Iterator[str]:
    """Yield the cautions of work at the saw that only some jobs have."""
    w, job = pen.words, result.job
    runs = [run for room in job.rooms for run in room.runs]
    # A flexible trim bends without kerfs, so it asks for none of their cautions.
    bent = {name for run in runs if run.curve is not None for name in run.trims}
    if any(not job.trim(name).flexible for name in bent):
        yield w(
            "Kerfs: set their depth on scrap, with a stop, and clamp the piece; a blade that goes"
            " through kicks. Bend it slowly: it snaps at once."
        )
    if any(piece.scribe for piece in result.pieces):
        yield w(
            "Scribing: clamp the piece and work away from your hands; let a planer or saw come to"
            " rest before you lay it down."
        )
    if any(piece.kind is PieceKind.JAMB for piece in result.pieces):
        yield w(
            "Jamb strips are long and narrow: have the yard rip them, or rip with guard, riving"
            " knife, push stick and a helper who only carries."
        )
    if any(run.slope for run in runs):
        yield w(
            "On a stair: clamp a skirt along its length before you saw steps and notches, and end"
            " the cuts by hand; stand on a platform made for stairs, not on a plain ladder."
        )
    if any(run.ceiling and job.trim(name).spring for run in runs for name in run.trims):
        yield w(
            "Crown below a slope: clamp it along its length and plane its bearing away from your"
            " hands; have a long bevel ripped by the yard."
        )
    # A trim may stand in the file for another floor: only what this job cuts is warned of.
    used = {piece.trim for piece in result.pieces}
    thin = [one.name for one in job.trims if one.name in used and 0 < (one.thickness or 0) <= THIN]
    if thin:
        yield w(
            "Thin trim ({trims}) splinters and flies: back it with scrap at fence and table, and"
            " cut it slowly.",
            trims=", ".join(thin),
        )


__all__ = ["THIN", "cautions_of_job"]
