"""Trim whose grain or pattern has a direction, where it goes round an opening or a box.

Along a wall no piece is turned end for end: its pattern runs one way.  The two legs of a casing
have their outer edges at unlike hands, so the same stick runs up in one and down in the other,
and round a box it runs all round.
"""

from __future__ import annotations

from collections.abc import Iterable

from trimlang.joinery.piece import Piece
from trimlang.survey.job import Job
from trimlang.survey.measures import Findings


def check_one_way(job: Job, pieces: Iterable[Piece], findings: Findings) -> None:
    """Warn of trims with a direction that stand up at both sides of something."""
    # Once for each trim, since all its pairs raise the same question.
    upright = {piece.trim for piece in pieces if piece.kind.stands_in_pairs}
    for trim in job.trims:
        if trim.one_way and trim.name in upright:
            findings.say("T471", trim.span, trim=trim.name)
