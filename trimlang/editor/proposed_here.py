"""What is proposed at a place of a document, the end that its neighbour asks for first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from trimlang.editor.ends_that_fit import COPE, MITRE, fits
from trimlang.editor.neighbour_end import TypedEnd, behind_cursor, typed_end
from trimlang.editor.open_job import JobReading
from trimlang.editor.proposals import Proposal, ProposalKind, complete
from trimlang.joints import Joint
from trimlang.joints_by_role import SCARF
from trimlang.language.tree import RunLine
from trimlang.settings.table import Settings
from trimlang.survey.measures import Findings, length

SPLICE: Final = SCARF.word
"""Said of a run, not of an end: it may be made of two pieces."""


def proposed_here(
    reading: JobReading, lines: Sequence[str], line: int, before: str, files: tuple[str, ...] = ()
) -> tuple[Proposal, ...]:
    """Return how a line may go on; ``line`` is its place among ``lines`` (from 0).

    ``before`` is its text before the cursor; ``files`` could be included.
    """
    proposals = complete(reading, before, behind_cursor(lines, line, before), files)
    usual = reading.result.job.settings.ends
    end = typed_end(lines, line, before, Joint.of(usual) if usual else None)
    if end is None:
        return proposals
    fitting = tuple(one for one in proposals if _fits(one, end, reading.result.job.settings))
    there = None if end.trim is not None else end.there
    first = (
        replace(one, detail=end.because, fits=True)
        for one in fitting
        if there is not None and one.kind is ProposalKind.JOINT and one.text == there.word
    )
    return (*first, *(one for one in fitting if there is None or one.text != there.word))


def _fits(proposal: Proposal, end: TypedEnd, settings: Settings) -> bool:
    if proposal.kind is ProposalKind.JOINT or proposal.text in (COPE, MITRE):
        return fits(end, proposal.text)
    if proposal.text == SPLICE and isinstance(end.wall, RunLine):
        long = length(end.wall.length, settings.unit, Findings(), what=end.wall.label.text)
        # A wall that is too short for two pieces cannot be made of two.
        return long is None or long >= 2 * settings.splice_least
    return True
