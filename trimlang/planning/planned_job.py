"""The first plan of a job: made of the whole job, as if nothing had been done yet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from trimlang.diagnostics import Diagnostic
from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import Places
from trimlang.joinery.spliced_pieces import Splice
from trimlang.record import record
from trimlang.survey.job import Job

if TYPE_CHECKING:
    from trimlang.planning.layout import TrimPlan


@record
class Planned:
    """``pieces`` as the plan splices them, at ``places``.

    ``joined`` is the job that they come from, ``splices`` its runs that are pieced together.
    """

    pieces: tuple[Piece, ...]
    plans: tuple[TrimPlan, ...]
    problems: tuple[Diagnostic, ...]
    joined: Job
    splices: tuple[Splice, ...]
    places: Places


def with_offers_of_log(job: Job) -> Job:
    """Return the job with the lengths that only the log knows among the offers."""
    if not job.log:
        return job
    return replace(
        job,
        trims=tuple(replace(trim, offers=(*trim.offers, *trim.logged)) for trim in job.trims),
    )
