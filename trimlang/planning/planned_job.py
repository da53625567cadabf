"""The first plan of a job: for all its pieces, as if nothing had been done yet."""

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
    """A job's first plan: ``pieces`` are spliced at ``places``, as the plan wants it.

    ``joined`` is the job that the pieces come from, and ``splices`` its runs that are spliced.
    """

    pieces: tuple[Piece, ...]
    plans: tuple[TrimPlan, ...]
    problems: tuple[Diagnostic, ...]
    joined: Job
    splices: tuple[Splice, ...]
    places: Places


def with_offers_of_log(job: Job) -> Job:
    """Return the job with lengths that only the log mentions added to the offers."""
    if not job.log:
        return job
    return replace(
        job,
        # The sticks were bought once, so the plan in force may be cut from them.
        trims=tuple(replace(trim, offers=(*trim.offers, *trim.logged)) for trim in job.trims),
    )
