"""Warns of cuts that the saw cannot make."""

from __future__ import annotations

from trimlang.joinery.piece import Piece
from trimlang.lengths.angles import degrees_text
from trimlang.survey.job import Run
from trimlang.survey.measures import Findings
from trimlang.survey.settings import Settings


def check_reach(piece: Piece, run: Run, settings: Settings, findings: Findings) -> None:
    """Report the ends of a piece whose mitre is further from square than the saw turns."""
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
